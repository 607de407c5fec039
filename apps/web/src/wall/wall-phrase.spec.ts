import { describe, expect, it } from '@jest/globals';

import type { Spot, Visit } from '@holdfast/board';
import { locales, say } from '@holdfast/contract';
import { holdReasons } from '@holdfast/domain';

import { wallPhrase } from './wall-phrase.js';

const spot = (outOfUse: boolean, kind: 'stands' | 'kept' | null): Pick<Spot, 'spec' | 'use'> =>
  ({ spec: { outOfUse }, use: kind === null ? null : { kind } }) as Pick<Spot, 'spec' | 'use'>;
const visit = (state: object, place = 'bay', lines: object[] = [{}]): Pick<Visit, 'state' | 'place' | 'lines'> =>
  ({ state, place: { kind: place }, lines }) as unknown as Pick<Visit, 'state' | 'place' | 'lines'>;

const standing = spot(false, 'stands');
const phrases = [
  wallPhrase(spot(true, null), undefined),
  wallPhrase(spot(false, null), undefined),
  wallPhrase(spot(false, 'kept'), visit({ kind: 'worked' }, 'roadTest')),
  wallPhrase(spot(false, 'kept'), visit({ kind: 'held', reason: 'sublet' }, 'away')),
  wallPhrase(standing, visit({ kind: 'worked' })),
  wallPhrase(standing, visit({ kind: 'stored' })),
  wallPhrase(standing, visit({ kind: 'noReason', workLeft: true })),
  wallPhrase(standing, visit({ kind: 'noReason', workLeft: false })),
  wallPhrase(standing, visit({ kind: 'noReason', workLeft: false }, 'bay', [])),
  wallPhrase(standing, visit({ kind: 'ended' })),
  ...holdReasons.map((reason) => wallPhrase(standing, visit({ kind: 'held', reason }))),
];

describe('the phrase of a row on the wall', () => {
  it.each(locales)('has at most eleven characters for every state in %s', (locale) => {
    expect(phrases.map((key) => say(locale, key)).filter((words) => words.length > 11)).toEqual([]);
  });

  it('is another one for every state', () => {
    expect(new Set(phrases.map((key) => say('en-GB', key))).size).toBe(phrases.length);
  });
});
