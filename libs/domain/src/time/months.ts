/** Months whose times stand. All months are calendar months of the shop's zone, `YYYY-MM`. */
import type { Calendar } from '@holdfast/shop-calendar';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { flag } from '../kernel/flags.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';
import { overlap, type Span } from '../timeline/timeline.js';

/** From the start of the month to the start of the next, epoch ms. */
export function boundsOfMonth(calendar: Calendar, month: string): { readonly fromAt: number; readonly toAt: number } {
  const [year = 0, number = 0] = month.split('-').map(Number);
  const next = number === 12 ? `${String(year + 1)}-01` : `${String(year)}-${String(number + 1).padStart(2, '0')}`;
  const startOf = (one: string) => calendar.dayBounds(`${one}-01`).from;
  return { fromAt: startOf(month), toAt: startOf(next) };
}

function closedMonths(rows: Rows): Row<'closedMonth'>[] {
  return rows.list('closedMonth', (one) => one.reopenedAt === null).sort((a, b) => (a.month < b.month ? -1 : 1));
}

function closedMonthOf(rows: Rows, { calendar }: Circumstances, spans: readonly Span[]): string | undefined {
  return closedMonths(rows).find(({ month }) => {
    const bounds = boundsOfMonth(calendar, month);
    return spans.some((span) => overlap(span, bounds));
  })?.month;
}

/** Whether an interval that is corrected, added or struck lies in a closed month, however little of it. */
export function againstClosedMonth(rows: Rows, at: Circumstances, spans: readonly Span[]): Refused | null {
  const month = closedMonthOf(rows, at, spans);
  return month === undefined ? null : refuse('time.monthClosed', { month });
}

/** A report that comes late is a fact: it is kept, and marked where its month is closed. */
export function flagClosedMonth(
  rows: Rows,
  at: Circumstances,
  subjects: { readonly jobId: string | null; readonly vehicleId: string | null },
): void {
  const month = closedMonthOf(rows, at, [{ fromAt: at.effectiveAt, toAt: at.effectiveAt + 1 }]);
  if (month !== undefined) flag(rows, at, 'time.inClosedMonth', subjects, { month });
}

export const closeMonth: CommandRule<'closeMonth'> = {
  needs: () => ({}),
  decide(rows, { month, words }, at) {
    if (boundsOfMonth(at.calendar, month).toAt > at.now) return refuse('time.monthNotOver', { month });
    if (closedMonths(rows).some((one) => one.month === month)) return refuse('time.monthClosedAlready', { month });
    const closed = rows.add('closedMonth', {
      id: at.newId(),
      ...recordedBy(at),
      month,
      words: words ?? null,
      reopenedAt: null,
      reopenedById: null,
      reopenWords: null,
    });
    return { facts: { month }, created: { closedMonth: closed.id } };
  },
};

export const reopenMonth: CommandRule<'reopenMonth'> = {
  needs: () => ({}),
  decide(rows, { month, words }, at) {
    const closed = closedMonths(rows).find((one) => one.month === month);
    if (!closed) return refuse('time.monthNotClosed', { month });
    rows.change('closedMonth', closed.id, {
      reopenedAt: at.effectiveAt,
      reopenedById: at.by.personId,
      reopenWords: words,
    });
    return { facts: { month } };
  },
};
