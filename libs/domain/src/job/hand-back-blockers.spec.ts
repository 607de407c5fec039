import { describe, expect, it } from '@jest/globals';
import { given } from '../kernel/given.js';
import { lineSettled } from './hand-back-blockers.js';

type Line = Parameters<ReturnType<typeof given>['line']>[1];
const aVisit = () => given().shop().vehicle('v1').job('j1');
const settled = (line: Line, more: (g: ReturnType<typeof aVisit>) => ReturnType<typeof aVisit> = (g) => g) => {
  const rows = more(aVisit().line('l1', line)).rows();
  return lineSettled(rows, rows.get('workLine', 'l1'));
};

describe('a line of work stands no longer in the way of handing back', () => {
  it.each([
    ['done', true],
    ['carriedOver', true],
    ['dropped', true],
    ['started', false],
    ['stopped', false],
    ['planned', false],
  ] as const)('when it is %s: %s', (progress, expected) => {
    const startedAt = progress === 'planned' ? null : 1;
    expect(settled({ progress, startedAt, goAhead: 'given' })).toBe(expected);
  });

  it('when the customer put it off or declined it before anybody began', () => {
    expect(settled({ goAhead: 'deferred' })).toBe(true);
    expect(settled({ goAhead: 'declined' })).toBe(true);
    expect(settled({ goAhead: 'withCustomer' })).toBe(false);
    expect(settled({ goAhead: 'declined', progress: 'stopped', startedAt: 1 })).toBe(false);
  });

  it('when another way of its choice was chosen', () => {
    const other = { choiceId: 'c', goAhead: 'given' } as const;
    expect(settled({ choiceId: 'c', goAhead: 'withCustomer' }, (g) => g.line('l2', other))).toBe(true);
    expect(settled({ choiceId: 'd', goAhead: 'withCustomer' }, (g) => g.line('l2', other))).toBe(false);
  });

  it('when a follow-up goes on with it', () => {
    const follow = (state: 'open' | 'done' | 'dropped') =>
      settled({}, (g) => g.followUp('f1', { lineId: 'l1', state }));
    expect(follow('open')).toBe(true);
    expect(follow('done')).toBe(false);
    expect(follow('dropped')).toBe(false);
  });
});
