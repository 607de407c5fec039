import { faultsInDeliveryRules, isTimeOfDay, runsWithCutOff } from '@holdfast/shop-calendar';
import type { AddSupplier } from '../inputs.js';
import type { CommandRule } from '../kernel/family.js';
import { foldKey } from '../kernel/fold.js';
import { type Refused, refuse } from '../kernel/refusal.js';
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

function faultyRuns({ runs, cutOff }: AddSupplier): Refused | null {
  if (cutOff !== undefined && !isTimeOfDay(cutOff)) {
    return refuse('shop.runsFaulty', { fault: `"${cutOff}" is not a time such as 17:00.` });
  }
  if (!runs) return null;
  const weekOfRuns = runsWithCutOff(startsOf(runs), cutOff ?? null);
  const fault = faultsInDeliveryRules({ runs: weekOfRuns, noRunOn: [] })[0];
  return fault === undefined ? null : refuse('shop.runsFaulty', { fault });
}

/** A claim: a supplier with its order cut-off (local time) and its delivery runs by weekday. */
export const addSupplier: CommandRule<'addSupplier'> = {
  needs: () => ({}),
  decide: (rows, input, at) => {
    if (rows.find('supplier', input.supplierId)) {
      return refuse('supplier.alreadyThere', { supplierId: input.supplierId ?? null });
    }
    const name = input.name.trim();
    const namesake = rows.list('supplier', (one) => foldKey(one.name) === foldKey(name))[0];
    if (namesake) {
      return refuse('supplier.nameTaken', { supplierId: namesake.id }, { table: 'supplier', id: namesake.id });
    }
    const faulty = faultyRuns(input);
    if (faulty) return faulty;
    const supplierId = input.supplierId ?? at.newId();
    const { phone = null, mail = null, cutOff = null, runs = null } = input;
    rows.add('supplier', { id: supplierId, name, phone, mail, cutOff, runs });
    return { facts: { supplierId }, created: { supplier: supplierId } };
  },
};
