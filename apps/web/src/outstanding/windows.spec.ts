import { describe, expect, it } from '@jest/globals';

import type { OutstandingItem, PartLinesPage } from '@holdfast/contract';

import { axisOf, entriesOf, isToldNotReturned, windowIsEmpty, type OutstandingEntry } from './windows.js';

type PartItem = PartLinesPage['items'][number];

const about = {
  vehicle: { id: 'v', plate: 'BN 03 TX', description: 'van' },
  customer: null,
  openJobId: null,
  undated: [],
};
const limit = (day: string) => ({ day, by: 'beforeDay' as const, seasonId: null });
const fix = (id: string, followUpId: string | null, day: string | null): OutstandingItem =>
  ({
    kind: 'temporaryFix',
    row: { id, followUpId },
    firstLimit: day === null ? null : limit(day),
    ...about,
  }) as unknown as OutstandingItem;
const followUp = (id: string, day: string | null, more: object = {}): OutstandingItem =>
  ({
    kind: 'followUp',
    row: { id, title: `title of ${id}`, needsGoAhead: false, needsFollowUpId: null, ...more },
    firstLimit: day === null ? null : limit(day),
    ...about,
  }) as unknown as OutstandingItem;
const part = (followUpId: string, state: string, dueOn: string | null): PartItem =>
  ({ followUpId, state, dueOn }) as unknown as PartItem;

describe('what is outstanding', () => {
  it('puts a follow-up to the fix that it ends, once, and the first limit of either counts', () => {
    const entries = entriesOf([fix('f', 'u', '2026-12-20'), followUp('u', '2026-12-01')], []);
    expect(entries.map(({ key, closesOn }) => [key, closesOn])).toEqual([['f', '2026-12-01']]);
    expect(entries[0]?.followUp?.id).toBe('u');
  });

  it('says where the follow-up of a fix stands on a later page, and not that there is none', () => {
    const [later, none] = entriesOf([fix('f', 'u', '2026-12-01'), fix('g', null, '2026-12-02')], []);
    expect([later?.isFurtherDown, none?.isFurtherDown]).toEqual([true, false]);
  });

  it('stands by the day of the first limit, those without a day last', () => {
    const entries = entriesOf([fix('a', null, null), followUp('b', '2027-01-05'), followUp('c', '2026-12-05')], []);
    expect(entries.map(({ key }) => key)).toEqual(['c', 'b', 'a']);
  });

  it('opens when the last of its parts is due, and has no day while one of them has none', () => {
    const items = [followUp('u', '2026-12-20')];
    const due = [part('u', 'ordered', '2026-12-08'), part('u', 'ordered', '2026-12-10'), part('u', 'arrived', null)];
    expect(entriesOf(items, due)[0]?.opensOn).toEqual({ kind: 'day', day: '2026-12-10' });
    expect(entriesOf(items, [...due, part('u', 'wanted', null)])[0]?.opensOn).toEqual({ kind: 'unknown' });
  });

  it('is open from now on with its parts in hand, and not while the go-ahead or another follow-up is missing', () => {
    expect(entriesOf([followUp('u', null)], [part('u', 'arrived', null)])[0]?.opensOn).toEqual({ kind: 'now' });
    expect(entriesOf([followUp('u', null, { needsGoAhead: true })], [])[0]?.opensOn).toEqual({ kind: 'unknown' });
    const second = followUp('u', null, { needsFollowUpId: 'w' });
    expect(entriesOf([second, followUp('w', null)], []).find(({ key }) => key === 'u')).toMatchObject({
      opensOn: { kind: 'unknown' },
      needsFollowUp: 'title of w',
    });
  });

  it('has no window when what it needs comes on or after its limit, or the limit is past', () => {
    const one = (opens: string | null, closesOn: string | null): OutstandingEntry =>
      ({ opensOn: opens === null ? { kind: 'now' } : { kind: 'day', day: opens }, closesOn }) as OutstandingEntry;
    expect(windowIsEmpty(one('2026-12-10', '2026-12-10'), '2026-11-25')).toBe(true);
    expect(windowIsEmpty(one('2026-12-10', '2026-12-11'), '2026-11-25')).toBe(false);
    expect(windowIsEmpty(one(null, '2026-11-24'), '2026-11-25')).toBe(true);
    expect(windowIsEmpty(one('2026-12-10', null), '2026-11-25')).toBe(false);
  });

  it('draws at least eight weeks and at most half a year', () => {
    expect(axisOf([], '2026-11-25')).toEqual({ from: '2026-11-11', to: '2027-01-20' });
    const far = entriesOf([followUp('u', '2028-01-01')], []);
    expect(axisOf(far, '2026-11-25').to).toBe('2027-05-26');
  });
});

describe('a re-torque for which the vehicle never came', () => {
  const [told] = entriesOf([followUp('r', null, { kind: 'retorque' })], []);
  const [dated] = entriesOf([followUp('r', '2026-12-10', { kind: 'retorque' })], []);
  const [other] = entriesOf([followUp('r', null, { kind: 'deferred' })], []);
  const lapsed = (entry: OutstandingEntry | undefined, today: string) =>
    entry !== undefined && isToldNotReturned(entry, '2026-11-01', today);

  it('reads as told, not returned from the thirty-first day after it was told', () => {
    expect([lapsed(told, '2026-12-01'), lapsed(told, '2026-12-02')]).toEqual([false, true]);
  });

  it('counts from its limit where that has a day', () => {
    expect([lapsed(dated, '2027-01-09'), lapsed(dated, '2027-01-10')]).toEqual([false, true]);
  });

  it('is said of no other follow-up', () => {
    expect(lapsed(other, '2027-06-01')).toBe(false);
  });
});
