import { describe, expect, it } from '@jest/globals';
import { given, opening } from '../kernel/given.js';
import { givenInstead, lineSettledByChoice } from './choices.js';
import { isStillWanted } from './parts-and-holds.js';

type Line = Parameters<ReturnType<typeof given>['line']>[1];
const ways = (one: Line = {}, other: Line = {}) =>
  given()
    .shop()
    .vehicle('v1')
    .job('j1')
    .line('other', { choiceId: 'c', goAhead: 'given', ...other })
    .line('one', { choiceId: 'c', goAhead: 'withCustomer', ...one })
    .part('p1')
    .rows();
const settled = (one: Line = {}, other: Line = {}) => {
  const rows = ways(one, other);
  return lineSettledByChoice(rows, rows.get('workLine', 'one'));
};

describe('a line of a choice', () => {
  it('is settled while another one has the go-ahead', () => {
    expect(settled()).toBe(true);
    expect(settled({}, { progress: 'done' })).toBe(true);
    expect(settled({}, { goAhead: 'withCustomer' })).toBe(false);
    expect(settled({}, { goAhead: 'declined' })).toBe(false);
    expect(settled({}, { progress: 'dropped' })).toBe(false);
  });
  it('is not settled by lines of another choice, of none, or of another visit', () => {
    expect(settled({}, { choiceId: 'd' })).toBe(false);
    expect(settled({ choiceId: null }, { choiceId: null })).toBe(false);
    expect(settled({}, { jobId: 'j0' })).toBe(false);
  });
  it('is not settled once it was begun or given itself', () => {
    expect(settled({ startedAt: opening, progress: 'stopped' })).toBe(false);
    expect(settled({ goAhead: 'given' })).toBe(false);
  });
  it('names the line that was given instead', () => {
    const rows = ways();
    expect(givenInstead(rows, rows.get('workLine', 'one'))?.id).toBe('other');
    expect(givenInstead(rows, rows.get('workLine', 'other'))).toBeUndefined();
  });
  it('wants its parts no longer when it is settled', () => {
    const wanted = (other: Line) => {
      const rows = ways({}, other);
      return isStillWanted(rows, rows.get('partLine', 'p1'));
    };
    expect([wanted({}), wanted({ goAhead: 'withCustomer' })]).toEqual([false, true]);
  });
});
