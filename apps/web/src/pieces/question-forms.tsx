import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSignedIn } from '../live/session.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { TextArea } from '../ui/fields/field.js';
import { Select } from '../ui/fields/select.js';
import { FormSheet } from './form-sheet.js';
import { type Named, NamedSelect } from './line-form.js';
import { said } from './typed.js';

/** Those asked may answer; owner and manager for them. */
export const useMayAnswer = (): ((toId: string) => boolean) => {
  const { person } = useSignedIn();
  const leads = person.roles.includes('owner') || person.roles.includes('manager');
  return (toId) => leads || toId === person.id;
};

type AskFormProps = { readonly jobId: string; readonly lines: readonly Named[]; readonly onClose: () => void };

/** A question to a named person; it waits without holding anything up. */
export const AskForm = ({ jobId, lines, onClose }: AskFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const people = [...useBoard().tables.person.values()].filter(
    (person) => person.active && !person.roles.every((role) => role === 'wallScreen'),
  );
  const [toId, setToId] = useState<string | null>(null);
  const [lineId, setLineId] = useState<string | null>(null);
  const [words, setWords] = useState('');
  const name = people.find((person) => person.id === toId)?.name ?? '';
  const send = async (): Promise<void> => {
    if (toId === null) return;
    const input = { questionId: newId(), jobId, toId, words: words.trim(), lineId: lineId ?? undefined };
    if (await sending.run('askQuestion', input, { text: 'piece.done.ask', values: { name } })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.ask.heading')}
      command="askQuestion"
      act={t('piece.ask.act')}
      sending={sending}
      ready={toId !== null && said(words) !== undefined}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-quiet">{t('piece.ask.under')}</p>
      <Select
        label={t('piece.ask.to')}
        value={toId}
        onChange={setToId}
        options={people.map((person) => ({ value: person.id, label: person.name }))}
        isRequired
      />
      <TextArea label={t('piece.ask.words')} value={words} onChange={setWords} isRequired />
      <NamedSelect label={t('piece.ask.line')} rows={lines} value={lineId} onChange={setLineId} />
    </FormSheet>
  );
};

type AnswerFormProps = {
  readonly question: { readonly id: string; readonly version: number; readonly words: string };
  readonly jobId: string;
  readonly onClose: () => void;
};

/** The answer to a question. */
export const AnswerForm = ({ question, jobId, onClose }: AnswerFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [answer, setAnswer] = useState('');
  const send = async (): Promise<void> => {
    const input = { questionId: question.id, version: question.version, answer: answer.trim() };
    if (await sending.run('answerQuestion', input, { text: 'piece.done.answer' })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.answer.heading')}
      command="answerQuestion"
      act={t('piece.answer.act')}
      sending={sending}
      ready={said(answer) !== undefined}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-entry-title">{question.words}</p>
      <TextArea label={t('piece.answer.words')} value={answer} onChange={setAnswer} isRequired />
    </FormSheet>
  );
};
