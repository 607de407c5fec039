import { rowsOf, visitOf, type Board, type Spot, type Visit } from '@holdfast/board';
import type { Interval } from '@holdfast/shop-calendar';
import { useState, type ReactElement } from 'react';

import { useMay } from '../live/session.js';
import { FlagLines } from '../pieces/flag-lines.js';
import { HoldForm } from '../pieces/hold-form.js';
import { SpotPlace } from '../pieces/spot-place.js';
import { useSpotName } from '../pieces/use-placing.js';
import { shownCautions } from '../pieces/vehicle-head.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { jobPath } from '../screen-paths.js';
import { BayRow } from '../strip/bay-row.js';
import { useText } from '../text/use-text.js';
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
  if (spot.spec.outOfUse) return t('kind.outOfUse');
  const left = rowsOf(board)
    .list('spotUse', (use) => use.bayId === spot.bay.id && use.spot === spot.spot)
    .map((use) => use.toAt ?? now);
  return left.length === 0 ? t('floor.free') : t('floor.freeSince', { since: format.moment(Math.max(...left), now) });
};

type WhyProps = { readonly visit: Visit; readonly board: Board; readonly onClose: () => void };

const WhyForm = ({ visit, board, onClose }: WhyProps): ReactElement => (
  <HoldForm jobId={visit.job.id} lines={openLines(visit)} parts={awaitedParts(board, visit)} onClose={onClose} />
);

/** One spot of a bay on the floor: its strip, what stands there, and what can be done with it. */
export const SpotRow = ({ board, spot, window, now, picked, keyCap }: SpotRowProps): ReactElement => {
  const { t } = useText();
  const may = useMay();
  const nameOf = useSpotName();
  const words = useVisitWords(board, now);
  const promise = usePromiseWords(now);
  const [asksWhy, setAsksWhy] = useState(false);
  const visit = spot.use === null ? undefined : visitOf(board, spot.use.jobId, now);
  const empty = useEmptyWords(board, spot, now);
  const segments = segmentsOfSpot(board, spot, visit, { window, now });
  const stitched = stitchedOfSpot(board, spot, window);
  const name = nameOf(spot);
  const place = picked.visit && <SpotPlace spot={spot} name={name} visit={picked.visit} picked={picked} />;
  const cap = keyCap === null ? {} : { keyCap };
  if (visit === undefined) {
    return (
      <BayRow
        subject={{ name }}
        cautions={[]}
        state={empty}
        segments={segments}
        stitched={stitched}
        act={place}
        {...cap}
      />
    );
  }
  const { job, vehicle, state } = visit;
  const mayAsk = state.kind === 'noReason' && state.workLeft && may.command('openHold');
  const last = segments.at(-1);
  const ask = (): void => {
    setAsksWhy(true);
  };
  return (
    <>
      <BayRow
        subject={{ name, vehicle: vehicle.plate, fixCount: visit.fixes.length }}
        cautions={shownCautions(visit.cautions, t)}
        state={spot.use?.kind === 'kept' ? t('floor.kept', { plate: vehicle.plate }) : words.state(visit)}
        ready={[
          vehicle.description,
          promise(job.promisedAt),
          job.waitsHere ? t('floor.waitsHere') : null,
          job.boardNote,
        ]
          .filter((phrase) => phrase !== null)
          .map((phrase) => (
            <span key={phrase} className="hf-bay-phrase">
              {phrase}
            </span>
          ))}
        segments={segments}
        stitched={stitched}
        promise={job.promisedAt}
        job={job.number}
        vehiclePath={jobPath(job.id)}
        isPicked={picked.visit?.job.id === job.id}
        vehicleAct={<VehicleActs visit={visit} picked={picked} />}
        stateAct={mayAsk && picked.visit === undefined && <SayWhy plate={vehicle.plate} ask={ask} />}
        {...cap}
        {...(mayAsk && last?.kind === 'noReason' ? { askWhy: { from: last.from, press: ask } } : {})}
        act={
          <>
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
