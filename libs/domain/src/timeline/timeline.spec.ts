import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  clashes,
  clear,
  close,
  earliest,
  follow,
  insert,
  type Interval,
  overlap,
  replace,
  type TimelineEdit,
} from './timeline.js';

const of = (id: string, fromAt: number, toAt: number | null): Interval => ({ id, fromAt, toAt });

/** A lane as the store keeps it: rows that are only ever added, closed or voided. */
class Lane {
  readonly all: Interval[] = [];
  private readonly voided = new Set<string>();
  get live(): Interval[] {
    return this.all.filter((one) => !this.voided.has(one.id));
  }
  carryOut(edits: readonly TimelineEdit[]): void {
    for (const edit of edits) {
      if (edit.do === 'void') this.voided.add(edit.id);
      else if (edit.do === 'insert') this.all.push({ id: String(this.all.length), ...edit.span });
      else {
        const at = this.all.findIndex((one) => one.id === edit.id);
        const row = this.all[at];
        if (row?.toAt !== null) throw new Error('an ended row was closed again');
        this.all[at] = { ...row, toAt: edit.toAt };
      }
    }
  }
  isAt(instant: number): number {
    return this.live.filter((one) => one.fromAt <= instant && (one.toAt ?? Infinity) > instant).length;
  }
}

const instants = Array.from({ length: 80 }, (_, instant) => instant);
const span = fc
  .record({ fromAt: fc.integer({ min: 0, max: 40 }), length: fc.option(fc.integer({ min: 1, max: 15 })) })
  .map(({ fromAt, length }) => ({ fromAt, toAt: length === null ? null : fromAt + length }));
const step = fc.record({
  act: fc.constantFrom('insert', 'follow', 'close', 'clear', 'replace'),
  span,
});

describe('the timeline of a lane', () => {
  it('never holds two intervals at one instant, whatever is done to it, and never shifts a row', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        const lane = new Lane();
        for (const { act, span } of steps) {
          const before = lane.all.map((one) => ({ ...one }));
          const [running] = lane.live.filter((one) => one.toAt === null);
          if (act === 'insert') {
            const fit = insert(lane.live, span);
            if (fit.fits) lane.carryOut(fit.edits);
          }
          if (act === 'follow') lane.carryOut(follow(lane.live, span.fromAt).edits);
          if (act === 'close' && running) lane.carryOut([close(running, span.fromAt)]);
          if (act === 'clear') lane.carryOut(clear(lane.live, span));
          if (act === 'replace') lane.carryOut(replace(lane.live, span));
          expect(Math.max(...instants.map((instant) => lane.isAt(instant)))).toBeLessThanOrEqual(1);
          expect(lane.live.every((one) => (one.toAt ?? Infinity) > one.fromAt)).toBe(true);
          for (const [at, was] of before.entries()) {
            const is = lane.all[at];
            if (is?.fromAt !== was.fromAt || (was.toAt !== null && is.toAt !== was.toAt)) throw new Error('shifted');
          }
        }
      }),
    );
  });

  it('takes a report in or names what it clashes with, exactly where they share an instant', () => {
    fc.assert(
      fc.property(fc.array(span, { maxLength: 12 }), span, (spans, report) => {
        const lane = new Lane();
        for (const one of spans) {
          const fit = insert(lane.live, one);
          if (fit.fits) lane.carryOut(fit.edits);
        }
        const shared = lane.live.filter((one) => {
          for (let instant = report.fromAt; instant < (report.toAt ?? 100); instant += 1) {
            if (one.fromAt <= instant && (one.toAt ?? 100) > instant) return true;
          }
          return false;
        });
        const fit = insert(lane.live, report);
        expect(fit.fits ? [] : fit.clash).toEqual(shared);
      }),
    );
  });

  it('keeps what lies outside a span that is replaced', () => {
    fc.assert(
      fc.property(fc.array(span, { maxLength: 12 }), span, (spans, report) => {
        const lane = new Lane();
        for (const one of spans) lane.carryOut(replace(lane.live, one));
        const before = instants.map((instant) => lane.isAt(instant));
        lane.carryOut(replace(lane.live, report));
        const inside = (instant: number) => instant >= report.fromAt && instant < (report.toAt ?? Infinity);
        expect(instants.map((instant) => lane.isAt(instant))).toEqual(
          before.map((was, instant) => (inside(instant) ? 1 : was)),
        );
      }),
    );
  });

  it('lets neighbours touch', () => {
    expect(overlap(of('a', 0, 10), of('b', 10, null))).toBe(false);
    expect(overlap(of('a', 0, 11), of('b', 10, null))).toBe(true);
    expect(clashes([of('a', 0, 10), of('b', 20, null)], { fromAt: 10, toAt: 20 })).toEqual([]);
  });

  it('goes on no earlier than every end, and after the start of what runs', () => {
    expect(earliest([of('a', 0, 10), of('b', 10, null)], 5)).toBe(11);
    expect(earliest([of('a', 0, 30)], 5)).toBe(30);
    expect(earliest([], 5)).toBe(5);
  });

  it('ends an interval at least a millisecond after it began, and none twice', () => {
    expect(close(of('a', 10, null), 3)).toEqual({ do: 'close', id: 'a', toAt: 11 });
    expect(() => close(of('a', 0, 5), 9)).toThrow(RangeError);
    expect(() => insert([], { fromAt: 5, toAt: 5 })).toThrow(RangeError);
    expect(() => replace([], { fromAt: 5, toAt: 4 })).toThrow(RangeError);
  });
});
