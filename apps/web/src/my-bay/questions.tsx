import { rowsOf, type Board, type Visit } from '@holdfast/board';
import type { Row } from '@holdfast/domain';
import type { ReactElement } from 'react';
import { Link } from 'wouter';

import { useSignedIn } from '../live/session.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { AnswerForm } from '../pieces/question-forms.js';
import { jobPath } from '../screen-paths.js';
import { useText } from '../text/use-text.js';

type Question = Row<'question'>;

const byTime = (a: Question, b: Question): number => a.effectiveAt - b.effectiveAt;

/** Whether nobody has answered it yet. */
export const isOpenQuestion = (question: Pick<Question, 'answeredAt'>): boolean => question.answeredAt === null;

/** Who asks about which vehicle since when, as one phrase. */
const useAsked = (board: Board, now: number) => {
  const { t, format } = useText();
  return ({ askedById, jobId, effectiveAt }: Question): string =>
    t('bay.question.by', {
      who: board.tables.person.get(askedById)?.name ?? t('out.somebody'),
      plate: board.tables.vehicle.get(board.tables.job.get(jobId)?.vehicleId ?? '')?.plate ?? '',
      at: format.moment(effectiveAt, now),
    });
};

/** Questions that wait for this person, of whichever vehicle: first on the screen, answered right here. */
export const MyQuestions = ({ board, now }: { readonly board: Board; readonly now: number }): ReactElement | null => {
  const { t } = useText();
  const { person } = useSignedIn();
  const asked = useAsked(board, now);
  const mine = rowsOf(board)
    .list('question', (one) => one.toId === person.id && isOpenQuestion(one))
    .sort(byTime);
  if (mine.length === 0) return null;
  return (
    <section className="hf-bay-questions" aria-label={t('bay.questions.mine')}>
      <h2>{t('bay.questions.mine')}</h2>
      <Entries>
        {mine.map((question) => (
          <Entry
            key={question.id}
            id={`question-${question.id}`}
            acts={
              <Opener
                size="normal"
                look="ink"
                label={t('bay.question.answer')}
                about={question.words}
                command="answerQuestion"
              >
                {(close) => <AnswerForm question={question} jobId={question.jobId} onClose={close} />}
              </Opener>
            }
          >
            <span className="hf-entry-title">{question.words}</span>
            <Link className="hf-small hf-bay-question-job" href={jobPath(question.jobId)}>
              {asked(question)}
            </Link>
          </Entry>
        ))}
      </Entries>
    </section>
  );
};

type OfVisit = { readonly board: Board; readonly visit: Visit; readonly now: number };

/** What was asked about this vehicle, with the answers. */
export const QuestionsOfVisit = ({ board, visit, now }: OfVisit): ReactElement | null => {
  const { t, format } = useText();
  const { person } = useSignedIn();
  const questions = rowsOf(board)
    .list('question', (one) => one.jobId === visit.job.id && (one.toId !== person.id || !isOpenQuestion(one)))
    .sort(byTime);
  if (questions.length === 0) return null;
  const nameOf = (id: string | null): string => board.tables.person.get(id ?? '')?.name ?? t('out.somebody');
  return (
    <Part heading={t('bay.questions')}>
      <Entries>
        {questions.map((question) => (
          <Entry key={question.id} id={`question-${question.id}`}>
            <span className="hf-entry-title">{question.words}</span>
            <span className="hf-small hf-quiet">
              {t('bay.question.asks', {
                who: nameOf(question.askedById),
                whom: nameOf(question.toId),
                at: format.moment(question.effectiveAt, now),
              })}
            </span>
            {question.answer === null ? (
              <span className="hf-small">{t('bay.question.open')}</span>
            ) : (
              <span>{t('bay.question.answered', { who: nameOf(question.answeredById), answer: question.answer })}</span>
            )}
          </Entry>
        ))}
      </Entries>
    </Part>
  );
};
