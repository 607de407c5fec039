import { describe, expect, it } from '@jest/globals';
import { endHold } from '../hold/end-hold.js';
import { openHold } from '../hold/open-hold.js';
import { type Given, given, type GivenCircumstances, hour, minute, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { cancelPart } from '../parts/cancel-part.js';
import { receiveParts } from '../parts/receive-parts.js';
import { openHolds } from '../questions/parts-and-holds.js';
import { settle } from '../settle.js';
import type { Row } from '../tables/tables.js';
import { carryOut, circumstancesOf } from './carry-out.js';

const started = { progress: 'started', startedAt: tuesdayTen - hour } as const;
const job = () => given().shop().vehicle('v1').job('j1');
const settled = (story: Given, said: GivenCircumstances = {}): Rows => {
  const rows = story.rows().fork();
  settle(rows, circumstancesOf(said));
  return rows;
};
const ended = (rows: Rows, id = 'h1') => [rows.get('hold', id).endedHow, rows.get('hold', id).toAt];
const open = [null, null];
const come = (partLineId: string, verdict: Row<'arrival'>['verdict'] = 'good', foundAtVehicle = false) => ({
  items: [{ partLineId, quantity: '1', verdict, foundAtVehicle }],
});
const arrive = (rows: Rows, input: Parameters<typeof receiveParts.decide>[1], said: GivenCircumstances = {}) =>
  carryOut(receiveParts, rows, input, { by: 'partsClerk', ...said }).rows;

describe('a parts hold', () => {
  const two = (
    needed1: Row<'partLine'>['needed'],
    needed2: Row<'partLine'>['needed'],
    line: Partial<Row<'workLine'>> = started,
  ) =>
    job()
      .line('l1', line)
      .part('p1', { needed: needed1 })
      .part('p2', { needed: needed2 })
      .hold('h1', {}, ['l1'], ['p1', 'p2']);

  it('ends by itself when every part that is needed now is here', () => {
    const first = arrive(two('beforeRefit', 'beforeStart').rows(), come('p1'));
    expect(ended(first)).toEqual(open);
    expect(
      ended(arrive(first, come('p2', 'accepted'), { effectiveAt: tuesdayTen + minute, now: tuesdayTen + hour })),
    ).toEqual(['partsHere', tuesdayTen + minute]);
  });

  it('does not wait for parts that may follow, nor before the line is started for those before refit', () => {
    expect(ended(arrive(two('beforeStart', 'mayFollow').rows(), come('p1')))).toEqual(['partsHere', tuesdayTen]);
    expect(ended(arrive(two('beforeStart', 'beforeRefit', {}).rows(), come('p1')))).toEqual(['partsHere', tuesdayTen]);
  });

  it('that names nothing needed now stays until its parts are here or no longer wanted', () => {
    const first = arrive(two('beforeRefit', 'mayFollow', {}).rows(), come('p1'));
    expect(ended(first)).toEqual(open);
    expect(ended(arrive(first, come('p2')))).toEqual(['partsHere', tuesdayTen]);
    const waiting = two('beforeStart', 'beforeStart', { goAhead: 'withCustomer' });
    expect(ended(settled(waiting))).toEqual(open);
  });

  it('is not ended by damaged or wrong arrivals', () => {
    const rows = arrive(two('beforeRefit', 'mayFollow').rows(), come('p1', 'damaged'));
    expect(ended(arrive(rows, come('p1', 'wrong')))).toEqual(open);
  });

  it('ends when its parts are cancelled, or their line is declined or put off', () => {
    const rows = two('beforeRefit', 'mayFollow').rows();
    const after = carryOut(cancelPart, rows, { partLineId: 'p1', words: 'Mended' }, { by: 'partsClerk' }).rows;
    expect(ended(after)).toEqual(['partsNoLongerNeeded', tuesdayTen]);
    for (const goAhead of ['declined', 'deferred'] as const) {
      expect(ended(settled(two('beforeStart', 'beforeRefit', { goAhead })))).toEqual([
        'partsNoLongerNeeded',
        tuesdayTen,
      ]);
    }
    const moved = two('beforeStart', 'beforeStart').followUp('f1');
    for (const id of ['p1', 'p2']) moved.but('partLine', id, { jobId: null, lineId: null, followUpId: 'f1' });
    expect(ended(settled(moved))).toEqual(['partsNoLongerNeeded', tuesdayTen]);
  });

  it('does not wait for a part that has gone to another visit', () => {
    const story = two('beforeRefit', 'mayFollow').job('j2').line('l9', started);
    story.but('partLine', 'p1', { jobId: 'j2', lineId: 'l9' }).but('partLine', 'p2', { jobId: 'j2', lineId: 'l9' });
    expect(ended(settled(story))).toEqual(['partsNoLongerNeeded', tuesdayTen]);
  });

  it('told after its parts had come ends when they came', () => {
    const rows = job().line('l1', started).part('p1').rows();
    const here = arrive(rows, come('p1'), { effectiveAt: tuesdayTen - minute });
    const input = { holdId: 'h1', jobId: 'j1', reason: 'parts', partLineIds: ['p1'] } as const;
    const late = { ...input, partLineIds: ['p1'], lineIds: [] };
    const told = carryOut(openHold, here, late, { effectiveAt: tuesdayTen - hour, now: tuesdayTen + hour }).rows;
    expect(told.get('hold', 'h1')).toMatchObject({
      fromAt: tuesdayTen - hour,
      toAt: tuesdayTen - minute,
      endedHow: 'partsHere',
    });
  });
});

describe('pieces found damaged or wrong', () => {
  const held = () =>
    job()
      .line('l1', started)
      .line('l2')
      .part('p1', { lineId: 'l1' })
      .hold('h1', { words: 'Step' }, ['l1', 'l2'], ['p1']);
  const here = (story = held()) => arrive(story.rows(), come('p1'));
  const later = { now: tuesdayTen + hour };
  const again = (rows: Rows) => rows.list('hold', (hold) => hold.againOfId !== null);

  it('open the hold again, with its lines and the parts that are missing again', () => {
    const rows = arrive(here(), come('p1', 'damaged', true), later);
    expect(again(rows)).toHaveLength(1);
    expect(again(rows)[0]).toMatchObject({
      ...{
        againOfId: 'h1',
        reason: 'parts',
        fromAt: tuesdayTen + hour,
        toAt: null,
        openedById: 'partsClerk',
        words: 'Step',
      },
    });
    const id = again(rows)[0]?.id ?? '';
    expect(rows.list('holdLine', (one) => one.holdId === id).map((one) => one.lineId)).toEqual(['l1', 'l2']);
    expect(rows.list('holdPart', (one) => one.holdId === id).map((one) => one.partLineId)).toEqual(['p1']);
    expect(rows.get('hold', 'h1').endedHow).toBe('partsHere');
  });

  it('open it again each time, and it ends again when the part is here', () => {
    let rows = here();
    for (let n = 1; n <= 3; n += 1) {
      rows = arrive(rows, come('p1', 'wrong', true), { now: tuesdayTen + 2 * n * hour });
      expect(openHolds(rows, 'j1')).toHaveLength(1);
      rows = arrive(rows, come('p1'), { now: tuesdayTen + (2 * n + 1) * hour });
      expect(openHolds(rows, 'j1')).toHaveLength(0);
    }
    expect(again(rows).map((hold) => hold.endedHow)).toEqual(['partsHere', 'partsHere', 'partsHere']);
  });

  it('open it again also when told by a device that was offline, for no time before it had ended', () => {
    const rows = arrive(here(), come('p1', 'damaged', true), { ...later, effectiveAt: tuesdayTen - minute });
    expect(again(rows)[0]?.fromAt).toBe(tuesdayTen);
  });

  it('open nothing while the part is not needed now, another hold waits for it, no hold ever did, or the visit is over', () => {
    const found = come('p1', 'damaged', true);
    const finds = (story: Given) => again(arrive(here(story), found, later));
    expect(finds(held())).toHaveLength(1);
    expect(finds(held().but('partLine', 'p1', { needed: 'mayFollow' }))).toEqual([]);
    expect(finds(held().part('p2', { lineId: 'l1' }).hold('h2', {}, [], ['p1', 'p2']))).toEqual([]);
    expect(finds(job().line('l1', started).part('p1'))).toEqual([]);
    const over = here().fork();
    over.change('job', 'j1', { endedAt: tuesdayTen + minute });
    expect(again(arrive(over, found, later))).toEqual([]);
  });

  it('leave a hold alone that somebody ended by hand after the find', () => {
    const found = arrive(here(), come('p1', 'damaged', true), later);
    const input = { holdId: again(found)[0]?.id ?? '', words: 'Goes on without' };
    const byHand = carryOut(endHold, found, input, { now: tuesdayTen + 2 * hour }).rows;
    expect(openHolds(byHand, 'j1')).toEqual([]);
    const next = byHand.fork();
    settle(next, circumstancesOf({ now: tuesdayTen + 3 * hour }));
    expect(openHolds(next, 'j1')).toEqual([]);
  });

  it('hold the line of the part when the lines named before have ended', () => {
    const rows = here(held().but('partLine', 'p1', { lineId: 'l2', needed: 'beforeStart' })).fork();
    rows.change('holdLine', 'h1-l2', { void: true });
    rows.change('workLine', 'l1', { progress: 'done' });
    const after = arrive(rows, come('p1', 'damaged', true), later);
    const id = again(after)[0]?.id ?? '';
    expect(after.list('holdLine', (one) => one.holdId === id).map((one) => one.lineId)).toEqual(['l2']);
  });
});

describe('a hold for a go-ahead', () => {
  const answer = (
    story: Given,
    lineId: string,
    answer: Row<'goAhead'>['answer'] = 'given',
    now = tuesdayTen - minute,
  ) =>
    story.but('workLine', lineId, { goAhead: answer }).row('goAhead', {
      ...{
        id: `${lineId}-${String(now)}`,
        recordedAt: now,
        effectiveAt: now,
        byId: 'desk',
        device: null,
        jobId: 'j1',
        lineId,
      },
      ...{ answer, byName: 'Customer', how: 'telephone', upTo: null, words: null, standingId: null },
    });
  const asked = (lines: readonly string[]) =>
    job()
      .line('l1', { goAhead: 'withCustomer' })
      .line('l2', { goAhead: 'withCustomer' })
      .hold('h1', { reason: 'goAhead' }, lines);

  it('ends when every line it names has an answer, whatever it is', () => {
    expect(ended(settled(answer(asked(['l1']), 'l1', 'declined')))).toEqual(['goAheadAnswered', tuesdayTen]);
    expect(ended(settled(answer(asked(['l1', 'l2']), 'l1')))).toEqual(open);
    expect(ended(settled(answer(asked(['l1']), 'l2')))).toEqual(open);
  });

  it('of the whole job ends when no line of the job is with the customer', () => {
    expect(ended(settled(answer(asked([]), 'l1')))).toEqual(open);
    expect(ended(settled(answer(answer(asked([]), 'l1'), 'l2', 'deferred')))).toEqual(['goAheadAnswered', tuesdayTen]);
    const dropped = { progress: 'dropped', endedAt: tuesdayTen - minute } as const;
    expect(ended(settled(answer(asked([]), 'l1').but('workLine', 'l2', dropped)))).toEqual([
      'goAheadAnswered',
      tuesdayTen,
    ]);
  });

  it('does not take the end of a line answered long ago for an answer', () => {
    const done = { progress: 'done', endedAt: tuesdayTen - minute } as const;
    const story = answer(answer(asked([]), 'l1', 'given', tuesdayTen - 3 * hour), 'l2', 'given', tuesdayTen - 3 * hour);
    expect(ended(settled(story.but('workLine', 'l1', done)))).toEqual(open);
  });

  it('opened where all was answered waits for a new answer', () => {
    const story = () => answer(asked(['l1']), 'l1', 'given', tuesdayTen - 3 * hour);
    expect(ended(settled(story()))).toEqual(open);
    expect(ended(settled(answer(story(), 'l1')))).toEqual(['goAheadAnswered', tuesdayTen]);
  });
});

describe('any hold', () => {
  it.each(['done', 'dropped', 'carriedOver'] as const)('ends with the last of its lines: %s', (progress) => {
    const story = () => job().line('l1', { progress }).line('l2').hold('h1', {}, ['l1', 'l2']);
    expect(ended(settled(story()))).toEqual(open);
    expect(ended(settled(story().but('workLine', 'l2', { progress: 'done' })))).toEqual(['lineEnded', tuesdayTen]);
    expect(ended(settled(story().but('workLine', 'l2', { void: true })))).toEqual(['lineEnded', tuesdayTen]);
  });

  it('of the whole job does not end with its lines, but with the visit', () => {
    const story = () => job().line('l1', { progress: 'done' }).hold('h1', { reason: 'collection' });
    expect(ended(settled(story()))).toEqual(open);
    const over = story().but('job', 'j1', { endedAt: tuesdayTen - minute });
    expect(ended(settled(over))).toEqual(['handedBack', tuesdayTen - minute]);
  });

  it('never ends before it began', () => {
    const late = job()
      .line('l1', { progress: 'done' })
      .hold('h1', { fromAt: tuesdayTen + hour }, ['l1']);
    expect(ended(settled(late))).toEqual(['lineEnded', tuesdayTen + hour]);
    const over = job()
      .hold('h1', { fromAt: tuesdayTen })
      .but('job', 'j1', { endedAt: tuesdayTen - hour });
    expect(ended(settled(over))).toEqual(['handedBack', tuesdayTen]);
  });

  it('that sets is not ended because its time passed', () => {
    const rows = settled(job().hold('h1', { reason: 'setting', endsAt: tuesdayTen - hour }));
    expect(rows.changes()).toEqual([]);
  });
});
