import { describe, expect, it } from '@jest/globals';

import { Rows, type Row } from '@holdfast/domain';
import { calendarOf } from '@holdfast/shop-calendar';

import { eachOnce } from './last-words.js';
import { groupOf, hoursOn, peopleHere, presenceOf } from './presence.js';

const week = (day: readonly [string, string][]) => ({
  ...{ mon: day, tue: day, wed: day, thu: day, fri: day },
  ...{ sat: [], sun: [] },
});
const none = week([]);
const zone = 'Europe/London';
const opening = week([['08:00', '17:00']]);
const calendar = calendarOf({
  zone,
  hours: [{ validFrom: '2026-01-01', week: opening, breaks: none }],
  exceptions: [],
});
const day = '2026-11-25';
const at = (time: string): number => calendar.instantOf(day, time);
const row = { version: 1, void: false };
const recorded = { effectiveAt: 0, recordedAt: 0, byId: null, createdSeq: 1, updatedSeq: 1 };

type Content = { readonly [table: string]: readonly object[] };
const rowsWith = (content: Content): Rows =>
  Rows.of({
    shop: [{ ...row, id: 's', name: 'S', zone, currency: 'GBP', units: 'metric', locale: 'en-GB' }],
    person: [{ ...row, id: 'p', name: 'Ada', roles: ['technician'], homeBayId: null, active: true }],
    openingHours: [{ ...row, id: 'h', validFrom: '2026-01-01', week: opening, breaks: none }],
    ...content,
  });
const stretch = (fromAt: number, toAt: number | null, kind: Row<'attendance'>['kind'] = 'present', words = '') => ({
  ...row,
  ...recorded,
  ...{ id: String(fromAt), personId: 'p', kind, words: words || null, fromAt, toAt },
});
const clock = { ...row, ...recorded, id: 'c', personId: 'p', jobId: 'j', lineId: 'l', bench: false, toAt: null };
const technician = { roles: ['technician'] } as const;
const of = (content: Content, now: number) => presenceOf(rowsWith(content), 'p', now, calendar);

describe('what is known of a person', () => {
  it('is free as a technician who is here and on no clock, and on a clock while one runs, whoever said "here"', () => {
    const here = { attendance: [stretch(at('08:00'), null)] };
    expect(groupOf(technician, of(here, at('10:00')))).toBe('free');
    expect(groupOf({ roles: ['desk'] }, of(here, at('10:00')))).toBe('here');
    const working = of({ ...here, clock: [{ ...clock, fromAt: at('09:00') }] }, at('10:00'));
    expect(working).toMatchObject({ kind: 'present', since: at('08:00') });
    expect(groupOf(technician, working)).toBe('present');
    expect(of({ clock: [{ ...clock, fromAt: at('09:00') }] }, at('10:00'))).toMatchObject({ since: at('09:00') });
  });

  it('is a break or shop time with its word while that runs', () => {
    expect(of({ attendance: [stretch(at('12:00'), null, 'break')] }, at('12:10'))).toEqual({
      kind: 'break',
      since: at('12:00'),
    });
    expect(of({ attendance: [stretch(at('12:00'), null, 'shopTime', 'cleaning')] }, at('12:10'))).toMatchObject({
      words: 'cleaning',
    });
  });

  it('is gone since the last stretch of today ended, not since one of yesterday', () => {
    expect(of({ attendance: [stretch(at('08:00'), at('12:00'))] }, at('13:00'))).toEqual({
      kind: 'gone',
      since: at('12:00'),
    });
    const yesterday = at('00:00') - 8 * 3_600_000;
    expect(of({ attendance: [stretch(yesterday - 1, yesterday)] }, at('07:00'))).toMatchObject({ kind: 'awaited' });
  });

  it('is not here because nobody said on an earlier day that they had gone', () => {
    const evening = at('00:00') - 8 * 3_600_000;
    expect(of({ attendance: [stretch(evening, null)] }, at('07:00'))).toEqual({ kind: 'notEnded', since: evening });
  });

  it('is awaited by their hours, late once these have begun, and not today once they are over', () => {
    expect(of({}, at('07:00'))).toEqual({ kind: 'awaited', from: at('08:00'), isLate: false });
    expect(of({}, at('08:30'))).toEqual({ kind: 'awaited', from: at('08:00'), isLate: true });
    expect(of({}, at('18:00'))).toEqual({ kind: 'notToday' });
  });
});

describe('the hours of a person on a day', () => {
  const other = (personId: string | null, hours: readonly [string, string][]) => ({
    ...row,
    ...recorded,
    ...{ id: personId ?? 'shop', day, personId, hours, breaks: [], words: null },
  });
  const own = {
    ...row,
    id: 'own',
    personId: 'p',
    validFrom: '2026-01-01',
    week: week([['10:00', '14:00']]),
    breaks: none,
  };

  it('are their own before those of the shop', () => {
    expect(hoursOn(rowsWith({ personHours: [own] }), 'p', day)).toEqual([{ from: at('10:00'), to: at('14:00') }]);
  });

  it('are those of the exception of the day, their own exception before that of the shop', () => {
    const closed = rowsWith({ hoursException: [other(null, [])] });
    expect(hoursOn(closed, 'p', day)).toEqual([]);
    const both = rowsWith({ hoursException: [other(null, []), other('p', [['09:00', '10:00']])] });
    expect(hoursOn(both, 'p', day)).toEqual([{ from: at('09:00'), to: at('10:00') }]);
  });

  it('go on past midnight where they end before they begin, into the day after', () => {
    const night = rowsWith({ hoursException: [other('p', [['22:00', '06:00']])] });
    expect(hoursOn(night, 'p', day)).toEqual([{ from: at('22:00'), to: at('22:00') + 2 * 3_600_000 }]);
    expect(hoursOn(night, 'p', '2026-11-26')[0]).toEqual({
      from: at('22:00') + 2 * 3_600_000,
      to: at('22:00') + 8 * 3_600_000,
    });
  });
});

describe('the list of people', () => {
  it('has those who are free first, then by name, and no wall screen', () => {
    const person = (id: string, name: string, roles: readonly string[]) => ({
      ...row,
      ...{ id, name, roles, homeBayId: null, active: true },
    });
    const rows = rowsWith({
      person: [person('w', 'Wall', ['wallScreen']), person('p', 'Zoe', ['desk']), person('q', 'Ben', ['desk'])],
      attendance: [stretch(at('08:00'), null)],
    });
    expect(peopleHere(rows, at('07:30'), calendar).map((one) => one.person.name)).toEqual(['Zoe', 'Ben']);
  });
});

describe('the last words of shop time', () => {
  it('stand there once each, the first one as it was written', () => {
    expect(eachOnce(['Cleaning ', 'training', 'cleaning', ' '])).toEqual(['Cleaning', 'training']);
  });
});
