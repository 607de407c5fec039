import { describe, expect, it } from '@jest/globals';
import { calendarOf } from '@holdfast/shop-calendar';
import { given } from '../kernel/given.js';
import { recorded } from '../kernel/given-usual.js';
import type { Rows } from '../kernel/rows.js';
import { hoursOfPerson, hoursOfShop, zoneAt } from '../questions/hours.js';
import { settingOn } from '../questions/people-and-shop.js';
import { carryOut } from '../settle/carry-out.js';
import { changeSettings, changeShop } from './change-shop.js';
import { endException, setException } from './exceptions.js';
import { changeSupplier } from './suppliers.js';

const shop = () => given().shop().rows();
const at = (text: string) => Date.parse(text);
const change = (input: Partial<Parameters<typeof changeShop.decide>[1]>, rows = shop()) =>
  carryOut(changeShop, rows, { shopId: 'shop', ...input }, { by: 'owner' });

describe('a changed shop', () => {
  it('has another name, units or language and keeps the rest', () => {
    expect(change({ name: ' Quay North ', units: 'us' }).rows.get('shop', 'shop')).toMatchObject({
      name: 'Quay North',
      units: 'us',
      locale: 'en-GB',
      zone: 'Europe/London',
      version: 2,
    });
    expect(change({ name: ' ' }).codes).toEqual(['shop.nameBlank']);
    expect(change({ shopId: 'other' }).codes).toEqual(['row.notFound']);
  });
  it('has another zone from a day on, and one of the same day replaces it', () => {
    const first = change({ zone: { validFrom: '2026-03-29', zone: 'Europe/Dublin' } });
    const { rows } = change({ zone: { validFrom: '2026-03-29', zone: 'Europe/Berlin' } }, first.rows);
    expect(rows.list('shopZone')).toMatchObject([{ validFrom: '2026-03-29', zone: 'Europe/Berlin' }]);
    expect(rows.listAll('shopZone')).toHaveLength(2);
    expect(zoneAt(rows, at('2026-03-28T22:59:59Z'))).toBe('Europe/London');
    expect(zoneAt(rows, at('2026-03-28T23:00:00Z'))).toBe('Europe/Berlin');
    const calendar = calendarOf(hoursOfShop(rows));
    expect(calendar.instantOf('2026-03-27', '08:00')).toBe(at('2026-03-27T08:00:00Z'));
    expect(calendar.instantOf('2026-03-30', '08:00')).toBe(at('2026-03-30T06:00:00Z'));
  });
  it('moves to a known zone, not before today', () => {
    expect(change({ zone: { validFrom: '2026-03-10', zone: 'Atlantis/Harbour' } }).codes).toEqual(['shop.zoneUnknown']);
    expect(change({ zone: { validFrom: '2026-03-09', zone: 'Europe/Berlin' } }).refusals).toMatchObject([
      { code: 'shop.zoneInPast', facts: { validFrom: '2026-03-09', today: '2026-03-10' } },
    ]);
    expect(change({ zone: { validFrom: '2026-03-10', zone: 'Europe/Berlin' } }).codes).toEqual([]);
  });
});

describe('settings', () => {
  const set = (input: Parameters<typeof changeSettings.decide>[1], rows: Rows = shop()) =>
    carryOut(changeSettings, rows, input, { by: 'owner' });

  it('hold from a day on, today where none is said; what is left out stays', () => {
    const { rows } = set({ graceMinutes: 5, tolerancePercent: '07.50' });
    expect(settingOn(rows, '2026-03-09')).toMatchObject({ graceMinutes: 15, tolerancePercent: '10' });
    expect(settingOn(rows, '2026-03-10')).toMatchObject({
      graceMinutes: 5,
      tolerancePercent: '7.5',
      floorRecordsGoAheads: true,
      workGuaranteeMonths: 12,
    });
    const later = set({ validFrom: '2026-07-01', recheckMinutes: 30, personFiguresToLeads: true }, rows).rows;
    expect(settingOn(later, '2026-06-30').recheckMinutes).toBeNull();
    expect(settingOn(later, '2026-07-01')).toMatchObject({
      recheckMinutes: 30,
      personFiguresToLeads: true,
      graceMinutes: 5,
    });
  });
  it('of one day replace each other and keep what the first of them said; void ones stay in the record', () => {
    const twice = set({ workGuaranteeMonths: null }, set({ graceMinutes: 5 }).rows);
    expect(settingOn(twice.rows, '2026-03-10')).toMatchObject({ graceMinutes: 5, workGuaranteeMonths: null });
    expect(twice.rows.list('shopSetting')).toHaveLength(2);
    expect(twice.rows.listAll('shopSetting')).toHaveLength(3);
  });
});

describe('other hours on a day', () => {
  const set = (input: Partial<Parameters<typeof setException.decide>[1]>, rows: Rows = shop()) =>
    carryOut(setException, rows, { day: '2026-03-12', hours: [], ...input });
  const openOn = (rows: Rows, day: string) => {
    const calendar = calendarOf(hoursOfShop(rows));
    const { from, to } = calendar.dayBounds(day);
    return calendar.openMinutes(from, to) / 60;
  };

  it('close the shop, or open it on another day, and leave the week as it is', () => {
    const { rows } = set({ day: '2026-03-14', hours: [['09:00', '12:00']] }, set({}).rows);
    expect(['2026-03-11', '2026-03-12', '2026-03-14'].map((day) => openOn(rows, day))).toEqual([9, 0, 3]);
  });
  it('replace what was said of that day, of the shop or of the same person', () => {
    const person = set({ personId: 'technician' }).rows;
    const { rows } = set({ hours: [['10:00', '12:00']] }, set({}, person).rows);
    expect(rows.list('hoursException').map(({ personId, hours }) => [personId, hours])).toEqual([
      ['technician', []],
      [null, [['10:00', '12:00']]],
    ]);
    expect(rows.listAll('hoursException')).toHaveLength(3);
  });
  it('have the breaks of the weekday where none are said', () => {
    expect(set({}).rows.list('hoursException')).toMatchObject([{ breaks: [['12:00', '12:30']] }]);
    expect(set({ breaks: [['10:00', '10:15']] }).rows.list('hoursException')).toMatchObject([
      { breaks: [['10:00', '10:15']] },
    ]);
    expect(set({ day: '2026-03-14' }).rows.list('hoursException')).toMatchObject([{ breaks: [] }]);
  });
  it('of a person stand over their own week, or over the shop’s where they have none', () => {
    const { rows } = set({ personId: 'technician', hours: [['08:00', '10:00']] }, set({ day: '2026-03-11' }).rows);
    const rules = hoursOfPerson(rows, 'technician');
    if (!rules) throw new Error('the person has other hours');
    const calendar = calendarOf(rules);
    const hours = ['2026-03-10', '2026-03-11', '2026-03-12'].map((day) => {
      const { from, to } = calendar.dayBounds(day);
      return calendar.openMinutes(from, to) / 60;
    });
    expect(hours).toEqual([9, 0, 2]);
    expect(hoursOfPerson(rows, 'owner')).toBeNull();
  });
  it('of a person with a week of their own keep the shop’s week before it began', () => {
    const own = given().shop().rows().list('openingHours')[0];
    if (!own) throw new Error('a shop without hours');
    const week = { ...own.week, thu: [['08:00', '09:00']] as const };
    const rows = given()
      .shop()
      .row('personHours', { id: 'own', personId: 'technician', validFrom: '2026-03-12', week, breaks: own.breaks })
      .rows();
    const calendar = calendarOf(hoursOfPerson(rows, 'technician') ?? hoursOfShop(rows));
    expect(calendar.openMinutes(calendar.dayBounds('2026-03-05').from, calendar.dayBounds('2026-03-05').to)).toBe(540);
    expect(calendar.openMinutes(calendar.dayBounds('2026-03-12').from, calendar.dayBounds('2026-03-12').to)).toBe(60);
  });
  it('that cannot be are refused with what is wrong', () => {
    expect(set({ hours: [['25:00', '26:00']] }).refusedFor?.['fault']).toContain('25:00');
    expect(set({ day: '2026-02-30' }).codes).toEqual(['shop.hoursFaulty']);
    expect(set({ breaks: [['x', '10:00']] }).codes).toEqual(['shop.hoursFaulty']);
    expect(set({ personId: 'nobody' }).codes).toEqual(['row.notFound']);
    expect(set({ exceptionId: 'e' }, set({ exceptionId: 'e' }).rows).codes).toEqual(['exception.alreadyThere']);
  });
  it('of a closed month stay as they are', () => {
    const closed = () =>
      given()
        .shop()
        .row('closedMonth', {
          id: 'm',
          ...recorded,
          month: '2026-02',
          words: null,
          reopenedAt: null,
          reopenedById: null,
          reopenWords: null,
        });
    expect(set({ day: '2026-02-28' }, closed().rows()).codes).toEqual(['time.monthClosed']);
    expect(set({ day: '2026-03-01' }, closed().rows()).codes).toEqual([]);
    expect(set({ day: '2026-02-28' }, closed().but('closedMonth', 'm', { reopenedAt: 1 }).rows()).codes).toEqual([]);
    const stands = closed().row('hoursException', {
      id: 'e',
      ...recorded,
      day: '2026-02-10',
      personId: null,
      hours: [],
      breaks: [],
      words: null,
    });
    expect(carryOut(endException, stands.rows(), { exceptionId: 'e' }).codes).toEqual(['time.monthClosed']);
  });
  it('end, and the usual hours hold again', () => {
    const { rows } = set({ exceptionId: 'e' });
    const ended = carryOut(endException, rows, { exceptionId: 'e' });
    expect(openOn(ended.rows, '2026-03-12')).toBe(9);
    expect(carryOut(endException, ended.rows, { exceptionId: 'e' }).codes).toEqual(['row.notFound']);
  });
});

describe('a changed supplier', () => {
  const two = () =>
    given()
      .shop()
      .supplier('s1', { name: 'Harbour Parts', phone: '01', cutOff: '16:00' })
      .supplier('s2', { name: 'Mill Lamps' });
  const set = (input: object, rows = two().rows()) => carryOut(changeSupplier, rows, { supplierId: 's1', ...input });

  it('keeps what is left out; null takes it away', () => {
    expect(set({ mail: 'a@b' }).rows.get('supplier', 's1')).toMatchObject({
      phone: '01',
      mail: 'a@b',
      cutOff: '16:00',
    });
    expect(set({ phone: null, cutOff: null }).rows.get('supplier', 's1')).toMatchObject({ phone: null, cutOff: null });
  });
  it('has a name of its own and times of the day', () => {
    expect(set({ name: 'harbour parts ltd' }).codes).toEqual([]);
    expect(set({ name: 'mill-lamps' }).refusals).toMatchObject([{ code: 'supplier.nameTaken', way: { id: 's2' } }]);
    expect(set({ name: 'HARBOUR PARTS' }).codes).toEqual([]);
    expect(set({ cutOff: '4 pm' }).codes).toEqual(['shop.runsFaulty']);
    expect(set({ supplierId: 's9' }).codes).toEqual(['row.notFound']);
  });
});
