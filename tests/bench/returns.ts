/**
 * `returns`: proposing returns for 10 000 open follow-ups over 2 000 vehicles, the median of several runs, with and
 * without bounds on the days; and the same for half and twice as many, for growth. Absolute target, in processor time, as
 * it is one computation on one thread; the shop is invented by
 * a fixed generator, its bays about 85 % taken by what it has to propose.
 */
import { type OpenFollowUp, type ReturnsInput, proposeReturns } from '@holdfast/returns';
import { addDays, weekdayOf } from '@holdfast/shop-calendar';
import { type BenchLine, percentile, round } from './measure.js';

const followUpsAsked = 10_000;
const perVehicle = 5;
const today = '2026-10-05';
const workingDaysAhead = 260;
const runs = 9;
const longestMs = 200;
const longestGrowth = 3;

/** Multiplicative generator of Lehmer with the constants of Park and Miller (1988): numbers in [0, 1). */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

function workingDays(): string[] {
  const days: string[] = [];
  for (let day = today; days.length < workingDaysAhead; day = addDays(day, 1)) {
    if (!['sat', 'sun'].includes(weekdayOf(day))) days.push(day);
  }
  return days;
}

function followUp(at: number, next: () => number): OpenFollowUp {
  const vehicle = Math.floor(at / perVehicle);
  const earliest = Math.floor(next() * 120);
  const id = (number: number): string => `followUp${number}`;
  const parts = next() < 0.6 ? 1 + Math.floor(next() * 3) : 0;
  return {
    followUpId: id(at),
    vehicleId: `vehicle${vehicle}`,
    urgency: next() < 0.05 ? 'urgent' : next() < 0.5 ? 'soon' : 'whenItSuits',
    bayMinutes: 15 + 15 * Math.floor(next() * 6),
    parts: Array.from({ length: parts }, (_, one) => ({
      partLineId: `part${at}.${one}`,
      shipmentId: `shipment${Math.floor(at / 2)}`,
      inHand: next() < 0.3,
      expected: next() < 0.02 ? null : addDays(today, earliest + one),
    })),
    goAhead: next() < 0.2 ? { expectedOn: addDays(today, Math.floor(next() * 20)) } : 'given',
    after: at % perVehicle > 0 && next() < 0.15 ? [id(at - 1)] : [],
    limits: next() < 0.6 ? [{ kind: 'day', day: addDays(today, Math.floor(next() * 300)) }] : [],
  };
}

function shop(followUps: number): ReturnsInput {
  const next = generator(20_261_125);
  const days = workingDays();
  const rows = Array.from({ length: followUps }, (_, at) => followUp(at, next));
  const asked = rows.reduce((sum, one) => sum + one.bayMinutes, 0);
  return {
    today,
    workingDays: days,
    followUps: rows,
    customersDays: Array.from({ length: followUps / perVehicle / 10 }, (_, at) => ({
      vehicleId: `vehicle${at * 10}`,
      weekdays: ['mon', 'thu'] as const,
      notOn: [],
    })),
    freeBayMinutes: new Map(days.map((day) => [day, asked / 0.85 / days.length])),
    chanceHere: () => 0.8,
  };
}

interface Times {
  readonly wallMs: number;
  /** processor time of this process, garbage collection on other threads too: what a busy machine does not stretch */
  readonly cpuMs: number;
}

function median(times: readonly number[]): number {
  return percentile(
    [...times].sort((a, b) => a - b),
    0.5,
  );
}

function timesOf(input: ReturnsInput): Times {
  const wall: number[] = [];
  const cpu: number[] = [];
  for (let run = 0; run < runs; run += 1) {
    const [began, before] = [performance.now(), process.cpuUsage()];
    proposeReturns(input);
    const used = process.cpuUsage(before);
    wall.push(performance.now() - began);
    cpu.push((used.user + used.system) / 1000);
  }
  return { wallMs: median(wall), cpuMs: median(cpu) };
}

export function benchReturns(): Promise<BenchLine> {
  const input = shop(followUpsAsked);
  const { freeBayMinutes: _, ...unbounded } = input;
  const half = timesOf(shop(followUpsAsked / 2));
  const whole = timesOf(input);
  const twice = timesOf(shop(followUpsAsked * 2));
  const proposal = proposeReturns(input);
  const growth = twice.cpuMs / whole.cpuMs;
  return Promise.resolve({
    name: 'returns',
    followUps: followUpsAsked,
    vehicles: followUpsAsked / perVehicle,
    medianMs: round(whole.cpuMs, 1),
    wallMs: round(whole.wallMs, 1),
    unboundedMs: round(timesOf(unbounded).cpuMs, 1),
    halfMs: round(half.cpuMs, 1),
    twiceMs: round(twice.cpuMs, 1),
    growth: round(growth),
    returns: proposal.returns.length,
    empty: proposal.empty.length,
    notPlanned: proposal.notPlanned.length,
    ratio: null,
    target: `≤ ${longestMs} ms of processor time; twice as many ≤ ${longestGrowth} times as long`,
    holds: whole.cpuMs <= longestMs && growth <= longestGrowth,
  });
}
