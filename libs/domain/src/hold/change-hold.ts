import type { ChangeHold } from '../inputs.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { workingPerson } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { settledTables } from '../settle/settled-tables.js';
import type { Row } from '../tables/tables.js';

/**
 * A turn: what is said of an open hold, whose move it is, and for one that sets, charges or cools until when. Whose move
 * it is, is one person of the shop or somebody outside: naming the one takes the other away.
 */
export const changeHold: CommandRule<'changeHold'> = {
  needs: (input) => ({ holds: [input.holdId], tables: settledTables }),
  decide: (rows, input) => {
    const hold = live(rows, 'hold', input.holdId);
    if (!hold) return notThere('hold', input.holdId);
    const { id: holdId, reason, jobId } = hold;
    if (hold.toAt !== null) return refuse('hold.endedAlready', { holdId, endedHow: hold.endedHow });
    const refused = refusedChange(rows, input, hold);
    if (refused) return refused;
    const { words, moveOfId, moveOf, endsAt } = input;
    const inside = moveOfId !== undefined && moveOfId !== null;
    const outside = moveOf !== undefined && moveOf !== null;
    rows.change('hold', holdId, {
      ...(words === undefined ? {} : { words }),
      ...(inside && moveOf === undefined ? { moveOf: null } : {}),
      ...(outside && moveOfId === undefined ? { moveOfId: null } : {}),
      ...(moveOfId === undefined ? {} : { moveOfId }),
      ...(moveOf === undefined ? {} : { moveOf }),
      ...(endsAt === undefined ? {} : { endsAt }),
    });
    return { facts: { jobId, holdId, reason } };
  },
};

function refusedChange(rows: Rows, input: ChangeHold, hold: Row<'hold'>): Refused | null {
  const { words, moveOfId, endsAt } = input;
  if (words === null && hold.reason === 'other') return refuse('hold.wordsMissing');
  if (moveOfId !== undefined && moveOfId !== null) {
    if (!live(rows, 'person', moveOfId)) return notThere('person', moveOfId);
    if (!workingPerson(rows, moveOfId)) return refuse('hold.personLeft');
  }
  if (endsAt === undefined) return null;
  if (hold.reason !== 'setting') return refuse('hold.endNotSaid', { reason: hold.reason });
  const iso = (instant: number) => new Date(instant).toISOString();
  return endsAt > hold.fromAt ? null : refuse('hold.endBeforeStart', { endsAt: iso(endsAt), fromAt: iso(hold.fromAt) });
}
