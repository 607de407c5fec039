import type { Circumstances } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

/**
 * Ends a hold by itself at the latest of its causes (epoch ms), which is the command's own time but for a hold that was
 * told after what ends it had happened. Never before it began.
 */
export function endHoldAt(
  rows: Rows,
  at: Circumstances,
  hold: Row<'hold'>,
  endedHow: NonNullable<Row<'hold'>['endedHow']>,
  causes: readonly number[] = [],
): void {
  rows.change('hold', hold.id, { toAt: Math.max(hold.fromAt, at.effectiveAt, ...causes), endedHow });
}
