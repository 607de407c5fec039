/** The checker's own count of what a plan is worth. */
import type { CheckedLine } from './checked-line.js';
import type { PlanModel } from './model.js';
import type { Plan, PlanValue } from './plan.js';

const minute = 60_000;

export function recount(
  model: PlanModel,
  plan: Plan,
  lines: readonly CheckedLine[],
): Omit<PlanValue, 'disturbedLines'> {
  const inOrder = [...lines].sort((a, b) => a.planned.from - b.planned.from);
  const vehicleAt = new Map(model.jobs.map((job) => [job.jobId, job.stands?.spotId ?? null]));
  const inSpot = new Map(model.jobs.map((job) => [job.stands?.spotId ?? '', job.jobId]));
  const peopleBefore = new Map<string, readonly string[]>();
  const homes = new Map(model.people.map((person) => [person.personId, person.homeBayId]));
  const bays = new Map(model.spots.map((spot) => [spot.spotId, spot.bayId]));
  let moves = 0;
  let technicianChanges = 0;
  let awayFromHome = 0;
  for (const { planned, job } of inOrder) {
    const { spotId, personIds } = planned;
    if (spotId !== null) {
      if (vehicleAt.get(job.jobId) !== spotId || inSpot.get(spotId) !== job.jobId) moves += 1;
      inSpot.set(spotId, job.jobId);
      const strange = (id: string) => homes.get(id) != null && homes.get(id) !== bays.get(spotId);
      if (personIds.some(strange)) awayFromHome += 1;
    }
    vehicleAt.set(job.jobId, spotId);
    if (personIds.length === 0) continue;
    const before = peopleBefore.get(job.jobId);
    if (before !== undefined && !personIds.some((id) => before.includes(id))) technicianChanges += 1;
    peopleBefore.set(job.jobId, personIds);
  }
  let weightedTardinessMinutes = 0;
  for (const job of model.jobs) {
    const ends = lines.filter((one) => one.job === job).map((one) => one.planned.to);
    if (job.promisedAt === null || ends.length === 0) continue;
    weightedTardinessMinutes += (job.weight * Math.max(0, Math.max(...ends) - job.promisedAt)) / minute;
  }
  return {
    weightedTardinessMinutes,
    moves,
    technicianChanges,
    awayFromHome,
    finishMinutes: Math.max(0, ...lines.map((one) => (one.planned.to - model.now) / minute)),
    unplaced: plan.unplaced.length,
  };
}
