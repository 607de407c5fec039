import { faultsInDeliveryRules, isTimeOfDay, runsWithCutOff } from '@holdfast/shop-calendar';
import type { CommandRule } from '../kernel/family.js';
import { foldKey } from '../kernel/fold.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { HoursOfWeek } from '../tables/shop.js';

/** A run is the stretch in which the van comes, by the wall clock of the shop's zone; it counts from its start. */
function startsOf(runs: HoursOfWeek) {
  const starts = (day: HoursOfWeek['mon']): string[] => day.map(([from]) => from);
  return {
    mon: starts(runs.mon),
    tue: starts(runs.tue),
    wed: starts(runs.wed),
    thu: starts(runs.thu),
    fri: starts(runs.fri),
    sat: starts(runs.sat),
    sun: starts(runs.sun),
  };
}

interface Runs {
  readonly runs?: HoursOfWeek | null | undefined;
  readonly cutOff?: string | null | undefined;
}

function faultyRuns({ runs, cutOff = null }: Runs): Refused | null {
  if (cutOff !== null && !isTimeOfDay(cutOff)) {
    return refuse('shop.runsFaulty', { fault: `"${cutOff}" is not a time such as 17:00.` });
  }
  if (!runs) return null;
  const weekOfRuns = runsWithCutOff(startsOf(runs), cutOff);
  const fault = faultsInDeliveryRules({ runs: weekOfRuns, noRunOn: [] })[0];
  return fault === undefined ? null : refuse('shop.runsFaulty', { fault });
}

function refusedName(rows: Rows, name: string, supplierId?: string): Refused | null {
  const key = foldKey(name);
  const namesake = rows.list('supplier', (one) => one.id !== supplierId && foldKey(one.name) === key)[0];
  if (!namesake) return null;
  return refuse('supplier.nameTaken', { supplierId: namesake.id }, { table: 'supplier', id: namesake.id });
}

/** A claim: a supplier with its order cut-off (local time) and its delivery runs by weekday. */
export const addSupplier: CommandRule<'addSupplier'> = {
  needs: () => ({}),
  decide: (rows, input, at) => {
    if (rows.find('supplier', input.supplierId)) {
      return refuse('supplier.alreadyThere', { supplierId: input.supplierId ?? null });
    }
    const name = input.name.trim();
    const refused = refusedName(rows, name) ?? faultyRuns(input);
    if (refused) return refused;
    const supplierId = input.supplierId ?? at.newId();
    const { phone = null, mail = null, cutOff = null, runs = null } = input;
    rows.add('supplier', { id: supplierId, name, phone, mail, cutOff, runs });
    return { facts: { supplierId }, created: { supplier: supplierId } };
  },
};

/** A turn on the supplier. What is left out stays; `null` takes a telephone number, a cut-off or the runs away. */
export const changeSupplier: CommandRule<'changeSupplier'> = {
  needs: () => ({}),
  decide: (rows, input) => {
    const before = live(rows, 'supplier', input.supplierId);
    if (!before) return notThere('supplier', input.supplierId);
    const kept = <V>(said: V | undefined, was: V): V => (said === undefined ? was : said);
    const changed = {
      name: input.name?.trim() ?? before.name,
      phone: kept(input.phone, before.phone),
      mail: kept(input.mail, before.mail),
      cutOff: kept(input.cutOff, before.cutOff),
      runs: kept(input.runs, before.runs),
    };
    const refused = refusedName(rows, changed.name, before.id) ?? faultyRuns(changed);
    if (refused) return refused;
    rows.change('supplier', before.id, changed);
    return { facts: { supplierId: before.id } };
  },
};
