import { calendarOfBoard, type Board, type Visit } from '@holdfast/board';
import { useState, type ReactElement } from 'react';
import { Link } from 'wouter';

import { useMay } from '../live/session.js';
import { FlagLines } from '../pieces/flag-lines.js';
import { useOutWords } from '../pieces/out-words.js';
import { said } from '../pieces/typed.js';
import { shownCautions } from '../pieces/vehicle-head.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { waitOf } from '../pieces/waiting-limits.js';
import { jobPath } from '../screen-paths.js';
import { useText, type Translate } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { CautionSlot } from '../ui/caution-slot.js';
import { Field } from '../ui/fields/field.js';
import { ReasonGlyph } from '../ui/marks/reason-glyph.js';
import { WaitMark } from '../ui/marks/wait-mark.js';
import { Plate } from '../ui/plate.js';
import type { PickedState } from './picked.js';
import { usePromiseWords } from './promise-words.js';
import { VehicleActs } from './vehicle-acts.js';

type RowsProps = {
  readonly board: Board;
  readonly now: number;
  readonly picked: PickedState;
};

const keyWords = ({ job }: Visit, t: Translate): string =>
  job.keyTag === null ? t('floor.noKey') : t('floor.key', { key: job.keyTag });

/** Where it stands and its key; of one that is out, who has it and whether its spot is kept. */
const useWhere = ({ board, now }: Pick<RowsProps, 'board' | 'now'>) => {
  const { t } = useText();
  const out = useOutWords(board, now);
  return (visit: Visit): string[] => {
    const { place } = visit;
    if (place?.kind === 'roadTest' || place?.kind === 'away') {
      const { who, spot } = out(visit);
      return [who, spot];
    }
    return [...(place?.yardSpot == null ? [] : [t('visit.yardSpot', { spot: place.yardSpot })]), keyWords(visit, t)];
  };
};

/** What goes on with it; of one that is out, since when, and when it is due back. */
const useStateWords = ({ board, now }: Pick<RowsProps, 'board' | 'now'>) => {
  const words = useVisitWords(board, now);
  const out = useOutWords(board, now);
  return (visit: Visit): string => {
    if (visit.place?.kind !== 'roadTest' && visit.place?.kind !== 'away') return words.state(visit);
    const { since, due } = out(visit);
    return [since, due].filter((phrase) => phrase !== null).join(', ');
  };
};

/** The mark of a wait: blue while somebody waits, with the reason's glyph. */
const WaitCell = ({ board, visit, now }: { board: Board; visit: Visit; now: number }): ReactElement | null => {
  const { t } = useText();
  const isOut = visit.place?.kind === 'roadTest' || visit.place?.kind === 'away';
  const wait = isOut ? null : waitOf(visit, calendarOfBoard(board), now);
  const reason = visit.state.kind === 'held' ? visit.state.reason : null;
  if (reason === null && wait?.waiting === undefined) return null;
  return (
    <span className="hf-off-mark">
      {reason !== null && <ReasonGlyph reason={reason} title={null} size={20} />}
      {wait?.waiting !== undefined && <WaitMark waiting={wait.waiting} title={t(`wait.${wait.waiting}`)} size={20} />}
    </span>
  );
};

const OffRow = ({ board, now, picked, visit }: RowsProps & { readonly visit: Visit }): ReactElement => {
  const { t } = useText();
  const stateWords = useStateWords({ board, now });
  const where = useWhere({ board, now });
  const promise = usePromiseWords(now);
  const { job, vehicle } = visit;
  return (
    <li
      className="hf-off-row"
      data-job={job.number}
      tabIndex={-1}
      {...(picked.visit?.job.id === job.id ? { 'data-picked': true } : {})}
    >
      <CautionSlot cautions={shownCautions(visit.cautions, t)} />
      <div className="hf-off-vehicle">
        <Link className="hf-plate-link" href={jobPath(job.id)}>
          <Plate plate={vehicle.plate} fixCount={visit.fixes.length} />
        </Link>
        <span className="hf-small">{vehicle.description}</span>
      </div>
      <span className="hf-off-where hf-small">{where(visit).join(', ')}</span>
      <span className="hf-off-promise hf-small">{promise(job.promisedAt)}</span>
      <span className="hf-off-state">
        <WaitCell board={board} visit={visit} now={now} />
        <span>
          {stateWords(visit)}
          {job.waitsHere && `, ${t('floor.waitsHere')}`}
          {job.boardNote !== null && <span className="hf-quiet hf-off-note">{job.boardNote}</span>}
        </span>
      </span>
      <span className="hf-off-acts">
        <VehicleActs board={board} now={now} visit={visit} picked={picked} />
      </span>
      <FlagLines board={board} jobId={job.id} />
    </li>
  );
};

/** The yard as a place to put the picked vehicle. */
const YardPlace = ({ picked }: { readonly picked: PickedState }): ReactElement | null => {
  const { t } = useText();
  const may = useMay();
  const [spot, setSpot] = useState('');
  const { visit, placing, moving } = picked;
  if (visit === undefined || !may.command('moveToYard')) return null;
  return (
    <div className="hf-yard-place">
      <Field label={t('floor.yardSpot')} value={spot} onChange={setSpot} />
      <Button
        look="ink"
        command="moveToYard"
        isPending={placing.sending.pending}
        onPress={() => {
          placing.toYard(visit, said(spot), moving);
          setSpot('');
        }}
      >
        {t('floor.toYard')}
      </Button>
    </div>
  );
};

/** Vehicles that are here and in no bay: in the yard, on a road test, away, or nobody said where. */
export const OffBays = ({ visits, ...rest }: RowsProps & { readonly visits: readonly Visit[] }): ReactElement => {
  const { t } = useText();
  const groups = [
    { key: 'yard', heading: t('floor.yard'), rows: visits.filter(({ place }) => place?.kind === 'yard') },
    { key: 'roadTest', heading: t('floor.roadTest'), rows: visits.filter(({ place }) => place?.kind === 'roadTest') },
    { key: 'away', heading: t('floor.away'), rows: visits.filter(({ place }) => place?.kind === 'away') },
    { key: 'nowhere', heading: t('floor.nowhere'), rows: visits.filter(({ place }) => place === null) },
  ];
  return (
    <>
      {groups.map(({ key, heading, rows }) =>
        rows.length === 0 && key !== 'yard' ? null : (
          <section key={key} className="hf-off" aria-label={heading}>
            <h2>{heading}</h2>
            {key === 'yard' && <YardPlace picked={rest.picked} />}
            {rows.length === 0 ? (
              <p className="hf-quiet">{t('floor.yardEmpty')}</p>
            ) : (
              <ul className="hf-off-rows">
                {rows.map((visit) => (
                  <OffRow key={visit.job.id} {...rest} visit={visit} />
                ))}
              </ul>
            )}
          </section>
        ),
      )}
    </>
  );
};
