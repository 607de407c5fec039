/**
 * Hot work and open fuel in the same or a neighbouring bay. Neighbours are the bays next to each other in the order of the
 * building; bays that are no more are left out of it. What stands in no bay is near nothing.
 */
import type { Circumstances } from '../kernel/decision.js';
import { flag } from '../kernel/flags.js';
import type { Refusal } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { todayOf } from '../questions/people-and-shop.js';
import { live, openCautions } from '../questions/place-and-work.js';
import type { Row } from '../tables/tables.js';
import type { CautionCode } from '../tables/words.js';
import { isRunning } from '../timeline/timeline.js';
import { verdictOf } from './caution-table.js';

/** The codes of vehicles that must not stand beside hot work. */
const keepsAway = (code: CautionCode): boolean => verdictOf(code, 'hotWorkBeside') === 'refuse';

function bayOf(rows: Rows, vehicleId: string): string | null {
  const stands = rows.list('spotUse', (use) => use.vehicleId === vehicleId && use.kind === 'stands' && isRunning(use));
  return stands[0]?.bayId ?? null;
}

/** The bay and those next to it. */
export function bayAndNeighbours(rows: Rows, bayId: string, today: string): readonly string[] {
  const row = rows
    .list('bay', (bay) => bay.id === bayId || bay.endedOn === null || bay.endedOn > today)
    .sort((a, b) => a.position - b.position || (a.id < b.id ? -1 : 1))
    .map((bay) => bay.id);
  const at = row.indexOf(bayId);
  return at < 0 ? [] : row.slice(Math.max(0, at - 1), at + 2);
}

/**
 * The caution on the other side: hot work near a vehicle with its fuel open, or a vehicle with its fuel open near hot
 * work; of the vehicle itself first. `bayId`: where it is to stand; where it stands now when left out.
 */
export function hotWorkAgainst(
  rows: Rows,
  at: Circumstances,
  vehicleId: string,
  bayId: string | null = bayOf(rows, vehicleId),
): Row<'caution'> | undefined {
  const own = openCautions(rows, vehicleId).map((one) => one.code);
  const wanted = (code: CautionCode) =>
    (code === 'hotWork' && own.some(keepsAway)) || (keepsAway(code) && own.includes('hotWork'));
  const there = bayId === null ? [] : bayAndNeighbours(rows, bayId, todayOf(at));
  return rows
    .list('caution', (one) => one.endedAt === null && wanted(one.code))
    .find((one) => one.vehicleId === vehicleId || there.includes(bayOf(rows, one.vehicleId) ?? ''));
}

export function againstHotWork(rows: Rows, at: Circumstances, vehicleId: string, bayId?: string): Refusal[] {
  const other = hotWorkAgainst(rows, at, vehicleId, bayId);
  return other
    ? [{ code: 'caution.hotWorkNear', facts: factsOf(rows, other), way: { table: 'caution', id: other.id } }]
    : [];
}

function factsOf(rows: Rows, other: Row<'caution'>) {
  return { cautionId: other.id, code: other.code, jobNumber: live(rows, 'job', other.jobId)?.number ?? 0 };
}

export function flagHotWork(
  rows: Rows,
  at: Circumstances,
  of: { readonly jobId: string | null; readonly vehicleId: string },
  bayId?: string,
): void {
  const other = hotWorkAgainst(rows, at, of.vehicleId, bayId);
  if (other)
    flag(rows, at, 'place.hotWorkNearFuel', { ...of, bayId: bayId ?? bayOf(rows, of.vehicleId) }, factsOf(rows, other));
}
