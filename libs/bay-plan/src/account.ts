/** Takes what was found for an operation into the schedule and counts what it is worth, part by part. */
import { type Compiled, minuteMs, none } from './compile.js';
import { FloorState } from './floor-state.js';
import type { PreviousPlace } from './previous.js';
import type { Schedule, SearchWeights } from './schedule.js';

export class Account {
  readonly state: FloorState;
  protected readonly job: Int32Array;
  protected readonly tail: Float64Array;
  protected readonly due: Float64Array;
  protected readonly weight: Float64Array;
  protected readonly hasTools: Uint8Array;
  /** what was found last: where, with whom, and from when to when */
  protected bestSpot = none;
  protected bestFirst = none;
  protected bestSecond = none;
  protected bestFrom = 0;
  protected bestTo = Infinity;

  constructor(
    readonly compiled: Compiled,
    private readonly previous: readonly (PreviousPlace | null)[],
    readonly weights: SearchWeights,
  ) {
    const { operations, jobs } = compiled;
    this.state = new FloorState(compiled);
    this.job = Int32Array.from(operations, (one) => one.job);
    this.tail = Float64Array.from(operations, (one) => one.tail);
    this.due = Float64Array.from(jobs, (job) => job.due);
    this.weight = Float64Array.from(jobs, (job) => job.weight / minuteMs);
    this.hasTools = Uint8Array.from(operations, (one) => (one.tools.length > 0 ? 1 : 0));
  }

  /** Takes what was found last into the schedule. */
  protected commit(next: Schedule, op: number): void {
    const { state, bestSpot: spot, bestFirst: first, bestTo: end } = this;
    const job = this.job[op] as number;
    next.spot[op] = spot;
    next.first[op] = first;
    next.second[op] = this.bestSecond;
    next.start[op] = this.bestFrom;
    next.end[op] = end;
    next.jobPrevious[op] = state.jobOperation[job] as number;
    next.spotPrevious[op] = spot === none ? none : (state.spotOperation[spot] as number);
    next.personPrevious[op] = first === none ? none : (state.personOperation[first] as number);
    state.jobOperation[job] = op;
    if (spot !== none) {
      if (state.jobSpot[job] !== spot || state.spotJob[spot] !== job) this.countMove(next);
      state.spotFree[spot] = Math.max(end, state.spotFree[spot] as number);
      state.spotJob[spot] = job;
      state.spotOperation[spot] = op;
    }
    state.jobSpot[job] = spot;
    state.jobFree[job] = Math.max(end, state.jobFree[job] as number);
    if (first !== none) this.countPeople(next, op);
    if (this.hasTools[op] === 1) this.takeTools(op, end);
    if (state.hasOwners) state.settleOwner(op, job, spot);
    if (this.previous.length > 0) this.countDisturbed(next, op);
    this.countFinish(next, op, job, end);
  }

  private takeTools(op: number, end: number): void {
    const { toolFree } = this.state;
    for (const tool of this.compiled.operations[op]?.tools ?? []) {
      toolFree[tool] = Math.max(end, toolFree[tool] as number);
    }
  }

  private countMove(next: Schedule): void {
    next.moves += 1;
    next.cost += this.weights.move;
  }

  private countPeople(next: Schedule, op: number): void {
    const { state, bestSpot: spot, bestFirst: first, bestSecond: second } = this;
    const job = this.job[op] as number;
    const end = next.end[op] as number;
    const { personHome, spotBay } = this.compiled;
    state.personFree[first] = Math.max(end, state.personFree[first] as number);
    state.personOperation[first] = op;
    if (second !== none) {
      state.personFree[second] = Math.max(end, state.personFree[second] as number);
      state.personOperation[second] = op;
    }
    const was = state.jobFirst[job] as number;
    const wasSecond = state.jobSecond[job] as number;
    const known = first === was || first === wasSecond || (second !== none && (second === was || second === wasSecond));
    if (was !== none && !known) {
      next.changes += 1;
      next.cost += this.weights.change;
    }
    state.jobFirst[job] = first;
    state.jobSecond[job] = second;
    if (spot === none) return;
    const bay = spotBay[spot] as number;
    const strange = (person: number) => person !== none && personHome[person] !== none && personHome[person] !== bay;
    if (strange(first) || strange(second)) {
      next.away += 1;
      next.cost += this.weights.change;
    }
  }

  private countDisturbed(next: Schedule, op: number): void {
    const was = this.previous[op];
    if (was === null || was === undefined) return;
    const people = was.first === next.first[op] && was.second === next.second[op];
    const moved = Math.abs((next.start[op] as number) - was.start) > was.toleranceMs;
    if (people && was.spot === next.spot[op] && !moved) return;
    next.disturbed += 1;
    next.cost += this.weights.disturbed;
  }

  private countFinish(next: Schedule, op: number, job: number, end: number): void {
    const { weights, state } = this;
    if (end > this.compiled.horizonMs) next.overflow += 1;
    const finish = end + (this.tail[op] as number);
    const before = state.jobFinish[job] as number;
    if (finish > before) {
      state.jobFinish[job] = finish;
      const late = Math.max(0, finish - (this.due[job] as number)) - Math.max(0, before - (this.due[job] as number));
      if (late > 0) {
        const more = late * (this.weight[job] as number);
        next.tardiness += more;
        next.cost += more * weights.tardiness;
      }
      next.cost += ((finish - before) / minuteMs) * weights.flow;
    }
    if (finish > next.finish) {
      next.cost += ((finish - next.finish) / minuteMs) * weights.finish;
      next.finish = finish;
    }
  }
}
