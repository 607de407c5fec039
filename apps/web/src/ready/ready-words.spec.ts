import { readyOn, visitOf, type Board, type BoardTables } from '@holdfast/board';
import { say } from '@holdfast/contract';
import { tableNames } from '@holdfast/domain';
import { describe, expect, it } from '@jest/globals';

import { type Given, given, hour, tuesdayTen } from '../../../../libs/domain/src/kernel/given.js';
import { formatsFor } from '../text/format.js';
import type { Text } from '../text/use-text.js';
import { aboutAt, promisedWords, readySentence, restsOnWords } from './ready-words.js';

const text: Text = {
  t: (key, values) => say('en-GB', key, values),
  format: formatsFor({ locale: 'en-GB', zone: 'Europe/London', currency: 'GBP', distanceUnit: 'mi' }),
  locale: 'en-GB',
  zone: 'Europe/London',
};

/** The rows of a spec as a staff board holds them. */
const boardOf = (day: Given): Board => {
  const rows = day.rows();
  const tables = Object.fromEntries(
    tableNames.map((table) => [table, new Map(rows.list(table).map((row) => [row.id, row]))]),
  );
  return { audience: 'staff', epoch: 'e', seq: 1, tables: tables as unknown as BoardTables };
};

const plain = (words: string): string => words.replace(/[\u00a0\u202f]/g, ' ');
const visit = () => given().shop().bay('b1').customer('c').vehicle('v').job('j').inYard();

const answer = (day: Given, promisedAt: number | null = null) => {
  const board = boardOf(day);
  const shown = visitOf(board, 'j', tuesdayTen);
  if (shown === undefined) throw new Error('the visit is not on the board');
  const ready = readyOn(board, 'j', tuesdayTen);
  const restsOn = ready === null || ready.kind === 'ready' ? null : ready.restsOn;
  return {
    sentence: plain(readySentence(board, shown, ready, tuesdayTen, text)),
    why: restsOn === null ? [] : restsOnWords(board, shown, restsOn, tuesdayTen, text).map(plain),
    promised: promisedWords(board, promisedAt, ready, tuesdayTen, text),
  };
};

describe('the sentence of Ready?', () => {
  it('names no minute: what is about is the next quarter of an hour', () => {
    expect(aboutAt(tuesdayTen + 60_000)).toBe(tuesdayTen + hour / 4);
    expect(aboutAt(tuesdayTen)).toBe(tuesdayTen);
    expect(answer(visit().line('l', { bookMinutes: 100 })).sentence).toBe('About 11:45.');
  });

  it('names the day alone where a part is awaited: its hour is not known', () => {
    const day = visit().line('l', { bookMinutes: 60 }).part('p', { state: 'ordered', dueOn: '2026-03-12' });
    expect(answer(day).sentence).toBe('About Thu 12 Mar.');
  });

  it('counts with no day that a part has missed', () => {
    const day = visit().line('l', { bookMinutes: 60 }).part('p', { state: 'ordered', dueOn: '2026-03-09' });
    const { sentence, why } = answer(day);
    expect(sentence).toBe('No date that holds.');
    expect(why[0]).toMatch(/was due Mon.* 9 Mar 2026 and is not here$/);
  });

  it('has no date while a part has none, and says which', () => {
    const day = visit().line('l', { bookMinutes: 60 }).part('p', { state: 'ordered', dueOn: null });
    expect(answer(day).sentence).toBe('No date.');
    expect(answer(day).why[0]).toMatch(/no date from/);
  });

  it('says "not before" where a line has no book hours, for it is not counted', () => {
    const day = visit().line('l', { bookMinutes: 60 }).line('m');
    const { sentence, why } = answer(day);
    expect(sentence).toBe('Not before 11:00.');
    expect(why).toContain('1 line has no book hours and is not counted');
  });

  it('has no date once the book hours are used up and the work goes on', () => {
    const day = visit().line('l', { bookMinutes: 30, startedAt: tuesdayTen - hour, progress: 'started' });
    day.clock('k', { fromAt: tuesdayTen - hour, toAt: null });
    const { sentence, why, promised } = answer(day, tuesdayTen - hour);
    expect(sentence).toBe('No date.');
    expect(promised).toBe('Promised 09:00');
    expect(why).toContain('the book hours are used up; the work is not ended');
  });

  it('does not call a vehicle worked on which nobody has begun', () => {
    expect(answer(visit().concern('c1')).sentence).toBe('No date: nobody has said yet what is to be done.');
    const done = visit().concern('c1').line('l', { progress: 'done' });
    expect(answer(done).sentence).toBe('The work is done, and 1 thing is still open before it may go.');
  });

  it('says when one is expected that is not here, and nothing of when it is ready', () => {
    const day = visit().but('job', 'j', { arrivedAt: null, expectedAt: tuesdayTen + 2 * hour });
    expect(answer(day)).toEqual({ sentence: 'Not here yet: expected 12:00.', why: [], promised: null });
  });
});

describe('what it rests on', () => {
  it('names the book hours that are left, the opening hours and the lines that wait for a word', () => {
    const day = visit().line('l', { bookMinutes: 90 }).line('m', { bookMinutes: 30, goAhead: 'withCustomer' });
    const { why } = answer(day);
    expect(why.some((words) => words.startsWith('1 h 30 of book hours left'))).toBe(true);
    expect(why.some((words) => words.startsWith('open now, until '))).toBe(true);
    expect(why.some((words) => words.startsWith('1 line waits for the word of '))).toBe(true);
  });

  it('says by how much a promised time is before it, and no hours where only the day is known', () => {
    const day = visit().line('l', { bookMinutes: 120 });
    expect(plain(answer(day, tuesdayTen + hour).promised ?? '')).toBe('Promised 11:00: that is 1 h 00 before');
    expect(answer(day, tuesdayTen + 3 * hour).promised).toBe('Promised 13:00');
    const parts = visit().line('l', { bookMinutes: 60 }).part('p', { state: 'ordered', dueOn: '2026-03-12' });
    expect(answer(parts, tuesdayTen + hour).promised).toBe('Promised 11:00: that is before it');
  });
});
