/** The checker's part about vehicles that stand somewhere: who has to stay stays, and moves are given their time. */
import type { CheckedLine, Report } from './checked-line.js';
import { openIn, plannableTime } from './check-times.js';
import type { PlanModel } from './model.js';

const minute = 60_000;

function byStart(lines: readonly CheckedLine[]): CheckedLine[] {
  return [...lines].sort((a, b) => a.planned.from - b.planned.from);
}

/** Nobody else's line in the spot begins in [from, to), and the vehicle's own lines that do are there. */
function staysThere(
  lines: readonly CheckedLine[],
  stay: { jobId: string; spotId: string; from: number; to: number },
  report: Report,
): void {
  for (const { planned, job, line } of lines) {
    if (planned.to <= stay.from || planned.from >= stay.to) continue;
    if (job.jobId === stay.jobId && planned.spotId !== stay.spotId)
      report('vehicleCannotLeave', line.lineId, stay.spotId);
    if (job.jobId !== stay.jobId && planned.spotId === stay.spotId) report('vehicleStaysHere', line.lineId, stay.jobId);
  }
}

function checkStanding(model: PlanModel, lines: readonly CheckedLine[], report: Report): void {
  for (const job of model.jobs) {
    const until = job.stands?.staysUntil ?? null;
    if (job.stands === null || until === null) continue;
    const own = lines.filter((one) => one.job === job);
    const placed = (lineId: string) => own.find((one) => one.line.lineId === lineId)?.planned.to ?? Infinity;
    let to = 0;
    if (until === 'done') to = Math.max(0, ...job.lines.map((line) => placed(line.lineId)));
    else to = 'at' in until ? until.at : placed(until.lineId);
    staysThere(lines, { jobId: job.jobId, spotId: job.stands.spotId, from: model.now, to }, report);
  }
}

function checkKept(lines: readonly CheckedLine[], report: Report): void {
  for (const { planned, job, line } of lines) {
    if (line.keepsBayUntil === null || planned.spotId === null) continue;
    const last = lines.find((one) => one.job === job && one.line.lineId === line.keepsBayUntil);
    const to = last === undefined ? Infinity : Math.max(last.planned.to, planned.to);
    if (last !== undefined && last.planned.to <= planned.from) continue;
    staysThere(lines, { jobId: job.jobId, spotId: planned.spotId, from: planned.from, to }, report);
  }
}

/** From when a vehicle can be brought to where the line is done: it and the spot are free. null: it is there already. */
function freeForMove(model: PlanModel, lines: readonly CheckedLine[], one: CheckedLine): number | null {
  const { planned, job } = one;
  const earlier = byStart(lines.filter((other) => other !== one && other.planned.from < planned.from));
  const own = earlier.filter((other) => other.job === job).at(-1);
  const there = earlier.filter((other) => other.planned.spotId === planned.spotId).at(-1);
  const vehicleAt = own === undefined ? (job.stands?.spotId ?? null) : own.planned.spotId;
  const standing = model.jobs.find((other) => other.stands?.spotId === planned.spotId);
  const inSpot = there === undefined ? standing : there.job;
  if (vehicleAt === planned.spotId && inSpot === job) return null;
  return Math.max(model.now, job.arrivesAt, own?.planned.to ?? 0, there?.planned.to ?? 0);
}

/** A vehicle that is brought into a bay takes its time, from when both it and the bay are free. */
function checkMoves(model: PlanModel, lines: readonly CheckedLine[], report: Report): void {
  const plannable = new Map(model.spots.map((spot) => [spot.spotId, plannableTime(model, spot)]));
  for (const one of byStart(lines)) {
    const { planned, line } = one;
    if (planned.spotId === null || line.fixed?.startsAt !== undefined) continue;
    const free = freeForMove(model, lines, one);
    if (free === null) continue;
    const open = plannable.get(planned.spotId) ?? null;
    if (openIn(open, free, planned.from) < model.moveMinutes * minute) report('noTimeToMove', line.lineId);
  }
}

export function checkStays(model: PlanModel, lines: readonly CheckedLine[], report: Report): void {
  checkStanding(model, lines, report);
  checkKept(lines, report);
  checkMoves(model, lines, report);
}
