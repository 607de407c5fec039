import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { type FixingComparison, compareFixings } from './compare.js';
import { heldWithoutThread, type OriginalFixing, type TemporaryFixing } from './fixing.js';
import { propertyClasses } from './strength.js';
import { type Thread, readThread } from './thread.js';

function thread(text: string): Thread {
  const read = readThread(text);
  if (read.thread === null) throw new Error(`${text}: ${read.doubt}`);
  return read.thread;
}

const bracket: OriginalFixing = {
  bolt: { thread: thread('M8x1.25'), mark: '8.8' },
  ratedN: null,
  place: 'elsewhere',
  into: 'tappedMetal',
  tappedMaterial: 'steel',
  tappedDepthMm: 16,
  gripMm: 6,
  surface: 'zincDry',
  makersFigure: { value: 20, unit: 'newtonMetre', source: 'repair manual' },
  singleUse: false,
  temperatureC: 60,
  partsMove: false,
};
const bolt = (
  name: string,
  mark: (typeof propertyClasses)[number] | null,
  lengthMm: number | null,
): TemporaryFixing => ({
  kind: 'sameThread',
  bolt: { thread: thread(name), mark },
  lengthMm,
  threadedMm: null,
  nut: null,
});
const codes = (comparison: FixingComparison): string[] => comparison.checks.map(({ code }) => code);
const outcomeOf = (comparison: FixingComparison, code: string): string | undefined =>
  comparison.checks.find((one) => one.code === code)?.outcome;

describe('a bolt in the place of another', () => {
  it("that is the same takes the maker's figure, and every check holds", () => {
    const comparison = compareFixings(bracket, bolt('M8x1.25', '8.8', 20));
    expect(comparison).toMatchObject({ worst: 'holds', loadRatio: { ratio: 1, basis: 'proofLoads' } });
    expect(comparison.torque).toMatchObject({ kind: 'makersFigure', source: 'repair manual' });
  });

  it("of a lower class falls short, and the maker's figure is not passed on to it", () => {
    const comparison = compareFixings(bracket, bolt('M8x1.25', '5.8', 20));
    expect(comparison.worst).toBe('fallsShort');
    expect(comparison.loadRatio?.ratio).toBeCloseTo(380 / 580, 12);
    expect(codes(comparison)).toEqual(expect.arrayContaining(['bearsLess', 'makersFigureIsForOriginal']));
    expect(comparison.torque.kind).toBe('estimate');
  });

  it('without a mark counts as class 4.6, and that is said', () => {
    const comparison = compareFixings(bracket, bolt('M8x1.25', null, 20));
    expect(comparison.loadRatio).toMatchObject({ assumedLowest: true });
    expect(comparison.loadRatio?.ratio).toBeCloseTo(225 / 580, 12);
    expect(outcomeOf(comparison, 'unmarkedCountsAsLowest')).toBe('notKnown');
  });

  it('of another pitch falls short, and an assumed pitch is not known', () => {
    expect(outcomeOf(compareFixings(bracket, bolt('M8x1', '8.8', 20)), 'threadDiffers')).toBe('fallsShort');
    expect(outcomeOf(compareFixings(bracket, bolt('M8', '8.8', 20)), 'pitchAssumedCoarse')).toBe('notKnown');
  });

  it('that is too long bottoms, one that is too short has too little thread, by a rule with its name', () => {
    expect(outcomeOf(compareFixings(bracket, bolt('M8x1.25', '8.8', 23)), 'bottoms')).toBe('fallsShort');
    const short = compareFixings(bracket, bolt('M8x1.25', '8.8', 15)).checks.find((one) => one.about === 'engagement');
    expect(short).toEqual({
      about: 'engagement',
      outcome: 'fallsShort',
      code: 'engagedTooLittle',
      facts: { engagedMm: 9, neededMm: 10 },
      source: "an engine maker's manual",
    });
  });

  it('beside an original that nobody read proves nothing by its ratio', () => {
    const comparison = compareFixings(
      { ...bracket, bolt: { thread: thread('M8x1.25'), mark: null } },
      bolt('M8x1.25', '8.8', 20),
    );
    expect(outcomeOf(comparison, 'originalNotRead')).toBe('notKnown');
    expect(comparison.torque.kind).toBe('estimate');
  });

  it('on brakes has the maker’s figure only for the same strength, and none otherwise', () => {
    const calliper: OriginalFixing = { ...bracket, place: 'brakes' };
    expect(compareFixings(calliper, bolt('M8x1.25', '10.9', 20)).torque.kind).toBe('makersFigure');
    expect(compareFixings(calliper, bolt('M8x1.25', '5.8', 20)).torque).toEqual({
      kind: 'none',
      reasons: ['placeNeedsMakersFigure'],
    });
  });
});

describe('a bolt right through with a nut', () => {
  const through = (lengthMm: number, threadedMm: number | null, nutClass: '8' | '10' | null): TemporaryFixing => ({
    kind: 'throughBolt',
    bolt: { thread: thread('M8x1.25'), mark: '10.9' },
    lengthMm,
    threadedMm,
    nut: nutClass === null ? null : { nutClass, style: 'style1' },
  });

  it('needs a nut that pairs, length for it, and a shank no longer than the grip', () => {
    expect(outcomeOf(compareFixings(bracket, through(20, 16, '8')), 'nutClassTooLow')).toBe('fallsShort');
    expect(outcomeOf(compareFixings(bracket, through(20, 16, null)), 'nutNotKnown')).toBe('notKnown');
    expect(outcomeOf(compareFixings(bracket, through(14, 14, '10')), 'tooShortForNut')).toBe('fallsShort');
    expect(outcomeOf(compareFixings(bracket, through(40, 20, '10')), 'shankLongerThanGrip')).toBe('fallsShort');
    expect(outcomeOf(compareFixings(bracket, through(20, null, '10')), 'threadedLengthNotKnown')).toBe('notKnown');
    expect(compareFixings(bracket, through(20, 16, '10')).checks.filter((one) => one.outcome === 'fallsShort')).toEqual(
      [],
    );
  });

  it('behind plastic or sheet still has no computed torque', () => {
    for (const into of ['plastic', 'captiveSheet', null] as const) {
      expect(compareFixings({ ...bracket, into }, through(20, 16, '10')).torque.kind).toBe('none');
    }
  });
});

describe('what holds without a thread', () => {
  const tie = (ratedN: number | null, upToC: number | null): TemporaryFixing => ({ kind: 'tie', ratedN, upToC });

  it('is compared by its maker’s rating, heat and movement', () => {
    const comparison = compareFixings({ ...bracket, temperatureC: 120, partsMove: true }, tie(540, 85));
    expect(comparison.loadRatio?.ratio).toBeCloseTo(540 / (36.6 * 580), 12);
    expect(outcomeOf(comparison, 'tooHot')).toBe('fallsShort');
    expect(outcomeOf(comparison, 'partsMove')).toBe('fallsShort');
    expect(comparison.torque).toEqual({ kind: 'none', reasons: [] });
  });

  it('says what is not known about it, whatever it is', () => {
    for (const kind of heldWithoutThread) {
      const comparison = compareFixings(
        { ...bracket, temperatureC: null, partsMove: null, singleUse: null },
        { kind, ratedN: null, upToC: null },
      );
      expect(comparison.worst).toBe('notKnown');
      expect(codes(comparison)).toEqual([
        'noRating',
        'heatNotKnown',
        'movementNotKnown',
        'loadNotKnown',
        'askWhetherSingleUse',
      ]);
    }
  });
});

describe('a hole left empty', () => {
  it('puts its load on the others, and none left is said', () => {
    const one = compareFixings(bracket, { kind: 'leftEmpty', empty: 1, holes: 4 });
    expect(one.loadRatio).toMatchObject({ ratio: 0.75, basis: 'equalShare' });
    expect(one.checks.find((check) => check.code === 'restBearsMore')?.facts).toEqual({
      empty: 1,
      holes: 4,
      loadOnEachTimes: 4 / 3,
    });
    expect(codes(compareFixings(bracket, { kind: 'leftEmpty', empty: 2, holes: 2 }))).toContain('noneLeft');
    expect(() => compareFixings(bracket, { kind: 'leftEmpty', empty: 3, holes: 2 })).toThrow(RangeError);
  });
});

describe('any comparison', () => {
  it('flags a single-use original, and a thread insert is asked about', () => {
    const single = { ...bracket, singleUse: true };
    expect(outcomeOf(compareFixings(single, bolt('M8x1.25', '8.8', 20)), 'originalNotFittedAgain')).toBe('fallsShort');
    const insert = compareFixings(bracket, { kind: 'threadInsert', inside: thread('M8x1.25'), engagedMm: 12 });
    expect(codes(insert)).toEqual(
      expect.arrayContaining(['threadAgrees', 'engagedEnough', 'pullOutNotKnown', 'askMakerOfInsert']),
    );
    expect(insert.torque.kind).toBe('makersFigure');
  });

  it('never holds where a fact is missing', () => {
    const missing = fc.constantFrom<Partial<OriginalFixing>>(
      { bolt: null },
      { tappedMaterial: null },
      { tappedDepthMm: null },
      { gripMm: null },
      { singleUse: null },
      { into: null },
    );
    fc.assert(
      fc.property(missing, fc.constantFrom(...propertyClasses), (gap, mark) => {
        expect(compareFixings({ ...bracket, ...gap }, bolt('M8x1.25', mark, 20)).worst).not.toBe('holds');
      }),
    );
  });
});
