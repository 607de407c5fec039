/** What makes a model unplannable in what somebody has settled about its lines: spot, people, start. */
import { withAllBefore } from './line-options.js';
import type { FaultSink } from './model-fault.js';
import type { FixedChoice, PlanJob, PlanLine, PlanModel } from './model.js';
import { minutesOn, needsSpot, peopleNeeded } from './suitability.js';
import { WorkCalendars, alwaysOpen } from './work-calendars.js';

function peopleFaults(model: PlanModel, line: PlanLine, fixed: FixedChoice, add: FaultSink): void {
  const { lineId } = line;
  const people = new Set(model.people.map((person) => person.personId));
  for (const id of fixed.personIds ?? []) if (!people.has(id)) add({ code: 'unknownId', id, lineId });
  const needed = peopleNeeded(line);
  const count = new Set(fixed.personIds ?? []).size;
  const missing = fixed.personIds === undefined ? fixed.startsAt !== undefined && needed > 0 : count !== needed;
  if (missing && line.sublet === null) add({ code: 'fixedPeopleMissing', lineId, needed });
}

function startFaults(model: PlanModel, job: PlanJob, line: PlanLine, startsAt: number, add: FaultSink): void {
  const { lineId, sublet } = line;
  if (line.fixed?.spotId === undefined && needsSpot(line)) add({ code: 'fixedSpotMissing', lineId });
  if (startsAt < model.now) add({ code: 'fixedStartInThePast', lineId });
  if (sublet !== null && !sublet.slots.some((slot) => slot.from === startsAt)) add({ code: 'noSlots', lineId });
  for (const id of withAllBefore(job, lineId)) {
    const before = job.lines.find((one) => one.lineId === id);
    if (id !== lineId && before?.fixed?.startsAt === undefined) {
      add({ code: 'fixedStartBeforeOthers', lineId, before: id });
    }
  }
}

export function choiceFaults(model: PlanModel, job: PlanJob, line: PlanLine, add: FaultSink): void {
  const { lineId, fixed } = line;
  if (fixed === null) return;
  const spots = new Set(model.spots.map((spot) => spot.spotId));
  if (fixed.spotId !== undefined && !spots.has(fixed.spotId)) add({ code: 'unknownId', id: fixed.spotId, lineId });
  peopleFaults(model, line, fixed, add);
  if (fixed.startsAt !== undefined) startFaults(model, job, line, fixed.startsAt, add);
}

/** Another vehicle is to have the spot at a fixed time from which the first cannot leave until other lines are done. */
function keptFrom(job: PlanJob, line: PlanLine, otherJob: PlanJob, other: PlanLine): boolean {
  const spotId = line.fixed?.spotId;
  return line.keepsBayUntil !== null && job !== otherJob && spotId !== undefined && spotId === other.fixed?.spotId;
}

/** A line has a fixed start in a spot that the vehicle may not be able to reach by then. */
export function keptFaults(job: PlanJob, add: FaultSink): void {
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
export function clashFaults(model: PlanModel, add: FaultSink): void {
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
