/** The plan that is made again, as the solver reads it. */
import { type Compiled, minuteMs, none } from './compile.js';
import type { Plan } from './plan.js';

/** Where a line was. */
export interface PreviousPlace {
  readonly spot: number;
  readonly first: number;
  readonly second: number;
  /** milliseconds after `now`; may be below 0 */
  readonly start: number;
  /** a start that differs by no more is no disturbance */
  readonly toleranceMs: number;
}

/** By operation; null: the line was not in the plan before. */
export function placesBefore(compiled: Compiled, plan: Plan, toleranceMinutes: number): (PreviousPlace | null)[] {
  const { model, operations } = compiled;
  const spots = new Map(model.spots.map((spot, i) => [spot.spotId, i]));
  const people = new Map(model.people.map((person, i) => [person.personId, i]));
  const was = new Map(plan.lines.map((line) => [`${line.jobId}\n${line.lineId}`, line]));
  return operations.map(({ jobId, lineId }) => {
    const line = was.get(`${jobId}\n${lineId}`);
    if (line === undefined) return null;
    const who = line.personIds.map((id) => people.get(id) ?? none).sort((a, b) => a - b);
    return {
      spot: line.spotId === null ? none : (spots.get(line.spotId) ?? none),
      first: who[0] ?? none,
      second: who[1] ?? none,
      start: line.from - model.now,
      toleranceMs: toleranceMinutes * minuteMs,
    };
  });
}
