import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { given, hour, minute, tuesdayTen } from '../kernel/given.js';
import { receiveParts } from '../parts/receive-parts.js';
import { isHere, neededNow } from '../questions/parts-and-holds.js';
import { settle } from '../settle.js';
import type { Row } from '../tables/tables.js';
import { goAheadAnswers, lineProgress, neededTimes, verdicts } from '../tables/words.js';
import { carryOut, circumstancesOf } from './carry-out.js';

describe('settling', () => {
  const line = fc.record({
    progress: fc.constantFrom(...lineProgress),
    goAhead: fc.constantFrom(...goAheadAnswers),
    startedAt: fc.constantFrom(null, tuesdayTen - hour),
  });
  const part = fc.record({
    needed: fc.constantFrom(...neededTimes),
    quantity: fc.constantFrom('1', '2'),
    line: fc.constantFrom('l1', 'l2'),
    holds: fc.subarray(['h1', 'h2']),
  });
  const event = fc.record({
    partLineId: fc.constantFrom('p0', 'p1', 'p2'),
    verdict: fc.constantFrom(...verdicts),
    foundAtVehicle: fc.boolean(),
    quantity: fc.constantFrom('1', '2'),
    hours: fc.integer({ min: -2, max: 0 }),
  });
  const day = fc.record({
    lines: fc.tuple(line, line),
    parts: fc.tuple(part, part, part),
    events: fc.array(event, { maxLength: 8 }),
    jobEnds: fc.boolean(),
  });

  const before = (told: {
    lines: readonly object[];
    parts: readonly { line: string; holds: string[]; needed: Row<'partLine'>['needed']; quantity: string }[];
  }) => {
    const story = given().shop().vehicle('v1').job('j1');
    told.lines.forEach((over, n) => story.line(`l${String(n + 1)}`, over));
    told.parts.forEach(({ line: lineId, needed, quantity }, n) =>
      story.part(`p${String(n)}`, { lineId, needed, quantity }),
    );
    for (const id of ['h1', 'h2']) {
      const parts = told.parts.flatMap((one, n) => (one.holds.includes(id) ? [`p${String(n)}`] : []));
      if (parts.length > 0) story.hold(id, {}, id === 'h1' ? ['l1'] : [], parts);
    }
    return story.rows();
  };

  it('twice is settling once, and leaves no hold that should have ended or opened again', () => {
    fc.assert(
      fc.property(day, ({ lines, parts, events, jobEnds }) => {
        let rows = before({ lines, parts });
        events.forEach(({ hours, ...item }, n) => {
          const now = tuesdayTen + n * minute;
          const result = carryOut(receiveParts, rows, { items: [item] }, { now, effectiveAt: now + hours * hour });
          rows = result.rows;
          if (jobEnds && n === events.length - 1) rows.change('job', 'j1', { endedAt: now });
          if (jobEnds && n === events.length - 1) settle(rows, result.at);
          const twice = rows.fork();
          settle(twice, result.at);
          expect(twice.changes()).toEqual([]);
          const muchLater = rows.fork();
          settle(muchLater, circumstancesOf({ now: now + 100 * hour }));
          expect(muchLater.changes()).toEqual([]);
        });
        const waitedFor = (partLineId: string) =>
          rows.list('holdPart', (one) => one.partLineId === partLineId && rows.get('hold', one.holdId).toAt === null);
        for (const hold of rows.list('hold')) {
          if (hold.toAt !== null) expect(hold.toAt).toBeGreaterThanOrEqual(hold.fromAt);
          if (rows.get('job', 'j1').endedAt !== null) expect(hold.toAt).not.toBeNull();
          if (hold.againOfId === null || hold.toAt !== null) continue;
          const named = rows
            .list('holdPart', (one) => one.holdId === hold.id)
            .map((one) => rows.get('partLine', one.partLineId));
          expect(named.some((one) => neededNow(rows, one) && !isHere(one))).toBe(true);
          for (const one of named) expect(waitedFor(one.id)).toHaveLength(1);
        }
      }),
      { numRuns: 300 },
    );
  });
});
