import { describe, expect, it } from '@jest/globals';
import { type Given, given, hour, minute, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { cancelJob } from './cancel-job.js';

const planned = { goAhead: 'withCustomer' } as const;
const booked = () => given().shop().customer('c1').vehicle('v1').booked('j1').line('l1', planned);
const here = () => given().shop().customer('c1').vehicle('v1').job('j1', { number: 42 }).inYard().line('l1', planned);
const off = (story: Given) =>
  carryOut(
    cancelJob,
    story.rows(),
    { jobId: 'j1', words: 'Sold it' },
    { by: 'desk', effectiveAt: tuesdayTen - minute },
  );

describe('calling a visit off', () => {
  it('ends one that is only expected, with words, and drops its lines', () => {
    const { rows } = off(booked());
    expect(rows.get('job', 'j1')).toMatchObject({
      endedAt: tuesdayTen - minute,
      endedHow: 'cancelled',
      endWords: 'Sold it',
    });
    expect(rows.get('workLine', 'l1')).toMatchObject({
      progress: 'dropped',
      endWords: 'Sold it',
      endedAt: tuesdayTen - minute,
    });
  });
  it('lets one that is here leave from the yard, ends its holds and calls, and keeps its follow-ups', () => {
    const { rows } = off(here().hold('h1').followUp('f1').call('t1', { jobId: 'j1' }));
    expect(rows.get('place', 'j1-yard').toAt).toBe(tuesdayTen - minute);
    expect(rows.get('job', 'j1').endedHow).toBe('cancelled');
    expect(rows.get('hold', 'h1').toAt).not.toBeNull();
    expect(rows.get('call', 't1').endedHow).toBe('noLongerNeeded');
    expect(rows.get('followUp', 'f1').state).toBe('open');
  });
  it('leaves the vehicle on its other visit', () => {
    const { rows } = off(booked().job('j2').inYard());
    expect(rows.get('place', 'j2-yard').toAt).toBeNull();
    expect(rows.get('job', 'j2').endedAt).toBeNull();
  });
  it('is refused once something was done, with the way to it', () => {
    const clocked = here().clock('k1', { toAt: tuesdayTen - hour });
    const begun = here().but('workLine', 'l1', { startedAt: tuesdayTen - hour });
    for (const story of [clocked, begun]) {
      expect(off(story).refusals).toMatchObject([
        { code: 'job.workedOn', facts: { number: 42 }, way: { table: 'workLine', id: 'l1' } },
      ]);
    }
  });
  it('is refused where the vehicle does not stand in the yard', () => {
    const inBay = given().shop().bay('b1').customer('c1').vehicle('v1').job('j1').inBay('b1');
    expect(off(inBay).codes).toEqual(['job.notInYard']);
    expect(off(here().but('place', 'j1-yard', { kind: 'away' })).codes).toEqual(['job.notInYard']);
  });
  it('cancels parts that were only wanted, and gives those of a follow-up back to it', () => {
    const lent = () => here().followUp('f1').line('l2', { fromFollowUpId: 'f1' }).part('p2', { state: 'ordered' });
    const { rows } = off(lent().part('p1', { lineId: 'l1' }));
    expect(rows.get('partLine', 'p1')).toMatchObject({ state: 'cancelled', endWords: 'Sold it' });
    expect(rows.get('partLine', 'p2')).toMatchObject({ state: 'ordered', jobId: null, lineId: null, followUpId: 'f1' });
    const own = here().followUp('f1', { lineId: 'l1' }).part('p1', { state: 'arrived' }).part('p3');
    const kept = off(own).rows;
    for (const id of ['p1', 'p3']) expect(kept.get('partLine', id)).toMatchObject({ jobId: null, followUpId: 'f1' });
  });
  it('loses no part that is on order or here: a follow-up waits for it, or it is cancelled first', () => {
    for (const state of ['ordered', 'partArrived', 'arrived'] as const) {
      expect(off(here().part('p1', { state })).refusals).toMatchObject([
        { code: 'job.partOrdered', facts: { description: 'Rear step' }, way: { table: 'partLine', id: 'p1' } },
      ]);
      expect(off(booked().part('p1', { state })).codes).toEqual(['job.partOrdered']);
    }
    const closed = here().followUp('f1', { state: 'dropped' }).line('l2', { fromFollowUpId: 'f1' });
    expect(off(closed.part('p2', { state: 'ordered' })).codes).toEqual(['job.partOrdered']);
  });
  it('happens once, to a visit that is there', () => {
    expect(off(booked().but('job', 'j1', { endedAt: tuesdayTen })).codes).toEqual(['job.ended']);
    expect(off(given().shop()).codes).toEqual(['row.notFound']);
  });
});
