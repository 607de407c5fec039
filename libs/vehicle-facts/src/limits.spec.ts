import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type Length, aboveGreatest, verdictsOn } from './limits.js';
import { type LimitClass, type MeasuredPart, publishedLimits } from './published-limits.js';
import { leftRightDifferenceMm, readPads, readTread } from './readings.js';

const mm = (value: number): Length => ({ value, unit: 'mm' });
const in32 = (value: number): Length => ({ value, unit: 'in32' });
const tread: MeasuredPart = { what: 'tread', steering: true };
const classes: readonly LimitClass[] = [
  'usTruckBus',
  'usOver10000lb',
  'usLight',
  'euCarVan',
  'gbCarVan',
  'gbOther',
  'marylandHeavy',
  'marylandMotorcycle',
  'franceCar',
];

describe('limits', () => {
  it('in print are offered for their own class and no other', () => {
    const parts: readonly MeasuredPart[] = [
      tread,
      { what: 'lining', steering: false, brake: 'hydraulicDrum', lining: 'bonded' },
      { what: 'liningOverFastener', steering: null, lining: 'riveted' },
      { what: 'disc', steering: null },
    ];
    for (const one of classes) {
      for (const part of parts) {
        for (const limit of publishedLimits([one], part)) expect(limit.classes).toContain(one);
      }
    }
    expect(publishedLimits([], tread)).toEqual([]);
    expect(publishedLimits(classes, { what: 'disc', steering: null })).toEqual([]);
  });

  it("come in the order: the maker's, the shop's, those in print", () => {
    const verdicts = verdictsOn(
      mm(3.5),
      tread,
      { makers: { ...mm(1.6), source: 'on the tyre' }, shop: { advise: mm(4), replace: mm(3) } },
      ['euCarVan'],
    );
    expect(verdicts.map(({ by, says }) => [by, says])).toEqual([
      ['maker', 'holds'],
      ['shop', 'advise'],
      ['published', 'holds'],
    ]);
  });

  it('of the shop ask for the work below one value and speak of it below the other', () => {
    const shop = { makers: null, shop: { advise: mm(4), replace: mm(3) } };
    const says = (value: number): string | undefined => verdictsOn(mm(value), tread, shop, [])[0]?.says;
    expect([2.9, 3, 3.9, 4].map(says)).toEqual(['replace', 'advise', 'advise', 'holds']);
    expect(verdictsOn(mm(2), tread, { makers: null, shop: { advise: null, replace: null } }, [])).toEqual([]);
  });

  it('never pass a shallower reading where a deeper one fails', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 12, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.constantFrom('mm' as const, 'in32' as const),
        (deep, less, unit) => {
          const own = { makers: null, shop: null };
          const failing = (value: number): string[] =>
            verdictsOn({ value, unit }, tread, own, classes).flatMap(({ says, source }) =>
              says === 'fails' ? [source ?? ''] : [],
            );
          const shallow = failing(Math.max(0, deep - less));
          for (const source of failing(deep)) expect(shallow).toContain(source);
        },
      ),
    );
  });

  it('refuse a depth below nothing', () => {
    expect(() => verdictsOn(mm(-1), tread, { makers: null, shop: null }, [])).toThrow(RangeError);
  });

  it('of a drum and of runout are greatest values', () => {
    const drum = { ...mm(230), source: 'on the drum' };
    expect(aboveGreatest(mm(230), drum).says).toBe('holds');
    expect(aboveGreatest(mm(230.1), drum).says).toBe('fails');
    expect(aboveGreatest({ value: 9, unit: 'in' }, drum)).toMatchObject({ says: 'holds', source: 'on the drum' });
  });
});

describe('readings', () => {
  it('of tread count by the lowest of three, whatever their units', () => {
    expect(readTread([mm(5), in32(5), mm(4.5)])).toMatchObject({ lowest: in32(5), incomplete: false, doubts: [] });
    expect(readTread([mm(5)]).incomplete).toBe(true);
    expect(() => readTread([])).toThrow(RangeError);
  });

  it('of tread that cannot be are asked about', () => {
    expect(readTread([mm(-1), mm(5), mm(5)]).doubts).toEqual(['negative']);
    expect(readTread([mm(60), mm(61), mm(60)]).doubts).toEqual(['deeperThanAnyTread']);
    // 6 and 7 on an inch gauge are 4.8 and 5.6 mm.
    expect(readTread([mm(6), mm(7), mm(6)], 5.2).doubts).toEqual(['perhapsThirtySeconds']);
    expect(readTread([mm(6.1), mm(7), mm(6)], 5.2).doubts).toEqual([]);
  });

  it('of pads count by the thinner, with the difference', () => {
    expect(readPads(mm(4), mm(6.5))).toEqual({ thinnest: mm(4), at: 'inner', differenceMm: 2.5 });
    expect(readPads(mm(5), in32(4)).at).toBe('outer');
    expect(leftRightDifferenceMm(mm(6), mm(4))).toBe(2);
  });
});
