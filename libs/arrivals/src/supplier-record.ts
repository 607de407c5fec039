/** How each supplier kept the days it named: for the parts desk. */
import { type OrderedLine, faultOf, knownAt } from './history.js';
import { type Observation, kaplanMeier, midpointQuantile, survivalAt } from './kaplan-meier.js';
import type { ArrivalsModel } from './model.js';

export interface SupplierRecord {
  readonly supplierId: string | null;
  /** lines for which it named a day, and of these those that are still on their way */
  readonly lines: number;
  readonly open: number;
  /** days named in all: as many as lines if none was put off */
  readonly daysNamed: number;
  /** Kaplan–Meier share of lines that came by the first day named; null while none has come */
  readonly keptFirstDay: number | null;
  /** working days from the first day named to the day it was good, negative when early; null: the curve ends above */
  readonly medianSlip: number | null;
  readonly slip80: number | null;
}

/**
 * The record of every supplier that named a day, by its **first** day for each line, open lines as censored; most lines
 * first. Seen as of the instant the model was fitted at.
 */
export function supplierRecords(model: ArrivalsModel, history: readonly OrderedLine[]): SupplierRecord[] {
  const { days, fittedAt } = model;
  const working = (day: number): number => days.workingDay(day);
  const found = new Map<string | null, { slips: Observation[]; daysNamed: number }>();
  for (const line of history) {
    const known = faultOf(line) === null ? knownAt(line, fittedAt, days, () => undefined) : null;
    const named = known?.words.filter((one) => one.dueDay !== null) ?? [];
    const first = named[0]?.dueDay ?? null;
    if (known === null || first === null) continue;
    const event = known.goodAt !== null;
    // A day that is not over may still bring it.
    const end = working(days.dayOf(known.goodAt ?? known.openUntil)) - (event ? 0 : 1);
    const record = found.get(line.supplierId) ?? { slips: [], daysNamed: 0 };
    record.slips.push({ time: end - working(first), event });
    record.daysNamed += named.length;
    found.set(line.supplierId, record);
  }
  return [...found]
    .map(([supplierId, { slips, daysNamed }]) => recordOf(supplierId, slips, daysNamed))
    .sort((a, b) => b.lines - a.lines);
}

function recordOf(supplierId: string | null, slips: readonly Observation[], daysNamed: number): SupplierRecord {
  const steps = kaplanMeier(slips);
  return {
    supplierId,
    lines: slips.length,
    open: slips.filter((one) => !one.event).length,
    daysNamed,
    keptFirstDay: steps.length === 0 ? null : 1 - survivalAt(steps, 0),
    medianSlip: midpointQuantile(steps, 0.5),
    slip80: midpointQuantile(steps, 0.8),
  };
}
