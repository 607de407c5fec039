import { describe, expect, it } from '@jest/globals';
import type { AddPerson, ChangePerson, PersonHours } from '../inputs.js';
import { type Given, given } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { addPerson, changePerson } from './people.js';

const none = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };
const hours: PersonHours = { validFrom: '2026-04-01', week: { ...none, mon: [['08:00', '12:00']] }, breaks: none };

const add = (input: Partial<AddPerson>, story: Given = given().shop().bay('b1')) =>
  carryOut(addPerson, story.rows(), { personId: 'new', name: 'Nan', roles: ['technician'], ...input }, { by: 'owner' });
const change = (input: Partial<ChangePerson>, story: Given = given().shop().bay('b1')) =>
  carryOut(changePerson, story.rows(), { personId: 'technician', ...input }, { by: 'owner' });

describe('a new person', () => {
  it('works here with roles, skills, hours and a home bay; a role named twice counts once', () => {
    const { rows, outcome } = add({
      roles: ['technician', 'desk', 'technician'],
      homeBayId: 'b1',
      skills: [{ skill: 'airbags', until: '2027-01-31' }],
      hours,
      password: 's3cret',
    });
    expect(rows.get('person', 'new')).toMatchObject({ roles: ['technician', 'desk'], homeBayId: 'b1', active: true });
    expect(rows.list('personSkill', (row) => row.personId === 'new')).toMatchObject([
      { skill: 'airbags', until: '2027-01-31' },
    ]);
    expect(rows.list('personHours')).toMatchObject([{ personId: 'new', validFrom: '2026-04-01' }]);
    expect(outcome?.created).toEqual({ person: 'new' });
    expect(JSON.stringify([rows.content(), outcome])).not.toContain('s3cret');
  });
  it('has a name that nobody else who works here signs in with, however it is typed', () => {
    expect(add({ name: 'the TECHNICIAN' }).refusals).toMatchObject([
      { code: 'person.nameTaken', way: { id: 'technician' } },
    ]);
    expect(add({ name: 'Gone' }, given().shop().person('old', { name: 'Gone', active: false })).codes).toEqual([]);
  });
  it('is a wall screen and nothing else, or no wall screen', () => {
    expect(add({ roles: ['wallScreen', 'desk'] }).codes).toEqual(['person.wallScreenAlone']);
    expect(add({ roles: ['wallScreen'] }).codes).toEqual([]);
  });
  it('has an id of its own, each skill once, a bay that is there and hours that can be', () => {
    expect(add({ personId: 'desk' }).codes).toEqual(['person.alreadyThere']);
    expect(add({ skills: [{ skill: 'airbags' }, { skill: 'airbags', until: '2027-01-31' }] }).codes).toEqual([
      'person.skillTwice',
    ]);
    expect(add({ homeBayId: 'b9' }).codes).toEqual(['row.notFound']);
    expect(add({ hours: { ...hours, breaks: { ...none, tue: [['12:00', 'noon']] } } }).codes).toEqual([
      'shop.hoursFaulty',
    ]);
  });
});

describe('a changed person', () => {
  it('keeps what is not said', () => {
    const story = given().shop().bay('b1').but('person', 'technician', { homeBayId: 'b1' });
    expect(change({ name: 'Ted' }, story).rows.get('person', 'technician')).toMatchObject({
      name: 'Ted',
      roles: ['technician'],
      homeBayId: 'b1',
      active: true,
    });
    expect(change({ homeBayId: null }, story).rows.get('person', 'technician').homeBayId).toBeNull();
  });
  it('loses the skills that are left out, keeps the same ones, and gets another entry for another end', () => {
    const story = given()
      .shop()
      .skill('technician', 'airbags')
      .skill('technician', 'refrigerant', { until: '2026-12-31' })
      .skill('technician', 'highVoltage');
    const skills = [{ skill: 'airbags' }, { skill: 'refrigerant', until: '2027-12-31' }];
    const { rows } = change({ skills }, story);
    const held = rows.list('personSkill', (row) => row.personId === 'technician');
    expect(held.map(({ skill, until }) => [skill, until])).toEqual([
      ['airbags', null],
      ['refrigerant', '2027-12-31'],
    ]);
    expect(rows.get('personSkill', 'technician-airbags').version).toBe(1);
    expect(rows.get('personSkill', 'technician-refrigerant').void).toBe(true);
    expect(rows.list('personSkill', (row) => row.personId === 'second')).toHaveLength(1);
  });
  it('has a new version also when only skills or hours change', () => {
    expect(change({ skills: [] }).rows.get('person', 'technician').version).toBe(2);
  });
  it('has other hours from a day on; those of the same day are replaced, other people’s stay', () => {
    const story = given()
      .shop()
      .row('personHours', { id: 'h1', personId: 'technician', ...hours })
      .row('personHours', { id: 'h2', personId: 'second', ...hours })
      .row('personHours', { id: 'h3', personId: 'technician', ...hours, validFrom: '2026-01-01' });
    const { rows } = change({ hours: { ...hours, week: none } }, story);
    expect(rows.get('personHours', 'h1').void).toBe(true);
    expect([rows.get('personHours', 'h2').void, rows.get('personHours', 'h3').void]).toEqual([false, false]);
  });
  it('does not leave the shop without an owner who works here', () => {
    expect(change({ personId: 'owner', roles: ['manager'] }).codes).toEqual(['person.lastOwner']);
    expect(change({ personId: 'owner', active: false }).codes).toEqual(['person.lastOwner']);
    const left = given()
      .shop()
      .person('old', { roles: ['owner'], active: false });
    expect(change({ personId: 'owner', active: false }, left).codes).toEqual(['person.lastOwner']);
    const two = given()
      .shop()
      .person('partner', { roles: ['owner', 'desk'] });
    expect(change({ personId: 'owner', active: false }, two).codes).toEqual([]);
  });
  it('does not leave while on the clock', () => {
    const atWork = given().shop().vehicle('v1').job('j1').line('l1').clock('k1');
    expect(change({ active: false }, atWork).refusals).toMatchObject([{ code: 'person.onClock', way: { id: 'k1' } }]);
    expect(change({ active: false }, atWork.but('clock', 'k1', { toAt: 1 })).codes).toEqual([]);
  });
  it('comes back only under a name that is free', () => {
    const story = given().shop().person('old', { name: 'The desk', active: false });
    expect(change({ personId: 'old', roles: ['desk'] }, story).codes).toEqual([]);
    expect(change({ personId: 'old', active: true }, story).codes).toEqual(['person.nameTaken']);
    expect(change({ personId: 'old', active: true, name: 'Old' }, story).codes).toEqual([]);
    expect(change({ personId: 'nobody' }).codes).toEqual(['row.notFound']);
  });
});
