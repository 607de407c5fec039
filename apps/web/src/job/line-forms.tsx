import { calendarOfBoard, rowsOf } from '@holdfast/board';
import type { JobView } from '@holdfast/contract';
import { equipmentKinds, settingOn, skills } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useBoard, useNow } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { FormSheet } from '../pieces/form-sheet.js';
import { HoursAndPrice, type LineDraft, PayerAndNeeds, Relations } from '../pieces/line-form.js';
import { Ticks } from '../pieces/ticks.js';
import { decimalOf, minutesOf, said } from '../pieces/typed.js';
import { useText } from '../text/use-text.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { causeNames, concernNames, type JobLine, openLines } from './job-parties.js';

type LineProps = { readonly view: JobView; readonly line: JobLine; readonly onClose: () => void };

const none = 'none';
const hoursOf = (minutes: number | null): string => (minutes === null ? '' : String(Math.round(minutes / 0.6) / 100));
const draftOf = (line: JobLine): LineDraft => ({
  title: line.title,
  book: hoursOf(line.bookMinutes),
  price: line.price ?? '',
  payer: line.payer,
  equipment: equipmentKinds.find((one) => one === line.equipment) ?? none,
  skill: skills.find((one) => one === line.skill) ?? none,
  concernId: line.concernId,
  findingId: line.findingId,
  causeId: line.causeId,
  afterLineId: line.afterLineId,
  followUpId: null,
});

const orNull = <V extends string>(value: V | typeof none): V | null => (value === none ? null : value);

/** What a draft says otherwise than the line; what stands as it was is left out. */
const changesOf = (line: JobLine, draft: LineDraft) => {
  const first = draftOf(line);
  const moved = <V,>(key: keyof LineDraft, value: V): V | undefined => (draft[key] === first[key] ? undefined : value);
  return {
    title: moved('title', draft.title.trim()),
    bookMinutes: moved('book', minutesOf(draft.book) ?? null),
    price: moved('price', decimalOf(draft.price) ?? null),
    payer: moved('payer', draft.payer),
    equipment: moved('equipment', orNull(draft.equipment)),
    skill: moved('skill', orNull(draft.skill)),
    concernId: moved('concernId', draft.concernId),
    causeId: moved('causeId', draft.causeId),
    afterLineId: moved('afterLineId', draft.afterLineId),
  };
};

/** By how much a price may move without asking the customer again, as the shop has set it. */
const useTolerance = (): string => {
  const board = useBoard();
  const now = useNow(60_000);
  const { t, format } = useText();
  const setting = settingOn(rowsOf(board), calendarOfBoard(board).dateOf(now));
  return t('line.tolerance', { percent: format.decimal(setting.tolerancePercent) });
};

/** A line said anew; a price that moves past the shop's tolerance asks the customer again. */
export const ChangeLineForm = ({ view, line, onClose }: LineProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const tolerance = useTolerance();
  const [draft, setDraft] = useState(() => draftOf(line));
  const change = (part: Partial<LineDraft>): void => {
    setDraft((before) => ({ ...before, ...part }));
  };
  const changes = changesOf(line, draft);
  const isNew = Object.values(changes).some((value) => value !== undefined);
  const send = async (): Promise<void> => {
    const input = { lineId: line.id, version: line.version, ...changes };
    if (await sending.run('changeLine', input, { text: 'line.done.change', values: { title: draft.title } })) onClose();
  };
  const isRight = said(draft.title) !== undefined && decimalOf(draft.price) !== null && minutesOf(draft.book) !== null;
  const related = {
    concerns: concernNames(view),
    causes: causeNames(view),
    lines: openLines(view).filter((one) => one.id !== line.id),
  };
  return (
    <FormSheet
      heading={t('line.change.heading', { title: line.title })}
      command="changeLine"
      act={t('line.change.act')}
      sending={sending}
      ready={isRight && isNew}
      jobId={view.job.id}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Field
        label={t('piece.line.title')}
        value={draft.title}
        onChange={(title) => {
          change({ title });
        }}
        isRequired
      />
      <HoursAndPrice draft={draft} change={change} />
      {line.goAhead === 'given' && <p className="hf-quiet hf-small">{tolerance}</p>}
      <PayerAndNeeds draft={draft} change={change} />
      <Relations draft={draft} change={change} form={related} />
    </FormSheet>
  );
};

type ChoiceProps = { readonly view: JobView; readonly lines: readonly JobLine[]; readonly onClose: () => void };

/** Lines become ways to the same end, of which the customer gives at most one. */
export const MakeChoiceForm = ({ view, lines, onClose }: ChoiceProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [lineIds, setLineIds] = useState<readonly string[]>([]);
  const send = async (): Promise<void> => {
    const input = { choiceId: newId(), jobId: view.job.id, lineIds: [...lineIds] };
    if (await sending.run('makeChoice', input, { text: 'line.done.choice', values: { count: lineIds.length } }))
      onClose();
  };
  return (
    <FormSheet
      heading={t('line.choice.heading')}
      command="makeChoice"
      act={t('line.choice.act')}
      sending={sending}
      ready={lineIds.length > 1}
      jobId={view.job.id}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Ticks
        label={t('line.choice.lines')}
        hint={t('line.choice.hint')}
        rows={lines.map(({ id, title }) => ({ id, title }))}
        value={lineIds}
        onChange={setLineIds}
      />
    </FormSheet>
  );
};

/** A line that had ended goes on, on the same visit. */
export const ReopenForm = ({ view, line, onClose }: LineProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { lineId: line.id, version: line.version, words: words.trim() };
    if (await sending.run('reopenLine', input, { text: 'line.done.reopen', values: { title: line.title } })) onClose();
  };
  return (
    <FormSheet
      heading={t('line.reopen.heading', { title: line.title })}
      command="reopenLine"
      act={t('line.reopen.act')}
      sending={sending}
      ready={said(words) !== undefined}
      jobId={view.job.id}
      onSend={() => void send()}
      onClose={onClose}
    >
      {line.progress === 'carriedOver' && <p className="hf-quiet">{t('line.reopen.carriedOver')}</p>}
      <TextArea label={t('line.reopen.words')} value={words} onChange={setWords} isRequired />
    </FormSheet>
  );
};
