/**
 * What the rows say about people and the shop on a day: which setting, which facts of a bay, which skill held then.
 * It hides that such rows are valid from a day on and that the last one before the day counts (of two with one day the
 * one that was recorded last replaces the other, which is void). All days are calendar days of the shop's zone.
 */
import { Decimal } from 'decimal.js';
import type { By, Circumstances } from '../kernel/decision.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';
import type { Role } from '../tables/words.js';

/** Kilograms in a pound: international avoirdupois pound, exact by definition (1959 agreement). */
const kilogramsPerPound = '0.45359237';

export function todayOf(at: Circumstances): string {
  return at.calendar.dateOf(at.now);
}

/** The row that holds on the day; before the first of them the first, because a shop had no others then. */
export function validOn<R extends { readonly validFrom: string }>(rows: readonly R[], day: string): R | undefined {
  const byDay = [...rows].sort((a, b) => (a.validFrom < b.validFrom ? -1 : 1));
  return byDay.filter((row) => row.validFrom <= day).at(-1) ?? byDay[0];
}

export function settingOn(rows: Rows, day: string): Row<'shopSetting'> {
  const setting = validOn(rows.list('shopSetting'), day);
  if (!setting) throw new Error('a shop without settings');
  return setting;
}

/** The facts of a bay on that day. Every bay has them from the command that made it. */
export function specOn(rows: Rows, bayId: string, day: string): Row<'baySpec'> {
  const ofBay = rows.list('baySpec', (spec) => spec.bayId === bayId);
  const spec = validOn(ofBay, day);
  if (!spec) throw new Error(`bay ${bayId} without facts`);
  return spec;
}

/** Rated capacity in kilograms, whatever unit the plate has; null where none is known. */
export function capacityKg(spec: Pick<Row<'baySpec'>, 'capacity' | 'capacityUnit'>): number | null {
  if (spec.capacity === null) return null;
  const onPlate = new Decimal(spec.capacity);
  return (spec.capacityUnit === 'lb' ? onPlate.times(kilogramsPerPound) : onPlate).toNumber();
}

/** Whether the person has the skill and, where a certificate ends, it still holds on that day (its last day included). */
export function hasSkill(rows: Rows, personId: string, skill: string, day: string): boolean {
  const held = rows.list('personSkill', (row) => row.personId === personId && row.skill === skill);
  return held.some((row) => row.until === null || row.until >= day);
}

/** A person who works here; undefined for one who left, is void or belongs to another shop. */
export function workingPerson(rows: Rows, personId: string | null | undefined): Row<'person'> | undefined {
  const person = rows.find('person', personId);
  return person && !person.void && person.active ? person : undefined;
}

/** Owner or manager. */
export function isLead(by: Pick<By, 'roles'>): boolean {
  return hasRole(by, 'owner', 'manager');
}

export function hasRole(by: Pick<By, 'roles'>, ...roles: readonly Role[]): boolean {
  return by.roles.some((role) => roles.includes(role));
}
