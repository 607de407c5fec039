import { rowsOf, visitOf, type Board, type Spot, type Visit } from '@holdfast/board';
import type { Interval } from '@holdfast/shop-calendar';
import { useState, type ReactElement } from 'react';

import { useMay } from '../live/session.js';
import { HoldForm } from '../pieces/hold-form.js';
import { useSentences } from '../pieces/sentences.js';
import { useSpotName } from '../pieces/use-placing.js';
import { shownCautions } from '../pieces/vehicle-head.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { jobPath } from '../screen-paths.js';
import { BayRow } from '../strip/bay-row.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import type { PickedState } from './picked.js';
import { usePromiseWords } from './promise-words.js';
import { segmentsOfSpot, stitchedOfSpot } from './spot-strip.js';
import { SpotPlace } from '../pieces/spot-place.js';
import { awaitedParts, openLines } from '../pieces/visit-lists.js';

type SpotRowProps = {
  readonly board: Board;
  readonly spot: Spot;
  readonly window: Interval;
  readonly now: number;
  readonly picked: PickedState;
};

/** Sentences of the flags on a visit that nobody has cleared. */
export const FlagLines = ({ board, jobId }: { readonly board: Board; readonly jobId: string }): ReactElement | null => {
  const sentences = useSentences();
  const flags = rowsOf(board).list('flag', (flag) => flag.jobId === jobId && flag.clearedAt === null);
  if (flags.length === 0) return null;
  return (
    <ul className="hf-flags">
      {flags.map((flag) => (
        <li key={flag.id}>{sentences.flag(flag)}</li>
      ))}
    </ul>
  );
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
  <HoldForm
    jobId={visit.job.id}
    lines={openLines(visit)}
    parts={awaitedParts(board, visit)}
    onClose={onClose}
  />
);

/** One spot of a bay on the floor: its strip, what stands there, and what can be done with it. */
export const SpotRow = ({ board, spot, window, now, picked }: SpotRowProps): ReactElement => {
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
  if (visit === undefined) {
    return <BayRow subject={{ name }} cautions={[]} state={empty} segments={segments} stitched={stitched} act={place} />;
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
        ready={[vehicle.description, promise(job.promisedAt), job.waitsHere ? t('floor.waitsHere') : null, job.boardNote]
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
        vehicleAct={<VehicleActs visit={visit} picked={picked} {...(mayAsk ? { ask } : {})} />}
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

type ActsProps = { readonly visit: Visit; readonly picked: PickedState; readonly ask?: () => void };

/** Pick it, or say why it stands; nothing while another one is picked. */
export const VehicleActs = ({ visit, picked, ask }: ActsProps): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const { plate } = visit.vehicle;
  if (picked.visit !== undefined) return null;
  return (
    <>
      {may.command('takeIntoBay') && (
        <Button
          size="small"
          label={t('floor.pickNamed', { plate })}
          onPress={() => {
            picked.pick(visit.job.id);
          }}
        >
          {t('floor.pick')}
        </Button>
      )}
      {ask !== undefined && (
        <Button size="small" label={t('floor.sayWhyNamed', { plate })} onPress={ask}>
          {t('floor.sayWhy')}
        </Button>
      )}
    </>
  );
};
