import { describe, expect, it } from '@jest/globals';
import type { GoAheadAnswer, JobClock, JobHold, JobLine, SpotInput, SpotStay } from './account-input.js';
import { type Segment, partition } from './partition.js';
import { outsiderId } from './account-input.js';
import { totalsOfAccount } from './totals.js';

/** One bay, opening time from 0 to 1000, one job in it all the time; the numbers are milliseconds. */
const bay = (change: Partial<SpotInput> = {}): SpotInput => ({
  window: { from: 0, to: 1000 },
  open: [{ from: 0, to: 1000 }],
  outOfUse: [],
  stays: [stands(0, null)],
  clocks: [],
  holds: [],
  lines: [line('brakes')],
  storedJobs: [],
  breaks: [],
  graceMs: 0,
  now: 1000,
  ...change,
});

function stands(from: number, to: number | null, jobId = 'van', kind: SpotStay['kind'] = 'stands'): SpotStay {
  return { jobId, from, to, kind };
}
function line(lineId: string, change: Partial<JobLine> = {}): JobLine {
  return { jobId: 'van', lineId, addedAt: 0, endedAt: null, after: null, goAhead: answers(0, 'given'), ...change };
}
function answers(at: number, answer: GoAheadAnswer): JobLine['goAhead'] {
  return [{ at, answer }];
}
function hold(from: number, to: number | null, change: Partial<JobHold> = {}): JobHold {
  return { holdId: `hold-${from}`, jobId: 'van', lineIds: [], reason: 'parts', from, to, ...change };
}
function clock(from: number, to: number | null, change: Partial<JobClock> = {}): JobClock {
  return { jobId: 'van', personId: 'Rhona', from, to, bench: false, ...change };
}

const brief = ({ from, to, class: name, reason }: Segment): string =>
  `${from}-${to} ${name}${reason === null ? '' : ` ${reason}`}`;
const account = (change: Partial<SpotInput>): string[] => partition(bay(change)).segments.map(brief);

describe('worked', () => {
  it('while a clock runs, whatever is held; several clocks at once are one', () => {
    expect(
      account({ clocks: [clock(100, 300), clock(200, 400, { personId: 'Iain' })], holds: [hold(0, null)] }),
    ).toEqual(['0-100 held parts', '100-400 worked', '400-1000 held parts']);
  });

  it('also on a road test that keeps the bay', () => {
    expect(account({ stays: [stands(0, 400), stands(400, 1000, 'van', 'kept')], clocks: [clock(300, 500)] })).toEqual([
      '0-300 noReason',
      '300-500 worked',
      '500-1000 noReason',
    ]);
  });

  it('a clock at the bench counts for the person and not for the bay', () => {
    const bench = partition(bay({ clocks: [clock(100, 300, { bench: true })] }));
    expect(bench.segments.map(brief)).toEqual(['0-1000 noReason']);
    expect(totalsOfAccount(bench).technicianMs).toBe(200);
  });

  it('only while the job is here: a clock in another bay, or on another job, is not this bay’s', () => {
    expect(
      account({ stays: [stands(500, null)], clocks: [clock(300, 600), clock(700, 800, { jobId: 'car' })] }),
    ).toEqual(['0-500 empty', '500-600 worked', '600-1000 noReason']);
  });
});

describe('work of another firm', () => {
  it('the vehicle is out and keeps the bay: held for the sublet, and nobody is in between', () => {
    const stays = [stands(0, 300), stands(300, 800, 'van', 'kept'), stands(800, null)];
    const holds = [hold(300, 800, { reason: 'sublet' })];
    expect(account({ stays, holds, clocks: [clock(100, 300), clock(850, 1000)] })).toEqual([
      '0-100 noReason',
      '100-300 worked',
      '300-800 held sublet',
      '800-850 noReason',
      '850-1000 worked',
    ]);
  });

  it('the vehicle is out and its spot is not kept: the bay is empty, or the next vehicle has it', () => {
    const stays = [stands(0, 300), stands(500, null, 'car')];
    const holds = [hold(300, 800, { reason: 'sublet' })];
    expect(account({ stays, holds })).toEqual(['0-300 noReason', '300-500 empty', '500-1000 noReason']);
  });

  it('a component is out and the vehicle keeps the bay: held where nothing else can be done, worked where it is', () => {
    const holds = [hold(200, 900, { reason: 'sublet', lineIds: ['bumper'] })];
    const lines = [line('bumper'), line('brakes', { endedAt: 500 })];
    expect(account({ holds, lines, clocks: [clock(200, 500)] })).toEqual([
      '0-200 noReason',
      '200-500 worked',
      '500-900 held sublet',
      '900-1000 noReason',
    ]);
  });

  it('an outsider works here: worked, also during a hold, and no hours of anybody of the shop', () => {
    const glass = clock(200, 600, { personId: outsiderId('glass') });
    const input = { clocks: [glass, clock(500, 700)], holds: [hold(0, null)] };
    expect(account(input)).toEqual(['0-200 held parts', '200-700 worked', '700-1000 held parts']);
    const totals = totalsOfAccount(partition(bay(input)));
    expect([totals.technicianMs, totals.classMs.worked]).toEqual([200, 500]);
  });

  it('after an outsider nobody’s own break excuses the gap', () => {
    const glass = clock(0, 400, { personId: outsiderId('glass') });
    const personBreaks = { Rhona: [{ from: 400, to: 600 }] };
    expect(account({ clocks: [glass], personBreaks })).toEqual(['0-400 worked', '400-1000 noReason']);
  });
});

describe('out of use', () => {
  it('comes before everything, also with the vehicle in the bay and somebody at work', () => {
    expect(account({ outOfUse: [{ from: 200, to: 600 }], clocks: [clock(0, 1000)] })).toEqual([
      '0-200 worked',
      '200-600 outOfUse',
      '600-1000 worked',
    ]);
  });
});

describe('stored', () => {
  it('while the whole job is held for collection, before any other hold and though a line could be worked', () => {
    expect(
      account({ holds: [hold(100, null, { holdId: 'a' }), hold(300, 700, { holdId: 'b', reason: 'collection' })] }),
    ).toEqual(['0-100 noReason', '100-300 held parts', '300-700 stored collection', '700-1000 held parts']);
  });

  it('while an internal job is marked stored; a clock still makes it worked', () => {
    expect(account({ storedJobs: [{ jobId: 'van', from: 0, to: 600 }], clocks: [clock(100, 200)] })).toEqual([
      '0-100 stored',
      '100-200 worked',
      '200-600 stored',
      '600-1000 noReason',
    ]);
  });
});

describe('held', () => {
  it('not while another line could be worked', () => {
    const holds = [hold(0, null, { lineIds: ['bumper'] })];
    const lines = [line('bumper'), line('brakes', { endedAt: 400 })];
    expect(account({ holds, lines })).toEqual(['0-400 noReason', '400-1000 held parts']);
  });

  it('a hold on the whole job holds every line', () => {
    const split = ['0-200 noReason', '200-800 held parts', '800-1000 noReason'];
    expect(account({ holds: [hold(200, 800)], lines: [line('bumper'), line('brakes')] })).toEqual(split);
  });

  it('a hold on the whole job binds also when nothing is left to do', () => {
    const holds = [hold(200, null, { reason: 'assessor' })];
    expect(account({ holds, lines: [] })).toEqual(['0-200 noReason', '200-1000 held assessor']);
  });

  it('the reason is that of the hold opened first among those that bind', () => {
    const holds = [
      hold(500, null, { reason: 'tool', holdId: 'c' }),
      hold(100, 700, { reason: 'parts', holdId: 'a' }),
      hold(50, 900, { reason: 'sublet', holdId: 'b', lineIds: ['not here'] }),
    ];
    expect(account({ holds })).toEqual(['0-100 noReason', '100-700 held parts', '700-1000 held tool']);
  });

  it('a hold on a line without the go-ahead does not bind, however early it was opened', () => {
    const holds = [
      hold(0, null, { lineIds: ['lamp'], reason: 'information', holdId: 'a' }),
      hold(100, null, { lineIds: ['bumper'], holdId: 'b' }),
    ];
    const lamp = line('lamp', { goAhead: [...answers(0, 'withCustomer'), ...answers(600, 'given')] });
    expect(account({ holds, lines: [lamp, line('bumper')] })).toEqual([
      '0-100 noReason',
      '100-600 held parts',
      '600-1000 held information',
    ]);
  });

  it('a hold stops binding when its line is done, carried over or dropped', () => {
    const holds = [hold(0, null, { lineIds: ['bumper'] })];
    expect(account({ holds, lines: [line('bumper', { endedAt: 300 })] })).toEqual([
      '0-300 held parts',
      '300-1000 noReason',
    ]);
  });

  it('a line that waits for an unfinished one before it cannot be worked', () => {
    const lines = [line('paint', { after: 'repair' }), line('repair', { endedAt: 500 })];
    const holds = [hold(0, 400, { lineIds: ['repair'], reason: 'tool' })];
    expect(account({ lines, holds })).toEqual(['0-400 held tool', '400-1000 noReason']);
  });

  it('two holds on one line: it is held until the last of them ends', () => {
    const holds = [
      hold(0, 300, { lineIds: ['brakes'], holdId: 'a' }),
      hold(100, 600, { lineIds: ['brakes'], holdId: 'b', reason: 'tool' }),
    ];
    expect(account({ holds })).toEqual(['0-300 held parts', '300-600 held tool', '600-1000 noReason']);
  });
});

describe('held for the go-ahead', () => {
  it('while a line is with the customer and nothing is held', () => {
    const goAhead = [...answers(0, 'withCustomer'), ...answers(300, 'given'), ...answers(600, 'withCustomer')];
    expect(account({ lines: [line('brakes', { goAhead })] })).toEqual([
      '0-300 held goAhead',
      '300-600 noReason',
      '600-1000 held goAhead',
    ]);
  });

  it('a line without any answer yet is with the customer from the moment it is added', () => {
    const lines = [line('brakes', { goAhead: [], addedAt: 250 })];
    expect(account({ lines })).toEqual(['0-250 noReason', '250-1000 held goAhead']);
  });

  it('a line that is held comes before one with the customer', () => {
    const lines = [line('bumper'), line('lamp', { goAhead: [] })];
    expect(account({ lines, holds: [hold(200, 700, { lineIds: ['bumper'] })] })).toEqual([
      '0-200 noReason',
      '200-700 held parts',
      '700-1000 noReason',
    ]);
  });

  it('a line deferred or declined is no longer waited for', () => {
    for (const answer of ['deferred', 'declined'] as const) {
      const goAhead = [...answers(0, 'withCustomer'), ...answers(400, answer)];
      expect(account({ lines: [line('lamp', { goAhead })] })).toEqual(['0-400 held goAhead', '400-1000 noReason']);
    }
  });

  it('a line with the go-ahead after one that is with the customer waits for the same word', () => {
    const lines = [line('repair', { goAhead: [] }), line('paint', { after: 'repair' })];
    expect(account({ lines })).toEqual(['0-1000 held goAhead']);
  });
});

describe('no reason and break', () => {
  it('the grace is the first part of each gap: on arrival, and after each clock', () => {
    expect(account({ graceMs: 100, clocks: [clock(300, 400), clock(450, 600)] })).toEqual([
      '0-100 break',
      '100-300 noReason',
      '300-400 worked',
      '400-450 break',
      '450-600 worked',
      '600-700 break',
      '700-1000 noReason',
    ]);
  });

  it('the grace is opening time: what of it is left at closing is there the next morning', () => {
    const open = [
      { from: 0, to: 400 },
      { from: 600, to: 1000 },
    ];
    expect(account({ open, graceMs: 100, clocks: [clock(0, 370)] })).toEqual([
      '0-370 worked',
      '370-400 break',
      '600-670 break',
      '670-1000 noReason',
    ]);
  });

  it('the grace runs from the start of the gap, held or not: it does not begin again when a hold ends', () => {
    expect(account({ graceMs: 100, clocks: [clock(0, 200)], holds: [hold(200, 500)] })).toEqual([
      '0-200 worked',
      '200-500 held parts',
      '500-1000 noReason',
    ]);
  });

  it('a window that begins in a gap does not give it a new grace', () => {
    const window = { from: 500, to: 1000 };
    expect(account({ window, graceMs: 100, clocks: [clock(0, 200)] })).toEqual(['500-1000 noReason']);
  });

  it('a road test and the return are one stay: no new grace', () => {
    const stays = [stands(0, 300), stands(300, 500, 'van', 'kept'), stands(500, null)];
    expect(account({ stays, graceMs: 100 })).toEqual(['0-100 break', '100-1000 noReason']);
  });

  it('a break of the shop takes from no reason and not from a hold or from work', () => {
    const breaks = [{ from: 100, to: 500 }];
    expect(account({ breaks, holds: [hold(0, 200)], clocks: [clock(400, 600)] })).toEqual([
      '0-200 held parts',
      '200-400 break',
      '400-600 worked',
      '600-1000 noReason',
    ]);
  });

  it('a break of the person last clocked counts, another person’s does not', () => {
    const personBreaks = { Rhona: [{ from: 300, to: 400 }], Iain: [{ from: 500, to: 700 }] };
    const clocks = [clock(0, 50, { personId: 'Iain' }), clock(60, 200)];
    expect(account({ personBreaks, clocks }).slice(-3)).toEqual([
      '200-300 noReason',
      '300-400 break',
      '400-1000 noReason',
    ]);
  });

  it('who was last clocked is known from before the vehicle came into this bay', () => {
    const personBreaks = { Rhona: [{ from: 600, to: 700 }] };
    expect(account({ stays: [stands(500, null)], personBreaks, clocks: [clock(0, 100)] })).toEqual([
      '0-500 empty',
      '500-600 noReason',
      '600-700 break',
      '700-1000 noReason',
    ]);
  });
});

describe('the window', () => {
  it('what has no end yet ends now, and what lies after now is not counted', () => {
    const input = bay({ now: 600, clocks: [clock(200, null)] });
    expect(partition(input).window).toEqual({ from: 0, to: 600 });
    expect(partition(input).segments.map(brief)).toEqual(['0-200 noReason', '200-600 worked']);
    expect(account({ now: -5 })).toEqual([]);
  });

  it('work outside opening time is overtime and in no class', () => {
    const input = bay({ open: [{ from: 0, to: 500 }], clocks: [clock(400, 800)] });
    expect(partition(input).segments.map(brief)).toEqual(['0-400 noReason', '400-500 worked']);
    expect(totalsOfAccount(partition(input))).toMatchObject({ technicianMs: 100, technicianOvertimeMs: 300 });
  });

  it('one vehicle leaves and the next comes: each stretch names its job', () => {
    const segments = partition(bay({ stays: [stands(0, 400), stands(400, 900, 'car')], lines: [] })).segments;
    expect(segments.map(({ from, to, jobId }) => [from, to, jobId])).toEqual([
      [0, 400, 'van'],
      [400, 900, 'car'],
      [900, 1000, null],
    ]);
  });

  it('numbers that are not whole, and a negative grace, are refused', () => {
    expect(() => partition(bay({ graceMs: -1 }))).toThrow(RangeError);
    expect(() => partition(bay({ now: NaN }))).toThrow(RangeError);
    expect(() => partition(bay({ window: { from: 0.5, to: 9 } }))).toThrow(RangeError);
  });
});
