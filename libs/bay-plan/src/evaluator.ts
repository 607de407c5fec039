/**
 * Lays an order of operations out on the floor: each in turn as early as its spot, people, tools and vehicle are free
 * (serial schedule generation). The one place where the solver knows the rules of a plan. An order never fails: where a
 * vehicle may not leave its spot, what wants the spot waits its turn; where a start is fixed, others go round it.
 */
import { type Compiled, none } from './compile.js';
import { lastFixedBefore, shares } from './fixed-starts.js';
import type { PreviousPlace } from './previous.js';
import type { Schedule, SearchWeights } from './schedule.js';
import { Weighing, looseSpotAndPeople } from './weighing.js';

export class Evaluator extends Weighing {
  /** operations with a fixed start, by start */
  readonly fixed: readonly number[];
  /** whether the part of an order before a change can be taken over as it was */
  readonly keepsPrefix: boolean;

  /** the last of `fixed` that comes before the operation on its job */
  private readonly fixedBefore: Int32Array;
  private nextFixed = 0;
  private deferred: number[] = [];

  constructor(compiled: Compiled, previous: readonly (PreviousPlace | null)[], weights: SearchWeights) {
    super(compiled, previous, weights);
    const { operations } = compiled;
    const startOf = (op: number) => operations[op]?.fixedStart ?? Infinity;
    this.fixed = operations
      .map((_, op) => op)
      .filter((op) => startOf(op) !== Infinity)
      .sort((a, b) => startOf(a) - startOf(b));
    this.fixedBefore = Int32Array.from(operations, (_, op) => lastFixedBefore(compiled, this.fixed, op));
    this.keepsPrefix = !this.state.hasOwners && this.fixed.length === 0;
  }

  /** Evaluates the order of `next`; its first `kept` operations are those of `current`. False: dearer than `limit`. */
  run(next: Schedule, current: Schedule, kept: number, limit: number): boolean {
    this.begin(next);
    const { order } = next;
    for (let i = 0; i < kept; i += 1) {
      const op = order[i] as number;
      this.bestSpot = current.spot[op] as number;
      this.bestFirst = current.first[op] as number;
      this.bestSecond = current.second[op] as number;
      this.bestFrom = current.start[op] as number;
      this.bestTo = current.end[op] as number;
      this.commit(next, op);
    }
    for (let i = kept; i < order.length; i += 1) {
      if (!this.place(next, current, order[i] as number)) continue;
      if (this.deferred.length > 0) this.retryDeferred(next, current);
      if (next.cost > limit) return false;
    }
    this.flushFixed(next, this.fixed.length);
    if (this.deferred.length > 0) this.retryDeferred(next, current);
    return this.deferred.length === 0 && next.cost <= limit;
  }

  begin(next: Schedule): void {
    this.state.reset();
    this.deferred = [];
    this.nextFixed = 0;
    next.cost = 0;
    next.tardiness = 0;
    next.disturbed = 0;
    next.moves = 0;
    next.changes = 0;
    next.away = 0;
    next.finish = 0;
    next.overflow = 0;
    if (this.fixed.length === 0) return;
    let due = 0;
    while (due < this.fixed.length && this.startOfFixed(due) <= 0) due += 1;
    this.flushFixed(next, due);
  }

  finishFixed(next: Schedule): void {
    this.flushFixed(next, this.fixed.length);
  }

  /** Whether the operation can be laid out now: what comes before it is, and no vehicle bars its way. */
  canPlace(op: number): boolean {
    const operation = this.compiled.operations[op];
    if (operation === undefined) return false;
    if (!this.state.hasOwners) return true;
    const { done, jobOwned, spotOwner } = this.state;
    if (operation.before.some((one) => done[one] !== 1 && !this.fixed.includes(one))) return false;
    const owned = jobOwned[operation.job] as number;
    if (owned !== none) return this.suits(op, owned);
    return operation.spots.length === 0 || operation.spots.some((s) => spotOwner[s] === none);
  }

  /** Lays one operation out, choosing spot and people. False: a line with a fixed start now bars its way. */
  placeLoose(next: Schedule, op: number): boolean {
    this.loose[op] = looseSpotAndPeople;
    const placed = this.place(next, next, op);
    this.loose[op] = 0;
    this.deferred.length = 0;
    return placed;
  }

  private place(next: Schedule, current: Schedule, op: number): boolean {
    let spot = current.spot[op] as number;
    const loose = this.loose[op] as number;
    if (this.nextFixed <= (this.fixedBefore[op] as number)) this.flushFixed(next, (this.fixedBefore[op] as number) + 1);
    if (this.state.hasOwners) {
      if (!this.canPlace(op)) return this.defer(op);
      const owned = this.state.jobOwned[this.job[op] as number] as number;
      if (owned !== none) spot = owned;
      else if (loose !== looseSpotAndPeople && spot !== none && this.state.spotOwner[spot] !== none)
        return this.defer(op);
      // Before a vehicle may have to stay, all that has a fixed start; that may have taken the spot: all over again.
      if (this.nextFixed < this.fixed.length && this.compiled.operations[op]?.keepsUntil !== none) {
        this.flushFixed(next, this.fixed.length);
        return this.place(next, current, op);
      }
    }
    this.bestScore = Infinity;
    if (loose === 0) this.weigh(op, spot, current.first[op] as number, current.second[op] as number, 0);
    else this.choose(op, loose === looseSpotAndPeople ? this.freeChoice(op) : spot);
    // What had a fixed start may have changed where the vehicle can be: all over again.
    if (this.nextFixed < this.fixed.length && this.clashes(next, op)) return this.place(next, current, op);
    this.commit(next, op);
    return true;
  }

  /** The spot the vehicle has to be in, or `anySpot`. */
  private freeChoice(op: number): number {
    const owned = this.state.hasOwners ? (this.state.jobOwned[this.job[op] as number] as number) : none;
    return owned === none ? anySpot : owned;
  }

  private defer(op: number): boolean {
    this.deferred.push(op);
    return false;
  }

  private retryDeferred(next: Schedule, current: Schedule): void {
    for (let placed = true; placed && this.deferred.length > 0;) {
      const waiting = this.deferred;
      this.deferred = [];
      placed = false;
      for (const op of waiting) placed = this.place(next, current, op) || placed;
    }
  }

  private suits(op: number, spot: number): boolean {
    return (this.compiled.workMs[op * this.compiled.spotCount + spot] as number) > 0;
  }

  private choose(op: number, spot: number): void {
    const operation = this.compiled.operations[op];
    if (operation === undefined) return;
    const people = operation.needs === 0 ? operation.people : this.soonest(operation.people, this.state.personFree);
    if (spot !== anySpot || operation.spots.length === 0) {
      this.choosePeople(op, spot === anySpot ? none : spot, people);
      return;
    }
    const { hasOwners, spotOwner, spotFree } = this.state;
    const free = hasOwners ? operation.spots.filter((one) => spotOwner[one] === none) : operation.spots;
    for (const one of this.soonest(free, spotFree)) this.choosePeople(op, one, people);
  }

  /** Where there are many, those that are free first: the others could hardly be better. */
  private soonest(list: readonly number[], free: Float64Array): readonly number[] {
    if (list.length <= mostWeighed) return list;
    const sorted = [...list].sort((a, b) => (free[a] as number) - (free[b] as number) || a - b);
    return sorted.slice(0, mostWeighed).sort((a, b) => a - b);
  }

  private choosePeople(op: number, spot: number, people: readonly number[]): void {
    const ready = this.readyAt(op, spot);
    const needs = this.compiled.operations[op]?.needs ?? 0;
    if (needs === 0) this.weigh(op, spot, none, none, ready);
    else if (needs === 1) for (const person of people) this.weigh(op, spot, person, none, ready);
    else {
      for (let i = 0; i < people.length; i += 1) {
        for (let k = i + 1; k < people.length; k += 1) {
          this.weigh(op, spot, people[i] as number, people[k] as number, ready);
        }
      }
    }
  }

  private startOfFixed(i: number): number {
    return this.compiled.operations[this.fixed[i] as number]?.fixedStart ?? Infinity;
  }

  /** Whether what was found runs into an operation with a fixed start; those up to it are laid out then. */
  private clashes(next: Schedule, op: number): boolean {
    for (let i = this.nextFixed; i < this.fixed.length; i += 1) {
      if (this.startOfFixed(i) - this.compiled.moveMs >= this.bestTo) return false;
      if (!shares(this.compiled, op, this.fixed[i] as number, [this.bestSpot, this.bestFirst, this.bestSecond]))
        continue;
      this.flushFixed(next, i + 1);
      return true;
    }
    return false;
  }

  private flushFixed(next: Schedule, until: number): void {
    for (; this.nextFixed < until; this.nextFixed += 1) {
      const op = this.fixed[this.nextFixed] as number;
      const { operations, calendars, wholeSpotCalendar, personCalendar, workMs, spotCount } = this.compiled;
      const operation = operations[op];
      if (operation === undefined) continue;
      const spot = operation.spots[0] ?? none;
      const [first = none, second = none] = operation.needs > 0 ? operation.people : [];
      let calendar = spot === none ? 0 : (wholeSpotCalendar[spot] as number);
      if (first !== none) calendar = calendars.both(calendar, personCalendar[first] as number);
      if (second !== none) calendar = calendars.both(calendar, personCalendar[second] as number);
      const start = operation.fixedStart ?? 0;
      const slot = operation.slots?.find((one) => one.from === start);
      const work = workMs[op * spotCount + spot] as number;
      this.bestSpot = spot;
      this.bestFirst = first;
      this.bestSecond = second;
      this.bestFrom = start;
      this.bestTo = slot?.to ?? calendars.finish(calendar, start, work);
      this.commit(next, op);
    }
  }
}

const anySpot = -2;
const mostWeighed = 8;
