import { hoursOfPerson } from '@holdfast/domain';
import { type Calendar, calendarOf } from '@holdfast/shop-calendar';
import type { ShopAtHand } from './shop-of.js';

/** Kept as long as the shop's rows they were made from. */
const kept = new WeakMap<ShopAtHand['rows'], ReadonlyMap<string, Calendar>>();

/** The calendars of people of whom hours are said, by person: their week and their other days. All others keep the shop's. */
export function calendarsOfPeople({ rows }: Pick<ShopAtHand, 'rows'>): ReadonlyMap<string, Calendar> {
  const known = kept.get(rows);
  if (known) return known;
  const made = new Map<string, Calendar>();
  for (const { id } of rows.list('person')) {
    const rules = hoursOfPerson(rows, id);
    if (rules) made.set(id, calendarOf(rules));
  }
  kept.set(rows, made);
  return made;
}
