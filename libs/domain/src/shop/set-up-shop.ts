import { faultsInRules, sameHours } from '@holdfast/shop-calendar';
import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';

/** From when the first settings and hours hold: before any day that a shop of this program can have. */
const everyDaySince = '2000-01-01';
const workingDays = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;

/**
 * A claim by nobody, on an empty bag: the shop, its first settings and hours (to be changed by whoever it belongs to) and
 * its owner. The first new id is the shop's, by agreement with the engine, which also keeps code and password.
 */
export const setUpShop: CommandRule<'setUpShop'> = {
  needs: () => ({ counter: true }),
  decide: (rows, input, at) => {
    const { zone, name, currency, units, locale } = input.shop;
    if (rows.list('shop').length > 0) return refuse('shop.alreadyThere');
    if (faultsInRules({ zone, hours: [], exceptions: [] }).length > 0) return refuse('shop.zoneUnknown', { zone });
    const shopId = at.newId();
    rows.add('shop', { id: shopId, name, zone, currency, units, locale });
    rows.add('shopSetting', {
      id: at.newId(),
      validFrom: everyDaySince,
      graceMinutes: 15,
      tolerancePercent: '10',
      floorRecordsGoAheads: true,
      recheckMinutes: null,
      workGuaranteeMonths: 12,
      partGuaranteeMonths: 12,
      personFiguresToLeads: false,
    });
    rows.add('openingHours', {
      id: at.newId(),
      validFrom: everyDaySince,
      week: sameHours(workingDays, [['08:00', '17:00']]),
      breaks: sameHours(workingDays, [['12:00', '12:30']]),
    });
    const personId = at.newId();
    rows.add('person', {
      id: personId,
      name: input.owner.name.trim(),
      roles: ['owner'],
      homeBayId: null,
      active: true,
    });
    rows.add('counter', { id: at.newId(), name: 'job', value: 0 });
    return { facts: { shopId, personId, units, locale }, created: { shop: shopId, person: personId } };
  },
};
