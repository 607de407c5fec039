/**
 * What holds up the vehicles that are late, or the last to be done where none is promised: the operations that wait for
 * each other without a gap, followed back from the end.
 */
import { type Compiled, none } from './compile.js';
import type { Random } from './random.js';
import type { Schedule } from './schedule.js';

const longestChain = 256;

export class Holdups {
  private readonly release: Float64Array;
  private readonly chain = new Int32Array(longestChain);
  private chainLength = 0;
  private readonly late: number[] = [];
  private readonly lateness: number[] = [];
  private latenessSum = 0;

  /** `position`: where each operation is in the order, `none` for those that cannot be moved. */
  constructor(
    private readonly compiled: Compiled,
    private readonly position: Int32Array,
    private readonly random: Random,
  ) {
    this.release = Float64Array.from(compiled.operations, (one) => one.release);
  }

  get any(): boolean {
    return this.late.length > 0;
  }

  /** To be called when `current` has changed: looks up who is late. */
  lookUp(current: Schedule): void {
    this.late.length = 0;
    this.lateness.length = 0;
    this.latenessSum = 0;
    if (this.compiled.promised) this.findLate(current);
    else this.findLast(current);
  }

  private findLate(current: Schedule): void {
    for (const job of this.compiled.jobs) {
      if (job.due === Infinity) continue;
      let last = none;
      for (const op of job.operations) {
        if (last === none || (current.end[op] as number) > (current.end[last] as number)) last = op;
      }
      if (last === none || (current.end[last] as number) <= job.due) continue;
      const late = job.weight * ((current.end[last] as number) - job.due);
      this.late.push(last);
      this.lateness.push(late);
      this.latenessSum += late;
    }
  }

  private findLast(current: Schedule): void {
    for (let op = 0; op < current.end.length; op += 1) {
      if ((current.end[op] as number) < current.finish) continue;
      this.late.push(op);
      this.lateness.push(1);
      this.latenessSum += 1;
    }
  }

  /** One operation of the chain that holds up a late vehicle, the later and weightier the likelier; `none`: nothing can be moved. */
  pick(current: Schedule): number {
    let left = this.random.next() * this.latenessSum;
    let i = 0;
    while (i < this.late.length - 1 && left >= (this.lateness[i] as number)) {
      left -= this.lateness[i] as number;
      i += 1;
    }
    let op = this.late[i] as number;
    this.chainLength = 0;
    while (op !== none && this.chainLength < longestChain) {
      if (this.position[op] !== none) {
        this.chain[this.chainLength] = op;
        this.chainLength += 1;
      }
      op = this.waitsFor(current, op);
    }
    return this.chainLength === 0 ? none : (this.chain[this.random.below(this.chainLength)] as number);
  }

  /** The operation after which this one could start, of its spot, person and vehicle; `none`: it waits for its release. */
  private waitsFor(current: Schedule, op: number): number {
    const { end, spotPrevious, personPrevious, jobPrevious } = current;
    let found = this.later(end, none, jobPrevious[op] as number);
    found = this.later(end, found, spotPrevious[op] as number);
    found = this.later(end, found, personPrevious[op] as number);
    return found === none || (end[found] as number) < (this.release[op] as number) ? none : found;
  }

  /** The one of two that ends later; either, if they end together. */
  private later(end: Float64Array, a: number, b: number): number {
    if (a === none || b === none) return a === none ? b : a;
    const by = (end[b] as number) - (end[a] as number);
    return by > 0 || (by === 0 && this.random.next() < 0.5) ? b : a;
  }
}
