/** For each line where it may go and who may do it, after the rules about vehicles that have to stay; and what has no place. */
import type { PlanJob, PlanLine, PlanModel } from './model.js';
import type { UnplacedLine } from './plan.js';
import { needsSpot, peopleNeeded, personSuits, spotUnsuited } from './suitability.js';

export interface LineOptions {
  readonly job: PlanJob;
  readonly line: PlanLine;
  /** indexes into `model.spots`; empty where the vehicle is away */
  readonly spots: readonly number[];
  /** indexes into `model.people` */
  readonly people: readonly number[];
}

/** The line and all that come before it, by id. */
export function withAllBefore(job: PlanJob, lineId: string): Set<string> {
  const byId = new Map(job.lines.map((line) => [line.lineId, line]));
  const found = new Set<string>();
  const open = [lineId];
  for (let id = open.pop(); id !== undefined; id = open.pop()) {
    const line = byId.get(id);
    if (line === undefined || found.has(id)) continue;
    found.add(id);
    open.push(...line.after);
  }
  return found;
}

/** The spot to which a line is bound by where its vehicle stands, or null. */
function boundTo(job: PlanJob, line: PlanLine, stuck: boolean): string | null {
  if (stuck) return job.stands?.spotId ?? null;
  const until = job.stands?.staysUntil;
  if (job.stands === null || until === null || until === undefined) return null;
  if (until === 'done') return job.stands.spotId;
  if ('at' in until) return null;
  return withAllBefore(job, until.lineId).has(line.lineId) ? job.stands.spotId : null;
}

function ownSpots(model: PlanModel, job: PlanJob, line: PlanLine, stuck: boolean): number[] {
  if (!needsSpot(line)) return [];
  const bound = boundTo(job, line, stuck);
  const out: number[] = [];
  model.spots.forEach((spot, i) => {
    if (line.fixed?.spotId !== undefined) {
      if (line.fixed.spotId === spot.spotId) out.push(i);
    } else if ((bound === null || bound === spot.spotId) && spotUnsuited(job, line, spot) === null) out.push(i);
  });
  return out;
}

/** A line that keeps the bay may only start where all can be done that has to follow before the vehicle can leave. */
function narrowKept(job: PlanJob, spots: Map<string, readonly number[]>): void {
  for (const line of job.lines) {
    if (line.keepsBayUntil === null) continue;
    const before = withAllBefore(job, line.lineId);
    let allowed = spots.get(line.lineId) ?? [];
    for (const id of withAllBefore(job, line.keepsBayUntil)) {
      if (!before.has(id)) allowed = allowed.filter((spot) => (spots.get(id) ?? []).includes(spot));
    }
    spots.set(line.lineId, allowed);
  }
}

function ownPeople(model: PlanModel, line: PlanLine): number[] {
  const fixed = line.sublet === null ? line.fixed?.personIds : undefined;
  const out: number[] = [];
  model.people.forEach((person, i) => {
    if (fixed === undefined ? personSuits(line, person) : fixed.includes(person.personId)) out.push(i);
  });
  return out;
}

export interface AllOptions {
  readonly placeable: readonly LineOptions[];
  readonly unplaced: readonly UnplacedLine[];
}

interface JobOptions {
  readonly spots: ReadonlyMap<string, readonly number[]>;
  readonly people: ReadonlyMap<string, readonly number[]>;
  readonly reasons: ReadonlyMap<string, UnplacedLine['reason']>;
}

/** Whether a line has to wait for one without a place, or would tear down what could not be put together again. */
function needsUnplaced(job: PlanJob, line: PlanLine, reasons: ReadonlyMap<string, unknown>): boolean {
  const needed = withAllBefore(job, line.lineId);
  if (line.keepsBayUntil !== null) for (const id of withAllBefore(job, line.keepsBayUntil)) needed.add(id);
  needed.delete(line.lineId);
  return [...needed].some((id) => reasons.has(id));
}

function optionsOfJob(model: PlanModel, job: PlanJob, blocked: ReadonlySet<number>, stuck = false): JobOptions {
  const spots = new Map<string, readonly number[]>();
  for (const line of job.lines) {
    const own = ownSpots(model, job, line, stuck);
    const free = own.filter((s) => !blocked.has(s) || model.spots[s]?.spotId === job.stands?.spotId);
    spots.set(line.lineId, free);
  }
  narrowKept(job, spots);
  const reasons = new Map<string, UnplacedLine['reason']>();
  const people = new Map<string, readonly number[]>();
  for (const line of job.lines) {
    const who = ownPeople(model, line);
    people.set(line.lineId, who);
    const nowhere = needsSpot(line) ? spots.get(line.lineId)?.length === 0 : boundTo(job, line, stuck) !== null;
    if (nowhere) reasons.set(line.lineId, 'noSpotSuits');
    else if (who.length < peopleNeeded(line)) reasons.set(line.lineId, 'nobodySuits');
  }
  while (job.lines.some((line) => !reasons.has(line.lineId) && needsUnplaced(job, line, reasons))) {
    for (const line of job.lines) {
      if (!reasons.has(line.lineId) && needsUnplaced(job, line, reasons)) reasons.set(line.lineId, 'afterUnplaced');
    }
  }
  // A vehicle that never leaves can have its other lines done where it stands, and nowhere else.
  if (!stuck && neverLeaves(job, reasons)) return optionsOfJob(model, job, blocked, true);
  return { spots, people, reasons };
}

function neverLeaves(job: PlanJob, reasons: ReadonlyMap<string, unknown>): boolean {
  const until = job.stands?.staysUntil;
  if (until === null || until === undefined || (until !== 'done' && 'at' in until)) return false;
  return until === 'done' ? reasons.size > 0 : [...withAllBefore(job, until.lineId)].some((id) => reasons.has(id));
}

export function lineOptions(model: PlanModel): AllOptions {
  // Spots that a vehicle never leaves, because a line without which it cannot leave has no place.
  const blockedSpots = new Set<number>();
  for (;;) {
    const placeable: LineOptions[] = [];
    const unplaced: UnplacedLine[] = [];
    const before = blockedSpots.size;
    for (const job of model.jobs) {
      const { spots, people, reasons } = optionsOfJob(model, job, blockedSpots);
      for (const line of job.lines) {
        const reason = reasons.get(line.lineId);
        if (reason !== undefined) unplaced.push({ jobId: job.jobId, lineId: line.lineId, reason });
        else {
          const of = { spots: spots.get(line.lineId) ?? [], people: people.get(line.lineId) ?? [] };
          placeable.push({ job, line, ...of });
        }
      }
      const stand = model.spots.findIndex((spot) => spot.spotId === job.stands?.spotId);
      if (neverLeaves(job, reasons)) blockedSpots.add(stand);
    }
    // A blocked spot can leave another vehicle without a place, which blocks its own: until nothing changes.
    if (blockedSpots.size === before) return { placeable, unplaced };
  }
}
