import type { EndTemporaryFix } from '../inputs.js';
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import type { fixEnds, toldWays } from '../tables/words.js';
import { closeFollowUpRow, makeUrgent, openFollowUpOf, unendedFixesOf } from './follow-up-rows.js';

type FixEnd = (typeof fixEnds)[number];
type ToldWay = (typeof toldWays)[number];

/** Rule 8: how each end may have been learnt. Null: it needs no such word. */
const learntBy: Readonly<Record<FixEnd, readonly ToldWay[] | null>> = {
  repaired: null,
  mendedElsewhere: ['told', 'seen'],
  vehicleGone: null,
  ownerRefuses: ['told', 'signed'],
};

function isEnd(how: EndTemporaryFix['how']): how is FixEnd {
  return how !== 'failed' && how !== 'removed';
}

function refusedRepair(rows: Rows, fix: Row<'temporaryFix'>, lineId: string | undefined): Refused | null {
  if (lineId === undefined) return refuse('fix.lineMissing', { temporaryFixId: fix.id });
  const line = live(rows, 'workLine', lineId);
  if (!line) return notThere('workLine', lineId);
  if (line.vehicleId !== fix.vehicleId) return refuse('fix.lineElsewhere', { lineId });
  return line.progress === 'done' ? null : refuse('fix.lineNotDone', { lineId, progress: line.progress });
}

function refusedEnd(rows: Rows, input: EndTemporaryFix, fix: Row<'temporaryFix'>, how: FixEnd): Refused | null {
  if (how === 'repaired') return refusedRepair(rows, fix, input.lineId);
  const ways = learntBy[how];
  if (ways && (input.toldHow === undefined || !ways.includes(input.toldHow)))
    return refuse('fix.toldHowMissing', { how });
  return input.words === undefined ? refuse('fix.wordsMissing', { how }) : null;
}

function end(rows: Rows, input: EndTemporaryFix, at: Circumstances, fix: Row<'temporaryFix'>, how: FixEnd): void {
  const words = input.words ?? null;
  const lineId = how === 'repaired' ? (input.lineId ?? null) : null;
  rows.change('temporaryFix', fix.id, {
    state: 'ended',
    endedHow: how,
    toldHow: input.toldHow ?? null,
    endLineId: lineId,
    endWords: words,
    endedAt: at.effectiveAt,
    endedById: at.by.personId,
  });
  const followUp = openFollowUpOf(rows, fix);
  // One permanent repair may stand for several fixes: it is over with the last of them.
  if (!followUp || unendedFixesOf(rows, followUp.id).length > 0) return;
  const state = how === 'repaired' || how === 'mendedElsewhere' ? 'done' : 'dropped';
  closeFollowUpRow(rows, at, followUp.id, { state, words, lineId });
}

/**
 * A turn. Repaired names the done line on this vehicle; mended elsewhere and refused by the owner say how that was learnt,
 * and with vehicle gone need words; the follow-up closes with it. Failed and removed end nothing (rule 8).
 */
export const endTemporaryFix: CommandRule<'endTemporaryFix'> = {
  needs: (input) => ({
    fixes: [input.temporaryFixId],
    ...(input.lineId === undefined ? {} : { lines: [input.lineId] }),
  }),
  decide: (rows, input, at) => {
    const fix = live(rows, 'temporaryFix', input.temporaryFixId);
    if (!fix) return notThere('temporaryFix', input.temporaryFixId);
    const { how } = input;
    const { id: temporaryFixId, vehicleId, state } = fix;
    if (state === 'ended') return refuse('fix.endedAlready', { temporaryFixId, endedHow: fix.endedHow });
    if (isEnd(how)) {
      const refused = refusedEnd(rows, input, fix, how);
      if (refused) return refused;
      end(rows, input, at, fix, how);
      return { facts: { vehicleId, temporaryFixId, how, system: fix.system } };
    }
    if (state === how) return refuse('fix.stateAlready', { temporaryFixId, state });
    const followUpId = makeUrgent(rows, at, fix, input.words ?? null);
    rows.change('temporaryFix', temporaryFixId, { state: how, followUpId });
    const made = followUpId === fix.followUpId ? {} : { created: { followUp: followUpId } };
    return { facts: { vehicleId, temporaryFixId, how, system: fix.system, followUpId }, ...made };
  },
};
