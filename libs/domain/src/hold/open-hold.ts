import type { OpenHold } from '../inputs.js';
import { type By, type Circumstances, type Outcome, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { settledTables } from '../settle/settled-tables.js';
import { absent, notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import type { HoldReason } from '../tables/words.js';

const clerksReasons: readonly HoldReason[] = ['parts', 'information'];

function mayOpen(by: By, reason: HoldReason): boolean {
  return clerksReasons.includes(reason) || by.roles.some((role) => role !== 'partsClerk' && role !== 'wallScreen');
}

/**
 * A fact: kept whatever the state of the job. Refused is only what says nothing that could be kept: a parts hold without
 * parts, a setting hold without its end, "other" without words, lines or parts that are not of this job's vehicle.
 */
export const openHold: CommandRule<'openHold'> = {
  needs: (input) => ({
    jobs: [input.jobId],
    tables: settledTables,
    ...(input.lineIds ? { lines: input.lineIds } : {}),
    ...(input.partLineIds ? { partLines: input.partLineIds } : {}),
  }),
  decide: (rows, input, at) => {
    const job = live(rows, 'job', input.jobId);
    if (!job) return notThere('job', input.jobId);
    return refusedOpening(rows, input, at, job) ?? open(rows, input, at, job);
  },
};

function refusedOpening(rows: Rows, input: OpenHold, at: Circumstances, job: Row<'job'>): Refused | null {
  const { holdId, reason } = input;
  if (!mayOpen(at.by, reason)) return refuse('hold.mayNotOpen', { reason });
  if (holdId !== undefined && rows.find('hold', holdId)) return refuse('hold.alreadyThere', { holdId });
  return refusedSubjects(rows, input, job) ?? refusedReason(input, at);
}

/** Lines, parts and the person it names have to be there; lines of this job, parts of its vehicle. */
function refusedSubjects(rows: Rows, input: OpenHold, job: Row<'job'>): Refused | null {
  const { lineIds = [], partLineIds = [], moveOfId } = input;
  const missing = absent(rows, { workLine: lineIds, partLine: partLineIds, person: moveOfId });
  if (missing) return missing;
  const lineElsewhere = lineIds.find((id) => rows.get('workLine', id).jobId !== job.id);
  if (lineElsewhere !== undefined) return refuse('hold.lineOfOtherJob', { lineId: lineElsewhere });
  const partElsewhere = partLineIds.find((id) => rows.get('partLine', id).vehicleId !== job.vehicleId);
  if (partElsewhere !== undefined) return refuse('hold.partOfOtherVehicle', { partLineId: partElsewhere });
  return null;
}

/** What each reason has to say. */
function refusedReason({ reason, partLineIds = [], endsAt, words }: OpenHold, at: Circumstances): Refused | null {
  if (reason === 'parts' && partLineIds.length === 0) return refuse('hold.partsNeeded');
  if (reason !== 'parts' && partLineIds.length > 0) return refuse('hold.partsElsewhere', { reason });
  if (reason === 'setting' && endsAt === undefined) return refuse('hold.endMissing');
  if (endsAt !== undefined && endsAt <= at.effectiveAt) {
    const iso = (instant: number) => new Date(instant).toISOString();
    return refuse('hold.endBeforeStart', { endsAt: iso(endsAt), fromAt: iso(at.effectiveAt) });
  }
  return reason === 'other' && words === undefined ? refuse('hold.wordsMissing') : null;
}

function open(rows: Rows, input: OpenHold, at: Circumstances, job: Row<'job'>): Outcome {
  const holdId = input.holdId ?? at.newId();
  const lineIds = new Set(input.lineIds);
  const partLineIds = new Set(input.partLineIds);
  rows.add('hold', {
    id: holdId,
    ...recordedBy(at),
    jobId: job.id,
    vehicleId: job.vehicleId,
    reason: input.reason,
    words: input.words ?? null,
    moveOfId: input.moveOfId ?? null,
    moveOf: input.moveOf ?? null,
    endsAt: input.endsAt ?? null,
    openedById: at.by.personId,
    fromAt: at.effectiveAt,
    toAt: null,
    endedHow: null,
    endWords: null,
    endedById: null,
    againOfId: null,
    subletId: null,
  });
  for (const lineId of lineIds) rows.add('holdLine', { id: at.newId(), holdId, jobId: job.id, lineId });
  for (const partLineId of partLineIds) rows.add('holdPart', { id: at.newId(), holdId, jobId: job.id, partLineId });
  return {
    facts: { jobId: job.id, holdId, reason: input.reason, lines: lineIds.size, parts: partLineIds.size },
    created: { hold: holdId },
  };
}
