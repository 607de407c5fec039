import { rowsOf, type Board } from '@holdfast/board';
import { wheelsNow, type Row } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend, type Sending } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { Choice } from '../ui/fields/choice.js';
import { AxleLadder } from './axle-ladder.js';
import {
  allPlaces,
  axlesOf,
  mostAxles,
  rungsOf,
  stateOfWheel,
  type Axles,
  type WheelState,
} from './axle-ladder-model.js';
import { FormSheet } from './form-sheet.js';
import { type Named, NamedSelect } from './line-form.js';
import { optionsOf } from './options.js';
import { Tick } from './ticks.js';
import { TorqueFields, useTorque, type TorqueState } from './torque-fields.js';

const happenings = ['off', 'on', 'tightened'] as const;
export type WheelHappening = (typeof happenings)[number];

const commandOf = { off: 'recordWheelOff', on: 'recordWheelOn', tightened: 'recordTorque' } as const;

/** Whose turn it usually is: of wheels that are off, that they go on; of untorqued ones, that they are tightened. */
const usuallyChosen: Readonly<Record<WheelHappening, WheelState | null>> = {
  off: null,
  on: 'off',
  tightened: 'untorqued',
};

type WheelsFormProps = {
  readonly board: Board;
  readonly jobId: string;
  readonly vehicle: Pick<Row<'vehicle'>, 'plate' | 'kind'>;
  readonly lines: readonly Named[];
  /** What is said first: that they are off, on, tightened. */
  readonly first?: WheelHappening;
  /** The places that are chosen at once; else those whose turn it usually is. */
  readonly positions?: readonly string[];
  readonly onClose: () => void;
};

type Said = {
  readonly jobId: string;
  readonly positions: string[];
  readonly lineId: string | null;
  readonly torque: TorqueState['input'];
};

/** Sends what happened to the wheels; null while the torque that it needs is missing. */
const sendWheels = (sending: Sending, what: WheelHappening, said: Said) => {
  const { jobId, positions, lineId, torque } = said;
  const count = positions.length;
  if (what === 'off') {
    const input = { wheelRecordId: newId(), jobId, positions, lineId: lineId ?? undefined };
    return sending.run('recordWheelOff', input, { text: 'wheel.done.off', values: { count } });
  }
  if (what === 'on') {
    const input = { jobId, positions, ...(torque === null ? {} : { torque }) };
    return sending.run('recordWheelOn', input, { text: 'wheel.done.on', values: { count } });
  }
  if (torque === null) return Promise.resolve(null);
  return sending.run(
    'recordTorque',
    { jobId, positions, ...torque },
    { text: 'wheel.done.tightened', values: { count } },
  );
};

type AxlesProps = { readonly axles: Axles; readonly onAxles: (axles: Axles) => void };

/** More axles, and which of them have twin wheels. */
const AxleActs = ({ axles, onAxles }: AxlesProps): ReactElement | null => {
  const { t } = useText();
  if (axles.middle) return null;
  const numbers = Array.from({ length: axles.count }, (_, at) => at + 1);
  return (
    <div className="hf-ladder-acts">
      {numbers.map((axle) => {
        const isTwin = axles.twins.includes(axle);
        return (
          <Button
            key={axle}
            size="small"
            pressed={isTwin}
            onPress={() => {
              onAxles({ ...axles, twins: isTwin ? axles.twins.filter((one) => one !== axle) : [...axles.twins, axle] });
            }}
          >
            {t('wheel.twins', { axle })}
          </Button>
        );
      })}
      {axles.count < mostAxles && (
        <Button
          size="small"
          onPress={() => {
            onAxles({ ...axles, count: axles.count + 1 });
          }}
        >
          {t('wheel.moreAxles')}
        </Button>
      )}
    </div>
  );
};

/** Wheels off, on again, tightened: tapped on the ladder, with the torque as it was read and where it comes from. */
export const WheelsForm = ({
  board,
  jobId,
  vehicle,
  lines,
  first,
  positions,
  onClose,
}: WheelsFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const wheels = wheelsNow(rowsOf(board), jobId);
  const recorded = wheels.map((one) => one.position);
  const [axles, setAxles] = useState(() => axlesOf(vehicle.kind, recorded));
  const usual = (what: WheelHappening): string[] =>
    wheels.filter((one) => stateOfWheel(one) === usuallyChosen[what]).map((one) => one.position);
  const start = first ?? (usual('tightened').length > 0 ? 'tightened' : usual('on').length > 0 ? 'on' : 'off');
  const [what, setWhat] = useState<WheelHappening>(start);
  const [chosen, setChosen] = useState<readonly string[]>(positions ?? usual(start));
  const [isTightened, setTightened] = useState(false);
  const [lineId, setLineId] = useState<string | null>(lines.length === 1 ? (lines[0]?.id ?? null) : null);
  const torque = useTorque();
  const rungs = rungsOf(axles, recorded);
  const asksTorque = what === 'tightened' || (what === 'on' && isTightened);
  const send = async (): Promise<void> => {
    const order = allPlaces(rungs).filter((one) => chosen.includes(one));
    const said = { jobId, positions: order, lineId, torque: asksTorque ? torque.input : null };
    if (await sendWheels(sending, what, said)) onClose();
  };
  return (
    <FormSheet
      heading={t('wheel.heading', { plate: vehicle.plate })}
      command={commandOf[what]}
      act={t(`wheel.act.${what}`, { count: chosen.length })}
      sending={sending}
      ready={chosen.length > 0 && (!asksTorque || torque.input !== null)}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('wheel.what')}
        size="large"
        value={what}
        onChange={(next) => {
          setWhat(next);
          setChosen(usual(next));
        }}
        options={optionsOf(happenings, (one) => t(`wheel.what.${one}`))}
      />
      <p>{t('wheel.tap')}</p>
      <AxleLadder rungs={rungs} wheels={wheels} withSpare chosen={chosen} onChosen={setChosen} />
      <AxleActs axles={axles} onAxles={setAxles} />
      {what === 'off' && <NamedSelect label={t('wheel.line')} rows={lines} value={lineId} onChange={setLineId} />}
      {what === 'on' && <Tick label={t('wheel.alsoTightened')} value={isTightened} onChange={setTightened} />}
      {asksTorque && <TorqueFields torque={torque} />}
      <p className="hf-quiet hf-small">{t('wheel.defer')}</p>
    </FormSheet>
  );
};
