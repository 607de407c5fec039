/**
 * Lays an order of operations out on the floor: each in turn as early as its spot, people, tools and vehicle are free
 * (serial schedule generation). The one place where the solver knows the rules of a plan. An order never fails: where a
 * vehicle may not leave its spot, what wants the spot waits its turn; where a start is fixed, others go round it.
 */
import { type Compiled, minuteMs, none } from './compile.js';
import { Account } from './account.js';
import { lastFixedBefore, shares } from './fixed-starts.js';
import type { PreviousPlace } from './previous.js';
import type { Schedule, SearchWeights } from './schedule.js';

export const loosePeople = 1;
export const looseSpotAndPeople = 2;

export class Evaluator extends Account {
  /** 1: choose the people while laying out; 2: the spot as well */
  readonly loose: Uint8Array;
  /** operations with a fixed start, by start */
  readonly fixed: readonly number[];
  /** whether the part of an order before a change can be taken over as it was */
  readonly keepsPrefix: boolean;

  /** the last of `fixed` that comes before the operation on its job */
  private readonly fixedBefore: Int32Array;
  private readonly release: Float64Array;
  private readonly spotHold: Float64Array;
  private readonly spotHolder: Int32Array;
  private readonly jobStay: Float64Array;
  private readonly jobStands: Int32Array;
  private readonly hasSlots: Uint8Array;
  private readonly hasStays: boolean;
  private readonly pair: Int32Array;
  private readonly calendarCount: number;
  private nextFixed = 0;
  private deferred: number[] = [];
  /** what `weigh` found last */
  private from = 0;
  private to = 0;
  private bestScore = Infinity;

  constructor(compiled: Compiled, previous: readonly (PreviousPlace | null)[], weights: SearchWeights) {
    super(compiled, previous, weights);
    const { operations, jobs, spotCount } = compiled;
    this.loose = new Uint8Array(operations.length);
    const startOf = (op: number) => operations[op]?.fixedStart ?? Infinity;
    this.fixed = operations
      .map((_, op) => op)
      .filter((op) => startOf(op) !== Infinity)
      .sort((a, b) => startOf(a) - startOf(b));
    this.fixedBefore = Int32Array.from(operations, (_, op) => lastFixedBefore(compiled, this.fixed, op));
    this.keepsPrefix = !this.state.hasOwners && this.fixed.length === 0;
    this.release = Float64Array.from(operations, (one) => one.release);
    this.spotHold = new Float64Array(spotCount);
    this.spotHolder = new Int32Array(spotCount).fill(none);
    this.jobStay = Float64Array.from(jobs, (job) => job.staysUntil);
    this.jobStands = Int32Array.from(jobs, (job) => job.stands);
    jobs.forEach((job, j) => {
      if (job.stands === none || job.staysUntil <= 0) return;
      this.spotHold[job.stands] = job.staysUntil;
      this.spotHolder[job.stands] = j;
    });
    this.hasSlots = Uint8Array.from(operations, (one) => (one.slots === null ? 0 : 1));
    this.hasStays = jobs.some((job) => job.staysUntil > 0);
    const base = [...compiled.spotCalendar, ...compiled.wholeSpotCalendar, ...compiled.personCalendar];
    this.calendarCount = Math.max(0, ...base) + 1;
    this.pair = new Int32Array(this.calendarCount * this.calendarCount).fill(none);
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

  /** Lays one operation out, choosing what is loose. */
  placeLoose(next: Schedule, op: number): void {
    this.loose[op] = looseSpotAndPeople;
    this.place(next, next, op);
    this.loose[op] = 0;
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
      if (this.compiled.operations[op]?.keepsUntil !== none) this.flushFixed(next, this.fixed.length);
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

  /** When vehicle and spot are there, the move made, tools free and the line released. */
  private readyAt(op: number, spot: number): number {
    const job = this.job[op] as number;
    const { jobFree, spotFree, jobSpot, spotJob, toolFree } = this.state;
    let ready = jobFree[job] as number;
    if (spot >= 0) {
      ready = Math.max(ready, spotFree[spot] as number);
      if (this.hasStays) ready = this.afterStays(job, spot, ready);
      const { moveMs } = this.compiled;
      if (moveMs > 0 && (jobSpot[job] !== spot || spotJob[spot] !== job)) {
        ready = this.compiled.calendars.finish(this.compiled.spotCalendar[spot] as number, ready, moveMs);
      }
    } else ready = Math.max(ready, this.jobStay[job] as number);
    ready = Math.max(ready, this.release[op] as number);
    if (this.hasTools[op] === 0) return ready;
    for (const tool of this.compiled.operations[op]?.tools ?? []) ready = Math.max(ready, toolFree[tool] as number);
    return ready;
  }

  private afterStays(job: number, spot: number, ready: number): number {
    const away = this.jobStands[job] === spot ? ready : Math.max(ready, this.jobStay[job] as number);
    const taken = this.spotHolder[spot] !== none && this.spotHolder[spot] !== job;
    return taken ? Math.max(away, this.spotHold[spot] as number) : away;
  }

  private calendarOf(spot: number, first: number, second: number): number {
    const { calendars, spotCalendar, personCalendar } = this.compiled;
    const own = spot === none ? 0 : (spotCalendar[spot] as number);
    if (first === none) return own;
    const person = personCalendar[first] as number;
    const key = own * this.calendarCount + person;
    let both = this.pair[key] as number;
    if (both === none) {
      both = calendars.both(own, person);
      this.pair[key] = both;
    }
    return second === none ? both : calendars.both(both, personCalendar[second] as number);
  }

  /** When the operation would go on there with them; kept if it is better than the best so far. */
  private weigh(op: number, spot: number, first: number, second: number, known: number): void {
    let ready = known === 0 ? this.readyAt(op, spot) : known;
    const { personFree } = this.state;
    if (first !== none) ready = Math.max(ready, personFree[first] as number);
    if (second !== none) ready = Math.max(ready, personFree[second] as number);
    const { calendars, workMs, spotCount } = this.compiled;
    if (this.hasSlots[op] === 0) {
      const work = workMs[op * spotCount + spot] as number;
      const calendar = this.calendarOf(spot, first, second);
      this.from = calendars.next(calendar, ready);
      this.to = calendars.finish(calendar, this.from, work);
    } else this.takeSlot(op, ready);
    const score = this.loose[op] === 0 ? this.to : this.to + this.unease(op, spot, first);
    if (score >= this.bestScore) return;
    this.bestScore = score;
    this.bestSpot = spot;
    this.bestFirst = first;
    this.bestSecond = second;
    this.bestFrom = this.from;
    this.bestTo = this.to;
  }

  /** What a move, another person or a strange bay is worth when one is chosen, as milliseconds later. */
  private unease(op: number, spot: number, first: number): number {
    const { compiled, state } = this;
    const job = this.job[op] as number;
    let sum = 0;
    if (!compiled.promised) return sum;
    if (spot !== none && (state.jobSpot[job] !== spot || state.spotJob[spot] !== job)) sum += 10;
    if (first === none) return sum * minuteMs;
    if (state.jobFirst[job] !== none && state.jobFirst[job] !== first) sum += 5;
    const home = compiled.personHome[first] as number;
    if (home !== none && home !== compiled.spotBay[spot]) sum += 5;
    return sum * minuteMs;
  }

  private takeSlot(op: number, ready: number): void {
    const { operations, horizonMs } = this.compiled;
    for (const slot of operations[op]?.slots ?? []) {
      if (slot.from < ready) continue;
      this.from = slot.from;
      this.to = slot.to;
      return;
    }
    this.from = Math.max(ready, horizonMs);
    this.to = this.from + minuteMs;
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
