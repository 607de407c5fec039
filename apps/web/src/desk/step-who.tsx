import type { VehicleView } from '@holdfast/contract';
import { jobKinds } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { optionsOf } from '../pieces/options.js';
import { said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Select } from '../ui/fields/select.js';
import type { Draft } from './draft.js';
import { StepContact, useContacts } from './step-contact.js';
import { StepCustomer } from './step-customer.js';
import { useCustomer } from './use-customer.js';

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

/** Who speaks for the customer at this visit, by name: who gives a standing go-ahead. */
export const useBringer = (view: VehicleView, draft: Draft): string => {
  const contacts = useContacts(view, draft.customerId);
  const customer = useCustomer(draft.customerId)?.customer ?? view.customer;
  const contact = contacts.find((one) => one.id === draft.contactId)?.name ?? said(draft.contactName);
  return contact ?? said(draft.customerName) ?? customer?.name ?? '';
};

/** A comeback names the line of an earlier job that it comes back for. */
const Comeback = ({ view, draft, onChange }: StepProps): ReactElement => {
  const { t, format } = useText();
  return (
    <Select
      label={t('checkIn.comebackOf')}
      value={draft.comebackOfLineId}
      onChange={(comebackOfLineId) => {
        onChange({ comebackOfLineId });
      }}
      options={view.workDone.map((line) => ({
        value: line.lineId,
        label: t('checkIn.workDoneIs', {
          title: line.title,
          number: line.jobNumber,
          day: format.date(Date.parse(line.endedAt)),
        }),
      }))}
    />
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
          isDisabled: option.value === 'comeback' && view.workDone.length === 0,
        }))}
      />
      {draft.kind === 'comeback' && <Comeback {...props} />}
      {draft.kind === 'internal' && <p className="hf-quiet">{t('checkIn.internal')}</p>}
      <StepCustomer {...props} />
      {(draft.customerId !== null || said(draft.customerName) !== undefined) && <StepContact {...props} />}
    </>
  );
};
