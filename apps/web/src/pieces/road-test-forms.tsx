import { wouldRefuse, type Board, type Visit } from '@holdfast/board';
import type { JobView } from '@holdfast/contract';
import type { TakeOnRoadTest } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { Refusal } from '../live/refusal.js';
import { useRead } from '../live/reads.js';
import { newId } from '../live/send.js';
import { useSignedIn } from '../live/session.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Choice } from '../ui/fields/choice.js';
import { Field } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { Sheet } from '../ui/layers/dialog.js';
import { FormSheet } from './form-sheet.js';
import { OdometerField } from './odometer-fields.js';
import { optionsOf } from './options.js';
import { keptBayOf } from './out-words.js';
import { useBy } from './placing.js';
import { useSentences } from './sentences.js';
import { said, wholeOf } from './typed.js';

type RoadTestProps = {
  readonly board: Board;
  readonly visit: Visit;
  /** Epoch ms. */
  readonly now: number;
  readonly onClose: () => void;
};

/** How long a road test is said to take; `open`: nobody says. */
const lengths = ['15', '30', '60', 'open'] as const;
type Length = (typeof lengths)[number];

/** Why it may not go on the road, from the rule itself, each reason once. */
const WhyNot = ({ sentences }: { readonly sentences: readonly string[] }): ReactElement => {
  const { t } = useText();
  return (
    <div className="hf-care">
      <h3>{t('roadTest.notNow')}</h3>
      <ul className="hf-small-list">
        {[...new Set(sentences)].map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  );
};

type ActsProps = {
  readonly isRefused: boolean;
  readonly isWrong: boolean;
  readonly isPending: boolean;
  readonly onSend: (alreadyOut: boolean) => void;
};

/** It goes out; or, where a rule speaks against it, that it is out already, which is recorded all the same. */
const OutActs = ({ isRefused, isWrong, isPending, onSend }: ActsProps): ReactElement => {
  const { t } = useText();
  return (
    <>
      <Button
        look="ink"
        command="takeOnRoadTest"
        isPending={isPending}
        isDisabled={isRefused || isWrong}
        onPress={() => {
          onSend(false);
        }}
      >
        {t('roadTest.act')}
      </Button>
      {isRefused && (
        <Button
          command="takeOnRoadTest"
          isPending={isPending}
          isDisabled={isWrong}
          onPress={() => {
            onSend(true);
          }}
        >
          {t('roadTest.already')}
        </Button>
      )}
    </>
  );
};

/** It goes on a road test: who drives, the reading, and whether its spot is kept. */
export const RoadTestForm = ({ board, visit, now, onClose }: RoadTestProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const by = useBy();
  const sentences = useSentences();
  const { person } = useSignedIn();
  const { job, vehicle, place } = visit;
  const drivers = [...board.tables.person.values()].filter(
    (one) => one.active && !one.roles.every((role) => role === 'wallScreen'),
  );
  const [driverId, setDriverId] = useState(person.id);
  const [odometer, setOdometer] = useState('');
  const [spot, setSpot] = useState<'keep' | 'free'>('keep');
  const [length, setLength] = useState<Length>('30');
  const reading = wholeOf(odometer);
  const isInBay = place?.kind === 'bay';
  const bay = board.tables.bay.get(place?.bayId ?? '')?.name ?? '';
  const input = { jobId: job.id, driverId, keepSpot: isInBay && spot === 'keep' } satisfies TakeOnRoadTest;
  const refusals = wouldRefuse(board, 'takeOnRoadTest', input, by, now);
  const send = async (alreadyOut: boolean): Promise<void> => {
    const read = typeof reading === 'number' ? { odometerOut: reading } : {};
    const due = length === 'open' ? {} : { dueBackAt: new Date(now + Number(length) * 60_000).toISOString() };
    const whole = { placeId: newId(), ...input, ...read, ...due, ...(alreadyOut ? { alreadyOut } : {}) };
    const done = { text: 'roadTest.done.out', values: { plate: vehicle.plate } } as const;
    if (await sending.run('takeOnRoadTest', whole, done)) onClose();
  };
  return (
    <Sheet
      isOpen
      onClose={onClose}
      heading={t('roadTest.heading', { plate: vehicle.plate })}
      acts={
        <OutActs
          isRefused={refusals.length > 0}
          isWrong={reading === null}
          isPending={sending.pending}
          onSend={(alreadyOut) => void send(alreadyOut)}
        />
      }
    >
      {refusals.length > 0 && <WhyNot sentences={refusals.map(sentences.refusal)} />}
      <Select
        label={t('roadTest.driver')}
        value={driverId}
        onChange={setDriverId}
        options={drivers.map((one) => ({ value: one.id, label: one.name }))}
      />
      <OdometerField
        label={t('roadTest.odometerOut')}
        value={odometer}
        onChange={setOdometer}
        unit={job.odometerUnit}
        last={job.odometerIn === null ? null : { value: job.odometerIn, unit: job.odometerUnit }}
      />
      {isInBay && (
        <Choice
          label={t('roadTest.spot')}
          size="large"
          value={spot}
          onChange={setSpot}
          options={[
            { value: 'keep', label: t('roadTest.keep', { bay }) },
            { value: 'free', label: t('roadTest.free', { bay }) },
          ]}
        />
      )}
      <Choice
        label={t('roadTest.dueBack')}
        size="large"
        value={length}
        onChange={setLength}
        options={optionsOf(lengths, (one) => t('roadTest.length', { length: one }))}
      />
      <Refusal problem={sending.problem} jobId={job.id} />
      <p className="hf-quiet hf-small">{t('roadTest.defer')}</p>
    </Sheet>
  );
};

/** It is back: the reading, and where it stands now. */
export const BackFromRoadTestForm = ({ board, visit, onClose }: Omit<RoadTestProps, 'now'>): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const { job, vehicle, place } = visit;
  // The reading it went out with is not on the board.
  const read = useRead<JobView>(`/api/jobs/${job.id}`, [`job:${job.id}`]);
  const out = read.data?.places.find((one) => one.id === place?.id)?.odometerOut ?? null;
  const kept = keptBayOf(board, job.id);
  const [odometer, setOdometer] = useState('');
  const [where, setWhere] = useState<'bay' | 'yard'>('bay');
  const [yardSpot, setYardSpot] = useState('');
  const reading = wholeOf(odometer);
  const intoBay = kept !== null && where === 'bay';
  const send = async (): Promise<void> => {
    const stands = intoBay ? { intoKeptSpot: true } : { yardSpot: said(yardSpot) };
    const input = { placeId: newId(), jobId: job.id, odometerIn: reading ?? undefined, ...stands };
    const done = { text: 'roadTest.done.back', values: { plate: vehicle.plate } } as const;
    if (await sending.run('returnFromRoadTest', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('roadTest.backHeading', { plate: vehicle.plate })}
      command="returnFromRoadTest"
      act={t('roadTest.backAct')}
      sending={sending}
      ready={reading !== null}
      jobId={job.id}
      onSend={() => void send()}
      onClose={onClose}
    >
      <OdometerField
        label={t('roadTest.odometerIn')}
        value={odometer}
        onChange={setOdometer}
        unit={job.odometerUnit}
        last={out === null ? null : { value: out, unit: job.odometerUnit }}
      />
      {kept !== null && (
        <Choice
          label={t('roadTest.where')}
          size="large"
          value={where}
          onChange={setWhere}
          options={[
            { value: 'bay', label: t('roadTest.intoBay', { bay: kept }) },
            { value: 'yard', label: t('roadTest.toYard') },
          ]}
        />
      )}
      {!intoBay && <Field label={t('roadTest.yardSpot')} value={yardSpot} onChange={setYardSpot} />}
      {kept === null && <p className="hf-quiet hf-small">{t('roadTest.noSpot')}</p>}
    </FormSheet>
  );
};
