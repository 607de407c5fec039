import type { JobView } from '@holdfast/contract';
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
import { Field, TextArea } from '../ui/fields/field.js';
import type { Door, Leaves } from './doors.js';
import type { Allowances } from './road-allowances.js';

type ReceiveProps = {
  readonly view: JobView;
  readonly door: Door;
  readonly leaves: Leaves;
  readonly receivedHow: 'there' | 'telephone';
  readonly onHow: (how: 'there' | 'telephone') => void;
  readonly allowances: Allowances;
};

type Received = { readonly by: string; readonly odometer: string; readonly words: string };

/** The allowances that have words, as the wire wants them; undefined where none has. */
const byRoadOf = (allowances: Allowances) => {
  const named = Object.entries(allowances)
    .map(([temporaryFixId, { words, receiverSigned }]) => ({ temporaryFixId, words: words.trim(), receiverSigned }))
    .filter(({ words }) => words !== '');
  return named.length === 0 ? undefined : named;
};

type FieldsProps = Pick<ReceiveProps, 'view' | 'door' | 'receivedHow' | 'onHow'> & {
  readonly received: Received;
  readonly change: (part: Partial<Received>) => void;
};

/** Who receives it and how, the reading, and of a release its words. */
const ReceiverFields = ({ view, door, receivedHow, onHow, received, change }: FieldsProps): ReactElement => {
  const { t } = useText();
  const { odometerIn, odometerUnit } = view.job;
  return (
    <div className="hf-receive">
      {door === 'release' && (
        <TextArea
          label={t('handBack.releaseWords')}
          hint={t('handBack.releaseWordsHint')}
          value={received.words}
          onChange={(words) => {
            change({ words });
          }}
          isRequired
        />
      )}
      <Field
        label={t('handBack.receivedBy')}
        value={received.by}
        onChange={(by) => {
          change({ by });
        }}
        isRequired
      />
      <Choice
        label={t('handBack.receivedHow')}
        value={receivedHow}
        onChange={onHow}
        options={(['there', 'telephone'] as const).map((value) => ({ value, label: t(`handBack.${value}`) }))}
      />
      <NumberField
        label={t('handBack.odometer')}
        value={received.odometer}
        onChange={(odometer) => {
          change({ odometer });
        }}
        unit={odometerUnit}
        units={[{ value: odometerUnit, label: t(`word.unit.${odometerUnit}`) }]}
        hint={t(`word.unit.${odometerUnit}`)}
        {...(odometerIn === null ? {} : { last: { value: String(odometerIn), words: t('handBack.odometerLast') } })}
        wrong={wholeOf(received.odometer) === null ? t('piece.wrong.whole') : null}
      />
    </div>
  );
};

const isWhole = (received: Received, door: Door): boolean =>
  said(received.by) !== undefined &&
  wholeOf(received.odometer) !== null &&
  (door === 'handBack' || said(received.words) !== undefined);

/** Whoever receives the vehicle acknowledges, there or by telephone; then it goes. */
export const Receive = (props: ReceiveProps): ReactElement => {
  const { view, door, leaves, receivedHow, allowances } = props;
  const { t } = useText();
  const sending = useSend();
  const may = useMay();
  const { job } = view;
  const collector = view.contacts.find((one) => one.mayCollect && one.endedAt === null) ?? askedOf(view);
  const [received, setReceived] = useState<Received>({ by: collector?.name ?? '', odometer: '', words: '' });
  const [refused, setRefused] = useState<{ readonly view: JobView; readonly way: string } | null>(null);
  const command = door === 'release' ? 'releaseUnfinished' : 'handBack';
  const way = `${door} ${leaves}`;
  const standing = view.cautions.filter((caution) => caution.standing && caution.endedAt === null);
  // A refusal is of the job as it was then: once a reason is mended, the list above says what is left.
  const stands = refused?.view === view && refused.way === way;
  const send = async (): Promise<void> => {
    const odometer = wholeOf(received.odometer) ?? undefined;
    const who = { receivedBy: received.by.trim(), receivedHow, odometer };
    const how = { leavesBy: leaves, byRoad: byRoadOf(allowances) };
    const input = { jobId: job.id, version: job.version, ...how, ...who };
    const words = received.words.trim();
    const values = { number: job.number };
    const answer =
      door === 'release'
        ? await sending.run('releaseUnfinished', { ...input, words }, { text: 'handBack.released', values })
        : await sending.run('handBack', input, { text: 'handBack.done', values });
    setRefused(answer === null ? { view, way } : null);
  };
  return (
    <Part heading={t('handBack.receiver')}>
      {standing.length > 0 && (
        <p className="hf-entry-title">
          {t('handBack.cautionsStay', { cautions: standing.map((caution) => cautionWords(caution, t)).join('; ') })}
        </p>
      )}
      <ReceiverFields
        {...props}
        received={received}
        change={(part) => {
          setReceived((before) => ({ ...before, ...part }));
        }}
      />
      {stands && <Refusal problem={sending.problem} jobId={job.id} heading={t('handBack.refused')} />}
      {may.command(command) && (
        <div className="hf-row">
          <Button
            look="ink"
            command={command}
            isPending={sending.pending}
            isDisabled={!isWhole(received, door)}
            onPress={() => void send()}
          >
            {t(door === 'release' ? 'handBack.releaseAct' : 'handBack.act')}
          </Button>
        </div>
      )}
    </Part>
  );
};
