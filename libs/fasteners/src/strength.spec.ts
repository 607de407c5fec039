import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { nutClasses, pairNut } from './nuts.js';
import { type StrengthMark, inchGrades, loadsOf, propertyClasses, readMark, strengthOf } from './strength.js';
import { type Thread, readThread } from './thread.js';

function thread(text: string): Thread {
  const read = readThread(text);
  if (read.thread === null) throw new Error(`${text}: ${read.doubt}`);
  return read.thread;
}

describe('a mark as typed', () => {
  it('is a property class or a grade', () => {
    expect(readMark('10.9')).toEqual({ mark: '10.9' });
    expect(readMark('Grade 5')).toEqual({ mark: 'grade5' });
    expect(readMark('gr. 8')).toEqual({ mark: 'grade8' });
  });

  it.each([
    ['8,8', { doubt: 'comma', suggestion: '8.8' }],
    ['88', { doubt: 'pointMissing', suggestion: '8.8' }],
    ['109', { doubt: 'pointMissing', suggestion: '10.9' }],
    ['7.7', { doubt: 'notAClass', suggestion: null }],
    ['A2-70', { doubt: 'stainless', suggestion: null }],
    ['grade 3', { doubt: 'notAGrade', suggestion: null }],
    ['', { doubt: 'notAClass', suggestion: null }],
  ])('%s is refused, with what may be meant', (text, refusal) => {
    expect(readMark(text)).toEqual({ mark: null, ...refusal });
  });
});

describe('strength', () => {
  it('of an unmarked bolt is that of the lowest class', () => {
    expect(strengthOf({ thread: thread('M8'), mark: null }).strength).toMatchObject({
      mark: '4.6',
      assumedLowest: true,
    });
    expect(strengthOf({ thread: thread('3/8-16'), mark: null }).strength).toMatchObject({ mark: 'grade1' });
  });

  it('of an unmarked bolt is never above that of a marked one', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('M5', 'M8', 'M12x1.5', 'M16', '1/4-20', '1/2-13'),
        fc.constantFrom<StrengthMark>(...propertyClasses, ...inchGrades),
        (name, mark) => {
          const marked = loadsOf({ thread: thread(name), mark }).loads;
          const unmarked = loadsOf({ thread: thread(name), mark: null }).loads;
          fc.pre(marked !== null);
          expect(unmarked?.proofN).toBeLessThanOrEqual(marked.proofN);
          expect(marked.proofN).toBeLessThan(marked.tensileN);
        },
      ),
    );
  });

  it('of an inch grade on a metric thread, or the reverse, is refused', () => {
    expect(strengthOf({ thread: thread('M8'), mark: 'grade5' })).toEqual({ strength: null, doubt: 'otherSystem' });
    expect(strengthOf({ thread: thread('3/8-16'), mark: '8.8' })).toEqual({ strength: null, doubt: 'otherSystem' });
  });

  it('of a grade 2 bolt longer than six inches is that of grade 1', () => {
    const bolt = { thread: thread('1/2-13'), mark: 'grade2' } as const;
    expect(strengthOf({ ...bolt, lengthMm: 152 }).strength?.mark).toBe('grade2');
    expect(strengthOf({ ...bolt, lengthMm: 153 }).strength?.mark).toBe('grade1');
  });

  it('is not stated for galvanised M8 and M10, whose reduced loads are not known here', () => {
    const galvanised = { hotDipGalvanised: true };
    expect(loadsOf({ thread: thread('M8'), mark: '8.8' }, galvanised)).toEqual({
      loads: null,
      doubt: 'reducedLoadsNotKnown',
    });
    expect(loadsOf({ thread: thread('M12'), mark: '8.8' }, galvanised).loads).not.toBeNull();
  });
});

describe('a nut', () => {
  it('of a higher class always pairs where a lower one does', () => {
    const classes = nutClasses.filter((one) => one !== '04' && one !== '05');
    fc.assert(
      fc.property(fc.constantFrom(...propertyClasses), fc.nat(classes.length - 2), (bolt, at) => {
        const pairs = (index: number): boolean =>
          pairNut(bolt, { nutClass: classes[index] ?? '5', style: 'style2' }, 10).pairs;
        if (pairs(at)) expect(pairs(at + 1)).toBe(true);
      }),
    );
  });

  it('that is thin pairs with nothing', () => {
    expect(pairNut('4.6', { nutClass: '04', style: 'style1' }, 10)).toMatchObject({ pairs: false, doubt: 'thinNut' });
    expect(pairNut('4.6', { nutClass: '8', style: 'thin' }, 10)).toMatchObject({ pairs: false, doubt: 'thinNut' });
  });
});
