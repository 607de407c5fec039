/**
 * The moves of the search. Most begin at what holds up a vehicle that is late (or the last one to be done): the chain of
 * operations that wait for each other without a gap is followed back, and one of the chain is put before what it waits
 * for, into another spot, or to other people. The rest are shifts at random, so that nothing stays out of reach.
 */
import { type Compiled, type Operation, none } from './compile.js';
import type { Evaluator } from './evaluator.js';
import { Holdups } from './holdups.js';
import { JobTurns } from './job-turns.js';
import type { Random } from './random.js';
import type { Schedule } from './schedule.js';
import { loosePeople, looseSpotAndPeople } from './weighing.js';

/** how far a move usually goes in the order, and how often it goes anywhere */
const reach = 8;
const anywhere = 0.3;
const guidedShare = 0.6;

export class Neighbourhood {
  /** where each operation is in the order of `current` */
  readonly position: Int32Array;
  /** how much of the order the last move left as it was */
  kept = 0;

  private readonly scratch: Int32Array;
  private readonly turns: JobTurns;
  private readonly holdups: Holdups;
  private readonly job: Int32Array;
  private readonly movable: readonly number[];
  private readonly loosened: number[] = [];
  private readonly changed: number[] = [];
  private readonly spotsBefore: number[] = [];
  private readonly peopleOf: number[] = [];
  private readonly firstsBefore: number[] = [];
  private readonly secondsBefore: number[] = [];

  constructor(
    private readonly compiled: Compiled,
    private readonly evaluator: Evaluator,
    private readonly random: Random,
  ) {
    const { operations } = compiled;
    this.position = new Int32Array(operations.length).fill(none);
    this.scratch = new Int32Array(operations.length);
    this.job = Int32Array.from(operations, (one) => one.job);
    this.turns = new JobTurns(compiled);
    this.holdups = new Holdups(compiled, this.position, random);
    this.movable = operations.map((_, op) => op).filter((op) => operations[op]?.fixedStart === null);
  }

  /** To be called when `current` has changed: puts its order by start and looks up who is late. */
  settle(current: Schedule): void {
    const { order, start } = current;
    for (let i = 1; i < order.length; i += 1) {
      const op = order[i] as number;
      const at = start[op] as number;
      let k = i - 1;
      while (k >= 0 && (start[order[k] as number] as number) > at) {
        order[k + 1] = order[k] as number;
        k -= 1;
      }
      order[k + 1] = op;
    }
    for (let i = 0; i < order.length; i += 1) this.position[order[i] as number] = i;
    this.holdups.lookUp(current);
  }

  /** Makes `next` a neighbour of `current`; false: this try came to nothing. */
  propose(next: Schedule, current: Schedule): boolean {
    if (this.movable.length === 0) return false;
    next.order.set(current.order);
    this.kept = next.order.length;
    const { random } = this;
    const guided = this.holdups.any && random.next() < guidedShare;
    const op = guided ? this.holdups.pick(current) : (this.movable[random.below(this.movable.length)] as number);
    if (op === none) return false;
    const dice = random.next();
    if (guided && dice < 0.3) return this.putBeforeWhatItWaitsFor(next, current, op);
    if (dice < 0.5) return this.otherSpot(next, current, op);
    if (dice < 0.7) return this.swap(next, op);
    if (dice < 0.75) return this.otherPeople(current, op);
    if (dice < 0.8) return this.moveJob(next, op);
    if (dice < 0.86) return this.relist(next, op);
    if (dice < 0.9) return this.exchange(next, current, op);
    return this.shift(next, op);
  }

  /** Takes back what `propose` set beside the order. */
  undo(current: Schedule): void {
    if (this.loosened.length > 0) this.tighten();
    for (let i = this.changed.length - 1; i >= 0; i -= 1) {
      current.spot[this.changed[i] as number] = this.spotsBefore[i] as number;
    }
    this.changed.length = this.spotsBefore.length = 0;
    if (this.peopleOf.length > 0) this.undoPeople(current);
  }

  private undoPeople(current: Schedule): void {
    this.peopleOf.forEach((op, i) => {
      current.first[op] = this.firstsBefore[i] as number;
      current.second[op] = this.secondsBefore[i] as number;
    });
    this.peopleOf.length = 0;
    this.firstsBefore.length = 0;
    this.secondsBefore.length = 0;
  }

  private tighten(): void {
    for (const op of this.loosened) this.evaluator.loose[op] = 0;
    this.loosened.length = 0;
  }

  private loosen(op: number, how: number): void {
    this.evaluator.loose[op] = how;
    this.loosened.push(op);
    this.kept = Math.min(this.kept, this.position[op] as number);
  }

  private setSpot(current: Schedule, op: number, spot: number): void {
    this.changed.push(op);
    this.spotsBefore.push(current.spot[op] as number);
    current.spot[op] = spot;
    if (this.compiled.operations[op]?.needs !== 0 && this.random.next() < 0.7) this.loosen(op, loosePeople);
    this.kept = Math.min(this.kept, this.position[op] as number);
  }

  private putBeforeWhatItWaitsFor(next: Schedule, current: Schedule, op: number): boolean {
    const { random } = this;
    let before = (random.next() < 0.7 ? current.spotPrevious[op] : current.personPrevious[op]) as number;
    if (before === none)
      before = (current.spotPrevious[op] as number) === none ? none : (current.spotPrevious[op] as number);
    // Past several of them at once, now and then: the block it stands in.
    while (before !== none && random.next() < 0.35) {
      const further = current.spotPrevious[before] as number;
      if (further === none) break;
      before = further;
    }
    if (before === none || this.position[before] === none) return this.otherSpot(next, current, op);
    if (this.job[before] === this.job[op] && this.turns.comesBefore(before, op))
      return this.otherSpot(next, current, op);
    if (random.next() < 0.3 && this.compiled.operations[op]?.needs !== 0) this.loosen(op, loosePeople);
    return this.moveTo(next, op, this.position[before] as number);
  }

  private otherSpot(next: Schedule, current: Schedule, op: number): boolean {
    const operation = this.compiled.operations[op];
    if (operation === undefined) return false;
    const { random } = this;
    if (operation.spots.length < 2) return random.next() < 0.5 ? this.swap(next, op) : this.shift(next, op);
    if (random.next() < 0.2) this.loosen(op, looseSpotAndPeople);
    else {
      const spot = operation.spots[random.below(operation.spots.length)] as number;
      if (spot === current.spot[op]) return this.shift(next, op);
      this.setSpot(current, op, spot);
    }
    return random.next() < 0.5 ? this.kept < next.order.length : this.shift(next, op);
  }

  private swap(next: Schedule, op: number): boolean {
    const from = this.position[op] as number;
    const to = this.nearby(from, next.order.length);
    const other = next.order[to] as number;
    if (other === op || this.job[op] === this.job[other]) return this.shift(next, op);
    return this.moveTo(next, op, to) && this.moveTo(next, other, from);
  }

  /** A place in the order not far away, now and then anywhere. */
  private nearby(from: number, length: number): number {
    if (this.random.next() < anywhere) return this.random.below(length);
    const by = 1 + this.random.below(reach);
    return Math.max(0, Math.min(length - 1, this.random.next() < 0.5 ? from - by : from + by));
  }

  private otherPeople(current: Schedule, op: number): boolean {
    const operation = this.compiled.operations[op];
    if (operation === undefined || operation.needs === 0 || operation.people.length <= operation.needs) return false;
    const dice = this.random.next();
    if (dice < 0.4) this.setPeople(current, op, operation);
    else if (dice < 0.75) this.loosen(op, loosePeople);
    else
      for (const one of this.compiled.jobs[operation.job]?.operations ?? []) {
        if (this.position[one] !== none) this.loosen(one, loosePeople);
      }
    return true;
  }

  /** Anybody who can, whether or not they are the best choice by themselves. */
  private setPeople(current: Schedule, op: number, { people, needs }: Operation): void {
    const pick = () => people[this.random.below(people.length)] as number;
    const first = pick();
    let second = none;
    while (needs === 2 && (second === none || second === first)) second = pick();
    this.peopleOf.push(op);
    this.firstsBefore.push(current.first[op] as number);
    this.secondsBefore.push(current.second[op] as number);
    current.first[op] = needs === 2 ? Math.min(first, second) : first;
    current.second[op] = needs === 2 ? Math.max(first, second) : none;
    this.kept = Math.min(this.kept, this.position[op] as number);
  }

  /** All that is left of a job from this operation on, earlier or later together. */
  private moveJob(next: Schedule, op: number): boolean {
    const all = this.compiled.jobs[this.job[op] as number]?.operations ?? [];
    const mine = all.filter((one) => this.position[one] !== none);
    mine.sort((a, b) => (this.position[a] as number) - (this.position[b] as number));
    const to = this.random.below(next.order.length);
    let moved = false;
    for (const [i, one] of mine.entries()) {
      if (this.random.next() < 0.5 && this.compiled.operations[one]?.fixedStart === null) {
        this.loosen(one, looseSpotAndPeople);
      }
      moved = this.moveTo(next, one, Math.min(next.order.length - 1, to + i)) || moved;
    }
    return moved || this.loosened.length > 0;
  }

  /** Lets a stretch of the order find its spots and people anew. */
  private relist(next: Schedule, op: number): boolean {
    const from = this.position[op] as number;
    const to = Math.min(next.order.length, from + 2 + this.random.below(12));
    for (let i = from; i < to; i += 1) this.loosen(next.order[i] as number, looseSpotAndPeople);
    return this.shift(next, op);
  }

  /** Two operations change places, spots and all. */
  private exchange(next: Schedule, current: Schedule, op: number): boolean {
    const { random, position } = this;
    const at = (position[op] as number) + random.below(25) - 12;
    const other = next.order[Math.max(0, Math.min(next.order.length - 1, at))] as number;
    const mine = current.spot[op] as number;
    const theirs = current.spot[other] as number;
    if (other === op || mine === theirs || this.job[op] === this.job[other]) return this.shift(next, op);
    if (!this.suits(op, theirs) || !this.suits(other, mine)) return this.otherSpot(next, current, op);
    this.setSpot(current, op, theirs);
    this.setSpot(current, other, mine);
    const from = position[op] as number;
    return this.moveTo(next, op, position[other] as number) && this.moveTo(next, other, from);
  }

  private suits(op: number, spot: number): boolean {
    return spot !== none && (this.compiled.workMs[op * this.compiled.spotCount + spot] as number) > 0;
  }

  private shift(next: Schedule, op: number): boolean {
    return this.moveTo(next, op, this.nearby(this.position[op] as number, next.order.length));
  }

  /** Takes an operation to another place in the order; what has to come before or after it on its job goes along. */
  private moveTo(next: Schedule, op: number, to: number): boolean {
    const { order } = next;
    let from = this.position[op] as number;
    if (order[from] !== op) from = order.indexOf(op);
    if (from === to) return this.kept < order.length;
    const low = Math.min(from, to);
    const high = Math.max(from, to);
    const { scratch } = this;
    let along = 0;
    let others = 0;
    // Those that go along first, the others behind them, then both back in their new places.
    for (let i = low; i <= high; i += 1) {
      const one = order[i] as number;
      const goes = to < from ? this.turns.comesBefore(one, op) : this.turns.comesBefore(op, one);
      if (goes) {
        scratch[along] = one;
        along += 1;
      } else if (one !== op) {
        order[low + others] = one;
        others += 1;
      }
    }
    if (to < from) {
      for (let i = others - 1; i >= 0; i -= 1) order[low + along + 1 + i] = order[low + i] as number;
      for (let i = 0; i < along; i += 1) order[low + i] = scratch[i] as number;
      order[low + along] = op;
    } else {
      order[low + others] = op;
      for (let i = 0; i < along; i += 1) order[low + others + 1 + i] = scratch[i] as number;
    }
    this.kept = Math.min(this.kept, low);
    return true;
  }
}
