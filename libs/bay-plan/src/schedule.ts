/** One candidate of the search: an order of the operations, where and with whom each is done, and what came of it. */
export class Schedule {
  /** operations without a fixed start, by start once evaluated */
  readonly order: Int32Array;
  readonly spot: Int32Array;
  readonly first: Int32Array;
  readonly second: Int32Array;
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** the operation before it on its vehicle, in its spot, with its first person; `none` if there is none */
  readonly jobPrevious: Int32Array;
  readonly spotPrevious: Int32Array;
  readonly personPrevious: Int32Array;
  cost = Infinity;
  tardiness = 0;
  disturbed = 0;
  moves = 0;
  changes = 0;
  away = 0;
  finish = 0;
  overflow = 0;

  constructor(operations: number, ordered: number) {
    this.order = new Int32Array(ordered);
    this.spot = new Int32Array(operations).fill(-1);
    this.first = new Int32Array(operations).fill(-1);
    this.second = new Int32Array(operations).fill(-1);
    this.start = new Float64Array(operations);
    this.end = new Float64Array(operations);
    this.jobPrevious = new Int32Array(operations).fill(-1);
    this.spotPrevious = new Int32Array(operations).fill(-1);
    this.personPrevious = new Int32Array(operations).fill(-1);
  }

  copyFrom(other: Schedule): void {
    this.order.set(other.order);
    this.spot.set(other.spot);
    this.first.set(other.first);
    this.second.set(other.second);
    this.start.set(other.start);
    this.end.set(other.end);
    this.jobPrevious.set(other.jobPrevious);
    this.spotPrevious.set(other.spotPrevious);
    this.personPrevious.set(other.personPrevious);
    this.cost = other.cost;
    this.tardiness = other.tardiness;
    this.disturbed = other.disturbed;
    this.moves = other.moves;
    this.changes = other.changes;
    this.away = other.away;
    this.finish = other.finish;
    this.overflow = other.overflow;
  }
}

/** What each part of a value weighs while searching, per minute or per piece; what counts in the end is the order. */
export interface SearchWeights {
  readonly tardiness: number;
  readonly disturbed: number;
  readonly move: number;
  readonly change: number;
  readonly finish: number;
  /** mean finish of the jobs: breaks ties between plans that finish alike */
  readonly flow: number;
}
