import type { JobView } from '@holdfast/contract';
import { calendarOfBoard } from '@holdfast/board';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { ChangeHoldForm } from '../pieces/change-hold-form.js';
import { Opener } from '../pieces/form-sheet.js';
import { EndHoldForm, HoldForm } from '../pieces/hold-form.js';
import { Dated, Entries, Entry, Part, SmallList } from '../pieces/part.js';
import { ageTicksOf, dayMinutesOf, limitMinutes } from '../pieces/waiting-limits.js';
import { useText } from '../text/use-text.js';
import { AgeTicks } from '../ui/marks/age-ticks.js';
import { ReasonGlyph } from '../ui/marks/reason-glyph.js';
import { WaitMark } from '../ui/marks/wait-mark.js';
import { awaitedParts, type JobHold, openLines, sectionId } from './job-parties.js';

type Props = { readonly view: JobView };

const HoldEntry = ({ view, hold }: Props & { readonly hold: JobHold }): ReactElement => {
  const { t, format } = useText();
  const board = useBoard();
  const now = useNow();
  const from = Date.parse(hold.fromAt);
  const calendar = calendarOfBoard(board);
  const minutes = calendar.openMinutes(from, now);
  const limit = limitMinutes[hold.reason];
  const waiting = limit !== null && minutes > limit ? 'past' : 'within';
  const ticks = ageTicksOf(minutes, dayMinutesOf(calendar, now));
  const titles = view.lines.filter((line) => hold.lineIds.includes(line.id)).map((line) => line.title);
  const parts = view.partLines.filter((part) => hold.partLineIds.includes(part.id)).map((part) => part.description);
  const move = hold.moveOf ?? board.tables.person.get(hold.moveOfId ?? '')?.name;
  const lines = [
    t('job.heldSince', {
      since: format.moment(from, now),
      time: format.duration(minutes),
    }),
    titles.length === 0 ? t('job.holdsAll') : t('job.holdsLines', { titles: titles.join(', ') }),
    ...(parts.length === 0 ? [] : [t('job.waitsFor', { parts: parts.join(', ') })]),
    ...(hold.endsAt === null ? [] : [t('job.untilAt', { at: format.moment(Date.parse(hold.endsAt), now) })]),
    ...(move === undefined ? [] : [t('job.move', { name: move })]),
    ...(hold.words === null ? [] : [hold.words]),
  ];
  return (
    <Entry
      id={`hold-${hold.id}`}
      acts={
        <>
          <Opener command="endHold" label={t('job.endHold')} about={t(`reason.${hold.reason}`)}>
            {(close) => <EndHoldForm hold={hold} jobId={view.job.id} onClose={close} />}
          </Opener>
          <Opener command="changeHold" label={t('job.changeHold')} look="plain" about={t(`reason.${hold.reason}`)}>
            {(close) => (
              <ChangeHoldForm
                hold={{ ...hold, endsAt: hold.endsAt === null ? null : Date.parse(hold.endsAt) }}
                jobId={view.job.id}
                onClose={close}
              />
            )}
          </Opener>
        </>
      }
    >
      <p className="hf-entry-line hf-entry-title">
        <ReasonGlyph reason={hold.reason} title={null} size={28} />
        {t('strip.heldFor', { reason: t(`reason.${hold.reason}`) })}
        {limit !== null && <WaitMark waiting={waiting} title={t(`wait.${waiting}`)} size={20} />}
        <AgeTicks count={ticks} title={t(`age.${ticks}`)} />
      </p>
      <SmallList lines={lines} />
    </Entry>
  );
};

/** What holds the job now, and what held it before. */
export const JobHolds = ({ view }: Props): ReactElement => {
  const { t, format } = useText();
  const now = useNow(60_000);
  const open = view.holds.filter((hold) => hold.toAt === null);
  const over = view.holds.filter((hold) => hold.toAt !== null);
  return (
    <Part
      id={sectionId('holds')}
      heading={t('job.holds')}
      acts={
        view.job.endedAt === null && (
          <Opener command="openHold" label={t('job.openHold')}>
            {(close) => (
              <HoldForm jobId={view.job.id} lines={openLines(view)} parts={awaitedParts(view)} onClose={close} />
            )}
          </Opener>
        )
      }
    >
      {open.length === 0 && <p className="hf-quiet">{t('job.noHolds')}</p>}
      <Entries>
        {open.map((hold) => (
          <HoldEntry key={hold.id} view={view} hold={hold} />
        ))}
      </Entries>
      <Dated
        lines={over.map((hold) => ({
          when: t(`reason.${hold.reason}`),
          what: t('job.heldFromTo', {
            from: format.moment(Date.parse(hold.fromAt), now),
            to: format.moment(Date.parse(hold.toAt ?? hold.fromAt), now),
            how: [hold.endedHow === null ? '' : t(`word.holdEnd.${hold.endedHow}`), hold.endWords ?? '']
              .filter((words) => words !== '')
              .join(': '),
          }),
        }))}
      />
    </Part>
  );
};
