import { calendarOfBoard, type Board, type Visit } from '@holdfast/board';
import { lineEnded, type Row } from '@holdfast/domain';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { CautionForbids } from '../pieces/caution-forbids.js';
import { EndCautionForm } from '../pieces/caution-forms.js';
import { Opener } from '../pieces/form-sheet.js';
import { useHotWorkBeside } from '../pieces/hot-work-beside.js';
import { useOutWords } from '../pieces/out-words.js';
import { cautionWords, shownCautions } from '../pieces/vehicle-head.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { jobPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { Button } from '../ui/button.js';
import { CautionMark } from '../ui/marks/caution-mark.js';
import { Plate } from '../ui/plate.js';

type TopProps = { readonly board: Board; readonly visit: Visit; readonly now: number };

/** Every caution in full, the first thing under the plate, each with what it forbids and its end; then what is next door. */
export const CautionRows = ({ board, visit, now }: TopProps): ReactElement | null => {
  const { t } = useText();
  const doneLines = visit.lines.filter((line) => line.progress === 'done').map(({ id, title }) => ({ id, title }));
  const bayId = visit.place?.kind === 'bay' ? visit.place.bayId : null;
  const beside = useHotWorkBeside(board, bayId, now);
  if (visit.cautions.length + beside.length === 0) return null;
  const shown = shownCautions(visit.cautions, t);
  return (
    <ul className="hf-caution-list hf-bay-cautions" aria-label={t('bay.cautions')}>
      {visit.cautions.map((caution, at) => (
        <li key={caution.id} id={`caution-${caution.id}`}>
          <CautionMark kind={shown[at]?.kind ?? 'caution'} title={null} size={36} />
          <span className="hf-caution-text">
            {cautionWords(caution, t)}
            <CautionForbids code={caution.code} />
          </span>
          <Opener label={t('bay.cautionEnd')} about={cautionWords(caution, t)} command="endCaution">
            {(close) => <EndCautionForm caution={caution} doneLines={doneLines} jobId={visit.job.id} onClose={close} />}
          </Opener>
        </li>
      ))}
      {beside.map(({ id, kind, words }) => (
        <li key={id}>
          <CautionMark kind={kind} title={null} size={36} />
          {words}
        </li>
      ))}
      <li className="hf-quiet hf-small">{t('bay.cautionsDefer')}</li>
    </ul>
  );
};

/** What whoever stopped last left loose, open or next, in full. */
export const Handovers = ({ visit }: Pick<TopProps, 'visit'>): ReactElement | null => {
  const { t } = useText();
  const left = visit.lines.filter((line) => line.handover !== null && !lineEnded(line));
  if (left.length === 0) return null;
  return (
    <section className="hf-bay-left" aria-label={t('bay.loose')}>
      <h2>{t('bay.loose')}</h2>
      {left.map((line) => (
        <p key={line.id}>
          <span className="hf-quiet hf-small">{t('bay.looseOn', { title: line.title })}</span>
          <span className="hf-handover">{line.handover}</span>
        </p>
      ))}
    </section>
  );
};

/** The vehicle, large: plate, what it is, where it stands, its key and job. */
export const VehicleTop = ({ board, visit, now }: TopProps): ReactElement => {
  const { t, format } = useText();
  const words = useVisitWords(board, now);
  const out = useOutWords(board, now);
  const { job, vehicle, place } = visit;
  const isOut = place?.kind === 'roadTest' || place?.kind === 'away';
  return (
    <div className="hf-bay-vehicle-top" data-job={job.number}>
      <Plate plate={vehicle.plate} fixCount={visit.fixes.length} size="large" />
      <div className="hf-bay-vehicle-words">
        <strong>{vehicle.description}</strong>
        <span>
          {[words.place(visit), ...(job.keyTag === null ? [] : [t('bay.key', { key: job.keyTag })])].join(', ')}
          {' · '}
          <Link href={jobPath(job.id)}>{t('bay.job', { number: job.number })}</Link>
          {job.promisedAt !== null && ` · ${t('floor.promised', { at: format.moment(job.promisedAt, now) })}`}
        </span>
        {isOut && (
          <span>
            {Object.values(out(visit))
              .filter((phrase) => phrase !== null)
              .join(', ')}
          </span>
        )}
        <span className="hf-quiet">
          {[words.state(visit), ...(job.boardNote === null ? [] : [job.boardNote])].join(' · ')}
        </span>
      </div>
    </div>
  );
};

type ClockProps = TopProps & { readonly clock: Row<'clock'> | undefined; readonly onGo: () => void };

/** The clock of the person who stands here: on what, since when, for how long. */
export const ClockFace = ({ board, visit, now, clock, onGo }: ClockProps): ReactElement => {
  const { t, format } = useText();
  if (clock === undefined) return <p className="hf-bay-clock hf-bay-clock-off">{t('bay.noClock')}</p>;
  const line = board.tables.workLine.get(clock.lineId)?.title ?? '';
  const calendar = calendarOfBoard(board);
  const duration = format.duration((now - clock.fromAt) / 60_000);
  if (clock.jobId !== visit.job.id) {
    const job = board.tables.job.get(clock.jobId);
    const plate = board.tables.vehicle.get(job?.vehicleId ?? '')?.plate ?? '';
    return (
      <div className="hf-bay-clock hf-bay-clock-off">
        <p>{t('bay.clockElsewhere', { plate, title: line, duration })}</p>
        <Button size="small" onPress={onGo}>
          {t('bay.toClock', { plate })}
        </Button>
      </div>
    );
  }
  return (
    <div className="hf-bay-clock">
      <span className="hf-bay-clock-words">
        <span className="hf-small">{t('bay.clock')}</span>
        <strong>{line}</strong>
        <span className="hf-small">
          {t('bay.clockSince', { since: format.moment(clock.fromAt, now) })}
          {clock.bench && `, ${t('bay.clockBench')}`}
          {!calendar.isOpen(now) && `, ${t('bay.clockClosed')}`}
        </span>
      </span>
      <time className="hf-bay-clock-time">{duration}</time>
    </div>
  );
};
