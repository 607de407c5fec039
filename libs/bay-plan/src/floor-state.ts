/** What is free when, while a schedule is laid out operation by operation. */
import { type Compiled, allDone, none } from './compile.js';

export class FloorState {
  readonly spotFree: Float64Array;
  /** the vehicle that was there last, by job */
  readonly spotJob: Int32Array;
  readonly spotOperation: Int32Array;
  /** the job whose vehicle may not leave the spot now, and until which operation */
  readonly spotOwner: Int32Array;
  readonly ownerUntil: Int32Array;
  readonly personFree: Float64Array;
  readonly personOperation: Int32Array;
  readonly toolFree: Float64Array;
  readonly jobFree: Float64Array;
  readonly jobSpot: Int32Array;
  readonly jobOwned: Int32Array;
  readonly jobOperation: Int32Array;
  readonly jobFirst: Int32Array;
  readonly jobSecond: Int32Array;
  /** latest finish of the job that is already certain */
  readonly jobFinish: Float64Array;
  readonly jobLeft: Int32Array;
  readonly done: Uint8Array;
  readonly hasOwners: boolean;

  private readonly jobOperations: readonly (readonly number[])[];
  private readonly keepsUntil: Int32Array;
  private readonly spotJobAtFirst: Int32Array;
  private readonly spotOwnerAtFirst: Int32Array;
  private readonly ownerUntilAtFirst: Int32Array;
  private readonly jobFreeAtFirst: Float64Array;
  private readonly jobSpotAtFirst: Int32Array;
  private readonly jobOwnedAtFirst: Int32Array;
  private readonly jobLeftAtFirst: Int32Array;

  constructor(compiled: Compiled) {
    const { spotCount, personCount, toolCount, jobs, operations } = compiled;
    this.spotFree = new Float64Array(spotCount);
    this.spotJob = new Int32Array(spotCount);
    this.spotOperation = new Int32Array(spotCount);
    this.spotOwner = new Int32Array(spotCount);
    this.ownerUntil = new Int32Array(spotCount);
    this.personFree = new Float64Array(personCount);
    this.personOperation = new Int32Array(personCount);
    this.toolFree = new Float64Array(toolCount);
    this.jobFree = new Float64Array(jobs.length);
    this.jobSpot = new Int32Array(jobs.length);
    this.jobOwned = new Int32Array(jobs.length);
    this.jobOperation = new Int32Array(jobs.length);
    this.jobFirst = new Int32Array(jobs.length);
    this.jobSecond = new Int32Array(jobs.length);
    this.jobFinish = new Float64Array(jobs.length);
    this.jobLeft = new Int32Array(jobs.length);
    this.done = new Uint8Array(operations.length);

    this.jobOperations = jobs.map((job) => job.operations);
    this.keepsUntil = Int32Array.from(operations, (one) => one.keepsUntil);
    this.spotJobAtFirst = new Int32Array(spotCount).fill(none);
    this.spotOwnerAtFirst = new Int32Array(spotCount).fill(none);
    this.ownerUntilAtFirst = new Int32Array(spotCount).fill(none);
    this.jobFreeAtFirst = Float64Array.from(jobs, (job) => job.arrives);
    this.jobSpotAtFirst = Int32Array.from(jobs, (job) => job.stands);
    this.jobOwnedAtFirst = new Int32Array(jobs.length).fill(none);
    this.jobLeftAtFirst = Int32Array.from(jobs, (job) => job.operations.length);
    jobs.forEach((job, j) => {
      if (job.stands === none) return;
      this.spotJobAtFirst[job.stands] = j;
      if (job.ownsUntil === none || job.operations.length === 0) return;
      this.spotOwnerAtFirst[job.stands] = j;
      this.ownerUntilAtFirst[job.stands] = job.ownsUntil;
      this.jobOwnedAtFirst[j] = job.stands;
    });
    this.hasOwners =
      this.spotOwnerAtFirst.some((job) => job !== none) || operations.some((one) => one.keepsUntil !== none);
  }

  reset(): void {
    this.spotFree.fill(0);
    this.spotJob.set(this.spotJobAtFirst);
    this.spotOperation.fill(none);
    this.personFree.fill(0);
    this.personOperation.fill(none);
    this.toolFree.fill(0);
    this.jobFree.set(this.jobFreeAtFirst);
    this.jobSpot.set(this.jobSpotAtFirst);
    this.jobOperation.fill(none);
    this.jobFirst.fill(none);
    this.jobSecond.fill(none);
    this.jobFinish.fill(0);
    if (!this.hasOwners) return;
    this.jobLeft.set(this.jobLeftAtFirst);
    this.done.fill(0);
    this.spotOwner.set(this.spotOwnerAtFirst);
    this.ownerUntil.set(this.ownerUntilAtFirst);
    this.jobOwned.set(this.jobOwnedAtFirst);
  }

  /** After an operation: a vehicle that could not leave its spot may be free to go, or one may now have to stay. */
  settleOwner(operation: number, job: number, spot: number): void {
    this.done[operation] = 1;
    this.jobLeft[job] = (this.jobLeft[job] as number) - 1;
    const owned = this.jobOwned[job] as number;
    if (owned !== none) {
      const until = this.ownerUntil[owned] as number;
      if (until === allDone ? this.jobLeft[job] !== 0 : this.done[until] !== 1) return;
      this.spotOwner[owned] = none;
      this.jobOwned[job] = none;
    }
    if (spot === none) return;
    for (const one of this.jobOperations[job] ?? []) {
      const until = this.keepsUntil[one] as number;
      if (this.done[one] !== 1 || until === none || this.done[until] === 1) continue;
      this.spotOwner[spot] = job;
      this.ownerUntil[spot] = until;
      this.jobOwned[job] = spot;
      return;
    }
  }
}
