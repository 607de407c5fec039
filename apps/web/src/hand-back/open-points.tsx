import type { JobView } from '@holdfast/contract';
import type { ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { Opener } from '../pieces/form-sheet.js';
import { Entries, Entry, Part } from '../pieces/part.js';
import { AnswerForm } from '../pieces/question-forms.js';
import { useSentences } from '../pieces/sentences.js';
import { ClearFlagForm } from '../pieces/small-turn-forms.js';
import { useText } from '../text/use-text.js';

/** What nobody has looked at or answered yet: it does not keep the vehicle here, and should not be overlooked. */
export const OpenPoints = ({ view }: { readonly view: JobView }): ReactElement | null => {
  const { t } = useText();
  const people = useBoard().tables.person;
  const sentences = useSentences();
  const flags = view.flags.filter((flag) => flag.clearedAt === null);
  const questions = view.questions.filter((question) => question.answeredAt === null);
  if (flags.length + questions.length === 0) return null;
  return (
    <Part heading={t('handBack.open')} under={t('handBack.openUnder')}>
      <Entries>
        {questions.map((question) => (
          <Entry
            key={question.id}
            acts={
              <Opener command="answerQuestion" label={t('handBack.answer')} about={question.words}>
                {(close) => <AnswerForm question={question} jobId={view.job.id} onClose={close} />}
              </Opener>
            }
          >
            <span className="hf-entry-title">{question.words}</span>
            <span className="hf-small hf-quiet">
              {t('handBack.asked', {
                who: people.get(question.askedById)?.name ?? t('out.somebody'),
                whom: people.get(question.toId)?.name ?? t('out.somebody'),
              })}
            </span>
          </Entry>
        ))}
        {flags.map((flag) => {
          const sentence = sentences.flag(flag);
          return (
            <Entry
              key={flag.id}
              acts={
                <Opener command="clearFlag" label={t('flags.clear')} about={sentence}>
                  {(close) => <ClearFlagForm flag={flag} sentence={sentence} jobId={view.job.id} onClose={close} />}
                </Opener>
              }
            >
              {sentence}
            </Entry>
          );
        })}
      </Entries>
    </Part>
  );
};
