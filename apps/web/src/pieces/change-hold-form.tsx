import type { HoldReason } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { FormSheet } from './form-sheet.js';
import { NamedSelect } from './line-form.js';
import { isoOf, said } from './typed.js';

type ChangeHoldProps = {
  readonly hold: {
    readonly id: string;
    readonly version: number;
    readonly reason: HoldReason;
    readonly words: string | null;
    readonly moveOfId: string | null;
    readonly moveOf: string | null;
    /** Epoch ms, of a setting hold. */
    readonly endsAt: number | null;
  };
  readonly jobId: string;
  readonly onClose: () => void;
};

/** What is said of a hold, whose move it is, and when a setting one ends. */
export const ChangeHoldForm = ({ hold, jobId, onClose }: ChangeHoldProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const people = [...useBoard().tables.person.values()].filter((person) => person.active);
  const [words, setWords] = useState(hold.words ?? '');
  const [moveOfId, setMoveOfId] = useState(hold.moveOfId);
  const [moveOf, setMoveOf] = useState(hold.moveOf ?? '');
  const [endsAt, setEndsAt] = useState(hold.endsAt);
  const reason = t(`reason.${hold.reason}`);
  const send = async (): Promise<void> => {
    const move = { moveOfId, moveOf: moveOfId === null ? (said(moveOf) ?? null) : null };
    const ends = hold.reason === 'setting' ? { endsAt: isoOf(endsAt) } : {};
    const input = { holdId: hold.id, version: hold.version, words: said(words) ?? null, ...move, ...ends };
    if (await sending.run('changeHold', input, { text: 'piece.done.changeHold', values: { reason } })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.changeHold.heading', { reason })}
      command="changeHold"
      act={t('piece.changeHold.act')}
      sending={sending}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
      <NamedSelect
        label={t('piece.hold.moveOfId')}
        rows={people.map((person) => ({ id: person.id, title: person.name }))}
        value={moveOfId}
        onChange={setMoveOfId}
      />
      {moveOfId === null && <Field label={t('piece.hold.moveOf')} value={moveOf} onChange={setMoveOf} />}
      {hold.reason === 'setting' && <DateTimeField label={t('piece.hold.until')} value={endsAt} onChange={setEndsAt} />}
    </FormSheet>
  );
};
