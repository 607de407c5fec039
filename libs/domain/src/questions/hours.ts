/**
 * When the shop is open and when its people are there, as rules for a calendar: usual hours from a day on, other hours on
 * single days, and the zone, which may change from a day on. All days and times of day are of the shop's zone of that day.
 */
import { type CalendarRules, type HoursException, localParts, type ZoneFrom } from '@holdfast/shop-calendar';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

/** The zone that a shop was set up with holds before every other one. */
const everyDaySince = '1970-01-01';

export function zonesOf(rows: Rows): readonly ZoneFrom[] {
  const first = { validFrom: everyDaySince, zone: rows.list('shop')[0]?.zone ?? 'UTC' };
  return [first, ...rows.list('shopZone').map(({ validFrom, zone }) => ({ validFrom, zone }))];
}

/** The zone that the shop's clock follows at an instant, epoch ms. */
export function zoneAt(rows: Rows, instant: number): string {
  const inTurn = [...zonesOf(rows)].sort((a, b) => (a.validFrom < b.validFrom ? -1 : 1));
  return (
    (inTurn.filter(({ validFrom, zone }) => validFrom <= localParts(instant, zone).date).at(-1) ?? inTurn[0])?.zone ??
    'UTC'
  );
}

function exceptionsOf(rows: Rows, personId: string | null): HoursException[] {
  return rows
    .list('hoursException', (one) => one.personId === personId)
    .map(({ day, hours, breaks }) => ({ date: day, hours, breaks }));
}

const asHours = ({ validFrom, week, breaks }: Row<'openingHours'> | Row<'personHours'>) => ({
  validFrom,
  week,
  breaks,
});

export function hoursOfShop(rows: Rows): CalendarRules {
  return { zone: zonesOf(rows), hours: rows.list('openingHours').map(asHours), exceptions: exceptionsOf(rows, null) };
}

/**
 * A person's own hours with the days on which they are others; before the first of them, and where there are none, those
 * of the shop, whose other days count as long as there are none. Null where nothing at all is said of the person: the
 * shop's calendar is theirs.
 */
export function hoursOfPerson(rows: Rows, personId: string): CalendarRules | null {
  const own = rows.list('personHours', (one) => one.personId === personId).map(asHours);
  const exceptions = exceptionsOf(rows, personId);
  if (own.length === 0 && exceptions.length === 0) return null;
  const shops = hoursOfShop(rows);
  const [first] = own.map(({ validFrom }) => validFrom).sort();
  if (first === undefined) return { ...shops, exceptions: [...shops.exceptions, ...exceptions] };
  return { ...shops, hours: [...shops.hours.filter(({ validFrom }) => validFrom < first), ...own], exceptions };
}
