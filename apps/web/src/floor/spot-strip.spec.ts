import { describe, expect, it } from '@jest/globals';

import { withKept } from './spot-strip.js';

const segment = { from: 100, to: 200, kind: 'worked' } as const;
const kept = (from: number, to: number) => ({ from, to, plate: 'BN 03 TX' });

describe('a stretch in which the spot is kept', () => {
  it('is cut out of what goes on with the vehicle meanwhile, and named for it', () => {
    expect(withKept(segment, [kept(130, 150)])).toEqual([
      { from: 100, to: 130, kind: 'worked' },
      { from: 130, to: 150, kind: 'kept', label: 'BN 03 TX' },
      { from: 150, to: 200, kind: 'worked' },
    ]);
  });

  it('takes the whole of a segment that it covers', () => {
    expect(withKept(segment, [kept(50, 250)])).toEqual([{ from: 100, to: 200, kind: 'kept', label: 'BN 03 TX' }]);
  });

  it('leaves alone what lies outside it', () => {
    expect(withKept(segment, [kept(0, 100), kept(200, 300)])).toEqual([segment]);
  });
});
