/** What became of each instant of a visit, from arrival to hand-back, whether or not the vehicle was in a bay. */
import { type Interval, clip, firstEndingAfter, intersect, subtract, tidy } from '@holdfast/shop-calendar';
import { type JobClock, allEndedBy } from './account-input.js';
import { type JobRows, type Wait, waitsOfJob } from './job-waits.js';

/**
 * - `worked`: somebody works on the job, at the bench as well, or an outsider, in opening time
 * - `overtime`: the same outside it
 * - `us`, `parts`, `customer`, `others`: opening time without a clock, by whose move it is; see `whoseMove`
 * - `closed`: neither work nor opening time
 */
export const timeHereClasses = ['worked', 'overtime', 'us', 'parts', 'customer', 'others', 'closed'] as const;
export type TimeHereClass = (typeof timeHereClasses)[number];
export type WhoseMove = 'us' | 'parts' | 'customer' | 'others';

const moves: Readonly<Record<string, WhoseMove>> = {
  parts: 'parts',
  goAhead: 'customer',
  collection: 'customer',
  tool: 'us',
  bay: 'us',
  technician: 'us',
  assessor: 'others',
  sublet: 'others',
  information: 'others',
  setting: 'others',
  conditions: 'others',
  other: 'others',
};

/**
 * Whose move it is while a hold of this reason counts. The customer's: the go-ahead, and the collection of a finished
 * vehicle. Ours: a tool, a bay, a technician; and every instant that nothing holds, breaks among them (null), and an
 * internal job that is stored. Others': another firm, an assessor, information from outside, setting and charging,
 * conditions; and a reason not known here.
 */
export function whoseMove(reason: string | null): WhoseMove {
  return reason === null ? 'us' : (moves[reason] ?? 'others');
}

export interface TimeHere extends Interval {
  readonly class: TimeHereClass;
}

function movesIn(inside: readonly Interval[], waits: readonly Wait[]): TimeHere[] {
  const out: TimeHere[] = [];
  for (const one of inside) {
    let at = one.from;
    for (let i = firstEndingAfter(waits, one.from); i < waits.length; i += 1) {
      const wait = waits[i];
      if (wait === undefined || wait.from >= one.to) break;
      const from = Math.max(wait.from, at);
      const to = Math.min(wait.to, one.to);
      if (from > at) out.push({ from: at, to: from, class: 'us' });
      out.push({ from, to, class: whoseMove(wait.reason) });
      at = to;
    }
    if (at < one.to) out.push({ from: at, to: one.to, class: 'us' });
  }
  return out;
}

/**
 * The visit from `from` to `to`, sorted, each instant in exactly one class. `open` is tidy and holds the opening time
 * of the visit; clocks and rows are those of its job. All in epoch milliseconds; what has no end yet ends at `now`. Costs
 * the rows of the job and the openings of the visit.
 */
export function timeHere(
  visit: Interval,
  rows: JobRows & { readonly clocks: readonly JobClock[] },
  open: readonly Interval[],
  now: number,
): TimeHere[] {
  const { from, to } = visit;
  const work = clip(tidy(allEndedBy(rows.clocks, now)), from, to);
  const inside = clip(open, from, to);
  const rest = subtract([visit], work);
  const as = (list: readonly Interval[], name: TimeHereClass): TimeHere[] =>
    list.map((one) => ({ from: one.from, to: one.to, class: name }));
  return [
    ...as(intersect(work, inside), 'worked'),
    ...as(subtract(work, inside), 'overtime'),
    ...movesIn(intersect(rest, inside), waitsOfJob(rows, now)),
    ...as(subtract(rest, inside), 'closed'),
  ].sort((a, b) => a.from - b.from);
}
