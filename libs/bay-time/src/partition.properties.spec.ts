import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { GoAheadAnswer, JobHold, JobLine, Span, SpotInput } from './account-input.js';
import { type BayTimeClass, partition } from './partition.js';
import { sumTotals, totalsOfAccount, totalsPer } from './totals.js';

const end = 60;
const jobs = ['van', 'car'];
const people = ['Rhona', 'Iain'];
const lineIds = ['a', 'b', 'c'];
const instant = fc.integer({ min: 0, max: end });
const interval = fc
  .tuple(instant, fc.integer({ min: -1, max: 20 }))
  .map(([from, length]) => ({ from, to: from + length }));
const intervals = fc.array(interval, { maxLength: 4 });
const span = fc
  .tuple(interval, fc.integer({ min: 0, max: 4 }))
  .map(([one, open]) => (open === 0 ? { ...one, to: null } : one));
const of = <T extends object>(rest: fc.Arbitrary<T>) =>
  fc.tuple(span, rest).map(([one, more]) => ({ ...one, ...more }));
const jobId = fc.constantFrom(...jobs);
const answer = fc.constantFrom<GoAheadAnswer>('withCustomer', 'given', 'given', 'deferred', 'declined');

const lines: fc.Arbitrary<JobLine[]> = fc
  .array(
    fc.record({
      jobId,
      lineId: fc.constantFrom(...lineIds),
      addedAt: fc.integer({ min: 0, max: 20 }),
      endedAt: fc.option(instant),
      after: fc.option(fc.constantFrom(...lineIds, 'unknown'), { freq: 2 }),
      goAhead: fc.uniqueArray(fc.record({ at: instant, answer }), { selector: (one) => one.at, maxLength: 4 }),
    }),
    { maxLength: 6 },
  )
  .map((all) => all.filter((one, i) => all.findIndex((x) => x.jobId === one.jobId && x.lineId === one.lineId) === i));
const holds: fc.Arbitrary<JobHold[]> = fc
  .array(
    of(
      fc.record({
        jobId,
        lineIds: fc.subarray([...lineIds, 'unknown']),
        reason: fc.constantFrom('parts', 'tool', 'goAhead', 'collection', 'setting'),
      }),
    ),
    { maxLength: 5 },
  )
  .map((all) => all.map((one, i) => ({ ...one, holdId: `h${i}` })));

const input: fc.Arbitrary<SpotInput> = fc.record({
  window: fc.tuple(instant, instant).map(([a, b]) => ({ from: Math.min(a, b), to: Math.max(a, b) })),
  open: intervals.map((all) => [...all, { from: 5, to: 40 }]),
  outOfUse: fc.array(interval, { maxLength: 1 }),
  stays: fc.array(of(fc.record({ jobId, kind: fc.constantFrom('stands' as const, 'kept' as const) })), {
    minLength: 1,
    maxLength: 4,
  }),
  clocks: fc.array(of(fc.record({ jobId, personId: fc.constantFrom(...people), bench: fc.boolean() })), {
    maxLength: 5,
  }),
  holds,
  lines,
  storedJobs: fc.array(of(fc.record({ jobId })), { maxLength: 1 }),
  breaks: fc.array(interval, { maxLength: 2 }),
  personBreaks: fc.record({ Rhona: intervals, Iain: intervals }),
  graceMs: fc.integer({ min: 0, max: 8 }),
  now: fc.integer({ min: 20, max: end + 10 }),
});

/** Why the job is held at an instant, by the row of the table on it; null where some line could be worked or none waits. */
function heldReasonAt(given: SpotInput, job: string, held: JobHold[], t: number): string | null {
  const whole = held.filter((one) => one.lineIds.length === 0);
  const own = given.lines.filter((one) => one.jobId === job);
  const ended = (one: JobLine): boolean => one.endedAt !== null && one.endedAt <= t;
  const word = (one: JobLine): GoAheadAnswer =>
    [...one.goAhead]
      .sort((a, b) => a.at - b.at)
      .filter((said) => said.at <= t)
      .at(-1)?.answer ?? 'withCustomer';
  const open = own.filter((one) => one.addedAt <= t && !ended(one));
  const may = open.filter((one) => word(one) === 'given');
  const free = (one: JobLine): boolean => {
    const before = own.find((other) => other.lineId === one.after);
    return (
      whole.length === 0 && !held.some((h) => h.lineIds.includes(one.lineId)) && (before === undefined || ended(before))
    );
  };
  if (!may.some(free)) {
    const bind = held.filter((h) => h.lineIds.length === 0 || may.some((one) => h.lineIds.includes(one.lineId)));
    const [first] = bind.sort((a, b) => a.from - b.from || (a.holdId < b.holdId ? -1 : 1));
    if (first !== undefined) return first.reason;
    if (open.some((one) => word(one) === 'withCustomer')) return 'goAhead';
  }
  return null;
}

/** The table of the account, read off one millisecond at a time with no care for cost: the second opinion. */
function tableAt(given: SpotInput, t: number): { name: BayTimeClass; reason: string | null; jobId: string | null } {
  const runs = (one: Span, at: number): boolean => one.from <= at && at < Math.min(one.to ?? given.now, given.now);
  const none = { reason: null, jobId: null };
  if (given.outOfUse.some((one) => runs(one, t))) return { name: 'outOfUse', ...none };

  const jobAt = occupants(given);
  const job = jobAt(t);
  if (job === null) return { name: 'empty', ...none };
  const clocked = (at: number): boolean => given.clocks.some((one) => one.jobId === job && !one.bench && runs(one, at));
  if (clocked(t)) return { name: 'worked', reason: null, jobId: job };

  const held = given.holds.filter((one) => one.jobId === job && runs(one, t));
  const whole = held.filter((one) => one.lineIds.length === 0);
  if (whole.some((one) => one.reason === 'collection')) return { name: 'stored', reason: 'collection', jobId: job };
  if (given.storedJobs.some((one) => one.jobId === job && runs(one, t)))
    return { name: 'stored', reason: null, jobId: job };

  const reason = heldReasonAt(given, job, held, t);
  if (reason !== null) return { name: 'held', reason, jobId: job };

  let gapFrom = t;
  while (gapFrom > -25 && jobAt(gapFrom - 1) === job && !clocked(gapFrom - 1)) gapFrom -= 1;
  let openInGap = 0;
  for (let at = gapFrom; at < t; at += 1) if (given.open.some((one) => one.from <= at && at < one.to)) openInGap += 1;
  const before = given.clocks
    .filter((one) => one.jobId === job && !one.bench)
    .map((one) => ({ ...one, to: Math.min(one.to ?? given.now, given.now) }))
    .filter((one) => one.from < one.to && one.to <= gapFrom);
  const lastEnd = Math.max(...before.map((one) => one.to));
  const pauses = [
    ...given.breaks,
    ...before.filter((one) => one.to === lastEnd).flatMap((one) => given.personBreaks?.[one.personId] ?? []),
  ];
  const excused = openInGap < given.graceMs || pauses.some((one) => one.from <= t && t < one.to);
  return { name: excused ? 'break' : 'noReason', reason: null, jobId: job };
}

/** Who has the spot: the job that had it first, until it leaves. */
function occupants(given: SpotInput): (t: number) => string | null {
  const stays = given.stays
    .map((one) => ({ ...one, to: Math.min(one.to ?? given.now, given.now) }))
    .filter((one) => one.from < one.to)
    .sort((a, b) => a.from - b.from || (a.jobId < b.jobId ? -1 : 1));
  const at = new Map<number, string>();
  let filled = -Infinity;
  for (const one of stays) {
    for (let t = Math.max(one.from, filled); t < one.to; t += 1) at.set(t, one.jobId);
    filled = Math.max(filled, one.to);
  }
  return (t) => at.get(t) ?? null;
}

const openAt = (given: SpotInput, t: number): boolean => given.open.some((one) => one.from <= t && t < one.to);

describe('the account of a spot, for any input', () => {
  it('puts every millisecond of opening time in the class that the table gives, and no other instant in any', () => {
    fc.assert(
      fc.property(input, (given) => {
        const { segments } = partition(given);
        for (let t = given.window.from; t < given.window.to; t += 1) {
          const found = segments.filter((one) => one.from <= t && t < one.to);
          if (!openAt(given, t) || t >= given.now) {
            expect(found).toEqual([]);
            continue;
          }
          expect(found).toHaveLength(1);
          const [{ class: name, reason, jobId: job } = { class: 'empty', reason: null, jobId: null }] = found;
          expect({ t, name, reason, jobId: job }).toEqual({ t, ...tableAt(given, t) });
        }
      }),
      { numRuns: 600 },
    );
  });

  it('the classes add up to opening time exactly, in whole milliseconds', () => {
    fc.assert(
      fc.property(input, (given) => {
        const { window, to } = { window: given.window, to: Math.min(given.window.to, given.now) };
        let openMs = 0;
        for (let t = window.from; t < to; t += 1) if (openAt(given, t)) openMs += 1;
        const totals = totalsOfAccount(partition(given));
        expect(totals.openMs).toBe(openMs);
        expect(Object.values(totals.classMs).reduce((a, b) => a + b, 0)).toBe(openMs);
        expect(Object.values(totals.heldMs).reduce((a, b) => a + b, 0)).toBe(totals.classMs.held);
      }),
      { numRuns: 500 },
    );
  });

  it('a window cut in two gives the same account as the whole', () => {
    fc.assert(
      fc.property(input, instant, (given, cut) => {
        const whole = { from: 0, to: end };
        const parts = [
          { from: 0, to: cut },
          { from: cut, to: end },
        ];
        const totals = totalsOfAccount(partition({ ...given, window: whole }));
        const ofParts = parts.map((window) => totalsOfAccount(partition({ ...given, window })));
        expect(sumTotals(ofParts)).toEqual(totals);
        const cutAfter = totalsPer(partition({ ...given, window: whole }), parts);
        expect(cutAfter).toEqual(ofParts);
      }),
      { numRuns: 500 },
    );
  });

  it('the order of the rows does not matter', () => {
    fc.assert(
      fc.property(input, (given) => {
        const reversed = {
          ...given,
          open: [...given.open].reverse(),
          stays: [...given.stays].reverse(),
          clocks: [...given.clocks].reverse(),
          holds: [...given.holds].reverse(),
          lines: [...given.lines].reverse(),
        };
        expect(partition(reversed).segments).toEqual(partition(given).segments);
      }),
      { numRuns: 300 },
    );
  });

  it('people’s hours are their clocks while the job has the spot, added up, in opening time and beside it', () => {
    fc.assert(
      fc.property(input, (given) => {
        const jobAt = occupants(given);
        let [regular, overtime] = [0, 0];
        for (let t = given.window.from; t < Math.min(given.window.to, given.now); t += 1) {
          const running = given.clocks.filter(
            (one) => one.from <= t && t < (one.to ?? given.now) && jobAt(t) === one.jobId,
          );
          if (openAt(given, t)) regular += running.length;
          else overtime += running.length;
        }
        const totals = totalsOfAccount(partition(given));
        expect([totals.technicianMs, totals.technicianOvertimeMs]).toEqual([regular, overtime]);
      }),
      { numRuns: 500 },
    );
  });
});
