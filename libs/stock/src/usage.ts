/** How much of an item goes, week by week, by its own movements. */
import { Decimal } from 'decimal.js';
import type { Movement } from './movements.js';
import { type Demand, spreadOf } from './reorder.js';

const weekMs = 7 * 86_400_000;
/** further back the shop may have been another */
export const mostWeeks = 52;

export interface Usage {
  /** whole weeks looked at, back from `now`, at most 52 */
  readonly weeks: number;
  /** times somebody took of it in those weeks */
  readonly takings: number;
  /** per week: what was taken less what was put back; null before two whole weeks are known */
  readonly perWeek: Demand | null;
  /** whether only whole pieces went */
  readonly wholePieces: boolean;
}

/**
 * Usage by whole weeks that end at `now` (epoch ms) and begin with the item's first movement. A week is seven times 24
 * hours. What was put back counts against the week in which it was put back; a week never counts below 0.
 */
export function usageOf(movements: readonly Movement[], now: number): Usage {
  const past = movements.filter((one) => one.at <= now);
  const first = past.reduce((least, one) => Math.min(least, one.at), now);
  const weeks = Math.min(mostWeeks, Math.floor((now - first) / weekMs));
  const totals = Array.from({ length: weeks }, () => new Decimal(0));
  let takings = 0;
  let wholePieces = true;
  for (const { at, kind, quantity } of past) {
    const week = Math.floor((now - at) / weekMs);
    const total = totals[week];
    if (total === undefined || (kind !== 'took' && kind !== 'putBack')) continue;
    const value = new Decimal(quantity);
    totals[week] = kind === 'took' ? total.plus(value) : total.minus(value);
    if (kind === 'took') takings += 1;
    if (!value.isInteger()) wholePieces = false;
  }
  return { weeks, takings, perWeek: spreadOf(totals.map((one) => Math.max(0, one.toNumber()))), wholePieces };
}
