import type { JobView } from '@holdfast/contract';
import { describe, expect, it } from '@jest/globals';

import type { Blocker } from './blocker.js';
import { releaseListOf } from './release-list.js';

const blocker = (code: string, table: string, id: string, facts: Blocker['facts'] = {}): Blocker => ({
  code,
  facts,
  sentence: code,
  way: { table, id },
});
const view = {
  lines: [
    { id: 'l1', title: 'Weld the sill' },
    { id: 'l2', title: 'Paint it' },
  ],
  partLines: [
    { id: 'p1', description: 'Sill panel', lineId: null },
    { id: 'p2', description: 'Primer', lineId: 'l2' },
  ],
  temporaryFixes: [{ id: 'f1', endedByWhat: 'a new bracket' }],
  sublets: [
    { id: 's1', component: 'bumper', firm: 'Dock Paint', lineId: null },
    { id: 's2', component: null, firm: 'Glass & Co', lineId: null },
  ],
  concerns: [
    { id: 'c1', words: 'Rattles cold' },
    { id: 'c2', words: 'Pulls left' },
  ],
} as unknown as JobView;

const blockers = [
  blocker('handBack.clockRuns', 'clock', 'k1'),
  blocker('handBack.lineUnfinished', 'workLine', 'l1'),
  blocker('handBack.lineOpen', 'workLine', 'l2'),
  blocker('handBack.partOpen', 'partLine', 'p1'),
  blocker('handBack.partOpen', 'partLine', 'p2'),
  blocker('handBack.fixWithoutFollowUp', 'temporaryFix', 'f1'),
  blocker('handBack.secondCheckMissing', 'temporaryFix', 'f1'),
  blocker('handBack.concernOpen', 'concern', 'c1'),
  blocker('handBack.subletUnderWay', 'sublet', 's1', { form: 'componentOut' }),
  blocker('handBack.subletUnderWay', 'sublet', 's2', { form: 'outsiderIn' }),
  blocker('handBack.cautionOpen', 'caution', 'x1'),
];

describe('what a release unfinished would do', () => {
  it('turns what is open into follow-ups, each once, parts of a line with their line', () => {
    const { followUps } = releaseListOf(view, blockers, 'transporter');
    expect(followUps).toEqual(['Weld the sill', 'Paint it', 'Sill panel', 'a new bracket', 'bumper']);
  });

  it('says of a concern without an outcome that it was not tried', () => {
    expect(releaseListOf(view, blockers, 'transporter').notTried).toEqual(['Rattles cold']);
  });

  it('still minds a running clock, a caution and somebody from outside; by road the second check too', () => {
    const codes = (leaves: 'road' | 'transporter') =>
      releaseListOf(view, blockers, leaves).inTheWay.map(({ code, way }) => `${code} ${way?.id ?? ''}`);
    const always = ['handBack.clockRuns k1', 'handBack.subletUnderWay s2', 'handBack.cautionOpen x1'];
    expect(codes('transporter')).toEqual(always);
    expect(codes('road')).toEqual([always[0], 'handBack.secondCheckMissing f1', always[1], always[2]]);
  });
});
