/**
 * The first plan: whenever something can start, the rule says what. The rules are those of a shop without a planner
 * (first come, earliest promised time) and those of the textbooks (apparent tardiness cost, Vepsalainen and Morton 1987;
 * most work remaining).
 */
import { type Compiled, none } from './compile.js';
import type { Evaluator } from './evaluator.js';
import type { Schedule } from './schedule.js';

export type PriorityRule =
  | { readonly name: 'firstCome' }
  | { readonly name: 'earliestPromised' }
  | { readonly name: 'mostWorkLeft' }
  /** `lookAhead`: how many mean lines of slack still count */
  | { readonly name: 'tardinessCost'; readonly lookAhead: number };

export const allRules: readonly PriorityRule[] = [
  { name: 'tardinessCost', lookAhead: 2 },
  { name: 'earliestPromised' },
  { name: 'firstCome' },
  { name: 'tardinessCost', lookAhead: 0.5 },
  { name: 'tardinessCost', lookAhead: 6 },
  { name: 'mostWorkLeft' },
];

/** Smaller goes first. */
function urgency(compiled: Compiled, rule: PriorityRule, op: number, at: number, meanMs: number): number {
  const operation = compiled.operations[op];
  const job = compiled.jobs[operation?.job ?? none];
  if (operation === undefined || job === undefined) return 0;
  const left = operation.leastMs + operation.tail;
  switch (rule.name) {
    case 'firstCome':
      return compiled.model.jobs[operation.job]?.arrivesAt ?? 0;
    case 'earliestPromised':
      return job.due === Infinity ? Number.MAX_VALUE : job.due;
    case 'mostWorkLeft':
      return -left;
    case 'tardinessCost': {
      if (job.weight === 0) return 1 / left;
      const slack = Math.max(0, job.due - left - at);
      return -(job.weight / left) * Math.exp(-slack / (rule.lookAhead * meanMs));
    }
  }
}

/** When an operation could start at the earliest, calendars left out. */
function earliest(compiled: Compiled, evaluator: Evaluator, op: number): number {
  const operation = compiled.operations[op];
  if (operation === undefined) return Infinity;
  const { state } = evaluator;
  let spot = operation.spots.length === 0 ? 0 : Infinity;
  for (const s of operation.spots) spot = Math.min(spot, state.spotFree[s] as number);
  let ready = Math.max(state.jobFree[operation.job] as number, operation.release, spot);
  if (operation.needs > 0) {
    let person = Infinity;
    for (const p of operation.people) person = Math.min(person, state.personFree[p] as number);
    ready = Math.max(ready, person);
  }
  for (const tool of operation.tools) ready = Math.max(ready, state.toolFree[tool] as number);
  return ready;
}

/** The earliest start of those that can be laid out; the starts up to it are as they are now. */
function soonestStart(
  compiled: Compiled,
  evaluator: Evaluator,
  ready: readonly number[],
  starts: Float64Array,
): number {
  let soonest = Infinity;
  for (const op of ready) {
    if ((starts[op] as number) > soonest) continue;
    const start = earliest(compiled, evaluator, op);
    starts[op] = start;
    if (start < soonest && evaluator.canPlace(op)) soonest = start;
  }
  return soonest;
}

/** Fills `next` by the rule and leaves its order in the order in which things were laid out. */
export function layOut(compiled: Compiled, evaluator: Evaluator, rule: PriorityRule, next: Schedule): void {
  const { operations } = compiled;
  evaluator.begin(next);
  const fixed = new Set(evaluator.fixed);
  const meanMs = operations.reduce((sum, one) => sum + one.leastMs, 0) / Math.max(1, operations.length);
  const waiting = operations.map((one) => one.before.filter((b) => !fixed.has(b)).length);
  const ready = operations.map((_, op) => op).filter((op) => waiting[op] === 0 && !fixed.has(op));
  // What is taken only grows, so an earliest start once found can only move later: looked up again when it matters.
  const starts = new Float64Array(operations.length);
  for (let placed = 0; placed < next.order.length;) {
    // A vehicle may have to stay until a line with a fixed start is done.
    if (!ready.some((op) => evaluator.canPlace(op))) evaluator.finishFixed(next);
    const soonest = soonestStart(compiled, evaluator, ready, starts);
    let chosen = none;
    let least = Infinity;
    for (const op of ready) {
      if ((starts[op] as number) > soonest || !evaluator.canPlace(op)) continue;
      const rank = urgency(compiled, rule, op, soonest, meanMs);
      if (chosen !== none && rank >= least) continue;
      least = rank;
      chosen = op;
    }
    if (chosen === none) throw new Error('No line can be laid out next.');
    // Where it is not placed, lines with a fixed start have been, so that this comes to an end.
    if (!evaluator.placeLoose(next, chosen)) continue;
    next.order[placed] = chosen;
    placed += 1;
    ready.splice(ready.indexOf(chosen), 1);
    for (const after of operations[chosen]?.after ?? []) {
      waiting[after] = (waiting[after] as number) - 1;
      if (waiting[after] === 0) ready.push(after);
    }
  }
  evaluator.finishFixed(next);
}
