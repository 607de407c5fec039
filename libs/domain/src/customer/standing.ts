import { minus } from '../kernel/amounts.js';
import type { Rows } from '../kernel/rows.js';
import { takenOf } from '../questions/totals.js';
import type { Row } from '../tables/tables.js';

export interface StandingLeft {
  readonly standing: Row<'standingGoAhead'>;
  /** Prices of the lines of this visit that rest on it, without the line asked about; in the shop's currency. */
  readonly used: string;
  /** `upTo` less `used`; below nought when overdrawn. */
  readonly left: string;
}

/**
 * The standing go-aheads that cover a visit on that day (of the shop's zone): given for it, for its vehicle, or for all of
 * the customer's, and neither ended nor past their last day. `line` is the one asked about: what it takes is its own.
 */
export function standingFor(
  rows: Rows,
  job: Row<'job'>,
  line: Pick<Row<'workLine'>, 'id'> | null,
  day: string,
): StandingLeft[] {
  const lines = rows.list('workLine', (one) => one.jobId === job.id && one.id !== line?.id);
  const covering = rows.list('standingGoAhead', (one) => {
    if (one.customerId !== job.customerId || one.endedAt !== null) return false;
    if (one.untilDay !== null && one.untilDay < day) return false;
    return (one.jobId ?? job.id) === job.id && (one.vehicleId ?? job.vehicleId) === job.vehicleId;
  });
  return covering.map((standing) => {
    const used = takenOf(standing.id, lines);
    return { standing, used, left: minus(standing.upTo, used) };
  });
}
