import { type Circumstances, recordedBy } from './decision.js';
import type { Facts } from './refusal.js';
import type { Rows } from './rows.js';

/** Rules that a fact may break and still be recorded. Each has its sentence in the catalogues (`flag.<rule>`). */
export const flagRules = [
  'place.aboveCapacity',
  'place.loadNotAsked',
  'place.movedNotRolling',
  'place.bayOutOfUse',
  'lift.overdue',
  'place.tooLarge',
  'place.againstWheel',
  'place.hotWorkNearFuel',
  'place.drivenMayNot',
  'work.noGoAhead',
  'work.madeSafe',
  'work.skillMissing',
  'work.afterUnfinished',
  'work.againstCaution',
  'work.goAheadBeyondContact',
  'concern.goneNotRetried',
  'concern.noAttempt',
  'time.deviceClock',
  'time.inClosedMonth',
  'odometer.falling',
  'vin.doubtful',
  'parts.more',
] as const;
export type FlagRule = (typeof flagRules)[number];

/** Marks what was recorded although it should not have happened. */
export function flag(
  rows: Rows,
  at: Circumstances,
  rule: FlagRule,
  subjects: { jobId?: string | null; vehicleId?: string | null; bayId?: string | null },
  facts: Facts = {},
): void {
  rows.add('flag', {
    id: at.newId(),
    ...recordedBy(at),
    rule,
    jobId: subjects.jobId ?? null,
    vehicleId: subjects.vehicleId ?? null,
    bayId: subjects.bayId ?? null,
    facts,
    clearedAt: null,
    clearedById: null,
    clearWords: null,
  });
}
