import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import { limitsOf } from '../outstanding/limits.js';
import type { Row } from '../tables/tables.js';

/** What stays outstanding when a vehicle leaves; left unsaid, "soon", with no limit, and nothing to be asked first. */
export interface LeftOver {
  readonly kind: Row<'followUp'>['kind'];
  readonly title: string;
  readonly words?: string | null;
  readonly urgency?: Row<'followUp'>['urgency'];
  readonly lineId?: string | null;
  readonly remainingMinutes?: number | null;
  readonly needsGoAhead?: boolean;
  readonly limits?: ReturnType<typeof limitsOf>;
}

/** Makes the follow-up by itself; gives its id. */
export function leftOver(rows: Rows, at: Circumstances, job: Row<'job'>, left: LeftOver): string {
  const id = at.newId();
  rows.add('followUp', {
    id,
    ...recordedBy(at),
    vehicleId: job.vehicleId,
    fromJobId: job.id,
    kind: left.kind,
    title: left.title,
    words: left.words ?? null,
    urgency: left.urgency ?? 'soon',
    lineId: left.lineId ?? null,
    remainingMinutes: left.remainingMinutes ?? null,
    needsGoAhead: left.needsGoAhead ?? false,
    needsFollowUpId: null,
    ...(left.limits ?? limitsOf(rows, {})),
    state: 'open',
    closedAt: null,
    closedById: null,
    closeWords: null,
    closeLineId: null,
  });
  return id;
}
