import { describe, expect, it } from '@jest/globals';

import type { JobCause, JobConcern, JobLine } from './job-parties.js';
import { lineGroups } from './line-groups.js';

const concern = (id: string) => ({ id, words: id }) as unknown as JobConcern;
const cause = (id: string, ...concernIds: string[]) => ({ id, words: id, concernIds }) as unknown as JobCause;
const line = (id: string, of: Partial<JobLine> = {}) =>
  ({ id, causeId: null, concernId: null, choiceId: null, ...of }) as unknown as JobLine;

const shape = (groups: ReturnType<typeof lineGroups>) =>
  groups.map((group) => [
    group.key,
    group.items.map((item) => (item.kind === 'line' ? item.line.id : item.lines.map((one) => one.id))),
  ]);

describe('lines of a visit under what they are for', () => {
  it('stand under their cause, then under their concern, then under other work', () => {
    const groups = lineGroups({
      concerns: [concern('noise'), concern('pull')],
      causes: [cause('bearing', 'noise', 'pull')],
      lines: [line('wash'), line('listen', { concernId: 'noise' }), line('hub', { causeId: 'bearing' })],
    });
    expect(shape(groups)).toEqual([
      ['cause bearing', ['hub']],
      ['concern noise', ['listen']],
      ['other', ['wash']],
    ]);
    expect(groups[0]?.concerns.map((one) => one.id)).toEqual(['noise', 'pull']);
  });

  it('keep a choice whole, where one of its lines has a cause or a concern', () => {
    const groups = lineGroups({
      concerns: [concern('noise')],
      causes: [],
      lines: [line('used', { choiceId: 'c' }), line('new', { choiceId: 'c', concernId: 'noise' })],
    });
    expect(shape(groups)).toEqual([['concern noise', [['used', 'new']]]]);
  });

  it('draw no choice around a line that is the last of it', () => {
    const groups = lineGroups({ concerns: [], causes: [], lines: [line('used', { choiceId: 'c' })] });
    expect(shape(groups)).toEqual([['other', ['used']]]);
  });

  it('lose no line and double none, whatever they name', () => {
    const lines = [
      line('a', { causeId: 'gone' }),
      line('b', { concernId: 'gone', choiceId: 'c' }),
      line('d', { choiceId: 'c' }),
    ];
    const groups = lineGroups({ concerns: [], causes: [cause('unused')], lines });
    expect(shape(groups)).toEqual([['other', ['a', ['b', 'd']]]]);
  });
});
