/**
 * What the shop knows of a part line on its way: when it was ordered, every word of the supplier, when it was good.
 * Hidden here: which of it counts at an instant. Guaranteed: nothing that happened or was said after that instant is
 * seen, so that a forecast can be tried on the past; what cannot be true is left out, with the reason.
 */
import type { LocalDate } from '@holdfast/shop-calendar';
import type { DayClock } from './day-clock.js';

/** What a supplier says of a part; null where nobody has asked. */
export const supplierStates = [
  'inStock',
  'toOrder',
  'backorderedWithDate',
  'backorderedNoDate',
  'specialOrder',
] as const;
export type SupplierState = (typeof supplierStates)[number];

/** One word of the supplier: the instant it was given (epoch ms), the state, and the day named (shop's zone), if any. */
export interface SupplierWord {
  readonly givenAt: number;
  readonly state: SupplierState | null;
  readonly dueOn: LocalDate | null;
}

/** A part line that was ordered. Instants are epoch milliseconds. */
export interface OrderedLine {
  readonly lineId: string;
  /** lines of one order with one due-in day travel together; null: alone */
  readonly orderId: string | null;
  readonly supplierId: string | null;
  /** the kind of part, in the shop's own words (glass, body, engine …) */
  readonly partKind: string | null;
  /** maker or family: two of one family that wait on one backorder hang together; null: with nothing */
  readonly family: string | null;
  readonly orderedAt: number;
  /** every word, the superseded ones too, in any order */
  readonly words: readonly SupplierWord[];
  /** when the last piece needed was good, or accepted as it is; null: not yet */
  readonly goodAt: number | null;
  /** when it was cancelled or replaced: known to have taken longer than until then; null: not */
  readonly closedAt: number | null;
}

export type LeftOutReason = 'goodBeforeOrdered' | 'closedBeforeOrdered' | 'dayBeforeItWasSaid' | 'notAnInstant';

/** What was not used, and why. Facts: the day named, where it is a word that was left out. */
export interface LeftOut {
  readonly lineId: string;
  readonly reason: LeftOutReason;
  readonly dueOn?: LocalDate;
}

/** A word as it counts: from when on, for which day, and which named day of its line it was (1, 2, …; 0: no day). */
export interface HeardWord {
  readonly from: number;
  readonly state: SupplierState | null;
  /** days since 1970-01-01; null: no day named */
  readonly dueDay: number | null;
  readonly ordinal: number;
}

/** A line as it stood at an instant. */
export interface KnownLine {
  /** in order of time; the first from the order on */
  readonly words: readonly HeardWord[];
  readonly goodAt: number | null;
  /** cancelled, or else the instant it is looked at from: until then it was open */
  readonly openUntil: number;
}

/** What is wrong with the times of a line as a whole; null: nothing. */
export function faultOf(line: OrderedLine): LeftOutReason | null {
  const instants = [line.orderedAt, line.goodAt ?? 0, line.closedAt ?? 0];
  if (!instants.every((one) => Number.isSafeInteger(one))) return 'notAnInstant';
  if (line.goodAt !== null && line.goodAt < line.orderedAt) return 'goodBeforeOrdered';
  if (line.closedAt !== null && line.closedAt < line.orderedAt) return 'closedBeforeOrdered';
  return null;
}

const inOrder = (words: readonly SupplierWord[]): readonly SupplierWord[] =>
  words.every((one, i) => i === 0 || (words[i - 1]?.givenAt ?? 0) <= one.givenAt)
    ? words
    : [...words].sort((a, b) => a.givenAt - b.givenAt);

/** Whether a word counts: heard by `now`, and before the end; what was said before the order stays said. */
const isHeard = (one: SupplierWord, line: OrderedLine, now: number, end: number): boolean =>
  one.givenAt <= now && (one.givenAt < end || one.givenAt <= line.orderedAt);

/** Takes one more word; what is said at one instant, or before the order, is one word: the last. */
function hear(words: HeardWord[], from: number, state: SupplierState | null, dueDay: number | null): void {
  if (words.at(-1)?.from === from) words.pop();
  const before = words.findLast((one) => one.dueDay !== null)?.ordinal ?? 0;
  words.push({ from, state, dueDay, ordinal: dueDay === null ? 0 : before + 1 });
}

/**
 * The line as it was known at `now`, or null if it had not been ordered by then. A word from before the order counts
 * from the order on; of several then the last given. Words said once it was good or cancelled do not count.
 */
export function knownAt(
  line: OrderedLine,
  now: number,
  days: DayClock,
  leaveOut: (one: LeftOut) => void,
): KnownLine | null {
  const { orderedAt, lineId } = line;
  if (orderedAt > now) return null;
  const goodAt = line.goodAt !== null && line.goodAt <= now ? line.goodAt : null;
  const openUntil = line.closedAt !== null && line.closedAt <= now ? line.closedAt : now;
  const words: HeardWord[] = [];
  for (const one of inOrder(line.words)) {
    if (!isHeard(one, line, now, goodAt ?? openUntil)) continue;
    const from = Math.max(one.givenAt, orderedAt);
    if (one.dueOn === null) {
      hear(words, from, one.state, null);
      continue;
    }
    const dueDay = days.dayNumber(one.dueOn);
    if (dueDay < days.dayOf(one.givenAt)) leaveOut({ lineId, reason: 'dayBeforeItWasSaid', dueOn: one.dueOn });
    else hear(words, from, one.state, dueDay);
  }
  if (words[0]?.from !== orderedAt) words.unshift({ from: orderedAt, state: null, dueDay: null, ordinal: 0 });
  return { words, goodAt, openUntil };
}
