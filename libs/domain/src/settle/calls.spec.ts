import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { recordContact } from '../customer/contact-log.js';
import { bookJob, recordArrival } from '../job/bookings.js';
import { cancelJob } from '../job/cancel-job.js';
import { type Given, given, hour, minute, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { receiveParts } from '../parts/receive-parts.js';
import { settle } from '../settle.js';
import type { Row } from '../tables/tables.js';
import { goAheadAnswers, lineProgress, payers } from '../tables/words.js';
import { addLine } from '../work/add-line.js';
import { recordGoAhead } from '../work/record-go-ahead.js';
import { carryOut, circumstancesOf } from './carry-out.js';

const shop = () => given().shop().customer('c1').vehicle('v1');
const here = () => shop().job('j1').inYard();
const asked = (over: Partial<Row<'workLine'>> = {}) => ({ goAhead: 'withCustomer', ...over }) as const;
/** What a command that writes to the visit would settle: the job row is touched, nothing else. */
const touched = (rows: Rows, now = tuesdayTen, whole = true): Rows => {
  const after = rows.fork();
  for (const job of after.list('job')) after.change('job', job.id, { boardNote: 'N' });
  settle(after, circumstancesOf({ now }), { whole });
  return after;
};
const calls = (rows: Rows) => rows.list('call').map(({ reason, endedHow }) => [reason, endedHow]);
const settled = (story: Given) => calls(touched(story.rows()));
const logged = (rows: Rows, now = tuesdayTen) => {
  const open = rows.list('call', (call) => call.endedAt === null)[0]?.id ?? '';
  const said = {
    vehicleId: 'v1',
    callId: open,
    way: 'telephone',
    reached: true,
    answer: 'Yes',
    moveOf: 'shop',
  } as const;
  return carryOut(recordContact, rows, said, { by: 'desk', now }).rows;
};

describe('a call about a go-ahead', () => {
  it('is raised once while a line of a visit that is here is with the customer', () => {
    const rows = touched(here().line('l1', asked()).rows());
    expect(rows.list('call')).toMatchObject([
      { reason: 'goAhead', jobId: 'j1', vehicleId: 'v1', customerId: 'c1', endedAt: null },
    ]);
    expect(calls(touched(rows))).toEqual([['goAhead', null]]);
  });
  it('is not raised for what nobody asks the customer', () => {
    const none: Given[] = [
      here().line('l1'),
      here().line('l1', asked({ payer: 'shop' })),
      here().line('l1', asked({ payer: 'guarantee' })),
      here().line('l1', asked({ progress: 'dropped' })),
      here()
        .line('l1', { choiceId: 'x' })
        .line('l2', asked({ choiceId: 'x' })),
      here().line('l1', asked()).but('job', 'j1', { customerId: null }),
      shop().booked('j1').line('l1', asked()),
    ];
    for (const story of none) expect(settled(story).filter(([reason]) => reason === 'goAhead')).toEqual([]);
  });
  it('ends by itself when the answer is there, or the visit is over', () => {
    const called = touched(here().line('l1', asked()).rows());
    const said = { lineId: 'l1', answer: 'given', how: 'telephone', byName: 'Ida' } as const;
    const given = carryOut(recordGoAhead, called, said, { now: tuesdayTen + minute });
    expect(given.codes).toEqual([]);
    expect(given.rows.list('call')).toMatchObject([{ endedHow: 'noLongerNeeded', endedAt: tuesdayTen + minute }]);
    const over = carryOut(cancelJob, called, { jobId: 'j1', words: 'Sold' }).rows;
    expect(calls(over)).toEqual([['goAhead', 'noLongerNeeded']]);
  });
  it('once logged, comes again only when something is asked anew after it', () => {
    const called = touched(here().line('l1', asked()).rows());
    const between = carryOut(addLine, called, { jobId: 'j1', title: 'More' }, { now: tuesdayTen + minute }).rows;
    const spoken = logged(between, tuesdayTen + 2 * minute);
    expect(calls(touched(spoken, tuesdayTen + 3 * minute))).toEqual([['goAhead', 'logged']]);
    const more = carryOut(addLine, spoken, { jobId: 'j1', title: 'Also' }, { now: tuesdayTen + 4 * minute }).rows;
    expect(calls(more)).toEqual([
      ['goAhead', 'logged'],
      ['goAhead', null],
    ]);
    const again = { lineId: 'l1', answer: 'withCustomer' } as const;
    expect(calls(carryOut(recordGoAhead, spoken, again, { now: tuesdayTen + 4 * minute }).rows)).toHaveLength(2);
  });
  it('comes again when an answer was taken back after it had ended by itself', () => {
    const ended = here()
      .line('l1', asked())
      .call('t1', { jobId: 'j1', endedAt: tuesdayTen, endedHow: 'noLongerNeeded' });
    expect(settled(ended)).toEqual([
      ['goAhead', 'noLongerNeeded'],
      ['goAhead', null],
    ]);
  });
  it('comes with the vehicle, for what was booked', () => {
    const booked = shop().booked('j1').line('l1', asked()).rows();
    expect(calls(carryOut(recordArrival, booked, { jobId: 'j1' }).rows)).toEqual([['goAhead', null]]);
  });
});

describe('a call that the vehicle is ready', () => {
  const done = (over: Partial<Row<'workLine'>> = {}) =>
    here().line('l1', { progress: 'done', endedAt: tuesdayTen - hour, ...over });
  it('is raised once for a ready visit on which something came to its end', () => {
    expect(settled(done())).toEqual([['ready', null]]);
    expect(settled(done({ progress: 'dropped' }))).toEqual([['ready', null]]);
    expect(settled(here().concern('s1', { outcome: 'couldNotAppear' }))).toEqual([['ready', null]]);
    expect(calls(touched(touched(done().rows())))).toEqual([['ready', null]]);
  });
  it('is not raised for one on which nothing was done, that is not ready, or that nobody waits for', () => {
    expect(settled(here())).toEqual([]);
    expect(settled(done().concern('s1'))).toEqual([]);
    expect(settled(done().but('job', 'j1', { customerId: null }))).toEqual([]);
    expect(settled(done().but('job', 'j1', { arrivedAt: null }))).toEqual([]);
  });
  it('ends by itself when the vehicle is not ready any more, and comes again when it is', () => {
    const called = touched(done().rows());
    const line = carryOut(
      addLine,
      called,
      { jobId: 'j1', title: 'More', lineId: 'l9' },
      { now: tuesdayTen + minute },
    ).rows;
    expect(calls(line)).toEqual([
      ['ready', 'noLongerNeeded'],
      ['goAhead', null],
    ]);
    const without = line.fork();
    without.change('workLine', 'l9', { progress: 'dropped', endedAt: tuesdayTen + hour });
    settle(without, circumstancesOf({ now: tuesdayTen + hour }));
    expect(calls(without)).toEqual([
      ['ready', 'noLongerNeeded'],
      ['goAhead', 'noLongerNeeded'],
      ['ready', null],
    ]);
  });
  it('once logged, is not raised again', () => {
    expect(calls(touched(logged(touched(done().rows()))))).toEqual([['ready', 'logged']]);
  });
});

describe('a call that the parts are in', () => {
  const gone = () => shop().job('j1', { endedAt: tuesdayTen - hour, endedHow: 'handedBack' });
  const ordered = { lineId: null, jobId: null, followUpId: 'f1', state: 'ordered' } as const;
  const waits = () =>
    gone()
      .followUp('f1')
      .part('p1', ordered)
      .part('p2', { ...ordered, state: 'arrived', here: '1' });
  const come = (rows: Rows) =>
    carryOut(receiveParts, rows, {
      items: [{ partLineId: 'p1', quantity: '1', verdict: 'good', foundAtVehicle: false }],
    });

  it('is raised once when all that a follow-up of a vehicle that is gone waits for is here', () => {
    expect(settled(waits())).toEqual([]);
    const { rows, codes } = come(waits().rows());
    expect(codes).toEqual([]);
    expect(rows.list('call')).toMatchObject([
      { reason: 'partsIn', followUpId: 'f1', jobId: null, customerId: 'c1', endedAt: null },
    ]);
    expect(calls(touched(rows))).toEqual([['partsIn', null]]);
  });
  it('is not raised for a vehicle that is here, a follow-up that is closed or one without parts', () => {
    const all = () => waits().but('partLine', 'p1', { state: 'arrived', here: '1' });
    expect(settled(all())).toEqual([['partsIn', null]]);
    expect(settled(all().job('j2').inYard())).toEqual([]);
    expect(settled(all().booked('j2'))).toEqual([]);
    expect(settled(all().but('followUp', 'f1', { state: 'done' }))).toEqual([]);
    expect(settled(gone().followUp('f1'))).toEqual([]);
    expect(
      settled(
        gone()
          .followUp('f1')
          .part('p1', { ...ordered, state: 'cancelled', here: '1' }),
      ),
    ).toEqual([]);
  });
  it('ends by itself when the vehicle is booked, and comes again when that is called off', () => {
    const called = come(waits().rows()).rows;
    const book = { jobId: 'j2', vehicleId: 'v1', expectedAt: tuesdayTen + 24 * hour };
    const booked = carryOut(bookJob, called, book, { by: 'desk' }).rows;
    expect(calls(booked)).toEqual([['partsIn', 'noLongerNeeded']]);
    const off = carryOut(cancelJob, booked, { jobId: 'j2', words: 'No time' }, { by: 'desk' }).rows;
    expect(calls(off)).toEqual([
      ['partsIn', 'noLongerNeeded'],
      ['partsIn', null],
    ]);
  });
  it('ends by itself when a part turns out damaged, and is not raised again once logged', () => {
    const called = come(waits().rows()).rows;
    const bad = called.fork();
    bad.change('partLine', 'p2', { here: '0' });
    settle(bad, circumstancesOf());
    expect(calls(bad)).toEqual([['partsIn', 'noLongerNeeded']]);
    expect(calls(touched(logged(called)))).toEqual([['partsIn', 'logged']]);
  });
});

describe('calls', () => {
  it('are not judged on a bag that has not every table of the visit', () => {
    expect(calls(touched(here().line('l1', asked()).rows(), tuesdayTen, false))).toEqual([]);
  });
  it('are not judged of a visit that the command did not write to: it may not be in the bag whole', () => {
    const rows = here().line('l1', asked()).rows().fork();
    settle(rows, circumstancesOf());
    rows.change('place', 'j1-yard', { yardSpot: 'Y1' });
    settle(rows, circumstancesOf());
    expect(calls(rows)).toEqual([]);
  });
  it('settled twice, or much later, are as they were settled once; and no reason has two open ones', () => {
    const line = fc.record({
      progress: fc.constantFrom(...lineProgress),
      goAhead: fc.constantFrom(...goAheadAnswers),
      payer: fc.constantFrom(...payers),
      choiceId: fc.constantFrom(null, 'x'),
    });
    const before = fc.record({
      reason: fc.constantFrom('goAhead' as const, 'ready' as const),
      end: fc.constantFrom(null, 'logged' as const, 'noLongerNeeded' as const),
    });
    const story = fc.record({ lines: fc.array(line, { maxLength: 3 }), before, ended: fc.boolean() });
    fc.assert(
      fc.property(story, ({ lines, before: { reason, end }, ended }) => {
        const day = here().call('t1', { jobId: 'j1', reason, endedHow: end, endedAt: end && tuesdayTen - hour });
        lines.forEach((over, n) => day.line(`l${String(n)}`, over));
        if (ended) day.but('job', 'j1', { endedAt: tuesdayTen });
        const once = touched(day.rows());
        const open = once.list('call', (call) => call.endedAt === null).map((call) => call.reason);
        expect(new Set(open).size).toBe(open.length);
        if (ended) expect(open).toEqual([]);
        for (const now of [tuesdayTen, tuesdayTen + 100 * hour]) {
          const twice = once.fork();
          twice.change('job', 'j1', {});
          settle(twice, circumstancesOf({ now }));
          expect(twice.changes().map(({ table }) => table)).toEqual(['job']);
        }
      }),
      { numRuns: 300 },
    );
  });
});
