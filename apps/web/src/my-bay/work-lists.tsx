import { calendarOfBoard, rowsOf, runningTotal, type Board, type Visit } from '@holdfast/board';
import { compare, lineEnded, lineSettledByChoice } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useMay, useSignedIn } from '../live/session.js';
import { Opener } from '../pieces/form-sheet.js';
import { EndHoldForm } from '../pieces/hold-form.js';
import { FinishForm } from '../pieces/line-end-forms.js';
import { FitPartForm } from '../pieces/part-forms.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { useText } from '../text/use-text.js';
import { ReasonGlyph } from '../ui/marks/reason-glyph.js';

type ListProps = { readonly board: Board; readonly visit: Visit; readonly now: number };

/** What the lines with the go-ahead come to against what was agreed to. */
const Total = ({ visit }: Pick<ListProps, 'visit'>): ReactElement => {
  const { t, format } = useText();
  const total = runningTotal(visit.lines);
  const values = { soFar: format.money(total.soFar), given: format.money(total.given) };
  return (
    <p className={total.over ? 'hf-bay-total hf-bay-total-over' : 'hf-bay-total'}>
      {t(total.over ? 'bay.totalOver' : 'bay.total', values)}
      {total.unpriced > 0 && ` ${t('bay.totalUnpriced', { count: total.unpriced })}`}
    </p>
  );
};

/** The lines with their go-ahead and progress, and the running total. */
export const Lines = ({ board, visit }: ListProps): ReactElement => {
  const { t, format } = useText();
  const rows = rowsOf(board);
  const goAheadWords = (line: (typeof visit.lines)[number]): string[] => {
    if (lineEnded(line)) return [];
    return [t(lineSettledByChoice(rows, line) ? 'bay.goAhead.otherWay' : `bay.goAhead.${line.goAhead}`)];
  };
  return (
    <Part heading={t('bay.lines')}>
      {visit.lines.length === 0 ? (
        <p className="hf-quiet">{t('bay.noLines')}</p>
      ) : (
        <>
          <Total visit={visit} />
          <Entries>
            {visit.lines.map((line) => (
              <Entry
                key={line.id}
                id={`workLine-${line.id}`}
                acts={
                  !lineEnded(line) && (
                    <Opener label={t('bay.line.done')} about={line.title} command="finishLine">
                      {(close) => <FinishForm line={line} jobId={visit.job.id} onClose={close} />}
                    </Opener>
                  )
                }
              >
                <span className="hf-entry-title">{line.title}</span>
                <span className="hf-small hf-quiet">
                  {[
                    t(`word.progress.${line.progress}`),
                    ...goAheadWords(line),
                    ...(line.bookMinutes === null
                      ? []
                      : [t('bay.start.book', { duration: format.duration(line.bookMinutes) })]),
                  ].join(', ')}
                </span>
                {line.withdrawnAt !== null && !lineEnded(line) && (
                  <span className="hf-entry-title">{t('bay.line.putBack')}</span>
                )}
                {line.choiceId !== null && !lineEnded(line) && <span className="hf-small">{t('bay.line.choice')}</span>}
              </Entry>
            ))}
          </Entries>
        </>
      )}
    </Part>
  );
};

/** What the vehicle is held for, since when, and whose move it is; one's own are ended here. */
export const Holds = ({ board, visit, now }: ListProps): ReactElement | null => {
  const { t, format } = useText();
  const { person } = useSignedIn();
  const calendar = calendarOfBoard(board);
  const isLead = person.roles.some((role) => role === 'owner' || role === 'manager');
  if (visit.openHolds.length === 0) return null;
  return (
    <Part heading={t('bay.holds')}>
      <Entries>
        {visit.openHolds.map((hold) => {
          const who = board.tables.person.get(hold.moveOfId ?? '')?.name ?? hold.moveOf;
          const mayEnd = isLead || (hold.openedById === person.id && hold.reason !== 'parts');
          return (
            <Entry
              key={hold.id}
              id={`hold-${hold.id}`}
              acts={
                mayEnd && (
                  <Opener label={t('bay.holdEnd')} about={t(`reason.${hold.reason}`)} command="endHold">
                    {(close) => <EndHoldForm hold={hold} jobId={visit.job.id} onClose={close} />}
                  </Opener>
                )
              }
            >
              <span className="hf-entry-line">
                <ReasonGlyph reason={hold.reason} title={null} />
                <span className="hf-entry-title">
                  {t('bay.hold', {
                    reason: t(`reason.${hold.reason}`),
                    since: format.moment(hold.fromAt, now),
                    duration: format.duration(calendar.openMinutes(hold.fromAt, now)),
                  })}
                </span>
              </span>
              {hold.words !== null && <span>{hold.words}</span>}
              <span className="hf-small hf-quiet">
                {[
                  ...(who == null ? [] : [t('bay.holdMove', { who })]),
                  ...(hold.endsAt === null ? [] : [t('bay.holdUntil', { until: format.moment(hold.endsAt, now) })]),
                ].join(', ')}
              </span>
            </Entry>
          );
        })}
      </Entries>
    </Part>
  );
};

/** The parts of this visit: where they are, and the bin of those that landed. */
export const Parts = ({ visit }: ListProps): ReactElement => {
  const { t, format } = useText();
  const may = useMay();
  const parts = visit.parts.filter((part) => part.jobId === visit.job.id && part.state !== 'cancelled');
  return (
    <Part heading={t('bay.parts')}>
      {parts.length === 0 ? (
        <p className="hf-quiet">{t('bay.partsNone')}</p>
      ) : (
        <Entries>
          {parts.map((part) => {
            const hasPieces = compare(part.here, '0') > 0;
            return (
              <Entry
                key={part.id}
                id={`partLine-${part.id}`}
                acts={
                  hasPieces &&
                  may.command('fitPart') && (
                    <Opener label={t('bay.partFit')} about={part.description} command="fitPart">
                      {(close) => <FitPartForm part={part} jobId={visit.job.id} onClose={close} />}
                    </Opener>
                  )
                }
              >
                <span className="hf-entry-line">
                  <span className="hf-entry-title">{part.description}</span>
                  {hasPieces && part.bin !== null && (
                    <strong className="hf-bay-bin">{t('bay.partBin', { bin: part.bin })}</strong>
                  )}
                </span>
                <span className="hf-small hf-quiet">
                  {[
                    `${format.decimal(part.quantity)} ${part.unit}`,
                    t(`word.part.${part.state}`),
                    t(`word.needed.${part.needed}`),
                    ...(part.dueOn === null || hasPieces ? [] : [t('bay.partDue', { day: format.day(part.dueOn) })]),
                  ].join(', ')}
                </span>
              </Entry>
            );
          })}
        </Entries>
      )}
    </Part>
  );
};
