/** What somebody says happened is kept as a report, whether it became an interval at once or has to wait for a card. */
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { NewRow, Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

type Said = Pick<NewRow<'report'>, 'kind' | 'jobId' | 'vehicleId'> & {
  readonly personId?: string;
  readonly bayId?: string;
  /** The command's own input. */
  readonly said: object;
  /** When it happened as far as it is known, epoch ms: the report's `effectiveAt`. */
  readonly happenedAt: number;
};

function report(
  rows: Rows,
  at: Circumstances,
  said: Said,
  more: Pick<NewRow<'report'>, 'against' | 'state' | 'settledAt'>,
): Row<'report'> {
  return rows.add('report', {
    id: at.newId(),
    ...recordedBy(at),
    effectiveAt: said.happenedAt,
    kind: said.kind,
    jobId: said.jobId,
    vehicleId: said.vehicleId,
    personId: said.personId ?? at.by.personId,
    bayId: said.bayId ?? null,
    said: withoutGaps(said.said),
    ...more,
    settledById: null,
    settledWords: null,
  });
}

/** Fields that were left out are not kept as `undefined`: the row is stored as JSON. */
function withoutGaps(said: object): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined));
}

export function settledReport(rows: Rows, at: Circumstances, said: Said): Row<'report'> {
  return report(rows, at, said, { against: [], state: 'settled', settledAt: at.now });
}

/** `against` are the ids of the settled rows it clashes with. */
export function contestedReport(rows: Rows, at: Circumstances, said: Said, against: readonly string[]): Row<'report'> {
  return report(rows, at, said, { against, state: 'contested', settledAt: null });
}
