import type { JobView, VehicleView } from '@holdfast/contract';
import { jobKinds } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useRead } from '../live/reads.js';
import { optionsOf } from '../pieces/options.js';
import { said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Select } from '../ui/fields/select.js';
import type { Draft } from './draft.js';
import { StepContact } from './step-contact.js';
import { StepCustomer } from './step-customer.js';

type StepProps = {
  readonly view: VehicleView;
  readonly draft: Draft;
  readonly onChange: (part: Partial<Draft>) => void;
};

/** Whose vehicle it is has been said, or the job needs nobody; a comeback names its line. */
export const whoIsSaid = ({ kind, customerId, customerName, comebackOfLineId }: Draft): boolean => {
  if (kind === 'comeback' && comebackOfLineId === null) return false;
  return kind === 'internal' || customerId !== null || said(customerName) !== undefined;
};

/** A comeback names the line of an earlier job that it comes back for. */
const Comeback = ({ view, draft, onChange }: StepProps): ReactElement => {
  const { t, format } = useText();
  const earlier = view.jobs.filter((job) => job.endedAt !== null);
  const [earlierId, setEarlierId] = useState<string | null>(earlier[0]?.id ?? null);
  const lines = useRead<JobView>(earlierId === null ? null : `/api/jobs/${earlierId}`, [`job:${earlierId ?? ''}`]).data
    ?.lines;
  return (
    <div className="hf-pair">
      <Select
        label={t('checkIn.comebackJob')}
        value={earlierId}
        onChange={(id) => {
          setEarlierId(id);
          onChange({ comebackOfLineId: null });
        }}
        options={earlier.map((job) => ({
          value: job.id,
          label: t('checkIn.comebackJobIs', { number: job.number, day: format.date(Date.parse(job.checkedInAt)) }),
        }))}
      />
      <Select
        label={t('checkIn.comebackLine')}
        value={draft.comebackOfLineId}
        onChange={(comebackOfLineId) => {
          onChange({ comebackOfLineId });
        }}
        options={(lines ?? []).map((line) => ({ value: line.id, label: line.title }))}
      />
    </div>
  );
};

/** Who brings it, whose it is, who is asked. */
export const StepWho = (props: StepProps): ReactElement => {
  const { view, draft, onChange } = props;
  const { t } = useText();
  return (
    <>
      <Choice
        label={t('checkIn.jobKind')}
        value={draft.kind}
        onChange={(kind) => {
          onChange({ kind });
        }}
        options={optionsOf(jobKinds, (value) => t(`word.job.${value}`)).map((option) => ({
          ...option,
          isDisabled: option.value === 'comeback' && view.jobs.every((job) => job.endedAt === null),
        }))}
      />
      {draft.kind === 'comeback' && <Comeback {...props} />}
      {draft.kind === 'internal' && <p className="hf-quiet">{t('checkIn.internal')}</p>}
      <StepCustomer {...props} />
      {(draft.customerId !== null || said(draft.customerName) !== undefined) && <StepContact {...props} />}
    </>
  );
};
