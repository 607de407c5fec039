import { urgencies } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { newId } from '../live/send.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { LimitsFields, useLimits } from './limits-fields.js';
import { MoneyField } from './money-field.js';
import { optionsOf } from './options.js';
import { decimalOf, minutesOf, said } from './typed.js';

type LineEndProps = {
  readonly line: {
    readonly id: string;
    readonly version: number;
    readonly title: string;
    readonly startedAt: string | number | null;
  };
  readonly jobId: string;
  readonly onClose: () => void;
};

/** A line is done; its running clocks stop. What was done is said where nobody was on the clock for it. */
export const FinishForm = ({ line, jobId, onClose }: LineEndProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    const input = { lineId: line.id, version: line.version, words: said(words) };
    if (await sending.run('finishLine', input, { text: 'piece.done.finish', values: { title: line.title } })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.finish.heading', { title: line.title })}
      command="finishLine"
      act={t('piece.finish.act')}
      sending={sending}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <TextArea
        label={t('piece.finish.words')}
        value={words}
        onChange={setWords}
        hint={line.startedAt === null ? t('piece.finish.neverStarted') : t('piece.finish.hint')}
      />
    </FormSheet>
  );
};

/** A started line ends on this visit; what remains is carried by a follow-up. */
export const CarryOverForm = ({ line, jobId, onClose }: LineEndProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const limits = useLimits();
  const [done, setDone] = useState('');
  const [remaining, setRemaining] = useState('');
  const [hours, setHours] = useState('');
  const [urgency, setUrgency] = useState<(typeof urgencies)[number]>('soon');
  const remainingMinutes = minutesOf(hours);
  const send = async (): Promise<void> => {
    const words = { done: done.trim(), remaining: remaining.trim() };
    const rest = {
      remainingMinutes: remainingMinutes ?? undefined,
      urgency,
      limits: limits.isEmpty ? undefined : limits.input,
    };
    const input = { lineId: line.id, version: line.version, followUpId: newId(), ...words, ...rest };
    const text = { text: 'piece.done.carryOver', values: { title: line.title } } as const;
    if (await sending.run('carryOverLine', input, text)) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.carryOver.heading', { title: line.title })}
      command="carryOverLine"
      act={t('piece.carryOver.act')}
      sending={sending}
      ready={said(done) !== undefined && said(remaining) !== undefined && remainingMinutes !== null}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <TextArea label={t('piece.carryOver.done')} value={done} onChange={setDone} isRequired />
      <TextArea label={t('piece.carryOver.remaining')} value={remaining} onChange={setRemaining} isRequired />
      <Field
        label={t('piece.carryOver.hours')}
        value={hours}
        onChange={setHours}
        hint={t('piece.hoursHint')}
        wrong={remainingMinutes === null ? t('piece.wrong.minutes') : null}
      />
      <Choice
        label={t('piece.urgency')}
        value={urgency}
        onChange={setUrgency}
        options={optionsOf(urgencies, (value) => t(`word.urgency.${value}`))}
      />
      <LimitsFields limits={limits} />
    </FormSheet>
  );
};

type DropProps = LineEndProps & { readonly line: { readonly withdrawnAt?: string | number | null } };

/** A line is not done, with words. Where the go-ahead was taken back after the start, what was done is charged. */
export const DropForm = ({ line, jobId, onClose }: DropProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const [charge, setCharge] = useState('');
  const asksCharge = line.withdrawnAt != null && line.startedAt !== null;
  const amount = decimalOf(charge);
  const send = async (): Promise<void> => {
    const what = { words: words.trim(), charge: asksCharge ? (amount ?? undefined) : undefined };
    const input = { lineId: line.id, version: line.version, ...what };
    if (await sending.run('dropLine', input, { text: 'piece.done.drop', values: { title: line.title } })) onClose();
  };
  return (
    <FormSheet
      heading={t(asksCharge ? 'piece.putBack.heading' : 'piece.drop.heading', { title: line.title })}
      command="dropLine"
      act={t(asksCharge ? 'piece.putBack.act' : 'piece.drop.act')}
      sending={sending}
      ready={said(words) !== undefined && (asksCharge ? typeof amount === 'string' : true)}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <TextArea
        label={t(asksCharge ? 'piece.putBack.words' : 'piece.drop.words')}
        value={words}
        onChange={setWords}
        isRequired
      />
      {asksCharge && (
        <MoneyField
          label={t('piece.putBack.charge')}
          hint={t('piece.putBack.chargeHint')}
          value={charge}
          onChange={setCharge}
        />
      )}
    </FormSheet>
  );
};
