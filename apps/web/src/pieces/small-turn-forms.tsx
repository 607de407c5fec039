import { useState, type ReactElement } from 'react';

import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { said } from './typed.js';

const noteLength = 40;

type BoardNoteProps = {
  readonly job: {
    readonly id: string;
    readonly version: number;
    readonly number: number;
    readonly boardNote: string | null;
  };
  readonly onClose: () => void;
};

/** A note beside the vehicle on every board; an empty one takes it down. */
export const BoardNoteForm = ({ job, onClose }: BoardNoteProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [note, setNote] = useState(job.boardNote ?? '');
  const left = noteLength - note.trim().length;
  const send = async (): Promise<void> => {
    const input = { jobId: job.id, version: job.version, note: said(note) ?? null };
    const done = { text: 'piece.done.boardNote', values: { number: job.number } } as const;
    if (await sending.run('setBoardNote', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.boardNote.heading', { number: job.number })}
      command="setBoardNote"
      act={t('piece.boardNote.act')}
      sending={sending}
      ready={left >= 0 && note.trim() !== (job.boardNote ?? '')}
      jobId={job.id}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Field
        label={t('piece.boardNote.note')}
        value={note}
        onChange={setNote}
        hint={t('piece.boardNote.hint', { left: Math.max(0, left) })}
        wrong={left < 0 ? t('piece.boardNote.long', { over: -left }) : null}
        autoFocus
      />
    </FormSheet>
  );
};

type ClearFlagProps = {
  readonly flag: { readonly id: string; readonly version: number };
  /** What was flagged, as a sentence. */
  readonly sentence: string;
  readonly jobId?: string;
  readonly onClose: () => void;
};

/** Somebody has looked at what was flagged, and says what came of it. */
export const ClearFlagForm = ({ flag, sentence, jobId, onClose }: ClearFlagProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { flagId: flag.id, version: flag.version, words: words.trim() };
    if (await sending.run('clearFlag', input, { text: 'piece.done.clearFlag' })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.clearFlag.heading')}
      command="clearFlag"
      act={t('piece.clearFlag.act')}
      sending={sending}
      ready={said(words) !== undefined}
      {...(jobId === undefined ? {} : { jobId })}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-entry-title">{sentence}</p>
      <TextArea
        label={t('piece.clearFlag.words')}
        hint={t('piece.clearFlag.hint')}
        value={words}
        onChange={setWords}
        isRequired
      />
    </FormSheet>
  );
};

type CancelJobProps = {
  readonly job: { readonly id: string; readonly version: number; readonly number: number };
  readonly plate: string;
  readonly isExpected: boolean;
  readonly onClose: () => void;
};

/** A visit does not take place. Of one that is here only while nothing has been done on it. */
export const CancelJobForm = ({ job, plate, isExpected, onClose }: CancelJobProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { jobId: job.id, version: job.version, words: words.trim() };
    const done = { text: 'piece.done.cancelJob', values: { number: job.number } } as const;
    if (await sending.run('cancelJob', input, done)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.cancelJob.heading', { number: job.number, plate })}
      command="cancelJob"
      act={t('piece.cancelJob.act')}
      sending={sending}
      ready={said(words) !== undefined}
      jobId={job.id}
      onSend={() => void send()}
      onClose={onClose}
    >
      <p className="hf-quiet">{t(isExpected ? 'piece.cancelJob.expected' : 'piece.cancelJob.here')}</p>
      <TextArea label={t('piece.cancelJob.words')} value={words} onChange={setWords} isRequired />
    </FormSheet>
  );
};
