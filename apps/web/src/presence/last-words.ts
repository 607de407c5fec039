import type { Board } from '@holdfast/board';

import { remember, remembered } from '../live/remembered.js';

const kept = 5;
const keyOf = (personId: string): string => `holdfast.shop-time.${personId}`;

const listOf = (stored: string | null): string[] => {
  try {
    const list: unknown = JSON.parse(stored ?? '[]');
    return Array.isArray(list) ? list.filter((one): one is string => typeof one === 'string') : [];
  } catch {
    return [];
  }
};

/** Each once, whatever the capitals, the first one as it is written. */
export const eachOnce = (words: readonly string[]): string[] => {
  const seen = new Map<string, string>();
  for (const one of words) {
    const folded = one.trim().toLowerCase();
    if (folded !== '' && !seen.has(folded)) seen.set(folded, one.trim());
  }
  return [...seen.values()];
};

/** What shop time was for, the last first: by this person on this device, then by anybody on the board, then what is usual. */
export const lastWords = (board: Board, personId: string, usual: readonly string[]): string[] => {
  const onBoard = [...board.tables.attendance.values()]
    .filter((one) => one.kind === 'shopTime' && one.words !== null)
    .sort((a, b) => Number(b.personId === personId) - Number(a.personId === personId) || b.fromAt - a.fromAt)
    .map((one) => one.words ?? '');
  return eachOnce([...listOf(remembered(keyOf(personId))), ...onBoard, ...usual]).slice(0, kept);
};

/** What was said now is offered first the next time. */
export const keepWords = (personId: string, words: string): void => {
  const list = eachOnce([words, ...listOf(remembered(keyOf(personId)))]).slice(0, kept);
  remember(keyOf(personId), JSON.stringify(list));
};
