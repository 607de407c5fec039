import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { outsiderId } from './account-input.js';
import { type PeopleInput, peopleFigures } from './people-figures.js';

const input = (change: Partial<PeopleInput>): PeopleInput => ({
  presence: [{ personId: 'Rhona', from: 0, to: 480 }],
  clocks: [],
  finished: [],
  linesWithBook: new Set(['brakes']),
  periods: [{ from: 0, to: 1000 }],
  now: 1000,
  ...change,
});
const clock = (personId: string, lineId: string, from: number, to: number | null) => ({ personId, lineId, from, to });
const done = (lineId: string, doneAt: number, bookMs: number | null) => ({ lineId, doneAt, bookMs });

describe('hours of people', () => {
  it('efficiency is book hours of finished work by hours clocked, productivity hours clocked by hours present', () => {
    const [figures] = peopleFigures(
      input({ clocks: [clock('Rhona', 'brakes', 0, 240)], finished: [done('brakes', 240, 300)] }),
    );
    expect(figures?.shop).toMatchObject({ efficiency: 300 / 240, productivity: 240 / 480 });
  });

  it('book hours of a line are shared out by the clocks on it, to the millisecond', () => {
    const clocks = [clock('Rhona', 'brakes', 0, 100), clock('Iain', 'brakes', 50, 100), clock('Una', 'brakes', 0, 50)];
    const [figures] = peopleFigures(input({ clocks, finished: [done('brakes', 100, 101)] }));
    expect(figures?.people.map(({ personId, hours }) => [personId, hours.bookMs])).toEqual([
      ['Iain', 25],
      ['Rhona', 51],
      ['Una', 25],
    ]);
  });

  it('a line counts in the period in which it was done, with clocks of before it', () => {
    const periods = [
      { from: 0, to: 500 },
      { from: 500, to: 1000 },
    ];
    const figures = peopleFigures(
      input({ periods, clocks: [clock('Rhona', 'brakes', 100, 200)], finished: [done('brakes', 500, 90)] }),
    );
    expect(figures.map(({ shop }) => [shop.bookMs, shop.clockedMs, shop.efficiency])).toEqual([
      [0, 100, 0],
      [90, 0, null],
    ]);
  });

  it('says how much was clocked on lines without book hours, and what was finished without a clock', () => {
    const [figures] = peopleFigures(
      input({
        clocks: [clock('Rhona', 'noise', 0, 60), clock('Rhona', 'brakes', 60, 100)],
        finished: [done('noise', 60, null), done('wipers', 70, 20)],
      }),
    );
    expect(figures?.shop).toMatchObject({ clockedMs: 100, clockedWithoutBookMs: 60, bookMs: 0 });
    expect(figures?.bookWithoutClockMs).toBe(20);
  });

  it('an outsider is nobody of the shop; a running clock ends now; nobody present: no share', () => {
    const [figures] = peopleFigures(
      input({
        presence: [],
        now: 300,
        clocks: [clock(outsiderId('glass'), 'glass', 0, 100), clock('Rhona', 'brakes', 200, null)],
      }),
    );
    expect(figures?.shop).toMatchObject({ clockedMs: 100, productivity: null });
    expect(figures?.people.map(({ personId }) => personId)).toEqual(['Rhona']);
  });

  it('adds up over people and over a window cut in two, whatever the order of the rows', () => {
    const instant = fc.integer({ min: 0, max: 100 });
    const person = fc.constantFrom('a', 'b', 'c');
    const lineId = fc.constantFrom('x', 'y', 'z');
    const clocks = fc.array(
      fc
        .tuple(person, lineId, instant, fc.integer({ min: 0, max: 50 }))
        .map(([p, l, from, ms]) => clock(p, l, from, from + ms)),
      { maxLength: 8 },
    );
    const finished = fc.uniqueArray(fc.tuple(lineId, instant, fc.option(fc.integer({ min: 0, max: 500 }))), {
      selector: ([id]) => id,
      maxLength: 3,
    });
    fc.assert(
      fc.property(clocks, finished, instant, (rows, lines, cut) => {
        const all = input({ clocks: rows, finished: lines.map(([id, at, ms]) => done(id, at, ms)), now: 90 });
        const periods = [
          { from: 0, to: cut },
          { from: cut, to: 1000 },
        ];
        const [one] = peopleFigures(all);
        const two = peopleFigures({
          ...all,
          clocks: [...rows].reverse(),
          finished: [...all.finished].reverse(),
          presence: [...all.presence].reverse(),
          periods,
        });
        for (const name of ['presentMs', 'clockedMs', 'clockedWithoutBookMs', 'bookMs'] as const) {
          expect(two.reduce((sum, { shop }) => sum + shop[name], 0)).toBe(one?.shop[name]);
          expect(one?.people.reduce((sum, { hours }) => sum + hours[name], 0)).toBe(one?.shop[name]);
        }
        const finishedMs = all.finished.reduce((sum, { doneAt, bookMs }) => sum + (doneAt < 90 ? (bookMs ?? 0) : 0), 0);
        expect((one?.shop.bookMs ?? 0) + (one?.bookWithoutClockMs ?? 0)).toBe(finishedMs);
      }),
      { numRuns: 300 },
    );
  });
});
