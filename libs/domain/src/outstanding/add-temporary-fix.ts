import type { AddTemporaryFix } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { todayOf } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { absent, notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { tierOf } from '../tables/words.js';
import { hasLimit, limitsOf, seasonOver } from './limits.js';

function refusedFix(rows: Rows, input: AddTemporaryFix, at: Circumstances, job: Row<'job'>): Refused | null {
  const { temporaryFixId, lineId, followUpId, seasonId } = input;
  if (temporaryFixId !== undefined && rows.find('temporaryFix', temporaryFixId)) {
    return refuse('fix.alreadyThere', { temporaryFixId });
  }
  const missing = absent(rows, { workLine: lineId, followUp: followUpId, season: seasonId });
  if (missing) return missing;
  if (lineId !== undefined && rows.get('workLine', lineId).jobId !== job.id)
    return refuse('fix.lineElsewhere', { lineId });
  if (followUpId !== undefined && rows.get('followUp', followUpId).vehicleId !== job.vehicleId) {
    return refuse('fix.followUpElsewhere', { followUpId });
  }
  if (!hasLimit(input)) return refuse('fix.limitMissing');
  if (seasonId !== undefined && seasonOver(rows, seasonId, todayOf(at))) return refuse('fix.seasonEnded', { seasonId });
  return null;
}

/**
 * A fact, whatever the state of the job; refused only without a limit (rule 7). Its follow-up may be made later: the
 * vehicle does not leave without one (rule 9).
 */
export const addTemporaryFix: CommandRule<'addTemporaryFix'> = {
  needs: (input) => ({
    jobs: [input.jobId],
    ...(input.lineId === undefined ? {} : { lines: [input.lineId] }),
    ...(input.followUpId === undefined ? {} : { followUps: [input.followUpId] }),
  }),
  decide: (rows, input, at) => {
    const job = live(rows, 'job', input.jobId);
    if (!job) return notThere('job', input.jobId);
    const refused = refusedFix(rows, input, at, job);
    if (refused) return refused;
    const temporaryFixId = input.temporaryFixId ?? at.newId();
    rows.add('temporaryFix', {
      id: temporaryFixId,
      ...recordedBy(at),
      vehicleId: job.vehicleId,
      jobId: job.id,
      lineId: input.lineId ?? null,
      kind: input.kind,
      standsInFor: input.standsInFor,
      place: input.place,
      heldWith: input.heldWith ?? null,
      system: input.system,
      since: at.effectiveAt,
      ...limitsOf(rows, input),
      endedByWhat: input.endedByWhat,
      removedPieceAt: input.removedPieceAt ?? null,
      followUpId: input.followUpId ?? null,
      state: 'on',
      endedHow: null,
      toldHow: null,
      endLineId: null,
      endWords: null,
      endedAt: null,
      endedById: null,
      roadAllowedById: null,
      roadAllowedWords: null,
      receiverSigned: false,
    });
    return {
      facts: { jobId: job.id, temporaryFixId, kind: input.kind, system: input.system, tier: tierOf(input.system) },
      created: { temporaryFix: temporaryFixId },
    };
  },
};
