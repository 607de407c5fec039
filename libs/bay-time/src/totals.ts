import type { Interval } from '@holdfast/shop-calendar';
import { type BayTimeClass, type SpotAccount, bayTimeClasses } from './partition.js';
import { shareOut } from './periods.js';

/**
 * What an account adds up to, in whole milliseconds. The terms of ISO 22400-2 beside our words are **our reading** of
 * them (the standard is written for production units): planned busy time PBT = available, actual unit busy time AUBT =
 * occupied, actual production time APT = worked. By the definitions of the standard as an ontology made from it gives
 * them (hsu-aut/IndustrialStandard-ODP-ISO22400-2), allocation efficiency = AUBT / PBT is our occupancy, availability =
 * APT / PBT our utilisation, utilization efficiency = APT / AUBT their quotient.
 */
export interface BayTimeTotals {
  readonly classMs: Readonly<Record<BayTimeClass, number>>;
  /** held time by reason; adds up to `classMs.held` */
  readonly heldMs: Readonly<Record<string, number>>;
  /** opening time: all classes together */
  readonly openMs: number;
  /** opening time less out of use (PBT) */
  readonly availableMs: number;
  /** available time in which a job has the spot (AUBT) */
  readonly occupiedMs: number;
  /** occupied / available, 0 to 1; null where nothing was available */
  readonly occupancy: number | null;
  /** worked / available, 0 to 1, shown as "bay use"; null where nothing was available */
  readonly utilisation: number | null;
  /** clocks of people added up, in opening time, the bench included: several at once count several times */
  readonly technicianMs: number;
  /** the same outside opening time, in no class */
  readonly technicianOvertimeMs: number;
}

interface Sums {
  readonly classMs: Record<BayTimeClass, number>;
  readonly heldMs: Map<string, number>;
  technicianMs: number;
  technicianOvertimeMs: number;
}

function noSums(): Sums {
  return {
    classMs: { outOfUse: 0, worked: 0, stored: 0, held: 0, noReason: 0, break: 0, empty: 0 },
    heldMs: new Map(),
    technicianMs: 0,
    technicianOvertimeMs: 0,
  };
}

function totalsOf({ classMs, heldMs, technicianMs, technicianOvertimeMs }: Sums): BayTimeTotals {
  const openMs = bayTimeClasses.reduce((sum, one) => sum + classMs[one], 0);
  const availableMs = openMs - classMs.outOfUse;
  const occupiedMs = availableMs - classMs.empty;
  const share = (ms: number): number | null => (availableMs === 0 ? null : ms / availableMs);
  return {
    classMs,
    heldMs: Object.fromEntries([...heldMs].sort(([a], [b]) => (a < b ? -1 : 1))),
    openMs,
    availableMs,
    occupiedMs,
    occupancy: share(occupiedMs),
    utilisation: share(classMs.worked),
    technicianMs,
    technicianOvertimeMs,
  };
}

function addHeld(sums: Sums, reason: string, ms: number): void {
  sums.heldMs.set(reason, (sums.heldMs.get(reason) ?? 0) + ms);
}

/**
 * The totals of an account for each of several periods (days, weeks), which come in order and do not overlap; one pass
 * over the account. What lies in no period is in no total.
 */
export function totalsPer(account: SpotAccount, periods: readonly Interval[]): BayTimeTotals[] {
  const all = periods.map(noSums);
  shareOut(account.segments, periods, (at, one, ms) => {
    const sums = all[at];
    if (sums === undefined) return;
    sums.classMs[one.class] += ms;
    if (one.class === 'held') addHeld(sums, one.reason ?? 'other', ms);
  });
  shareOut(account.people, periods, (at, one, ms) => {
    const sums = all[at];
    if (sums === undefined) return;
    if (one.overtime) sums.technicianOvertimeMs += ms;
    else sums.technicianMs += ms;
  });
  return all.map(totalsOf);
}

/** The totals of a whole account. */
export function totalsOfAccount(account: SpotAccount): BayTimeTotals {
  return totalsPer(account, [account.window])[0] ?? totalsOf(noSums());
}

/** Totals of several spots, bays or days taken together; the shares are those of the sums. */
export function sumTotals(list: readonly BayTimeTotals[]): BayTimeTotals {
  const sums = noSums();
  for (const one of list) {
    for (const name of bayTimeClasses) sums.classMs[name] += one.classMs[name];
    for (const [reason, ms] of Object.entries(one.heldMs)) addHeld(sums, reason, ms);
    sums.technicianMs += one.technicianMs;
    sums.technicianOvertimeMs += one.technicianOvertimeMs;
  }
  return totalsOf(sums);
}
