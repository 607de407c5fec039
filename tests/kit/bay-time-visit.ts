/** One visit of an invented shop for bay time: its lines, answers, holds, clocks and stays, with all that can happen. */
import type { TableName } from '@holdfast/domain';
import type { Calendar } from '@holdfast/shop-calendar';
import type { Chance } from '../../apps/server/src/demo/chance.js';

const minute = 60_000;

export class Invented {
  readonly rows: Partial<Record<TableName, object[]>> = {};
  readonly shopId: string;
  private jobs = 0;

  constructor(
    readonly chance: Chance,
    readonly from: number,
    readonly calendar: Calendar,
  ) {
    this.shopId = chance.id(from);
  }

  /** One row; returns its id. `at`: recorded then (epoch ms). */
  add(table: TableName, at: number, row: Readonly<Record<string, unknown>>): string {
    const id = this.chance.id(at);
    (this.rows[table] ??= []).push({ id, version: 1, void: false, recordedAt: at, effectiveAt: at, ...row });
    return id;
  }

  nextNumber(): number {
    return (this.jobs += 1);
  }

  /** So many open minutes later. */
  later(from: number, minutes: number): number {
    const at = this.calendar.instantAfter(this.calendar.nextOpen(from) ?? from, minutes);
    if (at === null) throw new RangeError('The invented shop never opens.');
    return at;
  }
}

interface Crew {
  readonly technician: string;
  readonly helper: string;
}

interface JobAtHand {
  readonly jobId: string;
  readonly vehicleId: string;
}

type WorkLine = { id: string; title: string; endedAt: number | null };

interface LinesOfJob {
  readonly job: JobAtHand;
  readonly at: number;
  /** the first two lines are ways to one end; null: every line is for itself */
  readonly choiceId: string | null;
}

function addLine(shop: Invented, { job, at, choiceId }: LinesOfJob, before: readonly WorkLine[]): WorkLine {
  const { chance } = shop;
  const position = before.length + 1;
  const addedAt = position === 1 || chance.odds(0.8) ? at : shop.later(at, chance.between(10, 90));
  const asked = chance.odds(0.75);
  const follows = choiceId === null && chance.odds(0.15);
  const id = shop.add('workLine', addedAt, {
    ...job,
    title: `Work ${position}`,
    position,
    payer: 'customer',
    choiceId: position <= 2 ? choiceId : null,
    afterLineId: follows ? (before.at(-1)?.id ?? null) : null,
    progress: 'planned',
    goAhead: asked ? 'withCustomer' : chance.odds(0.9) ? 'given' : 'deferred',
    bookMinutes: chance.between(2, 20) * 15,
    endedAt: null,
  });
  if (asked) {
    const row = { jobId: job.jobId, lineId: id };
    shop.add('goAhead', addedAt, { ...row, answer: 'withCustomer' });
    const answer = chance.odds(0.9) ? 'given' : chance.of(['deferred', 'declined']);
    const settled = choiceId !== null && position === 2;
    if (!settled) shop.add('goAhead', shop.later(addedAt, chance.between(3, 120)), { ...row, answer });
  }
  return shop.rows.workLine?.at(-1) as WorkLine;
}

function addLines(shop: Invented, job: JobAtHand, at: number): WorkLine[] {
  const count = shop.chance.between(1, 3);
  const choiceId = count > 1 && shop.chance.odds(0.08) ? 'ways' : null;
  const lines: WorkLine[] = [];
  while (lines.length < count) lines.push(addLine(shop, { job, at, choiceId }, lines));
  return lines;
}

interface HoldFromTo {
  readonly reason: string;
  readonly from: number;
  readonly to: number;
}

function addHold(shop: Invented, job: JobAtHand, { reason, from, to }: HoldFromTo, lines: readonly WorkLine[]) {
  const holdId = shop.add('hold', from, { ...job, reason, fromAt: from, toAt: to });
  for (const line of lines) shop.add('holdLine', from, { holdId, jobId: job.jobId, lineId: line.id });
}

/** One line: perhaps held, then worked in one or several goes. Returns when it is done. */
function workOn(shop: Invented, job: JobAtHand, line: WorkLine, crew: Crew, from: number): number {
  const { chance } = shop;
  let at = shop.later(from, chance.of([0, 0, 5, 10, 25, 60]));
  if (chance.odds(0.25)) {
    const until = shop.later(at, chance.of([30, 90, 240, 600, 1500]));
    addHold(shop, job, { reason: 'parts', from: at, to: until }, chance.odds(0.7) ? [line] : []);
    if (chance.odds(0.4)) {
      const second = shop.later(at, chance.between(0, 60));
      const reason = chance.of(['tool', 'information', 'sublet']);
      addHold(shop, job, { reason, from: second, to: shop.later(second, 120) }, [line]);
    }
    at = until;
  }
  for (let goes = chance.between(1, 3); goes > 0; goes -= 1) {
    const to = at + chance.between(10, 150) * minute;
    const bench = chance.odds(0.06);
    shop.add('clock', at, { ...clockOf(job, line, crew.technician), bench, fromAt: at, toAt: to });
    if (chance.odds(0.2)) {
      const [begin, end] = [at + 5 * minute, to + chance.of([-4, 0, 12]) * minute];
      shop.add('clock', begin, { ...clockOf(job, line, crew.helper), bench: false, fromAt: begin, toAt: end });
      at = Math.max(to, end);
    } else at = to;
    line.endedAt = at;
    at = shop.later(at, chance.of([0, 3, 15, 40]));
  }
  return at;
}

function clockOf({ jobId }: JobAtHand, line: WorkLine, personId: string) {
  return { jobId, lineId: line.id, personId };
}

export interface Stall {
  readonly bayId: string;
  readonly spot: number;
  readonly crew: Crew;
}

interface StayFromTo {
  readonly kind: 'stands' | 'kept';
  readonly from: number;
  readonly to: number;
}

function addStay(shop: Invented, job: JobAtHand, { bayId, spot }: Stall, stay: StayFromTo) {
  const { kind, from, to } = stay;
  if (from < to) shop.add('spotUse', from, { ...job, bayId, spot, kind, fromAt: from, toAt: to });
}

/** One visit in one spot, from `at` on. Returns when the spot is free. */
export function visitIn(shop: Invented, stall: Stall, vehicleId: string, at: number): number {
  const { chance } = shop;
  const internal = chance.odds(0.04);
  const jobId = shop.add('job', at, {
    number: shop.nextNumber(),
    vehicleId,
    kind: internal ? 'internal' : chance.odds(0.05) ? 'comeback' : 'normal',
    arrivedAt: at,
    checkedInAt: at,
    waitsHere: false,
    odometerUnit: 'mi',
    storedHere: internal,
    endedAt: null,
  });
  const job = { jobId, vehicleId };
  const row = shop.rows.job?.at(-1) as { endedAt: number | null };
  const lines = addLines(shop, job, at);
  if (chance.odds(0.04)) {
    const from = shop.later(at, 20);
    shop.add('sublet', from, {
      ...job,
      form: 'outsiderIn',
      firm: 'Glass from outside',
      state: 'ended',
      fromAt: from,
      toAt: shop.later(from, 45),
    });
  }
  let [free, stands] = [at, at];
  for (const line of lines) {
    free = workOn(shop, job, line, stall.crew, free);
    if (!chance.odds(0.1)) continue;
    addStay(shop, job, stall, { kind: 'stands', from: stands, to: free });
    stands = free + chance.between(10, 30) * minute;
    addStay(shop, job, stall, { kind: 'kept', from: free, to: stands });
    free = stands;
  }
  if (chance.odds(0.3)) {
    const until = shop.later(free, chance.of([20, 60, 400]));
    addHold(shop, job, { reason: 'collection', from: free, to: until }, []);
    free = until;
  }
  free = Math.max(free + minute, ...lines.map((line) => (line.endedAt ?? 0) + minute));
  addStay(shop, job, stall, { kind: 'stands', from: stands, to: free });
  row.endedAt = free;
  return free;
}
