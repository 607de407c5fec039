import { describe, expect, it } from '@jest/globals';
import { type Given, given, hour, minute, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { handBack } from './hand-back.js';
import { releaseUnfinished } from './release-unfinished.js';
import { undoHandBack } from './undo-hand-back.js';

const here = () => given().shop().bay('b1').bay('b2').vehicle('v1').job('j1', { number: 7 }).inBay('b1');
const out = { jobId: 'j1', leavesBy: 'transporter', receivedBy: 'A Driver', receivedHow: 'there' } as const;
const handedBack = (story: Given) =>
  carryOut(handBack, story.rows(), { ...out, odometer: 52_000 }, { by: 'desk' }).rows.fork();
const released = (story: Given) =>
  carryOut(releaseUnfinished, story.rows(), { ...out, words: 'Sold' }, { by: 'manager' }).rows.fork();
const later = tuesdayTen + 59 * minute;
const undo = (rows: Rows, now = later, jobId = 'j1') =>
  carryOut(undoHandBack, rows, { jobId, words: 'Forgot the key' }, { by: 'desk', now });

describe('undoHandBack', () => {
  it('opens the visit again in the spot it left, from now on; its sheet is void', () => {
    const { rows, outcome } = undo(handedBack(here()));
    expect(rows.get('job', 'j1')).toMatchObject({ endedAt: null, endedHow: null, leftBy: null, odometerOut: null });
    expect(rows.list('place').map((one) => [one.kind, one.bayId, one.fromAt, one.toAt])).toEqual([
      ['bay', 'b1', tuesdayTen - 2 * hour, tuesdayTen],
      ['bay', 'b1', later, null],
    ]);
    expect(rows.list('spotUse').at(-1)).toMatchObject({ bayId: 'b1', spot: 1, kind: 'stands', fromAt: later });
    expect(rows.list('sheet')).toMatchObject([{ voidedWords: 'Forgot the key' }]);
    expect(outcome?.facts).toMatchObject({ number: 7, bayId: 'b1', spot: 1 });
  });
  it('stands in the yard where the spot has been taken or is no more, and where it left from the yard', () => {
    const taken = handedBack(here()).with(
      given()
        .vehicle('v2')
        .job('j2')
        .inBay('b1', { fromAt: tuesdayTen + minute })
        .rows()
        .content(),
    );
    expect(
      undo(taken)
        .rows.list('place', (one) => one.jobId === 'j1')
        .at(-1),
    ).toMatchObject({ kind: 'yard', toAt: null });
    const gone = handedBack(here()).with({ bay: [{ ...here().rows().get('bay', 'b1'), endedOn: '2026-03-10' }] });
    expect(undo(gone).outcome?.facts['bayId']).toBeNull();
    const yard = given().shop().vehicle('v1').job('j1').inYard();
    expect(undo(handedBack(yard)).outcome?.facts['bayId']).toBeNull();
  });
  it('opens anew what the hand-back ended and still has something to wait for', () => {
    const story = here()
      .line('l1', { goAhead: 'deferred' })
      .hold('h1', { reason: 'collection', words: 'Six o’clock' })
      .hold('h2', { reason: 'tool', toAt: tuesdayTen - hour, endedHow: 'byHand' })
      .hold('h3', { reason: 'setting', endsAt: tuesdayTen + minute })
      .hold('h4', { reason: 'tool' }, ['l1']);
    const { rows } = undo(handedBack(story));
    const open = rows.list('hold', (one) => one.toAt === null);
    expect(open.map((one) => [one.reason, one.words, one.fromAt])).toEqual([
      ['collection', 'Six o’clock', later],
      ['tool', null, later],
    ]);
    expect(rows.list('holdLine', (one) => one.holdId === open[1]?.id).map((one) => one.lineId)).toEqual(['l1']);
    expect(rows.get('hold', 'h1')).toMatchObject({ toAt: tuesdayTen, endedHow: 'handedBack' });
  });
  it('goes for a release too; what it made outstanding stays', () => {
    const { rows, codes } = undo(released(here().line('l1')));
    expect(codes).toEqual([]);
    expect(rows.get('job', 'j1').endWords).toBeNull();
    expect(rows.list('followUp')).toMatchObject([{ state: 'open', lineId: 'l1' }]);
  });
  it('can be handed back again, and undone again', () => {
    const again = carryOut(handBack, undo(handedBack(here())).rows.fork(), out, {
      by: 'desk',
      now: later + minute,
    }).rows.fork();
    const { rows } = undo(again, later + 2 * minute);
    expect(rows.list('sheet')).toHaveLength(2);
    expect(rows.list('place', (one) => one.toAt === null)).toHaveLength(1);
  });
  it('is refused after an hour, for what was not handed back, and when the vehicle is here again', () => {
    expect(undo(handedBack(here()), tuesdayTen + hour).codes).toEqual([]);
    expect(undo(handedBack(here()), tuesdayTen + hour + 1).codes).toEqual(['undo.tooLate']);
    expect(undo(here().rows()).codes).toEqual(['undo.notHandedBack']);
    const cancelled = here().but('job', 'j1', { endedAt: tuesdayTen, endedHow: 'cancelled' }).rows();
    expect(undo(cancelled).codes).toEqual(['undo.notHandedBack']);
    const again = handedBack(here()).with(given().vehicle('v1').job('j2', { number: 8 }).rows().content());
    expect(undo(again).refusals).toEqual([
      { code: 'undo.hereAgain', facts: { number: 8 }, way: { table: 'job', id: 'j2' } },
    ]);
    expect(undo(here().rows(), later, 'j9').codes).toEqual(['row.notFound']);
  });
});
