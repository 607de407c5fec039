/**
 * Within the hour of a hand-back or a release the visit goes on: in its bay spot again where that is free, else in the
 * yard; its sheet is marked void. What the hand-back ended opens anew from now on, what it made stays.
 */
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { moveVehicle } from '../place/move-vehicle.js';
import { linesOf, partsOf } from '../questions/parts-and-holds.js';
import { specOn, todayOf } from '../questions/people-and-shop.js';
import { lineEnded, live, openJobOf, usedByOthers } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';

const minutesToUndo = 60;

export const undoHandBack: CommandRule<'undoHandBack'> = {
  needs: ({ jobId }) => ({ jobs: [jobId], baysOfJobs: true }),
  decide(rows, { jobId, words }, at) {
    const job = live(rows, 'job', jobId);
    if (!job) return notThere('job', jobId);
    const vehicle = live(rows, 'vehicle', job.vehicleId);
    if (!vehicle) return notThere('vehicle', job.vehicleId);
    const refused = mayNotUndo(rows, job, at);
    if (refused) return refused;
    const endedAt = job.endedAt ?? at.now;
    const spot = spotAgain(rows, job, endedAt, at);
    const ended = rows.list('hold', (one) => one.jobId === job.id && one.endedHow === 'handedBack');
    for (const sheet of rows.list('sheet', (one) => one.jobId === job.id && one.voidedWords === null)) {
      rows.change('sheet', sheet.id, { voidedWords: words });
    }
    const again = { endedAt: null, endedHow: null, endWords: null, leftBy: null, odometerOut: null } as const;
    const open = rows.change('job', job.id, again);
    for (const hold of ended) if (hold.toAt === endedAt) openAnew(rows, at, hold);
    const place = moveVehicle(rows, at, { job: open, vehicle }, spot ?? { kind: 'yard' }, at.now);
    const facts = { jobId: job.id, vehicleId: vehicle.id, number: job.number, bayId: place.bayId, spot: place.spot };
    return { facts, created: { place: place.id } };
  },
};

function mayNotUndo(rows: Rows, job: Row<'job'>, at: Circumstances): Refused | null {
  const { number } = job;
  if (job.endedAt === null || job.endedHow === 'cancelled') return refuse('undo.notHandedBack', { number });
  if (at.now - job.endedAt > minutesToUndo * 60_000) return refuse('undo.tooLate', { number, minutes: minutesToUndo });
  const other = openJobOf(rows, job.vehicleId);
  return other ? refuse('undo.hereAgain', { number: other.number }, { table: 'job', id: other.id }) : null;
}

/** The bay spot it left, while the bay still has it and nobody else has come into it. */
function spotAgain(rows: Rows, job: Row<'job'>, endedAt: number, at: Circumstances) {
  const last = rows.list('place', (one) => one.jobId === job.id && one.toAt === endedAt)[0];
  const bay = last?.kind === 'bay' ? live(rows, 'bay', last.bayId) : undefined;
  if (!bay || last?.spot == null || (bay.endedOn !== null && bay.endedOn <= todayOf(at))) return null;
  const { spot } = last;
  const taken = usedByOthers(rows, bay.id, spot, { fromAt: at.now, toAt: null }, job.vehicleId);
  if (taken.length > 0 || spot > specOn(rows, bay.id, todayOf(at)).spots) return null;
  return { kind: 'bay', bayId: bay.id, spot } as const;
}

/** Whether the hold has something to wait for: a time that is not over, lines that go on, parts that are still its visit's. */
function stillHolds(rows: Rows, hold: Row<'hold'>, at: Circumstances): boolean {
  if (hold.endsAt !== null && hold.endsAt <= at.now) return false;
  const lines = linesOf(rows, hold);
  if (lines.length > 0 && lines.every(lineEnded)) return false;
  return hold.reason !== 'parts' || partsOf(rows, hold).some((part) => part.jobId === hold.jobId);
}

function openAnew(rows: Rows, at: Circumstances, before: Row<'hold'>): void {
  if (!stillHolds(rows, before, at)) return;
  const { version: _version, void: _void, ...columns } = before;
  const holdId = at.newId();
  const open = { fromAt: at.now, toAt: null, endedHow: null, endWords: null, endedById: null, againOfId: null };
  rows.add('hold', { ...columns, ...recordedBy(at), ...open, id: holdId });
  for (const { lineId } of rows.list('holdLine', (one) => one.holdId === before.id)) {
    rows.add('holdLine', { id: at.newId(), holdId, jobId: before.jobId, lineId });
  }
  for (const { partLineId } of rows.list('holdPart', (one) => one.holdId === before.id)) {
    rows.add('holdPart', { id: at.newId(), holdId, jobId: before.jobId, partLineId });
  }
}
