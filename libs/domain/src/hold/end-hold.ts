import type { By } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import { missingParts } from '../questions/parts-and-holds.js';
import { isLead } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { settledTables } from '../settle/settled-tables.js';

/**
 * Who may end which hold by hand: owner and manager any; the desk those for a go-ahead; a technician their own, but not
 * for parts; the parts clerk those for parts and information. One role that may is enough.
 */
export function mayEnd(by: By, hold: Row<'hold'>): boolean {
  if (isLead(by)) return true;
  const { reason } = hold;
  const own = hold.openedById !== null && hold.openedById === by.personId;
  return by.roles.some((role) => {
    switch (role) {
      case 'desk':
        return reason === 'goAhead';
      case 'technician':
        return own && reason !== 'parts';
      case 'partsClerk':
        return reason === 'parts' || reason === 'information';
      case 'owner':
      case 'manager':
        return true;
      case 'wallScreen':
        return false;
    }
  });
}

/** A turn. A parts hold that still waits for parts ends by hand only with words; else it ends by itself (rule 6). */
export const endHold: CommandRule<'endHold'> = {
  needs: (input) => ({ holds: [input.holdId], tables: settledTables }),
  decide: (rows, input, at) => {
    const hold = live(rows, 'hold', input.holdId);
    if (!hold) return notThere('hold', input.holdId);
    const { id: holdId, reason, jobId } = hold;
    if (hold.toAt !== null) return refuse('hold.endedAlready', { holdId, endedHow: hold.endedHow });
    if (!mayEnd(at.by, hold)) return refuse('hold.mayNotEnd', { holdId, reason });
    if (reason === 'parts' && input.words === undefined) {
      return refuse('hold.endWordsMissing', { holdId, missing: missingParts(rows, hold).length });
    }
    rows.change('hold', holdId, {
      toAt: Math.max(hold.fromAt, at.effectiveAt),
      endedHow: 'byHand',
      endWords: input.words ?? null,
      endedById: at.by.personId,
    });
    return { facts: { jobId, holdId, reason } };
  },
};
