/**
 * Two records of one vehicle, or of one customer, become one. Every row that names the other names the kept one
 * afterwards, found by the columns of the tables and so by no list that could be forgotten; the other record stays, says
 * into which it was merged, and is found under its old plate or name.
 */
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live, openJobOf } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { type Row, tableNames, tables } from '../tables/tables.js';
import { placesOfVehicle, usesOfVehicle } from '../timeline/lanes.js';
import { type Interval, overlap } from '../timeline/timeline.js';

type Merged = 'vehicle' | 'customer';

/** Rows that are void too: what was struck is of the kept record as well. */
function nameInstead(rows: Rows, table: Merged, otherId: string, keptId: string): number {
  let moved = 0;
  for (const name of tableNames) {
    const columns = Object.entries(tables[name].columns).filter(([, { ref }]) => ref === table);
    for (const row of columns.length > 0 ? rows.listAll(name) : []) {
      const values = row as unknown as Readonly<Record<string, unknown>>;
      const named = columns.filter(([column]) => values[column] === otherId).map(([column]) => [column, keptId]);
      if (named.length === 0) continue;
      rows.change(name, row.id, Object.fromEntries(named) as object);
      moved += 1;
    }
  }
  return moved;
}

/** Both records are there, are two, and each is as the sender saw it; the kept one's version the engine has looked at. */
function refusedPair(
  rows: Rows,
  table: Merged,
  input: { readonly keptId: string; readonly otherId: string; readonly otherVersion: number },
): Refused | null {
  const { keptId, otherId, otherVersion } = input;
  const [kept, other] = [live(rows, table, keptId), live(rows, table, otherId)];
  if (!kept) return notThere(table, keptId);
  if (!other) return notThere(table, otherId);
  if (keptId === otherId) return refuse('merge.withItself');
  const current = (other as { readonly version: number }).version;
  return current === otherVersion ? null : refuse('row.stale', { table, id: otherId, version: otherVersion, current });
}

const meet = (one: readonly Interval[], other: readonly Interval[]): boolean =>
  one.some((a) => other.some((b) => overlap(a, b)));

/** A vehicle is in one place at a time: two records that were in two places at once are two vehicles, or one is wrong. */
function refusedPlaces(rows: Rows, keptId: string, otherId: string): Refused | null {
  const [here, otherHere] = [openJobOf(rows, keptId), openJobOf(rows, otherId)];
  if (here && otherHere) {
    const facts = { number: here.number, otherNumber: otherHere.number };
    return refuse('merge.bothHere', facts, { table: 'job', id: otherHere.id });
  }
  const apart =
    meet(placesOfVehicle(rows, keptId), placesOfVehicle(rows, otherId)) ||
    meet(usesOfVehicle(rows, keptId), usesOfVehicle(rows, otherId));
  return apart ? refuse('merge.placesOverlap') : null;
}

/** What only the other record knew; and how the vehicle moves, from the one that is here. */
function filledFrom(rows: Rows, kept: Row<'vehicle'>, other: Row<'vehicle'>): Partial<Row<'vehicle'>> {
  const moves = openJobOf(rows, other.id) ? { rolls: other.rolls, mayBeDriven: other.mayBeDriven } : {};
  return {
    customerId: kept.customerId ?? other.customerId,
    vin: kept.vin ?? other.vin,
    ...(kept.curbKg === null ? { curbKg: other.curbKg, curbSource: other.curbSource } : {}),
    ...(kept.grossKg === null ? { grossKg: other.grossKg, grossSource: other.grossSource } : {}),
    weighedKg: kept.weighedKg ?? other.weighedKg,
    notes: kept.notes ?? other.notes,
    ...moves,
  };
}

/** A turn on the kept record. Its own plate and facts stand; what it does not know is taken from the other. */
export const mergeVehicles: CommandRule<'mergeVehicles'> = {
  needs: ({ vehicleId, otherId }) => {
    const both = [vehicleId, otherId];
    return { vehicles: both, allOfVehicles: both, tables: tableNames };
  },
  decide(rows, { vehicleId, otherId, otherVersion }, _at: Circumstances) {
    const pair = { keptId: vehicleId, otherId, otherVersion };
    const refused = refusedPair(rows, 'vehicle', pair) ?? refusedPlaces(rows, vehicleId, otherId);
    if (refused) return refused;
    rows.change('vehicle', vehicleId, filledFrom(rows, rows.get('vehicle', vehicleId), rows.get('vehicle', otherId)));
    const moved = nameInstead(rows, 'vehicle', otherId, vehicleId);
    rows.change('vehicle', otherId, { mergedIntoId: vehicleId });
    return { facts: { vehicleId, otherId, moved } };
  },
};

/** A turn on the kept record. Whose personal data were erased is no longer known, and is merged with nobody. */
export const mergeCustomers: CommandRule<'mergeCustomers'> = {
  needs: ({ customerId, otherId }) => {
    const both = [customerId, otherId];
    return { customers: both, allOfCustomers: both, tables: tableNames };
  },
  decide(rows, { customerId, otherId, otherVersion }) {
    const refused = refusedPair(rows, 'customer', { keptId: customerId, otherId, otherVersion });
    if (refused) return refused;
    const [kept, other] = [rows.get('customer', customerId), rows.get('customer', otherId)];
    const erased = [kept, other].find(({ erasedAt }) => erasedAt !== null);
    if (erased) return refuse('customer.erased', { customerId: erased.id });
    rows.change('customer', customerId, { fleet: kept.fleet ?? other.fleet });
    const moved = nameInstead(rows, 'customer', otherId, customerId);
    rows.change('customer', otherId, { mergedIntoId: customerId });
    return { facts: { customerId, otherId, moved } };
  },
};
