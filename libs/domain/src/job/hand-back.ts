import type { HandBack } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { applyEdits, placesOfVehicle, usesOfVehicle } from '../timeline/lanes.js';
import { close, earliest, isRunning } from '../timeline/timeline.js';
import { followUpOfPart, handBackBlockers, openPartsOf, unendedFixes } from './hand-back-blockers.js';
import { recordOdometer } from './odometer.js';
import { sheetContent } from './sheet.js';
import { allowanceFor } from './tier-one-by-road.js';

/** The vehicle leaves where it stands; its spot is free from then on. Gives the instant (epoch ms) at which it left. */
function leavePremises(rows: Rows, at: Circumstances, vehicleId: string): number {
  const places = placesOfVehicle(rows, vehicleId).filter(isRunning);
  const uses = usesOfVehicle(rows, vehicleId).filter(isRunning);
  const left = earliest([...places, ...uses], at.effectiveAt);
  applyEdits(
    rows,
    at,
    'place',
    places.map((place) => close(place, left)),
  );
  applyEdits(
    rows,
    at,
    'spotUse',
    uses.map((use) => close(use, left)),
  );
  return left;
}

/** Who allowed each tier-1 fix by road, and that the receiver signed for it, stands with the fix from now on. */
function keepAllowances(rows: Rows, input: HandBack, at: Circumstances, vehicleId: string): number {
  if (input.leavesBy !== 'road') return 0;
  let kept = 0;
  for (const fix of unendedFixes(rows, vehicleId)) {
    const allowance = allowanceFor(input, fix.id);
    if (!allowance) continue;
    const { words, receiverSigned } = allowance;
    rows.change('temporaryFix', fix.id, { roadAllowedById: at.by.personId, roadAllowedWords: words, receiverSigned });
    kept += 1;
  }
  return kept;
}

/** Parts of lines that go on as a follow-up are for that follow-up now; nothing is left with a line that is over. */
function handOnParts(rows: Rows, jobId: string): void {
  for (const part of openPartsOf(rows, jobId)) {
    const followUp = followUpOfPart(rows, part);
    if (followUp) rows.change('partLine', part.id, { jobId: null, lineId: null, followUpId: followUp.id });
  }
}

function closeJob(rows: Rows, input: HandBack, at: Circumstances, job: Row<'job'>): Row<'job'> {
  const { odometer: value } = input;
  if (value !== undefined) {
    const of = { vehicleId: job.vehicleId, jobId: job.id };
    recordOdometer(rows, at, of, { value, unit: job.odometerUnit, source: 'read' });
  }
  const endedAt = leavePremises(rows, at, job.vehicleId);
  return rows.change('job', job.id, { endedAt, leftBy: input.leavesBy, odometerOut: value ?? null });
}

/**
 * A turn on the job: the vehicle goes to its owner, by road or on a transporter, and somebody acknowledges it by name.
 * Refused with every reason of rule 9 at once. Open holds end with it (see ../settle). The sheet is frozen as it is then.
 */
export const handBack: CommandRule<'handBack'> = {
  needs: (input) => ({ jobs: [input.jobId] }),
  decide: (rows, input, at) => {
    const job = live(rows, 'job', input.jobId);
    if (!job) return notThere('job', input.jobId);
    if (job.endedAt !== null) return refuse('job.ended', { number: job.number });
    const blockers = handBackBlockers(rows, input, at.by);
    if (blockers.length > 0) return new Refused(blockers);
    const allowed = keepAllowances(rows, input, at, job.vehicleId);
    handOnParts(rows, job.id);
    const left = closeJob(rows, input, at, job);
    const { receivedBy, receivedHow, leavesBy } = input;
    const sheet = rows.add('sheet', {
      id: at.newId(),
      ...recordedBy(at),
      jobId: job.id,
      vehicleId: job.vehicleId,
      content: sheetContent(rows, left, { receivedBy, receivedHow, leavesBy, by: at.by }),
      receivedBy,
      receivedHow,
      leavesBy,
      voidedWords: null,
    });
    return {
      facts: { jobId: job.id, vehicleId: job.vehicleId, number: job.number, leavesBy, receivedHow, allowed },
      created: { sheet: sheet.id },
    };
  },
};
