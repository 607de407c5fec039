/** What the owner changes of the shop itself: its name, units and language, its zone and its settings from a day on. */
import { faultsInRules } from '@holdfast/shop-calendar';
import type { ChangeShop } from '../inputs.js';
import { canonical } from '../kernel/amounts.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { settingOn, todayOf } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { strikeEntriesOf } from './valid-from.js';

function refusedZone({ zone: said }: ChangeShop, at: Circumstances): Refused | null {
  if (!said) return null;
  const { validFrom, zone } = said;
  const today = todayOf(at);
  const rules = { zone: [{ validFrom, zone }], hours: [], exceptions: [] };
  if (faultsInRules(rules).length > 0) return refuse('shop.zoneUnknown', { zone });
  return validFrom < today ? refuse('shop.zoneInPast', { validFrom, today }) : null;
}

/** A turn on the shop. What happened keeps the instants it has: another zone only says how they read, from its day on. */
export const changeShop: CommandRule<'changeShop'> = {
  needs: () => ({}),
  decide: (rows, input, at) => {
    const shop = live(rows, 'shop', input.shopId);
    if (!shop) return notThere('shop', input.shopId);
    const name = input.name?.trim() ?? shop.name;
    if (name === '') return refuse('shop.nameBlank');
    const refused = refusedZone(input, at);
    if (refused) return refused;
    const { units, locale } = { units: input.units ?? shop.units, locale: input.locale ?? shop.locale };
    rows.change('shop', shop.id, { name, units, locale });
    if (!input.zone) return { facts: { shopId: shop.id, units, locale } };
    const { validFrom, zone } = input.zone;
    strikeEntriesOf(rows, 'shopZone', validFrom);
    const { id } = rows.add('shopZone', { id: at.newId(), ...recordedBy(at), validFrom, zone });
    return { facts: { shopId: shop.id, units, locale, zone, validFrom }, created: { shopZone: id } };
  },
};

/** What is `undefined` was not said. */
function said<T extends object>(input: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const fields = Object.entries(input).filter(([, value]) => value !== undefined);
  return Object.fromEntries(fields) as { [K in keyof T]?: Exclude<T[K], undefined> };
}

/**
 * A claim: settings from a day of the shop's zone on, today where none is said. What is left out stays as it would be on
 * that day; settings of later days stay as they are.
 */
export const changeSettings: CommandRule<'changeSettings'> = {
  needs: () => ({}),
  decide: (rows: Rows, { validFrom: from, tolerancePercent, ...input }, at) => {
    const validFrom = from ?? todayOf(at);
    const { id: _id, version: _version, void: _void, ...before } = settingOn(rows, validFrom);
    strikeEntriesOf(rows, 'shopSetting', validFrom);
    const tolerance = tolerancePercent === undefined ? {} : { tolerancePercent: canonical(tolerancePercent) };
    const { id } = rows.add('shopSetting', { ...before, ...said(input), ...tolerance, id: at.newId(), validFrom });
    return { facts: { validFrom }, created: { shopSetting: id } };
  },
};
