import { compare, lesser, minus, plus, sum } from '../kernel/amounts.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';
import type { PartState } from '../tables/words.js';

/** Pieces of one part line in its own unit, decimal strings. */
export interface Pieces {
  readonly here: string;
  readonly fitted: string;
}

/**
 * Counts the pieces of a part line from its arrivals, so that none is lost or doubled in whatever order they are told:
 * what came good or was accepted, less what was found damaged or wrong at the vehicle after it had been counted. What was
 * found comes off the pieces here first, then off those on the vehicle. More found than ever came counts as none present
 * until the arrival it belongs to is told as well.
 *
 * All arrivals of the part line have to be in the bag.
 */
export function countedPieces(rows: Rows, part: Row<'partLine'>): Pieces {
  const arrivals = rows.list('arrival', (one) => one.partLineId === part.id);
  const usable = (one: Row<'arrival'>) => one.verdict === 'good' || one.verdict === 'accepted';
  const came = sum(arrivals.filter((one) => usable(one) && !one.foundAtVehicle).map((one) => one.quantity));
  const spoilt = sum(arrivals.filter((one) => !usable(one) && one.foundAtVehicle).map((one) => one.quantity));
  const present = compare(came, spoilt) > 0 ? minus(came, spoilt) : '0';
  const fitted = lesser(part.fitted, present);
  return { here: minus(present, fitted), fitted };
}

/** The state that follows from the pieces; a cancelled part line stays cancelled, its pieces stay counted. */
export function stateOf(part: Row<'partLine'>, pieces: Pieces): PartState {
  if (part.state === 'cancelled') return 'cancelled';
  const present = plus(pieces.here, pieces.fitted);
  if (compare(pieces.fitted, part.quantity) >= 0) return 'fitted';
  if (compare(present, part.quantity) >= 0) return 'arrived';
  if (compare(present, '0') > 0) return 'partArrived';
  return part.orderId === null ? 'wanted' : 'ordered';
}
