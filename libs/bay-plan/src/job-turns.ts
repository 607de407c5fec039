/** Which operations of a job come before which, as bits; a job with more lines than bits keeps the order it has. */
import { type Compiled, none } from './compile.js';

const mostBits = 31;

export class JobTurns {
  private readonly job: Int32Array;
  private readonly bit: Int32Array;
  private readonly before: Int32Array;

  constructor(compiled: Compiled) {
    const { operations, jobs } = compiled;
    this.job = Int32Array.from(operations, (one) => one.job);
    this.bit = new Int32Array(operations.length);
    this.before = new Int32Array(operations.length);
    for (const job of jobs) {
      const many = job.operations.length > mostBits;
      job.operations.forEach((op, i) => (this.bit[op] = many ? none : 1 << i));
      for (const op of job.operations) this.before[op] = many ? none : this.allBefore(compiled, op);
    }
  }

  private allBefore(compiled: Compiled, op: number): number {
    let mask = 0;
    for (const one of compiled.operations[op]?.before ?? []) {
      mask |= (this.bit[one] as number) | this.allBefore(compiled, one);
    }
    return mask;
  }

  comesBefore(a: number, b: number): boolean {
    return this.job[a] === this.job[b] && ((this.before[b] as number) & (this.bit[a] as number)) !== 0;
  }
}
