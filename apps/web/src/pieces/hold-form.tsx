import { holdReasons, type HoldReason } from '@holdfast/domain';
import { useState, type ReactElement } from 'react';

import { shopNow } from '../live/board-store.js';
import { newId } from '../live/send.js';
import { useBoard } from '../live/use-board.js';
import { useSend } from '../live/use-send.js';
import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { DateTimeField } from '../ui/fields/date-time-field.js';
import { Field, TextArea } from '../ui/fields/field.js';
import { ReasonGlyph } from '../ui/marks/reason-glyph.js';
import { FormSheet, Opener } from './form-sheet.js';
import { type Named, NamedSelect } from './line-form.js';
import { WantPartForm } from './part-forms.js';
import { Ticks } from './ticks.js';
import { isoOf, said } from './typed.js';

type HoldFormProps = {
  readonly jobId: string;
  /** Lines that can be held; none chosen holds the whole job. */
  readonly lines: readonly Named[];
  /** Part lines still awaited. */
  readonly parts: readonly Named[];
  readonly reason?: HoldReason;
  readonly onClose: () => void;
};

type PartsProps = Pick<HoldFormProps, 'jobId' | 'lines' | 'parts'> & {
  readonly leftOut: readonly string[];
  readonly onLeaveOut: (ids: readonly string[]) => void;
};

/** The parts it waits for, all of them unless one is unticked; one that is not there yet is wanted right here. */
const PartsToHoldFor = ({ jobId, lines, parts, leftOut, onLeaveOut }: PartsProps): ReactElement => {
  const { t } = useText();
  const ids = parts.map((part) => part.id);
  return (
    <>
      {parts.length === 0 ? (
        <p className="hf-quiet">{t('piece.hold.noParts')}</p>
      ) : (
        <Ticks
          label={t('piece.hold.parts')}
          rows={parts}
          value={ids.filter((id) => !leftOut.includes(id))}
          onChange={(ticked) => {
            onLeaveOut(ids.filter((id) => !ticked.includes(id)));
          }}
        />
      )}
      <Opener size="normal" label={t('bay.act.part')} command="wantPart">
        {(close) => <WantPartForm lines={lines} jobId={jobId} onClose={close} />}
      </Opener>
    </>
  );
};

const mayWord: readonly HoldReason[] = ['other', 'information', 'tool', 'sublet', 'conditions'];

/** Why a job cannot go on, which lines, and whose move it is. */
export const HoldForm = ({ jobId, lines, parts, reason: first, onClose }: HoldFormProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const people = [...useBoard().tables.person.values()].filter((person) => person.active);
  const [reason, setReason] = useState<HoldReason | null>(first ?? null);
  const [lineIds, setLineIds] = useState<readonly string[]>([]);
  // What was unticked, so that a part wanted meanwhile is held for as well.
  const [leftOut, setLeftOut] = useState<readonly string[]>([]);
  const partLineIds = parts.map((part) => part.id).filter((id) => !leftOut.includes(id));
  const [endsAt, setEndsAt] = useState<number | null>(() => shopNow() + 3_600_000);
  const [moveOfId, setMoveOfId] = useState<string | null>(null);
  const [moveOf, setMoveOf] = useState('');
  const [words, setWords] = useState('');
  const send = async (): Promise<void> => {
    if (reason === null) return;
    const what = {
      lineIds: lineIds.length === 0 ? undefined : [...lineIds],
      partLineIds: reason === 'parts' ? [...partLineIds] : undefined,
      endsAt: reason === 'setting' ? isoOf(endsAt) : undefined,
    };
    const move = { moveOfId: moveOfId ?? undefined, moveOf: moveOfId === null ? said(moveOf) : undefined };
    const input = { holdId: newId(), jobId, reason, words: said(words), ...what, ...move };
    const values = { reason: t(`reason.${reason}`) };
    if (await sending.run('openHold', input, { text: 'piece.done.hold', values })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.hold.heading')}
      command="openHold"
      act={t('piece.hold.act')}
      sending={sending}
      ready={reason !== null}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      <Choice
        label={t('piece.hold.reason')}
        size="large"
        value={reason}
        onChange={setReason}
        options={holdReasons.map((value) => ({
          value,
          label: t(`reason.${value}`),
          mark: <ReasonGlyph reason={value} title={null} />,
        }))}
      />
      {reason === 'parts' && (
        <PartsToHoldFor jobId={jobId} lines={lines} parts={parts} leftOut={leftOut} onLeaveOut={setLeftOut} />
      )}
      {reason === 'setting' && <DateTimeField label={t('piece.hold.until')} value={endsAt} onChange={setEndsAt} />}
      {lines.length > 0 && (
        <Ticks
          label={t('piece.hold.lines')}
          hint={t('piece.hold.wholeJob')}
          rows={lines}
          value={lineIds}
          onChange={setLineIds}
        />
      )}
      <NamedSelect
        label={t('piece.hold.moveOfId')}
        rows={people.map((person) => ({ id: person.id, title: person.name }))}
        value={moveOfId}
        onChange={setMoveOfId}
      />
      {moveOfId === null && <Field label={t('piece.hold.moveOf')} value={moveOf} onChange={setMoveOf} />}
      <TextArea
        label={reason !== null && mayWord.includes(reason) ? t('piece.hold.words') : t('piece.words')}
        value={words}
        onChange={setWords}
        rows={2}
      />
    </FormSheet>
  );
};

type EndHoldProps = {
  readonly hold: { readonly id: string; readonly version: number; readonly reason: HoldReason };
  readonly jobId: string;
  readonly onClose: () => void;
};

/** A hold ends by hand. One for parts ends by itself when they are here. */
export const EndHoldForm = ({ hold, jobId, onClose }: EndHoldProps): ReactElement => {
  const { t } = useText();
  const sending = useSend();
  const [words, setWords] = useState('');
  const reason = t(`reason.${hold.reason}`);
  const send = async (): Promise<void> => {
    const input = { holdId: hold.id, version: hold.version, words: said(words) };
    if (await sending.run('endHold', input, { text: 'piece.done.endHold', values: { reason } })) onClose();
  };
  return (
    <FormSheet
      heading={t('piece.endHold.heading', { reason })}
      command="endHold"
      act={t('piece.endHold.act')}
      sending={sending}
      jobId={jobId}
      onSend={() => void send()}
      onClose={onClose}
    >
      {hold.reason === 'parts' && <p className="hf-quiet">{t('piece.endHold.parts')}</p>}
      <TextArea label={t('piece.words')} value={words} onChange={setWords} rows={2} />
    </FormSheet>
  );
};
