import type { Board } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import type { Calendar } from '@holdfast/shop-calendar';
import type { ReactElement, ReactNode } from 'react';
import { Link } from 'wouter';

import { BringBackForm } from '../pieces/bring-back-form.js';
import { ChangeHoldForm } from '../pieces/change-hold-form.js';
import { DueInForm } from '../pieces/due-in-form.js';
import { Opener } from '../pieces/form-sheet.js';
import { GoAheadForm } from '../pieces/go-ahead-form.js';
import { EndHoldForm } from '../pieces/hold-form.js';
import { AnswerForm, useMayAnswer } from '../pieces/question-forms.js';
import { shownCautions } from '../pieces/vehicle-head.js';
import { ageTicksOf, dayMinutesOf, limitMinutes } from '../pieces/waiting-limits.js';
import { jobPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';
import { CautionSlot } from '../ui/caution-slot.js';
import { AgeTicks } from '../ui/marks/age-ticks.js';
import { ReasonGlyph } from '../ui/marks/reason-glyph.js';
import { WaitMark } from '../ui/marks/wait-mark.js';
import { Plate } from '../ui/plate.js';
import type { Awaited, Blocked } from './awaited.js';
import { moveWords, untilWords, whatWords } from './waiting-words.js';

type ItemProps = {
  readonly awaited: Awaited;
  readonly board: Board;
  readonly calendar: Calendar;
  /** Epoch ms. */
  readonly now: number;
};

const Fact = ({ name, children }: { readonly name: string; readonly children: ReactNode }): ReactElement => (
  <div className="hf-awaited-fact">
    <dt>{name}</dt>
    <dd>{children}</dd>
  </div>
);

const Age = ({ awaited, calendar, now }: Omit<ItemProps, 'board'>): ReactElement => {
  const { t, format } = useText();
  const { minutes, since, reason, sublet, blocked } = awaited;
  // What is only arranged, or goes on here, keeps nobody waiting yet.
  const limit = sublet !== null && blocked.every((one) => one.hold === null) ? null : limitMinutes[reason];
  const ticks = ageTicksOf(minutes, dayMinutesOf(calendar, now));
  const waiting = minutes > (limit ?? Infinity) ? 'past' : 'within';
  return (
    <Fact name={t('waiting.fact.age')}>
      <span className="hf-awaited-age">
        <AgeTicks count={ticks} title={t(`age.${String(ticks) as '1' | '2' | '3' | '4'}`)} />
        <strong className="hf-figures">{format.duration(minutes)}</strong>
        {limit !== null && <WaitMark waiting={waiting} title={t(`wait.${waiting}`)} size={20} />}
      </span>
      <span className="hf-quiet hf-small">{t('waiting.since', { at: format.moment(since, now) })}</span>
    </Fact>
  );
};

const GoAheads = ({ lines, visit }: Blocked): ReactElement => {
  const { t } = useText();
  const asked = visit.contact?.name ?? visit.customer?.name ?? null;
  const open = lines.filter((line) => line.goAhead === 'withCustomer');
  return (
    <>
      {open.map((line: Row<'workLine'>) => (
        <Opener key={line.id} label={t('waiting.act.goAhead')} command="recordGoAhead" about={line.title}>
          {(close) => <GoAheadForm line={line} jobId={visit.job.id} asked={asked} onClose={close} />}
        </Opener>
      ))}
    </>
  );
};

type BlockedProps = {
  readonly one: Blocked;
  readonly reason: Awaited['reason'];
  /** The hold ends with what is awaited; nobody ends it by hand. */
  readonly byItself: boolean;
  /** A question holds nothing: no lines are kept from going on. */
  readonly holdsNothing: boolean;
};

const BlockedVehicle = ({ one, reason, byItself, holdsNothing }: BlockedProps): ReactElement => {
  const { t, format } = useText();
  const { visit, lines, hold, bay, liftMinutes } = one;
  const { job, vehicle, cautions, fixes } = visit;
  const whole = holdsNothing ? vehicle.description : t('waiting.wholeJob');
  const keeps = lines.length === 0 ? whole : lines.map((line) => line.title).join('; ');
  return (
    <li className="hf-awaited-vehicle" data-job={job.number} {...(bay === null ? {} : { 'data-bay': bay })}>
      <CautionSlot cautions={shownCautions(cautions, t)} />
      <Link href={jobPath(job.id)} aria-label={t('waiting.toJob', { plate: vehicle.plate, number: job.number })}>
        <Plate plate={vehicle.plate} fixCount={fixes.length} />
      </Link>
      <div className="hf-awaited-lines">
        <span>{keeps}</span>
        {bay !== null && (
          <span className="hf-small">
            <strong>{bay}</strong> {t('waiting.held', { duration: format.duration(liftMinutes) })}
          </span>
        )}
      </div>
      <div className="hf-awaited-acts">
        {reason === 'goAhead' && <GoAheads {...one} />}
        {hold && (
          <>
            {!byItself && (
              <Opener label={t('waiting.act.endHold')} command="endHold" about={vehicle.plate}>
                {(close) => <EndHoldForm hold={hold} jobId={job.id} onClose={close} />}
              </Opener>
            )}
            <Opener label={t('waiting.act.changeHold')} command="changeHold" look="plain" about={vehicle.plate}>
              {(close) => <ChangeHoldForm hold={hold} jobId={job.id} onClose={close} />}
            </Opener>
          </>
        )}
      </div>
    </li>
  );
};

const DueIn = ({ awaited: { parts } }: { readonly awaited: Awaited }): ReactElement | null => {
  const { t } = useText();
  const named = parts.map((part) => ({ id: part.id, title: part.description }));
  const [first] = parts;
  if (!first) return null;
  return (
    <Opener label={t('waiting.act.dueIn')} command="recordDueIn" about={first.description}>
      {(close) => (
        <DueInForm parts={named} {...(first.dueState === null ? {} : { state: first.dueState })} onClose={close} />
      )}
    </Opener>
  );
};

/** A sublet comes back, a question is answered: here, for all that waits for it. */
const OwnAct = ({ awaited: { sublet, question, blocked } }: { readonly awaited: Awaited }): ReactElement | null => {
  const { t } = useText();
  const mayAnswer = useMayAnswer();
  const plate = blocked[0]?.visit.vehicle.plate ?? '';
  if (sublet?.state === 'underWay') {
    return (
      <Opener label={t(`sublet.end.${sublet.form}`)} command="bringBack" about={`${plate}, ${sublet.firm}`}>
        {(close) => <BringBackForm sublet={sublet} plate={plate} onClose={close} />}
      </Opener>
    );
  }
  if (question === null || !mayAnswer(question.toId)) return null;
  return (
    <Opener label={t('waiting.act.answer')} command="answerQuestion" about={`${plate}, ${question.words}`}>
      {(close) => <AnswerForm question={question} jobId={question.jobId} onClose={close} />}
    </Opener>
  );
};

/** One thing that is awaited: what, how long, whose move, until when, and the vehicles it keeps. */
export const AwaitedItem = ({ awaited, board, calendar, now }: ItemProps): ReactElement => {
  const text = useText();
  const { t, format } = text;
  const { reason, parts, sublet, question, blocked, liftMinutes } = awaited;
  const until = untilWords(awaited, board, now, text);
  const number = parts[0]?.number ?? null;
  const asker = board.tables.person.get(question?.askedById ?? '')?.name ?? '';
  return (
    <li className="hf-awaited" data-reason={reason}>
      <div className="hf-awaited-what">
        <ReasonGlyph reason={reason} title={null} size={28} />
        <div>
          <h2>{whatWords(awaited, text)}</h2>
          <p className="hf-quiet hf-small">
            {question === null ? t(`reason.${reason}`) : t('waiting.question', { name: asker })}
            {sublet !== null && ` · ${t(`word.subletState.${sublet.state}`)}`}
            {number !== null && (
              <>
                {' · '}
                <span className="hf-code">{number}</span>
              </>
            )}
            {parts.length > 0 && ` · ${[...new Set(parts.map((part) => t(`word.part.${part.state}`)))].join(', ')}`}
          </p>
        </div>
      </div>
      <dl className="hf-awaited-facts">
        <Age awaited={awaited} calendar={calendar} now={now} />
        <Fact name={t('waiting.fact.until')}>
          <span className={until.isOver ? 'hf-awaited-over' : undefined}>{until.words}</span>
        </Fact>
        <Fact name={t('waiting.fact.move')}>{moveWords(awaited, board, text)}</Fact>
        <Fact name={t('waiting.fact.lift')}>
          <span className="hf-figures">{liftMinutes === 0 ? t('waiting.noLift') : format.duration(liftMinutes)}</span>
        </Fact>
      </dl>
      <ul className="hf-awaited-vehicles" aria-label={t('waiting.vehicles')}>
        {blocked.map((one) => (
          <BlockedVehicle
            key={one.visit.job.id}
            one={one}
            reason={reason}
            byItself={sublet !== null}
            holdsNothing={one.hold === null && reason !== 'goAhead'}
          />
        ))}
      </ul>
      <div className="hf-awaited-own">
        <DueIn awaited={awaited} />
        <OwnAct awaited={awaited} />
      </div>
    </li>
  );
};
