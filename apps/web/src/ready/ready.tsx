// ready/ hides how the one question on the telephone is answered: when is it ready? It guarantees that the sentence says no
// more than the dates, book hours and opening hours it rests on, and that a date which no longer holds is not counted with.
import { expectedVisits, openVisits, readyOn, type Visit } from '@holdfast/board';
import { useState, type KeyboardEvent, type ReactElement } from 'react';
import { Link, useLocation } from 'wouter';

import './ready.css';
import { findHere } from '../floor/find-here.js';
import { SignedIn } from '../live/signed-in.js';
import { useBoard, useNow } from '../live/use-board.js';
import { VehicleHead } from '../pieces/vehicle-head.js';
import { useVisitWords } from '../pieces/visit-words.js';
import { jobPath } from '../screen-paths.js';
import { ScreenHead } from '../shell/screen-head.js';
import { useText } from '../text/use-text.js';
import { Field } from '../ui/fields/field.js';
import { promisedWords, readySentence, restsOnWords } from './ready-words.js';

const mostShown = 6;

type AnswerProps = { readonly visit: Visit; readonly now: number; readonly isOnly: boolean };

const Phrases = ({ phrases }: { readonly phrases: readonly string[] }): ReactElement => (
  <ul className="hf-ready-rests">
    {phrases.map((phrase, at) => (
      <li key={`${String(at)} ${phrase}`}>{phrase}</li>
    ))}
  </ul>
);

type RestsProps = Pick<AnswerProps, 'isOnly'> & { readonly phrases: readonly string[] };

/** What the sentence rests on: all of it for the one that is asked about, of several what moves each most. */
const Rests = ({ phrases, isOnly }: RestsProps): ReactElement => {
  const { t } = useText();
  const [first, ...others] = phrases;
  if (isOnly) {
    return (
      <section aria-label={t('ready.why')}>
        <Phrases phrases={phrases} />
        <p className="hf-small hf-quiet hf-ready-not">{t('ready.notLooked')}</p>
      </section>
    );
  }
  return (
    <>
      {first !== undefined && <Phrases phrases={[first]} />}
      {others.length > 0 && (
        <details className="hf-ready-why">
          <summary>{t('ready.show')}</summary>
          <Phrases phrases={others} />
          <p className="hf-small hf-quiet">{t('ready.notLooked')}</p>
        </details>
      )}
    </>
  );
};

/** One vehicle: the sentence, and what it rests on. */
const Answer = ({ visit, now, isOnly }: AnswerProps): ReactElement => {
  const text = useText();
  const { t } = text;
  const board = useBoard();
  const words = useVisitWords(board, now);
  const { job, vehicle, customer } = visit;
  const ready = readyOn(board, job.id, now);
  const restsOn = ready === null || ready.kind === 'ready' ? null : ready.restsOn;
  const promised = promisedWords(board, job.promisedAt, ready, now, text);
  const under =
    job.arrivedAt === null ? customer?.name : [customer?.name, words.place(visit)].filter(Boolean).join(', ');
  return (
    <li className="hf-ready-answer" data-job={job.number}>
      <VehicleHead
        plate={vehicle.plate}
        description={vehicle.description}
        cautions={visit.cautions}
        fixCount={visit.fixes.length}
        under={under}
      />
      <p className="hf-ready-sentence">{readySentence(board, visit, ready, now, text)}</p>
      {promised !== null && <p className="hf-ready-promised">{promised}</p>}
      {restsOn !== null && <Rests phrases={restsOnWords(board, visit, restsOn, now, text)} isOnly={isOnly} />}
      <Link className="hf-ready-job" href={jobPath(job.id)}>
        {t('ready.job', { number: job.number })}
      </Link>
    </li>
  );
};

const Ready = (): ReactElement => {
  const { t } = useText();
  const board = useBoard();
  const now = useNow();
  const [, navigate] = useLocation();
  const [typed, setTyped] = useState('');
  const found = findHere([...openVisits(board, now), ...expectedVisits(board, now)], typed);
  const shown = found.slice(0, mostShown);
  const pressed = (event: KeyboardEvent): void => {
    const [first] = shown;
    if (event.key === 'Enter' && first !== undefined) navigate(jobPath(first.job.id));
    if (event.key === 'Escape') setTyped('');
  };
  return (
    <>
      <ScreenHead heading={t('ready.heading')} />
      <search className="hf-ready" onKeyDown={pressed}>
        <Field
          label={t('ready.find')}
          hint={t('ready.findHint')}
          value={typed}
          onChange={setTyped}
          type="text"
          autoComplete="off"
          autoFocus
        />
      </search>
      <div className="hf-ready" role="status">
        {typed.trim() !== '' && shown.length === 0 && <p className="hf-quiet">{t('ready.nothing')}</p>}
        {shown.length > 0 && (
          <ul className="hf-ready-answers" aria-label={t('ready.answers')}>
            {shown.map((visit) => (
              <Answer key={visit.job.id} visit={visit} now={now} isOnly={shown.length === 1} />
            ))}
          </ul>
        )}
        {found.length > mostShown && <p className="hf-quiet">{t('ready.more', { count: found.length - mostShown })}</p>}
      </div>
    </>
  );
};

/** One box; a plate, a name or a key gives one sentence. */
export const ReadyScreen = (): ReactElement => (
  <SignedIn>
    <Ready />
  </SignedIn>
);
