/** What happens at either door: the vehicle leaves where it stands, the visit ends, and its sheet is frozen as it is then. */
import type { HandBack } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';
import { applyEdits, placesOfVehicle, usesOfVehicle } from '../timeline/lanes.js';
import { close, earliest, isRunning } from '../timeline/timeline.js';
import { followUpOfPart, openPartsOf, unendedFixes } from './hand-back-blockers.js';
import { recordOdometer } from './odometer.js';
import { sheetContent } from './sheet.js';
import { allowanceFor } from './tier-one-by-road.js';

/** Both doors say how it leaves, who receives it and how, and what is allowed by road. */
export type Leaving = Pick<HandBack, 'leavesBy' | 'receivedBy' | 'receivedHow' | 'odometer' | 'byRoad'>;

/** The vehicle leaves where it stands; its spot is free from then on. Gives the instant (epoch ms) at which it left. */
export function leavePremises(rows: Rows, at: Circumstances, vehicleId: string): number {
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
export function keepAllowances(rows: Rows, input: Leaving, at: Circumstances, vehicleId: string): number {
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
export function handOnParts(rows: Rows, jobId: string): void {
  for (const part of openPartsOf(rows, jobId)) {
    const followUp = followUpOfPart(rows, part);
    if (followUp) rows.change('partLine', part.id, { jobId: null, lineId: null, followUpId: followUp.id });
  }
}

/** The visit ends, with its sheet; gives the sheet's id. Open holds end with it (see ../settle). */
export function closeVisit(
  rows: Rows,
  at: Circumstances,
  job: Row<'job'>,
  input: Leaving,
  end: { readonly endedHow: 'handedBack' | 'released'; readonly words: string | null },
): string {
  const { odometer: value, receivedBy, receivedHow, leavesBy } = input;
  if (value !== undefined) {
    const of = { vehicleId: job.vehicleId, jobId: job.id };
    recordOdometer(rows, at, of, { value, unit: job.odometerUnit, source: 'read' });
  }
  const endedAt = leavePremises(rows, at, job.vehicleId);
  const { endedHow, words: endWords } = end;
  const left = rows.change('job', job.id, {
    endedAt,
    endedHow,
    endWords,
    leftBy: leavesBy,
    odometerOut: value ?? null,
  });
  const sheetId = at.newId();
  rows.add('sheet', {
    id: sheetId,
    ...recordedBy(at),
    jobId: job.id,
    vehicleId: job.vehicleId,
    content: sheetContent(rows, left, { receivedBy, receivedHow, leavesBy, by: at.by }),
    receivedBy,
    receivedHow,
    leavesBy,
    voidedWords: null,
    kind: endedHow === 'released' ? 'release' : 'handBack',
    words: endWords,
  });
  return sheetId;
}
