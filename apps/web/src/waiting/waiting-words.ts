import { type Board, calendarOfBoard } from '@holdfast/board';
import type { HoldReason } from '@holdfast/domain';

import type { Text } from '../text/use-text.js';
import type { Awaited } from './awaited.js';

/** The thing itself, in a few words. */
export const whatWords = ({ reason, parts, sublet, question, blocked }: Awaited, { t }: Text): string => {
  if (question) return question.words;
  if (sublet) {
    const { firm, component } = sublet;
    return t('waiting.sublet', { form: sublet.form, firm, component: component ?? 'empty' });
  }
  const [part] = parts;
  if (part) return part.description;
  const [first] = blocked;
  if (reason === 'goAhead') return t('waiting.goAhead', { count: first?.lines.length ?? 0 });
  return first?.hold?.words ?? t(`waiting.what.${reason}`);
};

/** Reasons with a usual holder of the next move, where the hold names nobody. */
const usualMove = (reason: HoldReason, ordered: boolean): `waiting.move.${HoldReason | 'supplier'}` =>
  reason === 'parts' && ordered ? 'waiting.move.supplier' : `waiting.move.${reason}`;

/** Whom the hold names: a person of the shop, or somebody outside in words. */
const namedBy = ({ blocked }: Awaited, board: Board): string | null => {
  const hold = blocked[0]?.hold;
  if (!hold) return null;
  return board.tables.person.get(hold.moveOfId ?? '')?.name ?? hold.moveOf;
};

/** The customer whose word is awaited, with a number to ring. */
const customerOf = ({ blocked }: Awaited): string | null => {
  const visit = blocked[0]?.visit;
  const name = visit?.contact?.name ?? visit?.customer?.name;
  if (name === undefined) return null;
  return visit?.contact?.phone == null ? name : `${name}, ${visit.contact.phone}`;
};

/** Whose move it is: who the hold names, else who usually has it for that reason. */
export const moveWords = (awaited: Awaited, board: Board, { t }: Text): string => {
  const { reason, parts, sublet, question } = awaited;
  if (question) return board.tables.person.get(question.toId)?.name ?? t('waiting.move.information');
  if (sublet)
    return sublet.state === 'arranged' && sublet.form !== 'outsiderIn' ? t('waiting.move.sendIt') : sublet.firm;
  const named = namedBy(awaited, board) ?? (reason === 'goAhead' ? customerOf(awaited) : null);
  if (named !== null) return named;
  const ordered = parts.find((part) => part.state !== 'wanted');
  return board.tables.supplier.get(ordered?.supplierId ?? '')?.name ?? t(usualMove(reason, ordered !== undefined));
};

export type Until = { readonly words: string; readonly isOver: boolean };

const partsUntil = ({ parts }: Awaited, today: string, { t, format }: Text): Until => {
  if (parts.every((part) => part.state === 'wanted')) return { words: t('waiting.until.notOrdered'), isOver: false };
  const days = parts.map((part) => part.dueOn);
  const last = days.every((day) => day !== null) ? [...days].sort().at(-1) : undefined;
  if (last == null) return { words: t('waiting.until.noDate'), isOver: false };
  const day = format.day(last);
  return last < today ? { words: t('waiting.until.late', { day }), isOver: true } : { words: day, isOver: false };
};

/** Until when: a due-in day, the end of a setting, or that nobody has named one. */
export const untilWords = (awaited: Awaited, board: Board, now: number, text: Text): Until => {
  if (awaited.reason === 'parts') return partsUntil(awaited, calendarOfBoard(board).dateOf(now), text);
  const { sublet } = awaited;
  const subletAt = sublet?.state === 'arranged' ? (sublet.slotAt ?? sublet.dueBackAt) : (sublet?.dueBackAt ?? null);
  const endsAt = subletAt ?? awaited.blocked[0]?.hold?.endsAt ?? null;
  if (awaited.question) return { words: text.t('waiting.until.answered'), isOver: false };
  if (endsAt === null) return { words: text.t('waiting.until.noDate'), isOver: false };
  return { words: text.format.moment(endsAt, now), isOver: endsAt < now };
};
