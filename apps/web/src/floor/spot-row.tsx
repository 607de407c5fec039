import { rowsOf, visitOf, type Board, type Spot, type Visit } from '@holdfast/board';
import { outOfUseByOutage } from '@holdfast/domain';
import type { Interval } from '@holdfast/shop-calendar';
import { useState, type ReactElement } from 'react';

import { useMay } from '../live/session.js';
import { FlagLines } from '../pieces/flag-lines.js';
import { Opener } from '../pieces/form-sheet.js';
import { HoldForm } from '../pieces/hold-form.js';
import { useHotWorkBeside } from '../pieces/hot-work-beside.js';
import { TakeOutOfUseForm } from '../pieces/outage-forms.js';
import { OutageLines } from '../pieces/outage-lines.js';
import { openOutages, useOutageWords } from '../pieces/outages.js';
import { SpotPlace } from '../pieces/spot-place.js';
import { SwapPlace } from '../pieces/swap-place.js';
import { useSpotName } from '../pieces/use-placing.js';
import { swapsWith } from '../pieces/use-swapping.js';
import { shownCautions } from '../pieces/vehicle-head.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { jobPath } from '../screen-paths.js';
import { BayRow, type BayRowProps } from '../strip/bay-row.js';
import { useText } from '../text/use-text.js';
import type { ShownCaution } from '../ui/caution-slot.js';
import type { PickedState } from './picked.js';
import { usePromiseWords } from './promise-words.js';
import { segmentsOfSpot, stitchedOfSpot } from './spot-strip.js';
import { SayWhy, VehicleActs } from './vehicle-acts.js';
import { awaitedParts, openLines } from '../pieces/visit-lists.js';

type SpotRowProps = {
  readonly board: Board;
  readonly spot: Spot;
  readonly window: Interval;
  readonly now: number;
  readonly picked: PickedState;
  /** The digit that goes to this bay, on its first spot. */
  readonly keyCap: string | null;
};

const useEmptyWords = (board: Board, spot: Spot, now: number): string => {
  const { t, format } = useText();
  const out = outOfUseByOutage(rowsOf(board).list('outage'), spot.spec);
  if (spot.spec.outOfUse || out.some(({ from, to }) => from <= now && now < to)) return t('kind.outOfUse');
  const left = rowsOf(board)
    .list('spotUse', (use) => use.bayId === spot.bay.id && use.spot === spot.spot)
    .map((use) => use.toAt ?? now);
  return left.length === 0 ? t('floor.free') : t('floor.freeSince', { since: format.moment(Math.max(...left), now) });
};

/** "This lift cannot be used", said at a bay that stands empty; at a taken one among the acts of its vehicle. */
const CannotBeUsed = ({ board, spot }: Pick<SpotRowProps, 'board' | 'spot'>): ReactElement => {
  const { t } = useText();
  return (
    <Opener label={t('outage.open')} about={spot.bay.name} command="takeOutOfUse" look="plain">
      {(close) => <TakeOutOfUseForm board={board} bay={spot.bay} spec={spot.spec} onClose={close} />}
    </Opener>
  );
};

type WhyProps = { readonly visit: Visit; readonly board: Board; readonly onClose: () => void };

const WhyForm = ({ visit, board, onClose }: WhyProps): ReactElement => (
  <HoldForm jobId={visit.job.id} lines={openLines(visit)} parts={awaitedParts(board, visit)} onClose={onClose} />
);

type TakenProps = {
  readonly row: SpotRowProps;
  /** What goes on in the neighbouring bays that somebody here has to mind. */
  readonly beside: readonly ShownCaution[];
  readonly visit: Visit;
  readonly name: string;
  readonly outages: readonly string[];
  readonly shared: Pick<BayRowProps, 'segments' | 'stitched' | 'keyCap'>;
  readonly place: ReactElement | undefined;
};

/** What is known of the vehicle in a spot beside its state: what it is, when it was promised, who waits for it. */
const usePhrases = ({ job, vehicle }: Visit, now: number): string[] => {
  const { t } = useText();
  const promise = usePromiseWords(now);
  const waits = job.waitsHere ? t('floor.waitsHere') : null;
  return [vehicle.description, promise(job.promisedAt), waits, job.boardNote].filter((phrase) => phrase !== null);
};

const TakenSpot = ({ row, beside, visit, name, outages, shared, place }: TakenProps): ReactElement => {
  const { board, spot, now, picked } = row;
  const { t } = useText();
  const may = useMay();
  const words = useVisitWords(board, now);
  const phrases = usePhrases(visit, now);
  const [asksWhy, setAsksWhy] = useState(false);
  const { job, vehicle, state } = visit;
  const isKept = spot.use?.kind === 'kept';
  const mayAsk = !isKept && state.kind === 'noReason' && state.workLeft && may.command('openHold');
  const last = shared.segments.at(-1);
  const ask = (): void => {
    setAsksWhy(true);
  };
  return (
    <>
      <BayRow
        {...shared}
        subject={{ name, vehicle: vehicle.plate, fixCount: visit.fixes.length, outages }}
        cautions={[...shownCautions(visit.cautions, t), ...beside]}
        state={
          isKept
            ? t('floor.kept', { plate: vehicle.plate, place: visit.place?.kind ?? 'roadTest' })
            : words.state(visit)
        }
        ready={[...beside.map(({ words: minded }) => minded), ...phrases].map((phrase) => (
          <span key={phrase} className="hf-bay-phrase">
            {phrase}
          </span>
        ))}
        promise={job.promisedAt}
        job={job.number}
        vehiclePath={jobPath(job.id)}
        isPicked={picked.visit?.job.id === job.id}
        vehicleAct={<VehicleActs board={board} now={now} visit={visit} picked={picked} />}
        stateAct={mayAsk && picked.visit === undefined && <SayWhy plate={vehicle.plate} ask={ask} />}
        {...(mayAsk && last?.kind === 'noReason' ? { askWhy: { from: last.from, press: ask } } : {})}
        act={
          <>
            <OutageLines board={board} bay={spot.bay} now={now} />
            <FlagLines board={board} jobId={job.id} />
            {place}
          </>
        }
      />
      {asksWhy && (
        <WhyForm
          visit={visit}
          board={board}
          onClose={() => {
            setAsksWhy(false);
          }}
        />
      )}
    </>
  );
};

/** One spot of a bay on the floor: its strip, what stands there, and what can be done with it. */
export const SpotRow = (props: SpotRowProps): ReactElement => {
  const { board, spot, window, now, picked, keyCap } = props;
  const nameOf = useSpotName();
  const empty = useEmptyWords(board, spot, now);
  const visit = spot.use === null ? undefined : visitOf(board, spot.use.jobId, now);
  const name = nameOf(spot);
  const shared = {
    segments: segmentsOfSpot(board, spot, visit, { window, now }),
    stitched: stitchedOfSpot(board, spot, window),
    ...(keyCap === null ? {} : { keyCap }),
  };
  const beside = useHotWorkBeside(board, spot.bay.id, now);
  const outages = openOutages(board, spot.bay.id).map(useOutageWords(now));
  const other = picked.visit === undefined ? null : swapsWith(picked.visit, spot, visit);
  const place = picked.visit && (
    <>
      {other !== null && (
        <SwapPlace visit={picked.visit} other={other} moving={picked.moving} swapping={picked.swapping} />
      )}
      <SpotPlace spot={spot} name={name} visit={picked.visit} picked={picked} />
    </>
  );
  return visit === undefined ? (
    <BayRow
      {...shared}
      subject={{ name, outages }}
      cautions={beside}
      state={[empty, ...beside.map(({ words }) => words)].join(', ')}
      stateAct={picked.visit === undefined && <CannotBeUsed board={board} spot={spot} />}
      act={
        <>
          <OutageLines board={board} bay={spot.bay} now={now} />
          {place}
        </>
      }
    />
  ) : (
    <TakenSpot row={props} beside={beside} visit={visit} name={name} outages={outages} shared={shared} place={place} />
  );
};
