/**
 * Any-time improvement by simulated annealing (Kirkpatrick et al. 1983) in rounds: each begins at the best plan so far
 * and cools down. The first is cool and gains quickly, the others are warm and get out of where it was, longer each
 * time. Everything depends on the seed and the number of candidates tried, nothing on time.
 */
import { loosenessAfter, orderAsBefore } from './as-before.js';
import { type Compiled, minuteMs, none } from './compile.js';
import { Evaluator } from './evaluator.js';
import { Neighbourhood } from './neighbourhood.js';
import type { PreviousPlace } from './previous.js';
import { type PriorityRule, allRules, layOut } from './priority-rules.js';
import { Random } from './random.js';
import { Schedule, type SearchWeights } from './schedule.js';

/** lengths of rounds, in candidates: the first by operation and at least, the first warm one at least, the longest */
const coolByOperation = 60;
const shortestCool = 2_000;
const shortestWarm = 8_000;
const longestRound = 400_000;
/** beyond so many operations fewer rules are tried for the first plan */
const manyOperations = 400;
const growth = 1.25;
/** How warm and how cool rounds begin and how cold they end, in usual rises of a move; tuned on the published instances. */
const forTardiness = { warm: [0.5, 1, 4], cool: 0.02, cold: 0.004 } as const;
const forFinish = { warm: [0.15, 0.4], cool: 0.04, cold: 0.02 } as const;

function searchWeights(compiled: Compiled, disturbanceMinutes: number): SearchWeights {
  if (!compiled.promised) {
    const flow = 0.1 / Math.max(1, compiled.jobs.length);
    return { tardiness: 0, disturbed: disturbanceMinutes, move: 0, change: 0, finish: 1, flow };
  }
  return { tardiness: 1, disturbed: disturbanceMinutes, move: 1, change: 0.2, finish: 1e-4, flow: 1e-5 };
}

export class Search {
  readonly best: Schedule;
  tried = 0;
  /** goes up with each better plan */
  version = 0;
  /** called with each better plan that does not fit before the horizon: what it shows is worth something else */
  onOverflowing: () => void = () => undefined;

  private current: Schedule;
  private next: Schedule;
  private readonly evaluator: Evaluator;
  private readonly neighbourhood: Neighbourhood;
  private readonly random: Random;
  private readonly disturbance: number;
  private roundLength: number;
  private warmLength: number;
  private roundStep = 0;
  private round = 0;
  private usualRise = 1;

  constructor(
    readonly compiled: Compiled,
    seed: number,
    previous: readonly (PreviousPlace | null)[],
    disturbanceMinutes: number,
    rules: readonly PriorityRule[] = allRules,
  ) {
    this.random = new Random(seed);
    this.disturbance = disturbanceMinutes;
    this.evaluator = new Evaluator(compiled, previous, searchWeights(compiled, disturbanceMinutes));
    this.neighbourhood = new Neighbourhood(compiled, this.evaluator, this.random);
    const make = () =>
      new Schedule(compiled.operations.length, compiled.operations.length - this.evaluator.fixed.length);
    this.current = make();
    this.next = make();
    this.best = make();
    this.roundLength = Math.max(shortestCool, coolByOperation * compiled.operations.length);
    this.warmLength = Math.max(shortestWarm, this.roundLength);
    this.begin(previous, compiled.operations.length > manyOperations ? rules.slice(0, 2) : rules);
  }

  private begin(previous: readonly (PreviousPlace | null)[], rules: readonly PriorityRule[]): void {
    rules.forEach((rule, i) => {
      layOut(this.compiled, this.evaluator, rule, this.next);
      if (i === 0 || this.better(this.next, this.best)) this.best.copyFrom(this.next);
    });
    if (previous.length > 0) this.layOutAsBefore(previous);
    this.current.copyFrom(this.best);
    this.neighbourhood.settle(this.current);
  }

  /** The plan before, shifted to what is possible now: the least disturbance there is. */
  private layOutAsBefore(previous: readonly (PreviousPlace | null)[]): void {
    const { next, current, evaluator, compiled } = this;
    const inOrder = orderAsBefore(compiled, previous, this.best.order, evaluator.fixed);
    next.order.set(inOrder);
    for (const op of inOrder) {
      const was = previous[op] ?? null;
      current.spot[op] = was?.spot ?? none;
      current.first[op] = was?.first ?? none;
      current.second[op] = was?.second ?? none;
      evaluator.loose[op] = loosenessAfter(compiled.operations[op], was);
    }
    const whole = evaluator.run(next, current, 0, Infinity);
    evaluator.loose.fill(0);
    if (whole && this.better(next, this.best)) this.best.copyFrom(next);
  }

  /** Median rise of a move that makes things worse, from the plan as it stands. */
  private calibrate(): number {
    const rises: number[] = [];
    const tries = 300;
    for (let i = 0; i < tries; i += 1) {
      if (!this.neighbourhood.propose(this.next, this.current)) {
        this.neighbourhood.undo(this.current);
        continue;
      }
      const whole = this.evaluator.run(this.next, this.current, this.kept(), Infinity);
      this.neighbourhood.undo(this.current);
      const rise = this.next.cost - this.current.cost;
      if (!whole || rise <= 1e-9) continue;
      rises.push(rise);
    }
    rises.sort((a, b) => a - b);
    return rises[rises.length >> 1] ?? 1;
  }

  private kept(): number {
    return this.evaluator.keepsPrefix ? this.neighbourhood.kept : 0;
  }

  /** Tries so many candidates. */
  run(candidates: number): void {
    if (candidates > 0 && this.tried === 0) this.usualRise = this.calibrate();
    for (let i = 0; i < candidates; i += 1) {
      if (this.roundStep >= this.roundLength) this.startRound();
      this.tryOne();
      this.roundStep += 1;
    }
    this.tried += candidates;
  }

  private startRound(): void {
    this.roundStep = 0;
    this.round += 1;
    this.roundLength = this.warmLength;
    this.warmLength = Math.min(longestRound, Math.round(this.warmLength * growth));
    this.current.copyFrom(this.best);
    this.neighbourhood.settle(this.current);
  }

  private temperature(): number {
    const { warm, cool, cold } = this.compiled.promised ? forTardiness : forFinish;
    const heat = this.round === 0 ? cool : (warm[(this.round - 1) % warm.length] ?? cool);
    return this.usualRise * heat * Math.pow(cold / heat, this.roundStep / this.roundLength);
  }

  private tryOne(): void {
    const { neighbourhood, evaluator, current, next } = this;
    if (!neighbourhood.propose(next, current)) {
      neighbourhood.undo(current);
      return;
    }
    const limit = current.cost - this.temperature() * Math.log(1 - this.random.next());
    const taken = evaluator.run(next, current, this.kept(), limit + 1e-9);
    neighbourhood.undo(current);
    if (!taken) return;
    this.current = next;
    this.next = current;
    neighbourhood.settle(next);
    if (!this.better(next, this.best)) return;
    this.best.copyFrom(next);
    this.version += 1;
    if (next.overflow > 0) this.onOverflowing();
  }

  /** The order in which the parts of a value count. */
  private better(a: Schedule, b: Schedule): boolean {
    if (a.overflow !== b.overflow) return a.overflow < b.overflow;
    const small = 1e-6;
    const disturbed = this.disturbance * (a.disturbed - b.disturbed);
    if (!this.compiled.promised) return (a.finish - b.finish) / minuteMs + disturbed < -small;
    const late = a.tardiness - b.tardiness + disturbed;
    if (Math.abs(late) > small) return late < 0;
    if (a.moves !== b.moves) return a.moves < b.moves;
    const changes = a.changes + a.away - b.changes - b.away;
    return changes === 0 ? a.finish < b.finish - small : changes < 0;
  }
}
