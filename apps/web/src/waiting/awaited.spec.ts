import type { Board, BoardTables } from '@holdfast/board';
import { tableNames } from '@holdfast/domain';
import { describe, expect, it } from '@jest/globals';

import { type Given, given, hour, tuesdayTen } from '../../../../libs/domain/src/kernel/given.js';
import { awaitedOn } from './awaited.js';

/** The rows of a spec as a staff board holds them. */
const boardOf = (day: Given): Board => {
  const rows = day.rows();
  const tables = Object.fromEntries(
    tableNames.map((table) => [table, new Map(rows.list(table).map((row) => [row.id, row]))]),
  );
  return { audience: 'staff', epoch: 'e', seq: 1, tables: tables as unknown as BoardTables };
};
const visit = () => given().shop().bay('b1').vehicle('v').job('j').inBay('b1').line('l', { bookMinutes: 60 });
const awaited = (day: Given) => awaitedOn(boardOf(day), tuesdayTen);
const since = tuesdayTen - hour;

describe('what is awaited of other firms and of people', () => {
  it('names a sublet once, though it has opened a hold as well', () => {
    const day = visit()
      .sublet('s', { state: 'underWay', fromAt: since })
      .hold('h', { reason: 'sublet', fromAt: since });
    const found = awaited(day);
    expect(found.map(({ key }) => key)).toEqual(['sublet s']);
    expect(found[0]?.blocked[0]?.hold?.id).toBe('h');
  });

  it('tells the holds of two sublets apart by when each began', () => {
    const day = visit()
      .sublet('s', { state: 'underWay', fromAt: since })
      .sublet('t', { state: 'underWay', fromAt: since + hour / 2 })
      .hold('h', { reason: 'sublet', fromAt: since })
      .hold('i', { reason: 'sublet', fromAt: since + hour / 2 });
    const holds = awaited(day).map(({ key, blocked }) => [key, blocked[0]?.hold?.id]);
    expect(new Map(holds as [string, string][])).toEqual(
      new Map([
        ['sublet s', 'h'],
        ['sublet t', 'i'],
      ]),
    );
  });

  it('names what is arranged, and leaves out what is over or cancelled', () => {
    const day = visit().sublet('s').sublet('over', { state: 'ended' }).sublet('off', { state: 'cancelled' });
    const found = awaited(day);
    expect(found.map(({ key, liftMinutes }) => [key, liftMinutes])).toEqual([['sublet s', 0]]);
  });

  it('names a question until it is answered, and counts no bay time for it', () => {
    const asked = { jobId: 'j', lineId: 'l', askedById: 'p', toId: 'q', answer: null, answeredById: null };
    const facts = { recordedAt: since, effectiveAt: since, byId: null, device: null, ...asked };
    const day = visit()
      .row('question', { id: 'open', ...facts, words: 'Which oil?', answeredAt: null })
      .row('question', { id: 'closed', ...facts, words: 'Which key?', answeredAt: tuesdayTen });
    const found = awaited(day);
    expect(found.map(({ key, liftMinutes }) => [key, liftMinutes])).toEqual([['question open', 0]]);
    expect(found[0]?.blocked[0]?.lines.map((line) => line.id)).toEqual(['l']);
  });
});
