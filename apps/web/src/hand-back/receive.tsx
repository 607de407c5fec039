import type { JobView } from '@holdfast/contract';
import type { leavesBy } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { askedOf } from '../job/job-parties.js';
import { Refusal } from '../live/refusal.js';
import { useMay } from '../live/session.js';
import { useSend } from '../live/use-send.js';
import { NumberField } from '../pieces/number-field.js';
import { Part } from '../pieces/part.js';
import { said, wholeOf } from '../pieces/typed.js';
import { cautionWords } from '../pieces/vehicle-head.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Choice } from '../ui/fields/choice.js';
import { Field } from '../ui/fields/field.js';
import type { Allowances } from './road-allowances.js';

type ReceiveProps = {
  readonly view: JobView;
  readonly leaves: (typeof leavesBy)[number];
  readonly receivedHow: 'there' | 'telephone';
  readonly onHow: (how: 'there' | 'telephone') => void;
  readonly allowances: Allowances;
};

/** Whoever receives the vehicle acknowledges, there or by telephone; then it goes. */
export const Receive = ({ view, leaves, receivedHow, onHow, allowances }: ReceiveProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const may = useMay();
  const { job } = view;
  const collector = view.contacts.find((one) => one.mayCollect) ?? askedOf(view);
  const [receivedBy, setReceivedBy] = useState(collector?.name ?? '');
  const [odometer, setOdometer] = useState('');
  const [refused, setRefused] = useState<{ readonly view: JobView; readonly leaves: string } | null>(null);
  const reading = wholeOf(odometer);
  const standing = view.cautions.filter((caution) => caution.standing && caution.endedAt === null);
  const named = Object.entries(allowances).filter(([, one]) => one.words.trim() !== '');
  // A refusal is of the job as it was then: once a reason is mended, the list above says what is left.
  const stands = refused?.view === view && refused.leaves === leaves;
  const send = async (): Promise<void> => {
    const byRoad = named.map(([temporaryFixId, { words, receiverSigned }]) => ({
      temporaryFixId,
      words: words.trim(),
      receiverSigned,
    }));
    const who = { receivedBy: receivedBy.trim(), receivedHow, odometer: reading ?? undefined };
    const how = { leavesBy: leaves, byRoad: byRoad.length === 0 ? undefined : byRoad };
    const done = { text: 'handBack.done', values: { number: job.number } } as const;
    const answer = await sending.run('handBack', { jobId: job.id, version: job.version, ...how, ...who }, done);
    setRefused(answer === null ? { view, leaves } : null);
  };
  return (
    <Part heading={t('handBack.receiver')}>
      {standing.length > 0 && (
        <p className="hf-entry-title">
          {t('handBack.cautionsStay', { cautions: standing.map((caution) => cautionWords(caution, t)).join('; ') })}
        </p>
      )}
      <div className="hf-receive">
        <Field label={t('handBack.receivedBy')} value={receivedBy} onChange={setReceivedBy} isRequired />
        <Choice
          label={t('handBack.receivedHow')}
          value={receivedHow}
          onChange={onHow}
          options={(['there', 'telephone'] as const).map((value) => ({ value, label: t(`handBack.${value}`) }))}
        />
        <NumberField
          label={t('handBack.odometer')}
          value={odometer}
          onChange={setOdometer}
          unit={job.odometerUnit}
          units={[{ value: job.odometerUnit, label: t(`word.unit.${job.odometerUnit}`) }]}
          hint={t(`word.unit.${job.odometerUnit}`)}
          {...(job.odometerIn === null
            ? {}
            : { last: { value: String(job.odometerIn), words: t('handBack.odometerLast') } })}
          wrong={reading === null ? t('piece.wrong.whole') : null}
        />
      </div>
      {stands && <Refusal problem={sending.problem} jobId={job.id} heading={t('handBack.refused')} />}
      {may.command('handBack') && (
        <div className="hf-row">
          <Button
            look="ink"
            command="handBack"
            isPending={sending.pending}
            isDisabled={said(receivedBy) === undefined || reading === null}
            onPress={() => void send()}
          >
            {t('handBack.act')}
          </Button>
        </div>
      )}
    </Part>
  );
};
