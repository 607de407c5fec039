import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard, useNow } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { AnswerForm, AskForm, useMayAnswer } from '../pieces/question-forms.js';
import { useText } from '../text/use-text.js';
import { openLines, sectionId } from './job-parties.js';

type Props = { readonly view: JobView };

export const AskOpener = ({ view }: Props): ReactElement => {
  const { t } = useText();
  return (
    <Opener command="askQuestion" label={t('job.ask')}>
      {(close) => <AskForm jobId={view.job.id} lines={openLines(view)} onClose={close} />}
    </Opener>
  );
};

/** Questions to named persons: the unanswered first. They hold nothing up. */
export const JobQuestions = ({ view }: Props): ReactElement | null => {
  const { t, format } = useText();
  const people = useBoard().tables.person;
  const now = useNow(60_000);
  const mayAnswer = useMayAnswer();
  if (view.questions.length === 0) return null;
  const name = (id: string | null): string => people.get(id ?? '')?.name ?? '';
  const inOrder = [...view.questions].sort((a, b) => Number(a.answeredAt !== null) - Number(b.answeredAt !== null));
  return (
    <Part
      id={sectionId('questions')}
      heading={t('job.questions')}
      acts={view.job.endedAt === null && <AskOpener view={view} />}
    >
      <Entries>
        {inOrder.map((question) => {
          const line = view.lines.find((one) => one.id === question.lineId);
          const asked = t('job.asked', {
            from: name(question.askedById),
            to: name(question.toId),
            at: format.moment(Date.parse(question.effectiveAt), now),
            line: line?.title ?? 'empty',
          });
          return (
            <Entry
              key={question.id}
              id={`question-${question.id}`}
              acts={
                question.answeredAt === null &&
                mayAnswer(question.toId) && (
                  <Opener command="answerQuestion" label={t('job.answer')} about={question.words}>
                    {(close) => <AnswerForm question={question} jobId={view.job.id} onClose={close} />}
                  </Opener>
                )
              }
            >
              <p className="hf-entry-title">{question.words}</p>
              <p className="hf-small hf-quiet">{asked}</p>
              {question.answeredAt === null ? (
                <p className="hf-small">{t('job.unanswered', { name: name(question.toId) })}</p>
              ) : (
                <p>
                  {question.answer}{' '}
                  <span className="hf-small hf-quiet">
                    {t('job.answered', {
                      name: name(question.answeredById),
                      at: format.moment(Date.parse(question.answeredAt), now),
                    })}
                  </span>
                </p>
              )}
            </Entry>
          );
        })}
      </Entries>
    </Part>
  );
};
