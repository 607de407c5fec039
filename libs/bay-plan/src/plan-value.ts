/** What a plan is worth by its lines: what does not fit before the horizon is counted as unplaced and nothing else. */
import type { PlanModel } from './model.js';
import type { PlanValue, PlannedLine } from './plan.js';
import { minuteMs } from './compile.js';

interface Traces {
  readonly vehicleAt: Map<string, string | null>;
  readonly inSpot: Map<string, string>;
  readonly peopleOf: Map<string, readonly string[]>;
}

/** Whether the vehicle is brought in for the line; the traces follow. */
function broughtIn({ jobId, spotId }: PlannedLine, { vehicleAt, inSpot }: Traces): boolean {
  const brought = spotId !== null && (vehicleAt.get(jobId) !== spotId || inSpot.get(spotId) !== jobId);
  vehicleAt.set(jobId, spotId);
  if (spotId !== null) inSpot.set(spotId, jobId);
  return brought;
}

function otherPeople({ jobId, personIds }: PlannedLine, { peopleOf }: Traces): boolean {
  if (personIds.length === 0) return false;
  const before = peopleOf.get(jobId);
  peopleOf.set(jobId, personIds);
  return before !== undefined && personIds.every((id) => !before.includes(id));
}

function tardiness(model: PlanModel, lines: readonly PlannedLine[]): number {
  const ends = new Map<string, number>();
  for (const { jobId, to } of lines) ends.set(jobId, Math.max(to, ends.get(jobId) ?? to));
  let sum = 0;
  for (const { jobId, promisedAt, weight } of model.jobs) {
    const late = promisedAt === null ? 0 : (ends.get(jobId) ?? promisedAt) - promisedAt;
    sum += weight * Math.max(0, late);
  }
  // Divided once, so that equal plans have equal values to the last digit.
  return sum / minuteMs;
}

/** `lines` by start. */
export function valueOfLines(
  model: PlanModel,
  lines: readonly PlannedLine[],
  unplaced: number,
  disturbedLines: number,
): PlanValue {
  const traces: Traces = { vehicleAt: new Map(), inSpot: new Map(), peopleOf: new Map() };
  for (const { jobId, stands } of model.jobs) {
    if (stands === null) continue;
    traces.vehicleAt.set(jobId, stands.spotId);
    traces.inSpot.set(stands.spotId, jobId);
  }
  const homes = new Map(model.people.map((person) => [person.personId, person.homeBayId]));
  const bays = new Map(model.spots.map((spot) => [spot.spotId, spot.bayId]));
  const away = ({ spotId, personIds }: PlannedLine) =>
    spotId !== null && personIds.some((id) => homes.get(id) != null && homes.get(id) !== bays.get(spotId));
  return {
    weightedTardinessMinutes: tardiness(model, lines),
    disturbedLines,
    moves: lines.filter((line) => broughtIn(line, traces)).length,
    technicianChanges: lines.filter((line) => otherPeople(line, traces)).length,
    awayFromHome: lines.filter(away).length,
    finishMinutes: lines.reduce((last, { to }) => Math.max(last, (to - model.now) / minuteMs), 0),
    unplaced,
  };
}
