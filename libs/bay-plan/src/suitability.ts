/** Which spots and people suit a line, and why the others do not. What somebody has fixed is not questioned. */
import type { PlanJob, PlanLine, PlanPerson, PlanSpot } from './model.js';

/** Why a spot does not suit, with what was compared. */
export type SpotUnsuited =
  | { readonly code: 'equipment'; readonly missing: readonly string[] }
  | { readonly code: 'mass'; readonly massKg: number; readonly ratedKg: number }
  | { readonly code: 'length'; readonly vehicleMm: number; readonly limitMm: number }
  | { readonly code: 'height'; readonly vehicleMm: number; readonly limitMm: number }
  | { readonly code: 'noTimeForSpot' };

export function spotUnsuited(job: PlanJob, line: PlanLine, spot: PlanSpot): SpotUnsuited | null {
  const missing = line.equipment.filter((word) => !spot.equipment.includes(word));
  if (missing.length > 0) return { code: 'equipment', missing };
  if (spot.ratedKg !== null && job.massKg !== null && job.massKg > spot.ratedKg) {
    return { code: 'mass', massKg: job.massKg, ratedKg: spot.ratedKg };
  }
  if (spot.longestMm !== null && job.lengthMm !== null && job.lengthMm > spot.longestMm) {
    return { code: 'length', vehicleMm: job.lengthMm, limitMm: spot.longestMm };
  }
  if (spot.highestMm !== null && job.heightMm !== null && job.heightMm > spot.highestMm) {
    return { code: 'height', vehicleMm: job.heightMm, limitMm: spot.highestMm };
  }
  if (line.minutesBySpot !== undefined && line.minutesBySpot[spot.spotId] === undefined) {
    return { code: 'noTimeForSpot' };
  }
  return null;
}

export function personSuits(line: PlanLine, person: PlanPerson): boolean {
  return line.skills.every((skill) => person.skills.includes(skill));
}

/** People a line needs of the shop: none while another firm works on it. */
export function peopleNeeded(line: PlanLine): number {
  return line.sublet === null ? line.people : 0;
}

export function minutesOn(line: PlanLine, spotId: string): number {
  return line.minutesBySpot?.[spotId] ?? line.workMinutes;
}

export function needsSpot(line: PlanLine): boolean {
  return line.sublet?.vehicleGoes !== true;
}
