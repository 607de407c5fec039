import { describe, expect, it } from '@jest/globals';
import { circumstances, given, personOf } from '../kernel/given.js';
import { capacityKg, hasSkill, isLead, settingOn, specOn, todayOf, workingPerson } from './people-and-shop.js';

describe('what holds on a day', () => {
  it('is the last setting before it, not one of a later day and not a void one', () => {
    const rows = given()
      .shop()
      .setting('july', { validFrom: '2026-07-01', graceMinutes: 5 })
      .setting('march', { validFrom: '2026-03-01', graceMinutes: 10 })
      .setting('struck', { validFrom: '2026-03-05' })
      .but('shopSetting', 'struck', { void: true })
      .rows();
    expect(settingOn(rows, '2026-02-28').id).toBe('setting');
    expect(settingOn(rows, '2026-03-10').id).toBe('march');
    expect(settingOn(rows, '2026-07-01').id).toBe('july');
  });
  it('is the first facts of a bay on a day before any of them, and none of another bay', () => {
    const rows = given().shop().bay('b1', { validFrom: '2026-03-01' }).bay('b2', { spots: 2 }).rows();
    expect(specOn(rows, 'b1', '2026-02-01').id).toBe('b1-spec');
    expect(specOn(rows, 'b2', '2026-02-01').spots).toBe(2);
  });
  it('counts from midnight of the shop, not of UTC', () => {
    const justAfterMidnightInLondon = Date.UTC(2026, 5, 1, 23, 30);
    expect(todayOf(circumstances({ now: justAfterMidnightInLondon }))).toBe('2026-06-02');
  });
});

describe('a skill', () => {
  const rows = given().shop().skill('technician', 'airbags', { until: '2026-03-10' }).rows();
  it('holds on its last day and no longer', () => {
    expect(hasSkill(rows, 'technician', 'airbags', '2026-03-10')).toBe(true);
    expect(hasSkill(rows, 'technician', 'airbags', '2026-03-11')).toBe(false);
  });
  it('is one person’s and one skill’s', () => {
    expect(hasSkill(rows, 'second', 'airbags', '2026-03-10')).toBe(false);
    expect(hasSkill(rows, 'second', 'secondCheck', '2030-01-01')).toBe(true);
  });
});

describe('people', () => {
  it('lead as owner or manager only', () => {
    expect(isLead(personOf('owner')) && isLead(personOf('manager'))).toBe(true);
    expect(isLead(personOf('desk')) || isLead(personOf('technician')) || isLead(personOf('partsClerk'))).toBe(false);
  });
  it('work here while they are active', () => {
    const rows = given().shop().person('gone', { active: false }).rows();
    expect(workingPerson(rows, 'desk')?.id).toBe('desk');
    expect(workingPerson(rows, 'gone')).toBeUndefined();
    expect(workingPerson(rows, null)).toBeUndefined();
  });
});

describe('rated capacity', () => {
  it('is the plate’s kilograms, or its pounds of 0.45359237 kg (international pound, 1959)', () => {
    expect(capacityKg({ capacity: '3000', capacityUnit: 'kg' })).toBe(3000);
    expect(capacityKg({ capacity: '10000', capacityUnit: 'lb' })).toBe(4535.9237);
    expect(capacityKg({ capacity: null, capacityUnit: 'lb' })).toBeNull();
  });
});
