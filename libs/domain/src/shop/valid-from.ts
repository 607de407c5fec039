import { faultsInRules } from '@holdfast/shop-calendar';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';
import type { HoursOfWeek } from '../tables/shop.js';

type DatedTable = 'openingHours' | 'personHours' | 'baySpec' | 'shopSetting' | 'shopZone';

/** Of two entries of one day the later one replaces the earlier, which stays in the record as void. */
export function strikeEntriesOf<T extends DatedTable>(
  rows: Rows,
  table: T,
  validFrom: string,
  of: (row: Row<T>) => boolean = () => true,
): void {
  const sameDay = rows.list(table, (row) => row.validFrom === validFrom && of(row));
  for (const row of sameDay) {
    const strike = { void: true } as Partial<Omit<Row<T>, 'id' | 'version'>>;
    rows.change(table, row.id, strike);
  }
}

/** Hours and breaks by weekday, in the zone of the shop; the first fault as a sentence. */
export function faultyHours(
  rows: Rows,
  hours: { readonly validFrom: string; readonly week: HoursOfWeek; readonly breaks: HoursOfWeek } | undefined,
): Refused | null {
  if (!hours) return null;
  const { validFrom, week, breaks } = hours;
  const zone = rows.list('shop')[0]?.zone ?? 'UTC';
  const fault = faultsInRules({ zone, hours: [{ validFrom, week, breaks }], exceptions: [] })[0];
  return fault === undefined ? null : refuse('shop.hoursFaulty', { fault });
}
