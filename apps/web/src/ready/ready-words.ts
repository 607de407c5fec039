import { calendarOfBoard, type Board, type ReadyOn, type RestsOn, type Visit } from '@holdfast/board';

import type { Text } from '../text/use-text.js';

const quarterHour = 900_000;

/** A time that is only "about" says no minute: the next quarter of an hour. Epoch ms. */
export const aboutAt = (at: number): number => Math.ceil(at / quarterHour) * quarterHour;

/** Parts whose day is over though they are not here: what is reckoned from such a day does not hold. */
export const lateParts = ({ parts }: RestsOn, today: string): RestsOn['parts'] =>
  parts.filter(({ dueOn }) => dueOn !== null && dueOn < today);

/** Parts are awaited: the day they are due on is known, not the hour. */
const knowsTheDayOnly = ({ parts }: RestsOn): boolean => parts.length > 0;

/** Something was done; else nobody has said yet what is to be done. */
const isBegun = ({ lines }: Visit): boolean => lines.some((line) => line.progress === 'done');

/** No part has missed its day, and book hours are left: there is something to reckon with. */
const isReckoned = (board: Board, restsOn: RestsOn, now: number): boolean =>
  restsOn.bookMinutesLeft > 0 && lateParts(restsOn, calendarOfBoard(board).dateOf(now)).length === 0;

const aboutSentence = (board: Board, at: number, restsOn: RestsOn, now: number, { t, format }: Text): string => {
  if (lateParts(restsOn, calendarOfBoard(board).dateOf(now)).length > 0) return t('ready.noDateHolds');
  // The work took longer than its book hours: nothing is left to reckon with.
  if (restsOn.bookMinutesLeft === 0) return t('ready.noDate');
  const words = knowsTheDayOnly(restsOn) ? format.date(at) : format.moment(aboutAt(at), now);
  return t(restsOn.linesWithoutHours > 0 ? 'ready.notBefore' : 'ready.about', { at: words });
};

/** The one sentence, with no more certainty than what it rests on has. `now` epoch ms. */
export const readySentence = (board: Board, visit: Visit, ready: ReadyOn | null, now: number, text: Text): string => {
  const { t, format } = text;
  if (ready === null) return t('ready.expected', { at: format.moment(visit.job.expectedAt ?? now, now) });
  switch (ready.kind) {
    case 'ready':
      return t('ready.is');
    case 'worked':
      return isBegun(visit) ? t('ready.worked', { count: ready.reasons }) : t('ready.notBegun');
    case 'noDate':
      return t('ready.noDate');
    case 'about':
      return aboutSentence(board, ready.at, ready.restsOn, now, text);
  }
};

const partWords = (board: Board, part: RestsOn['parts'][number], today: string, { t, format }: Text): string => {
  const row = board.tables.partLine.get(part.partLineId);
  const { description, dueOn } = part;
  if (dueOn !== null) {
    return t(dueOn < today ? 'ready.partLate' : 'ready.part', { part: description, day: format.day(dueOn) });
  }
  if (row?.state === 'wanted') return t('ready.partNotOrdered', { part: description });
  const supplier = board.tables.supplier.get(row?.supplierId ?? '')?.name ?? 'none';
  return t('ready.partNoDate', { part: description, supplier });
};

const hoursWords = (
  { bookMinutesLeft, linesWithoutHours }: RestsOn,
  hasLines: boolean,
  { t, format }: Text,
): string[] => [
  ...(bookMinutesLeft > 0 ? [t('ready.hours', { time: format.duration(bookMinutesLeft) })] : []),
  ...(bookMinutesLeft === 0 && hasLines && linesWithoutHours === 0 ? [t('ready.noHoursLeft')] : []),
  ...(linesWithoutHours > 0 ? [t('ready.withoutHours', { count: linesWithoutHours })] : []),
];

/** Until when the shop is open, or from when on. */
const openWords = (board: Board, now: number, { t, format }: Text): string[] => {
  const calendar = calendarOfBoard(board);
  if (!calendar.isOpen(now)) {
    const opens = calendar.nextOpen(now);
    return opens === null ? [] : [t('ready.opens', { at: format.moment(opens, now) })];
  }
  const { to } = calendar.workingDayBounds(calendar.workingDayOf(now));
  const until = calendar.openIntervals(now, to)[0]?.to;
  return until === undefined ? [] : [t('ready.open', { at: format.time(until) })];
};

const askedWords = ({ asked }: RestsOn, { contact, customer }: Visit, { t }: Text): string[] => {
  if (asked === 0) return [];
  const name = contact?.name ?? customer?.name;
  if (name === undefined) return [t('ready.askedNobody', { count: asked })];
  const called = contact?.phone == null ? name : `${name}, ${contact.phone}`;
  return [t('ready.asked', { count: asked, name: called })];
};

/** Everything that the sentence rests on, one phrase each, what moves it most first. `now` epoch ms. */
export const restsOnWords = (board: Board, visit: Visit, restsOn: RestsOn, now: number, text: Text): string[] => {
  const { t, format } = text;
  const today = calendarOfBoard(board).dateOf(now);
  const hasLines = visit.lines.some((line) => line.goAhead === 'given' && line.endedAt === null);
  return [
    ...restsOn.parts.map((part) => partWords(board, part, today, text)),
    ...restsOn.away.map(({ firm, dueBackAt }) =>
      dueBackAt === null
        ? t('ready.awayNoDate', { firm })
        : t('ready.away', { firm, at: format.moment(dueBackAt, now) }),
    ),
    ...askedWords(restsOn, visit, text),
    ...(restsOn.settingUntil === null ? [] : [t('ready.setting', { at: format.moment(restsOn.settingUntil, now) })]),
    ...(hasLines ? hoursWords(restsOn, hasLines, text) : [t('ready.noLines')]),
    ...openWords(board, now, text),
  ];
};

/** What was promised, and by how much the reckoned time is past it. */
export const promisedWords = (
  board: Board,
  promisedAt: number | null,
  ready: ReadyOn | null,
  now: number,
  text: Text,
): string | null => {
  const { t, format } = text;
  if (promisedAt === null) return null;
  const at = format.moment(promisedAt, now);
  if (ready?.kind !== 'about' || !isReckoned(board, ready.restsOn, now) || aboutAt(ready.at) <= promisedAt) {
    return t('ready.promised', { at });
  }
  if (knowsTheDayOnly(ready.restsOn)) return t('ready.promisedEarlier', { at });
  const time = format.duration((aboutAt(ready.at) - promisedAt) / 60_000);
  return t('ready.promisedBefore', { at, time });
};
