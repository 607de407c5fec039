/**
 * What held a bay, beside the partition: for each reason, supplier and part, the held time that is its alone and the
 * held time that it shares with others.
 *
 * The partition gives each held millisecond to one reason, that of the hold opened first, so that the classes add up.
 * That does not say what one backorder cost. Here a millisecond counts for everything that binds then: as **sole** where
 * nothing else was holding (without it the bay would not have been held), as **shared** for each where something else
 * was. Shared time of two causes is the same time twice: only sole times may be added up.
 */
import type { Interval } from '@holdfast/shop-calendar';
import type { JobHold } from './account-input.js';
import type { HoldingStretch, SpotAccount } from './partition.js';
import { shareOut } from './periods.js';

/** Milliseconds of held bay time. */
export interface SoleAndShared {
  /** nothing else that binds was holding */
  readonly soleMs: number;
  /** something else was holding as well */
  readonly sharedMs: number;
}

export interface HoldTimes {
  /** all held time, as in the partition */
  readonly heldMs: number;
  /** held time with more than one reason; the sole times of all reasons and this add up to `heldMs` */
  readonly severalReasonsMs: number;
  readonly byReason: Readonly<Record<string, SoleAndShared>>;
  /** by supplier id, for the parts that are awaited from it */
  readonly bySupplier: Readonly<Record<string, SoleAndShared>>;
  /** by part line id */
  readonly byPart: Readonly<Record<string, SoleAndShared>>;
}

/** What binds in a stretch: a hold with nothing named that it waits for is a cause that has a reason and no part. */
interface Causes extends Interval {
  readonly reasons: ReadonlySet<string>;
  readonly suppliers: ReadonlySet<string>;
  readonly parts: ReadonlySet<string>;
  /** something binds that is no supplier's, or no part */
  readonly otherThanSuppliers: boolean;
  readonly otherThanParts: boolean;
}

const customersWord = 'goAhead';

function causesIn(from: number, to: number, holds: readonly JobHold[]): Causes {
  const [reasons, suppliers, parts] = [new Set<string>(), new Set<string>(), new Set<string>()];
  let [otherThanSuppliers, otherThanParts] = [holds.length === 0, holds.length === 0];
  if (holds.length === 0) reasons.add(customersWord);
  for (const hold of holds) {
    reasons.add(hold.reason);
    let awaited = false;
    for (const part of hold.parts ?? []) {
      if (part.from > from || (part.to !== null && part.to <= from)) continue;
      awaited = true;
      parts.add(part.partLineId);
      if (part.supplierId === null) otherThanSuppliers = true;
      else suppliers.add(part.supplierId);
    }
    if (awaited) continue;
    otherThanSuppliers = true;
    otherThanParts = true;
  }
  return { from, to, reasons, suppliers, parts, otherThanSuppliers, otherThanParts };
}

/** The stretch, cut where a part arrives or another is waited for. */
function causesOf({ from, to, holds }: HoldingStretch): Causes[] {
  const edges = new Set<number>();
  for (const { parts } of holds) {
    for (const part of parts ?? []) {
      if (part.from > from && part.from < to) edges.add(part.from);
      if (part.to !== null && part.to > from && part.to < to) edges.add(part.to);
    }
  }
  if (edges.size === 0) return [causesIn(from, to, holds)];
  const starts = [from, ...[...edges].sort((a, b) => a - b)];
  return starts.map((start, at) => causesIn(start, starts[at + 1] ?? to, holds));
}

type SumsByKey = Map<string, { soleMs: number; sharedMs: number }>;

interface Sums {
  heldMs: number;
  severalReasonsMs: number;
  readonly byReason: SumsByKey;
  readonly bySupplier: SumsByKey;
  readonly byPart: SumsByKey;
}

const noSums = (): Sums => ({
  heldMs: 0,
  severalReasonsMs: 0,
  byReason: new Map(),
  bySupplier: new Map(),
  byPart: new Map(),
});

function add(sums: SumsByKey, key: string, soleMs: number, sharedMs: number): void {
  const one = sums.get(key);
  if (one === undefined) sums.set(key, { soleMs, sharedMs });
  else {
    one.soleMs += soleMs;
    one.sharedMs += sharedMs;
  }
}

function addCauses(sums: SumsByKey, keys: ReadonlySet<string>, others: boolean, ms: number): void {
  const sole = keys.size === 1 && !others;
  for (const key of keys) add(sums, key, sole ? ms : 0, sole ? 0 : ms);
}

function byKey(sums: SumsByKey): Record<string, SoleAndShared> {
  return Object.fromEntries([...sums].sort(([a], [b]) => (a < b ? -1 : 1)));
}

function timesOf({ heldMs, severalReasonsMs, byReason, bySupplier, byPart }: Sums): HoldTimes {
  return {
    heldMs,
    severalReasonsMs,
    byReason: byKey(byReason),
    bySupplier: byKey(bySupplier),
    byPart: byKey(byPart),
  };
}

/**
 * Sole and shared held time of one spot for each of several periods, which come in order and do not overlap. A line
 * that is with the customer counts, as in the partition, only where no hold binds; then it is the reason `goAhead`. A
 * supplier is alone where everything that binds waits for parts of this supplier. One pass, after sorting.
 */
export function holdTimesPer(account: Pick<SpotAccount, 'holding'>, periods: readonly Interval[]): HoldTimes[] {
  const all = periods.map(noSums);
  shareOut(account.holding.flatMap(causesOf), periods, (at, one, ms) => {
    const sums = all[at];
    if (sums === undefined) return;
    sums.heldMs += ms;
    if (one.reasons.size > 1) sums.severalReasonsMs += ms;
    addCauses(sums.byReason, one.reasons, false, ms);
    addCauses(sums.bySupplier, one.suppliers, one.otherThanSuppliers, ms);
    addCauses(sums.byPart, one.parts, one.otherThanParts, ms);
  });
  return all.map(timesOf);
}

/** Those of the whole account. */
export function holdTimesOfAccount(account: SpotAccount): HoldTimes {
  return holdTimesPer(account, [account.window])[0] ?? timesOf(noSums());
}

/** Those of several spots, or of several periods, together. */
export function sumHoldTimes(list: readonly HoldTimes[]): HoldTimes {
  const sums = noSums();
  for (const one of list) {
    sums.heldMs += one.heldMs;
    sums.severalReasonsMs += one.severalReasonsMs;
    for (const name of ['byReason', 'bySupplier', 'byPart'] as const) {
      for (const [key, { soleMs, sharedMs }] of Object.entries(one[name])) add(sums[name], key, soleMs, sharedMs);
    }
  }
  return timesOf(sums);
}
