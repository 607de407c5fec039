import { tableNames } from '@holdfast/domain';
import { describe, expect, it } from '@jest/globals';
import { type Given, given, hour, tuesdayTen } from '../../../domain/src/kernel/given.js';
import type { Board, BoardTables } from '../board.js';
import { readyOn } from './ready-on.js';

/** The rows of a spec as a staff board holds them. */
function boardOf(day: Given): Board {
  const rows = day.rows();
  const tables = Object.fromEntries(
    tableNames.map((table) => [table, new Map(rows.list(table).map((row) => [row.id, row]))]),
  );
  return { audience: 'staff', epoch: 'e', seq: 1, tables: tables as unknown as BoardTables };
}

const visit = () => given().shop().bay('b1').customer('c').vehicle('v').job('j').inYard();
const ready = (day: Given) => readyOn(boardOf(day), 'j', tuesdayTen);

describe('when a vehicle could be ready', () => {
  it('is the book hours that are left from now on, in the hours of the shop', () => {
    const day = visit().line('l', { bookMinutes: 120, startedAt: tuesdayTen - hour, progress: 'stopped' });
    day.clock('k', { fromAt: tuesdayTen - hour, toAt: tuesdayTen - hour / 2 });
    expect(ready(day)).toMatchObject({ kind: 'about', at: tuesdayTen + 1.5 * hour, restsOn: { bookMinutesLeft: 90 } });
  });

  it('does not begin before the day on which the last part is due', () => {
    const day = visit().line('l', { bookMinutes: 60 }).part('p', { state: 'ordered', dueOn: '2026-03-12' });
    const answer = ready(day);
    const nineOnTheDay = Date.UTC(2026, 2, 12, 9);
    expect(answer).toMatchObject({ kind: 'about', at: nineOnTheDay });
  });

  it('is no date while a part that is needed has none, and does not wait for one that may follow', () => {
    const without = visit().line('l', { bookMinutes: 60 }).part('p', { state: 'ordered', dueOn: null });
    expect(ready(without)).toMatchObject({ kind: 'noDate', restsOn: { parts: [{ partLineId: 'p', dueOn: null }] } });
    const follows = visit().line('l', { bookMinutes: 60 }).part('p', { state: 'ordered', needed: 'mayFollow' });
    expect(ready(follows)).toMatchObject({ kind: 'about', at: tuesdayTen + hour });
  });

  it('is no date where no line has book hours', () => {
    expect(ready(visit().line('l'))).toMatchObject({ kind: 'noDate', restsOn: { linesWithoutHours: 1 } });
  });

  it('says how many lines the customer has not answered, which may add to it', () => {
    const day = visit().line('l', { bookMinutes: 60 }).line('m', { bookMinutes: 300, goAhead: 'withCustomer' });
    expect(ready(day)).toMatchObject({ at: tuesdayTen + hour, restsOn: { asked: 1, bookMinutesLeft: 60 } });
  });

  it('waits for a setting hold that runs, and not for one that is over', () => {
    const until = tuesdayTen + 3 * hour;
    const hold = { reason: 'setting', endsAt: until } as const;
    expect(ready(visit().line('l', { bookMinutes: 60 }).hold('h', hold))).toMatchObject({ at: until + hour });
    const over = { reason: 'setting', endsAt: tuesdayTen - hour } as const;
    expect(ready(visit().line('l', { bookMinutes: 60 }).hold('h', over))).toMatchObject({ at: tuesdayTen + hour });
  });

  it('is now when nothing stands against the hand-back, and never for a vehicle that is not here', () => {
    expect(ready(visit())).toEqual({ kind: 'ready' });
    expect(ready(visit().but('job', 'j', { arrivedAt: null }))).toBeNull();
    expect(ready(visit().but('job', 'j', { endedAt: tuesdayTen }))).toBeNull();
  });

  it('is worked when only the papers are missing, with how many reasons are left', () => {
    const day = visit().concern('c1').line('l', { progress: 'done' });
    expect(ready(day)).toMatchObject({ kind: 'worked', reasons: 1 });
  });
});
