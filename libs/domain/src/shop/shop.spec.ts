import { describe, expect, it } from '@jest/globals';
import type { SetUpShop } from '../inputs.js';
import { given } from '../kernel/given.js';
import { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import type { HoursOfWeek } from '../tables/shop.js';
import { setOpeningHours, setSeasons } from './hours-and-seasons.js';
import { setUpShop } from './set-up-shop.js';
import { addSupplier } from './suppliers.js';

const none: HoursOfWeek = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };
const saturday: HoursOfWeek = { ...none, sat: [['09:00', '12:00']] };

describe('a new shop', () => {
  const facts: SetUpShop = {
    code: 'c',
    shop: { name: 'Quayside', zone: 'Europe/London', currency: 'GBP', units: 'metric', locale: 'en-GB' },
    owner: { name: ' Olive ', password: 'p' },
  };
  const nobody = { personId: null, name: '', roles: [] };

  it('has its owner, settings, hours and job numbers from nought', () => {
    const { rows, outcome } = carryOut(setUpShop, Rows.of({}), facts, { by: nobody });
    expect(rows.list('shop')).toMatchObject([{ id: outcome?.created?.['shop'], name: 'Quayside', currency: 'GBP' }]);
    expect(rows.list('person')).toMatchObject([{ name: 'Olive', roles: ['owner'], active: true }]);
    expect(rows.list('shopSetting')).toMatchObject([
      { graceMinutes: 15, tolerancePercent: '10', floorRecordsGoAheads: true, recheckMinutes: null },
    ]);
    const [hours] = rows.list('openingHours');
    expect(hours).toMatchObject({
      week: { fri: [['08:00', '17:00']], sat: [] },
      breaks: { mon: [['12:00', '12:30']] },
    });
    expect(rows.list('counter')).toMatchObject([{ name: 'job', value: 0 }]);
  });
  it('takes the first id that is given for the shop, which is the tenant', () => {
    const { outcome } = carryOut(setUpShop, Rows.of({}), facts, { by: nobody });
    const ids = Object.values(outcome?.created ?? {}).map((id) => Number(id.replace('made-', '')));
    expect(ids[0]).toBe(Math.min(...ids));
  });
  it('lets no password near the rows', () => {
    const { rows } = carryOut(
      setUpShop,
      Rows.of({}),
      { ...facts, owner: { name: 'O', password: 's3cret' } },
      { by: nobody },
    );
    expect(JSON.stringify(rows.content())).not.toContain('s3cret');
  });
  it('is set up once, in a zone that is known', () => {
    expect(carryOut(setUpShop, given().shop().rows(), facts, { by: nobody }).codes).toEqual(['shop.alreadyThere']);
    const lost = { ...facts, shop: { ...facts.shop, zone: 'Atlantis/Harbour' } };
    expect(carryOut(setUpShop, Rows.of({}), lost, { by: nobody }).codes).toEqual(['shop.zoneUnknown']);
  });
});

describe('opening hours', () => {
  const set = (validFrom: string, week = saturday, rows = given().shop().rows()) =>
    carryOut(setOpeningHours, rows, { validFrom, week, breaks: none });

  it('hold from a day on and leave the earlier ones as they were', () => {
    const { rows } = set('2026-04-01');
    expect(rows.list('openingHours').map(({ validFrom }) => validFrom)).toEqual(['2020-01-01', '2026-04-01']);
  });
  it('of one day replace each other; the replaced ones are kept as void', () => {
    const once = set('2026-04-01');
    const twice = set('2026-04-01', none, once.rows);
    expect(twice.rows.list('openingHours', (row) => row.validFrom === '2026-04-01')).toMatchObject([{ week: none }]);
    expect(twice.rows.listAll('openingHours')).toHaveLength(3);
  });
  it('that cannot be are refused with what is wrong', () => {
    const { codes, refusedFor } = set('2026-04-01', { ...none, mon: [['25:00', '17:00']] });
    expect(codes).toEqual(['shop.hoursFaulty']);
    expect(refusedFor?.['fault']).toContain('25:00');
    expect(set('2026-02-30').codes).toEqual(['shop.hoursFaulty']);
  });
});

describe('seasons', () => {
  const salt = { seasonId: 'salt', name: 'Salt', fromDay: '11-01', toDay: '03-31', validFrom: '2026-01-01' };
  const two = () => given().shop().season('salt').season('fair', { name: 'Fair' });
  const set = (seasons: Parameters<typeof setSeasons.decide>[1]['seasons'], rows = two().rows()) =>
    carryOut(setSeasons, rows, { seasons });

  it('change, begin, and end today when they are left out', () => {
    const { rows } = set([
      { ...salt, toDay: '04-15' },
      { ...salt, seasonId: 'ice', name: 'Ice' },
    ]);
    expect(rows.get('season', 'salt')).toMatchObject({ toDay: '04-15', endedOn: null });
    expect(rows.get('season', 'fair').endedOn).toBe('2026-03-10');
    expect(rows.get('season', 'ice').endedOn).toBeNull();
  });
  it('that ended before keep their day, and go on when they are named again', () => {
    const over = two()
      .but('season', 'fair', { endedOn: '2025-05-05' })
      .but('season', 'salt', { endedOn: '2025-05-05' });
    const { rows } = set([salt], over.rows());
    expect(rows.get('season', 'fair').endedOn).toBe('2025-05-05');
    expect(rows.get('season', 'salt').endedOn).toBeNull();
  });
  it('are named once and lie in the year', () => {
    expect(set([salt, { ...salt, seasonId: 'other', name: 'SALT' }]).codes).toEqual(['season.twice']);
    expect(set([salt, { ...salt, name: 'Fair' }]).codes).toEqual(['season.twice']);
    expect(set([{ ...salt, toDay: '02-30' }]).codes).toEqual(['shop.seasonFaulty']);
    expect(set([salt], two().but('season', 'salt', { void: true }).rows()).codes).toEqual(['row.notFound']);
  });
});

describe('a supplier', () => {
  const add = (input: Partial<Parameters<typeof addSupplier.decide>[1]> = {}) =>
    carryOut(addSupplier, given().shop().supplier('s1', { name: 'Harbour Parts' }).rows(), {
      name: 'Mill Lamps',
      ...input,
    });

  it('is kept with cut-off and runs', () => {
    const { rows } = add({ supplierId: 's2', cutOff: '16:30', runs: saturday });
    expect(rows.get('supplier', 's2')).toMatchObject({
      name: 'Mill Lamps',
      cutOff: '16:30',
      runs: saturday,
      phone: null,
    });
  });
  it('may have neither', () => {
    expect(add({ supplierId: 's2' }).rows.get('supplier', 's2')).toMatchObject({ cutOff: null, runs: null });
  });
  it('has a name and an id of its own', () => {
    expect(add({ name: 'harbour-parts' }).refusals).toMatchObject([{ code: 'supplier.nameTaken', way: { id: 's1' } }]);
    expect(add({ supplierId: 's1' }).codes).toEqual(['supplier.alreadyThere']);
  });
  it('comes and closes at times of the day', () => {
    expect(add({ runs: { ...none, mon: [['7.30', '08:00']] } }).codes).toEqual(['shop.runsFaulty']);
    expect(add({ cutOff: '4 pm' }).codes).toEqual(['shop.runsFaulty']);
    expect(add({ cutOff: '4 pm', runs: saturday }).codes).toEqual(['shop.runsFaulty']);
  });
});
