import type { AddFollowUp } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { isStillWanted } from '../questions/parts-and-holds.js';
import { todayOf } from '../questions/people-and-shop.js';
import { lineEnded } from '../questions/place-and-work.js';
import { absent } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { tierOf } from '../tables/words.js';
import { openFollowUpOf } from './follow-up-rows.js';
import { limitsOf, seasonOver } from './limits.js';

/** The first thing it names that is on another vehicle. */
function ofOtherVehicle(rows: Rows, input: AddFollowUp): Refused | null {
  const named = [
    ['job', [input.jobId]],
    ['workLine', [input.lineId]],
    ['temporaryFix', [input.temporaryFixId]],
    ['followUp', [input.needsFollowUpId]],
    ['partLine', input.partLineIds ?? []],
  ] as const;
  for (const [table, ids] of named) {
    for (const id of ids) {
      const row = rows.find(table, id);
      if (row && row.vehicleId !== input.vehicleId) return refuse('followUp.ofOtherVehicle', { table, id: row.id });
    }
  }
  return null;
}

/**
 * A part line stays with a line that goes on; such a line is carried over with its parts. The follow-up may take over
 * a line that nobody has started, and then its parts too.
 */
function staysWithItsLine(rows: Rows, input: AddFollowUp, part: Row<'partLine'>): boolean {
  if (part.lineId === null || !isStillWanted(rows, part)) return false;
  const line = rows.get('workLine', part.lineId);
  return !lineEnded(line) && !(line.id === input.lineId && line.progress === 'planned');
}

function refusedFollowUp(rows: Rows, input: AddFollowUp, at: Circumstances): Refused | null {
  const { followUpId, vehicleId, seasonId, partLineIds } = input;
  if (followUpId !== undefined && rows.find('followUp', followUpId))
    return refuse('followUp.alreadyThere', { followUpId });
  const told = input.withinDistance !== undefined && input.words !== undefined;
  if (input.kind === 'retorque' && !told) return refuse('outstanding.retorqueNeedsDistance');
  const missing = absent(rows, {
    vehicle: vehicleId,
    job: input.jobId,
    workLine: input.lineId,
    temporaryFix: input.temporaryFixId,
    followUp: input.needsFollowUpId,
    season: seasonId,
    partLine: partLineIds,
  });
  if (missing) return missing;
  const elsewhere = ofOtherVehicle(rows, input);
  if (elsewhere) return elsewhere;
  const wanted = (partLineIds ?? [])
    .map((id) => rows.get('partLine', id))
    .find((part) => part.state !== 'fitted' && staysWithItsLine(rows, input, part));
  if (wanted) return refuse('followUp.partStillWanted', { partLineId: wanted.id, lineId: wanted.lineId });
  if (seasonId !== undefined && seasonOver(rows, seasonId, todayOf(at))) {
    return refuse('followUp.seasonEnded', { seasonId });
  }
  return null;
}

/** What is fitted or cancelled is not outstanding and stays where it was. */
function movePartsTo(rows: Rows, followUpId: string, partLineIds: readonly string[]): number {
  const moving = rows.list(
    'partLine',
    (part) => partLineIds.includes(part.id) && part.state !== 'fitted' && part.state !== 'cancelled',
  );
  for (const part of moving) rows.change('partLine', part.id, { jobId: null, lineId: null, followUpId });
  return moving.length;
}

/** The fix keeps an open follow-up that it has already: the second one is kept as well, beside it. */
function linkFix(rows: Rows, followUpId: string, fix: Row<'temporaryFix'> | undefined): void {
  if (fix && fix.state !== 'ended' && !openFollowUpOf(rows, fix)) rows.change('temporaryFix', fix.id, { followUpId });
}

function needsOf(input: AddFollowUp) {
  const lines = input.lineId === undefined ? {} : { lines: [input.lineId] };
  const fixes = input.temporaryFixId === undefined ? {} : { fixes: [input.temporaryFixId] };
  const followUps = input.needsFollowUpId === undefined ? {} : { followUps: [input.needsFollowUpId] };
  const jobs = input.jobId === undefined ? {} : { jobs: [input.jobId] };
  return { vehicles: [input.vehicleId], partLines: input.partLineIds ?? [], ...lines, ...fixes, ...followUps, ...jobs };
}

/** A fact: something stays outstanding. Left unsaid, it is urgent for a fix on a system of tier 1 and else "soon". */
export const addFollowUp: CommandRule<'addFollowUp'> = {
  needs: needsOf,
  decide: (rows, input, at) => {
    const refused = refusedFollowUp(rows, input, at);
    if (refused) return refused;
    const { vehicleId, kind } = input;
    const fix = rows.find('temporaryFix', input.temporaryFixId);
    const urgency = input.urgency ?? (fix && tierOf(fix.system) === 1 ? 'urgent' : 'soon');
    const followUpId = input.followUpId ?? at.newId();
    rows.add('followUp', {
      id: followUpId,
      ...recordedBy(at),
      vehicleId,
      fromJobId: input.jobId ?? null,
      kind,
      title: input.title,
      words: input.words ?? null,
      urgency,
      lineId: input.lineId ?? null,
      remainingMinutes: input.remainingMinutes ?? null,
      needsGoAhead: input.needsGoAhead ?? false,
      needsFollowUpId: input.needsFollowUpId ?? null,
      ...limitsOf(rows, input),
      state: 'open',
      closedAt: null,
      closedById: null,
      closeWords: null,
      closeLineId: null,
    });
    linkFix(rows, followUpId, fix);
    const parts = movePartsTo(rows, followUpId, input.partLineIds ?? []);
    return { facts: { vehicleId, followUpId, kind, urgency, parts }, created: { followUp: followUpId } };
  },
};
