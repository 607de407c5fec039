/** What makes a model one that cannot be planned, in codes and facts. An empty list: it can. */
import { withAllBefore } from './line-options.js';
import type { PlanJob, PlanLine, PlanModel } from './model.js';
import { minutesOn, needsSpot, peopleNeeded } from './suitability.js';
import { WorkCalendars, alwaysOpen } from './work-calendars.js';

export type ModelFault =
  | { readonly code: 'sameIdTwice'; readonly id: string }
  | { readonly code: 'unknownId'; readonly id: string; readonly lineId?: string }
  | { readonly code: 'linesInACircle'; readonly jobId: string; readonly lineId: string }
  | { readonly code: 'noWholeMinutes'; readonly lineId: string }
  | { readonly code: 'badShare'; readonly freeShare: number }
  | { readonly code: 'badWeight'; readonly jobId: string }
  | { readonly code: 'horizonInThePast' }
  | { readonly code: 'noSlots'; readonly lineId: string }
  | { readonly code: 'twoVehiclesInOneSpot'; readonly spotId: string }
  | { readonly code: 'fixedPeopleMissing'; readonly lineId: string; readonly needed: number }
  | { readonly code: 'fixedSpotMissing'; readonly lineId: string }
  | { readonly code: 'fixedStartInThePast'; readonly lineId: string }
  | { readonly code: 'fixedStartBeforeOthers'; readonly lineId: string; readonly before: string }
  | { readonly code: 'fixedStartsClash'; readonly lineId: string; readonly with: string }
  | { readonly code: 'fixedSpotWhereAnotherStays'; readonly lineId: string; readonly spotId: string }
  | { readonly code: 'fixedSpotOtherThanWhereItStays'; readonly lineId: string; readonly spotId: string };

type Sink = (fault: ModelFault) => void;

function idFaults(model: PlanModel, add: Sink): void {
  const twice = (ids: readonly string[]) => {
    const seen = new Set<string>();
    for (const id of ids) {
      if (seen.has(id)) add({ code: 'sameIdTwice', id });
      seen.add(id);
    }
  };
  twice(model.spots.map((spot) => spot.spotId));
  twice(model.people.map((person) => person.personId));
  twice(model.jobs.map((job) => job.jobId));
  for (const job of model.jobs) twice(job.lines.map((line) => line.lineId));
}

function lineFaults(model: PlanModel, job: PlanJob, line: PlanLine, add: Sink): void {
  const { lineId, fixed, sublet } = line;
  const whole = (minutes: number) => Number.isInteger(minutes) && minutes >= 1;
  const minutes = [line.workMinutes, ...Object.values(line.minutesBySpot ?? {})];
  if (!minutes.every(whole)) add({ code: 'noWholeMinutes', lineId });
  const known = new Set(job.lines.map((one) => one.lineId));
  for (const id of [...line.after, ...(line.keepsBayUntil === null ? [] : [line.keepsBayUntil])]) {
    if (!known.has(id)) add({ code: 'unknownId', id, lineId });
  }
  if (line.after.some((id) => withAllBefore(job, id).has(lineId))) {
    add({ code: 'linesInACircle', jobId: job.jobId, lineId });
  }
  if (sublet?.slots.length === 0) add({ code: 'noSlots', lineId });
  if (fixed === null) return;
  const spots = new Set(model.spots.map((spot) => spot.spotId));
  if (fixed.spotId !== undefined && !spots.has(fixed.spotId)) add({ code: 'unknownId', id: fixed.spotId, lineId });
  const people = new Set(model.people.map((person) => person.personId));
  for (const id of fixed.personIds ?? []) if (!people.has(id)) add({ code: 'unknownId', id, lineId });
  const needed = peopleNeeded(line);
  const count = new Set(fixed.personIds ?? []).size;
  const missing = fixed.personIds === undefined ? fixed.startsAt !== undefined && needed > 0 : count !== needed;
  if (missing && sublet === null) add({ code: 'fixedPeopleMissing', lineId, needed });
  if (fixed.startsAt === undefined) return;
  if (fixed.spotId === undefined && needsSpot(line)) add({ code: 'fixedSpotMissing', lineId });
  if (fixed.startsAt < model.now) add({ code: 'fixedStartInThePast', lineId });
  if (sublet !== null && !sublet.slots.some((slot) => slot.from === fixed.startsAt)) add({ code: 'noSlots', lineId });
  for (const id of withAllBefore(job, lineId)) {
    const before = job.lines.find((one) => one.lineId === id);
    if (id !== lineId && before?.fixed?.startsAt === undefined) {
      add({ code: 'fixedStartBeforeOthers', lineId, before: id });
    }
  }
}

/** Whether nobody else can have the spot until lines of the job are done. */
const staysForLines = (job: PlanJob) => {
  const until = job.stands?.staysUntil ?? null;
  return until !== null && (until === 'done' || 'lineId' in until);
};

function standFaults(model: PlanModel, add: Sink): void {
  const stays = new Map<string, PlanJob>();
  for (const job of model.jobs) {
    if (job.stands === null) continue;
    const { spotId, staysUntil } = job.stands;
    if (!model.spots.some((spot) => spot.spotId === spotId)) add({ code: 'unknownId', id: spotId });
    if (stays.has(spotId)) add({ code: 'twoVehiclesInOneSpot', spotId });
    stays.set(spotId, job);
    if (staysUntil === null || staysUntil === 'done' || 'at' in staysUntil) continue;
    if (!job.lines.some((line) => line.lineId === staysUntil.lineId)) add({ code: 'unknownId', id: staysUntil.lineId });
  }
  for (const job of model.jobs) {
    for (const line of job.lines) {
      const spotId = line.fixed?.spotId;
      if (spotId === undefined) continue;
      const there = stays.get(spotId);
      const until = there?.stands?.staysUntil ?? null;
      const startsAt = line.fixed?.startsAt ?? Infinity;
      const stillThere = until !== null && until !== 'done' && 'at' in until && startsAt < until.at;
      if (there !== undefined && there !== job && (staysForLines(there) || stillThere)) {
        add({ code: 'fixedSpotWhereAnotherStays', lineId: line.lineId, spotId });
      }
      const bound = job.stands !== null && job.stands.spotId !== spotId && staysForLines(job);
      if (bound) add({ code: 'fixedSpotOtherThanWhereItStays', lineId: line.lineId, spotId });
    }
  }
}

export function faultsInModel(model: PlanModel): readonly ModelFault[] {
  const faults: ModelFault[] = [];
  const add: Sink = (fault) => faults.push(fault);
  if (!(model.horizon > model.now)) add({ code: 'horizonInThePast' });
  if (!(model.freeShare >= 0 && model.freeShare < 1)) add({ code: 'badShare', freeShare: model.freeShare });
  idFaults(model, add);
  for (const job of model.jobs) {
    if (!Number.isInteger(job.weight) || job.weight < 0) add({ code: 'badWeight', jobId: job.jobId });
    for (const line of job.lines) lineFaults(model, job, line, add);
  }
  standFaults(model, add);
  for (const job of model.jobs) keptFaults(job, add);
  clashFaults(model, add);
  return faults;
}

/** Another vehicle is to have the spot at a fixed time from which the first cannot leave until other lines are done. */
function keptFrom(job: PlanJob, line: PlanLine, otherJob: PlanJob, other: PlanLine): boolean {
  const spotId = line.fixed?.spotId;
  return line.keepsBayUntil !== null && job !== otherJob && spotId !== undefined && spotId === other.fixed?.spotId;
}

/** A line has a fixed start in a spot that the vehicle may not be able to reach by then. */
function keptFaults(job: PlanJob, add: Sink): void {
  for (const line of job.lines) {
    if (line.keepsBayUntil === null) continue;
    const before = withAllBefore(job, line.lineId);
    for (const other of job.lines) {
      if (before.has(other.lineId) || other.fixed?.startsAt === undefined) continue;
      if (other.fixed.spotId !== undefined && other.fixed.spotId === line.fixed?.spotId) continue;
      add({ code: 'fixedStartsClash', lineId: other.lineId, with: line.lineId });
    }
  }
}

/** Two fixed starts for one spot, person, tool or vehicle, the second before the first is worked off at the soonest. */
function clashFaults(model: PlanModel, add: Sink): void {
  const calendars = new WorkCalendars(model.horizon);
  const fixed = model.jobs.flatMap((job) =>
    job.lines.flatMap((line) => {
      const from = line.fixed?.startsAt;
      if (from === undefined) return [];
      const slot = line.sublet?.slots.find((one) => one.from === from);
      const spot = model.spots.find((other) => other.spotId === line.fixed?.spotId);
      const who = line.sublet === null ? (line.fixed?.personIds ?? []) : [];
      const days = [
        spot?.open ?? null,
        ...who.map((id) => model.people.find((one) => one.personId === id)?.open ?? null),
      ];
      const calendar = days.reduce((both, open) => calendars.both(both, calendars.add(open)), alwaysOpen);
      const to = slot?.to ?? calendars.finish(calendar, from, minutesOn(line, spot?.spotId ?? '') * 60_000);
      return [{ job, line, from, to }];
    }),
  );
  fixed.sort((a, b) => a.from - b.from);
  fixed.forEach((one, i) => {
    for (const other of fixed.slice(i + 1)) {
      if (keptFrom(one.job, one.line, other.job, other.line)) {
        add({ code: 'fixedStartsClash', lineId: other.line.lineId, with: one.line.lineId });
      }
      if (other.from >= one.to) continue;
      const people = one.line.fixed?.personIds ?? [];
      const shared =
        one.job === other.job ||
        (one.line.fixed?.spotId !== undefined && one.line.fixed.spotId === other.line.fixed?.spotId) ||
        people.some((id) => other.line.fixed?.personIds?.includes(id)) ||
        one.line.toolIds.some((id) => other.line.toolIds.includes(id));
      if (shared) add({ code: 'fixedStartsClash', lineId: other.line.lineId, with: one.line.lineId });
    }
  });
}
