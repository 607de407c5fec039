import { tableNames } from '@holdfast/domain';
import { describe, expect, it } from '@jest/globals';
import { type Given, given, hour, minute, opening, tuesdayTen } from '../../../domain/src/kernel/given.js';
import type { Board, BoardTables } from '../board.js';
import { forgottenClocks, forgottenPresence } from './forgotten-clocks.js';

/** The rows of a spec as a staff board holds them. */
function boardOf(day: Given): Board {
  const rows = day.rows();
  const tables = Object.fromEntries(
    tableNames.map((table) => [table, new Map(rows.list(table).map((row) => [row.id, row]))]),
  );
  return { audience: 'staff', epoch: 'e', seq: 1, tables: tables as unknown as BoardTables };
}

const nextMorning = tuesdayTen + 22 * hour;
const five = opening + 9 * hour;
const shop = () => given().shop().vehicle('v').job('j').inYard().line('l').clock('c');
const asked = (day: Given, now = nextMorning) =>
  forgottenClocks(boardOf(day), now).map(({ row, proposedEnd }) => [row.id, proposedEnd]);
const base = { recordedAt: opening, effectiveAt: opening, byId: null, device: null } as const;

describe('forgotten clocks', () => {
  it('are those that run on from an earlier working day, with the end of the hours of that day proposed', () => {
    expect(asked(shop())).toEqual([['c', five]]);
    expect(asked(shop(), tuesdayTen + 13 * hour)).toEqual([]);
    expect(asked(shop().but('clock', 'c', { toAt: five }))).toEqual([]);
  });

  it('are proposed the end of the own hours of the person, where they have some', () => {
    const none = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };
    const early = { ...none, tue: [['07:00', '15:30']] as const };
    const own = { id: 'ph', personId: 'technician', validFrom: '2020-01-01', week: early, breaks: none };
    expect(asked(shop().row('personHours', own))).toEqual([['c', opening + 7.5 * hour]]);
  });

  it('end no earlier than the last thing that the person recorded on that day', () => {
    const late = five + 40 * minute;
    expect(asked(shop().hold('h', { openedById: 'technician', fromAt: late }))).toEqual([['c', late]]);
    expect(asked(shop().hold('h', { openedById: 'second', fromAt: late }))).toEqual([['c', five]]);
    expect(asked(shop().hold('h', { openedById: 'technician', fromAt: nextMorning - minute }))).toEqual([['c', five]]);
    const left = { id: 'a', ...base, personId: 'technician', kind: 'present', words: null } as const;
    expect(asked(shop().row('attendance', { ...left, fromAt: opening, toAt: late }))).toEqual([['c', late]]);
  });

  it('have no end to propose where they began after hours and nothing was recorded since', () => {
    expect(asked(shop().but('clock', 'c', { fromAt: five + minute }))).toEqual([['c', null]]);
  });
});

describe('forgotten presence', () => {
  it('is that of people who never said that they were gone', () => {
    const here = { id: 'a', ...base, personId: 'second', kind: 'present', words: null, fromAt: opening } as const;
    const found = (toAt: number | null, now = nextMorning) =>
      forgottenPresence(
        boardOf(
          given()
            .shop()
            .row('attendance', { ...here, toAt }),
        ),
        now,
      );
    expect(found(null)).toMatchObject([{ row: { id: 'a' }, proposedEnd: five }]);
    expect([...found(five), ...found(null, five)]).toEqual([]);
  });
});
