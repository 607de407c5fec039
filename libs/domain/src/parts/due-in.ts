import type { DueDate, RecordDueIn } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { absent } from '../questions/references.js';
import type { Row } from '../tables/tables.js';

/** "Backordered with a date" says which, "without a date" says none; the other states may name a day or not. */
export function refusedDue(due: DueDate): Refused | null {
  if (due.state === 'backorderedWithDate' && due.dueOn === undefined) return refuse('parts.dueDayMissing');
  if (due.state === 'backorderedNoDate' && due.dueOn !== undefined) {
    return refuse('parts.dueDayTooMuch', { dueOn: due.dueOn });
  }
  return null;
}

/**
 * Keeps what a supplier said on the day it was told (`effectiveAt`). The part line shows what was told last, also when an
 * older word is written down after it.
 */
export function addDueIn(rows: Rows, at: Circumstances, part: Row<'partLine'>, due: DueDate): void {
  const earlier = rows.list('dueIn', (one) => one.partLineId === part.id);
  rows.add('dueIn', {
    id: at.newId(),
    ...recordedBy(at),
    partLineId: part.id,
    supplierId: part.supplierId,
    state: due.state,
    dueOn: due.dueOn ?? null,
    ordinal: Math.max(0, ...earlier.map((one) => one.ordinal)) + 1,
    words: due.words ?? null,
  });
  if (earlier.some((one) => one.effectiveAt > at.effectiveAt)) return;
  rows.change('partLine', part.id, { dueOn: due.dueOn ?? null, dueState: due.state });
}

/** A fact: every word of a supplier is kept, whatever became of the part. */
export const recordDueIn: CommandRule<'recordDueIn'> = {
  needs: (input: RecordDueIn) => ({ partLines: input.partLineIds }),
  decide: (rows, input, at) => {
    const refused = refusedDue(input) ?? absent(rows, { partLine: input.partLineIds });
    if (refused) return refused;
    const partLineIds = new Set(input.partLineIds);
    for (const id of partLineIds) addDueIn(rows, at, rows.get('partLine', id), input);
    const [only] = partLineIds;
    return {
      facts: {
        parts: partLineIds.size,
        partLineId: partLineIds.size === 1 ? (only ?? null) : null,
        state: input.state,
        dueOn: input.dueOn ?? null,
      },
    };
  },
};
