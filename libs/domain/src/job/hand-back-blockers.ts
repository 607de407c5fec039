/**
 * Rule 9: everything that stands in the way of a hand-back, all at once, each with the row where the way out is. The
 * command, the screen that shows the list before anybody asks, and "ready" are the same functions.
 */
import { forbiddingAll } from '../cautions/against-cautions.js';
import type { Act } from '../cautions/caution-table.js';
import { againstWheels } from '../cautions/wheels-against.js';
import type { HandBack } from '../inputs.js';
import type { By } from '../kernel/decision.js';
import type { Facts, Refusal } from '../kernel/refusal.js';
import type { RefusalCode } from '../kernel/refusal-codes.js';
import type { Rows } from '../kernel/rows.js';
import { lineSettledByChoice } from '../questions/choices.js';
import { isOnPremises, lineEnded, live } from '../questions/place-and-work.js';
import { retorqueSettled, wheelsWereOff } from '../questions/wheels.js';
import type { Row, TableName } from '../tables/tables.js';
import { tierOf } from '../tables/words.js';
import { tierOneByRoadBlockers } from './tier-one-by-road.js';

/** What of a hand-back its blockers depend on. */
export type AskedHandBack = Pick<HandBack, 'jobId' | 'leavesBy' | 'receivedHow' | 'byRoad'>;

function blocker(code: RefusalCode, facts: Facts, table: TableName, id: string): Refusal {
  return { code, facts, way: { table, id } };
}

function openFollowUp(rows: Rows, id: string | null): Row<'followUp'> | undefined {
  const followUp = live(rows, 'followUp', id);
  return followUp?.state === 'open' ? followUp : undefined;
}

/** The open follow-up that a line's work was put into, if any. */
export function followUpOfLine(rows: Rows, line: Row<'workLine'>): Row<'followUp'> | undefined {
  return (
    openFollowUp(rows, line.toFollowUpId) ??
    rows.list('followUp', (one) => one.lineId === line.id && one.state === 'open')[0]
  );
}

function clockBlockers(rows: Rows, job: Row<'job'>): Refusal[] {
  return rows
    .list('clock', (clock) => clock.jobId === job.id && clock.toAt === null)
    .map((clock) => {
      const title = rows.find('workLine', clock.lineId)?.title ?? '';
      return blocker('handBack.clockRuns', { clockId: clock.id, title }, 'clock', clock.id);
    });
}

const isBegun = ({ startedAt, progress }: Row<'workLine'>): boolean => startedAt !== null || progress !== 'planned';

/**
 * Nothing is left to do about the line on this visit: it has ended; or it was never begun and the customer turned it down
 * or put it off, chose another way, or a follow-up carries it.
 */
export function lineSettled(rows: Rows, line: Row<'workLine'>): boolean {
  if (lineEnded(line)) return true;
  if (isBegun(line)) return false;
  if (line.goAhead === 'deferred' || line.goAhead === 'declined') return true;
  return lineSettledByChoice(rows, line) || followUpOfLine(rows, line) !== undefined;
}

function lineBlockers(rows: Rows, job: Row<'job'>): Refusal[] {
  return rows
    .list('workLine', (line) => line.jobId === job.id && !lineSettled(rows, line))
    .map((line) => {
      const { id: lineId, title, goAhead } = line;
      return isBegun(line)
        ? blocker('handBack.lineUnfinished', { lineId, title }, 'workLine', lineId)
        : blocker('handBack.lineOpen', { lineId, title, goAhead }, 'workLine', lineId);
    });
}

type Door = Row<'sheet'>['leavesBy'];

const actOf: Readonly<Record<Door, Act>> = { road: 'handBackByRoad', transporter: 'handBackOnTransporter' };

/** The cautions that forbid this door, by the one table of them (see ../cautions). */
function cautionBlockers(rows: Rows, job: Row<'job'>, door: Door): Refusal[] {
  const act = actOf[door];
  return forbiddingAll(rows, job.vehicleId, act).map(({ id, code }) =>
    blocker('handBack.cautionOpen', { cautionId: id, code, act }, 'caution', id),
  );
}

/**
 * Rule 3: by road every wheel that was off is on again with its torque, and tightening it again is put down for later; a
 * transporter takes a vehicle as its wheels are.
 */
function wheelBlockers(rows: Rows, job: Row<'job'>, door: Door): Refusal[] {
  const wheels = againstWheels(rows, job.id, actOf[door]);
  const untold = door === 'road' && wheelsWereOff(rows, job.id) && !retorqueSettled(rows, job);
  return untold ? [...wheels, blocker('handBack.retorqueUntold', { jobId: job.id }, 'job', job.id)] : wheels;
}

/** The vehicle, a component of it, or somebody from outside is still with another firm's work. */
function subletBlockers(rows: Rows, job: Row<'job'>): Refusal[] {
  return rows
    .list('sublet', (one) => one.jobId === job.id && one.state === 'underWay')
    .map(({ id: subletId, form }) => blocker('handBack.subletUnderWay', { subletId, form }, 'sublet', subletId));
}

function concernBlockers(rows: Rows, job: Row<'job'>): Refusal[] {
  return rows
    .list('concern', (one) => one.jobId === job.id && one.outcome === null)
    .map(({ id, position }) => blocker('handBack.concernOpen', { concernId: id, position }, 'concern', id));
}

/** Fixes of the vehicle that have not ended, whichever visit made them: on, failed or removed (rule 8). */
export function unendedFixes(rows: Rows, vehicleId: string): Row<'temporaryFix'>[] {
  return rows.list('temporaryFix', (fix) => fix.vehicleId === vehicleId && fix.state !== 'ended');
}

/**
 * Every fix that has not ended needs its open follow-up; one on a tier-2 system, while it is on, its second check too
 * (of one that failed or was removed there is nothing to check any more). Tier 1 needs its check by road alone: rule 7.
 */
function fixBlockers(rows: Rows, job: Row<'job'>): Refusal[] {
  return unendedFixes(rows, job.vehicleId).flatMap((fix) => {
    const { id: temporaryFixId, place, state } = fix;
    const found: Refusal[] = [];
    if (!openFollowUp(rows, fix.followUpId)) {
      const facts = { temporaryFixId, place, state };
      found.push(blocker('handBack.fixWithoutFollowUp', facts, 'temporaryFix', temporaryFixId));
    }
    return [...found, ...uncheckedTierTwo(rows, fix)];
  });
}

/** Rule 7: a fix on a tier-2 system that is on needs a second check. */
function uncheckedTierTwo(rows: Rows, { id: temporaryFixId, place, system, state }: Row<'temporaryFix'>): Refusal[] {
  const checked = rows.list('secondCheck', (one) => one.temporaryFixId === temporaryFixId).length > 0;
  if (tierOf(system) !== 2 || state !== 'on' || checked) return [];
  const facts = { temporaryFixId, place, system, tier: 2 };
  return [blocker('handBack.secondCheckMissing', facts, 'temporaryFix', temporaryFixId)];
}

/**
 * Part lines of this job that are neither fitted nor cancelled: what is on order or lies here must not be lost sight of
 * when the vehicle is gone. One merely wanted for a line that the customer put off or turned down is not needed.
 */
export function openPartsOf(rows: Rows, jobId: string): Row<'partLine'>[] {
  return rows.list('partLine', (part) => {
    const line = live(rows, 'workLine', part.lineId);
    if ((line?.jobId ?? part.jobId) !== jobId) return false;
    if (part.state === 'fitted' || part.state === 'cancelled') return false;
    const turnedDown = line !== undefined && !lineEnded(line) && ['deferred', 'declined'].includes(line.goAhead);
    const putOff = turnedDown || (line !== undefined && lineSettledByChoice(rows, line));
    return !(putOff && part.state === 'wanted');
  });
}

/** The open follow-up that a part is for, or will be for when the vehicle leaves: its own, or its line's. */
export function followUpOfPart(rows: Rows, part: Row<'partLine'>): Row<'followUp'> | undefined {
  const line = live(rows, 'workLine', part.lineId);
  return openFollowUp(rows, part.followUpId) ?? (line && followUpOfLine(rows, line));
}

function partBlockers(rows: Rows, job: Row<'job'>): Refusal[] {
  return openPartsOf(rows, job.id)
    .filter((part) => !followUpOfPart(rows, part))
    .map(({ id, description, state }) =>
      blocker('handBack.partOpen', { partLineId: id, description, state }, 'partLine', id),
    );
}

/** By road a vehicle has to roll and may be driven. */
function roadBlockers(rows: Rows, job: Row<'job'>): Refusal[] {
  const { id: vehicleId, rolls, mayBeDriven } = rows.get('vehicle', job.vehicleId);
  const found: Refusal[] = [];
  if (!rolls) found.push(blocker('handBack.doesNotRoll', { vehicleId }, 'vehicle', vehicleId));
  if (!mayBeDriven) found.push(blocker('handBack.mayNotBeDriven', { vehicleId }, 'vehicle', vehicleId));
  return found;
}

/** What is open on the job and forbids this door, whoever asks. */
function jobBlockers(rows: Rows, job: Row<'job'>, door: Door): Refusal[] {
  return [
    ...clockBlockers(rows, job),
    ...lineBlockers(rows, job),
    ...cautionBlockers(rows, job, door),
    ...wheelBlockers(rows, job, door),
    ...subletBlockers(rows, job),
    ...concernBlockers(rows, job),
    ...fixBlockers(rows, job),
    ...partBlockers(rows, job),
  ];
}

/** Rule 9 whole, for this hand-back by this person; empty when the vehicle may go. The job has to be in the bag, open. */
export function handBackBlockers(rows: Rows, asked: AskedHandBack, by: By): Refusal[] {
  const job = rows.get('job', asked.jobId);
  if (asked.leavesBy === 'transporter') return jobBlockers(rows, job, 'transporter');
  const fixes = unendedFixes(rows, job.vehicleId);
  const open = jobBlockers(rows, job, 'road');
  return [...open, ...roadBlockers(rows, job), ...tierOneByRoadBlockers(rows, asked, by, fixes)];
}

/**
 * What keeps even a release here. What is unfinished does not, it becomes outstanding; a running clock does, for a release
 * stops none, and so does what the door forbids: cautions, and by road wheels, rule 3 and rule 7. A component may stay
 * with another firm; a vehicle that is there, or somebody who works on it, comes back first.
 */
export function releaseBlockers(rows: Rows, asked: AskedHandBack, by: By): Refusal[] {
  const job = rows.get('job', asked.jobId);
  const door = asked.leavesBy;
  const always = [
    ...clockBlockers(rows, job),
    ...cautionBlockers(rows, job, door),
    ...subletBlockers(rows, job).filter((one) => one.facts['form'] !== 'componentOut'),
  ];
  if (door === 'transporter') return always;
  const fixes = unendedFixes(rows, job.vehicleId);
  const onTheRoad = [
    ...wheelBlockers(rows, job, door),
    ...roadBlockers(rows, job),
    ...fixes.flatMap((fix) => uncheckedTierTwo(rows, fix)),
    ...tierOneByRoadBlockers(rows, asked, by, fixes),
  ];
  return [...always, ...onTheRoad];
}

/**
 * Nothing is open on the job, and nothing forbids the door it would leave by: the road where it rolls and may be driven,
 * else a transporter. Who allows a tier-1 fix by road is asked when somebody hands back by road.
 */
export function isReady(rows: Rows, jobId: string): boolean {
  const job = live(rows, 'job', jobId);
  const vehicle = job && live(rows, 'vehicle', job.vehicleId);
  if (!job || !vehicle || !isOnPremises(job)) return false;
  return jobBlockers(rows, job, vehicle.rolls && vehicle.mayBeDriven ? 'road' : 'transporter').length === 0;
}
