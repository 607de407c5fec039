/** When an operation could go on in a spot with certain people, and which of several such choices is the best. */
import { Account } from './account.js';
import { type Compiled, minuteMs, none } from './compile.js';
import type { PreviousPlace } from './previous.js';
import type { SearchWeights } from './schedule.js';

/** what is chosen while laying out: the people, or the spot as well */
export const loosePeople = 1;
export const looseSpotAndPeople = 2;

export class Weighing extends Account {
  /** by operation: 0, `loosePeople` or `looseSpotAndPeople` */
  readonly loose: Uint8Array;

  private readonly release: Float64Array;
  private readonly spotHold: Float64Array;
  private readonly spotHolder: Int32Array;
  private readonly jobStay: Float64Array;
  private readonly jobStands: Int32Array;
  private readonly hasSlots: Uint8Array;
  private readonly hasStays: boolean;
  private readonly pair: Int32Array;
  private readonly calendarCount: number;
  /** what `weigh` found last */
  private from = 0;
  private to = 0;
  protected bestScore = Infinity;

  constructor(compiled: Compiled, previous: readonly (PreviousPlace | null)[], weights: SearchWeights) {
    super(compiled, previous, weights);
    const { operations, jobs, spotCount } = compiled;
    this.loose = new Uint8Array(operations.length);
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

  /** When vehicle and spot are there, the move made, tools free and the line released. */
  protected readyAt(op: number, spot: number): number {
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
  protected weigh(op: number, spot: number, first: number, second: number, known: number): void {
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
}
