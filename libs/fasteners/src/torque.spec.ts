import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { propertyClasses } from './strength.js';
import { type Thread, readThread } from './thread.js';
import {
  type Joint,
  materialsWithoutComputedTorque,
  placesWithoutComputedTorque,
  publishedK,
  surfaces,
  torqueAdvice,
  torqueAtBolt,
  torqueNewtonMetres,
  wrenchSetting,
} from './torque.js';

function thread(text: string): Thread {
  const read = readThread(text);
  if (read.thread === null) throw new Error(`${text}: ${read.doubt}`);
  return read.thread;
}

const bracket: Joint = {
  place: 'elsewhere',
  into: 'nut',
  bolt: { thread: thread('M10'), mark: '8.8' },
  surface: 'plainDry',
};
const anyJoint = fc.record({
  bolt: fc.record({
    thread: fc.constantFrom('M5', 'M8', 'M12x1.25', 'M20').map(thread),
    mark: fc.constantFrom(...propertyClasses, null),
  }),
  surface: fc.constantFrom(...surfaces),
  shareOfProof: fc.double({ min: 0.1, max: 0.75, noNaN: true }),
});

describe('torque', () => {
  it('is never computed for wheels, brakes, steering, restraints, seats and suspension', () => {
    fc.assert(
      fc.property(anyJoint, fc.constantFrom(...placesWithoutComputedTorque), (joint, place) => {
        expect(torqueAdvice({ ...joint, into: 'nut', place })).toEqual({
          kind: 'none',
          reasons: expect.arrayContaining(['placeNeedsMakersFigure']) as unknown,
        });
      }),
    );
  });

  it('is never computed for plastic and for captive nuts in sheet', () => {
    fc.assert(
      fc.property(anyJoint, fc.constantFrom(...materialsWithoutComputedTorque), (joint, into) => {
        expect(torqueAdvice({ ...joint, into, place: 'elsewhere' })).toMatchObject({ kind: 'none' });
      }),
    );
  });

  it('is not computed where it is not said what the joint holds, goes into, or how its surface is', () => {
    expect(torqueAdvice({ ...bracket, place: null, into: null, surface: null })).toEqual({
      kind: 'none',
      reasons: ['placeNotKnown', 'materialNotKnown', 'surfaceNotKnown'],
    });
  });

  it("of the vehicle maker goes first, in the maker's unit, in every place", () => {
    const figure = { value: 100, unit: 'poundFoot', source: "owner's manual" } as const;
    expect(torqueAdvice({ ...bracket, place: 'wheels', makersFigure: figure })).toEqual({
      kind: 'makersFigure',
      figure: { value: 100, unit: 'poundFoot' },
      source: "owner's manual",
      perhapsPoundInches: false,
    });
  });

  it('of the maker that is about twelve times what the bolt bears is asked about again', () => {
    const small: Joint = { ...bracket, bolt: { thread: thread('M6'), mark: '8.8' } };
    const figure = (value: number) => ({ value, unit: 'poundFoot', source: 'manual' }) as const;
    expect(torqueAdvice({ ...small, makersFigure: figure(88) })).toMatchObject({ perhapsPoundInches: true });
    expect(torqueAdvice({ ...small, makersFigure: figure(7.3) })).toMatchObject({ perhapsPoundInches: false });
  });

  it('that is computed never loads the bolt above 75 % of proof, at any K in print for its surface', () => {
    fc.assert(
      fc.property(anyJoint, (joint) => {
        const advice = torqueAdvice({ ...joint, into: 'nut', place: 'elsewhere' });
        fc.pre(advice.kind === 'estimate');
        const diameterMm = joint.bolt.thread.system === 'metric' ? joint.bolt.thread.diameterMm : Number.NaN;
        const { published, scatter } = publishedK(joint.surface);
        const proofN = advice.preloadN / advice.shareOfProof;
        for (const k of [...scatter, ...published.map((one) => one.k)]) {
          const preloadN = (advice.upToNewtonMetres * 1000) / (k * diameterMm);
          expect(preloadN / proofN).toBeLessThanOrEqual(0.75 + 1e-12);
          expect(k).toBeGreaterThanOrEqual(scatter[0]);
          expect(k).toBeLessThanOrEqual(scatter[1]);
        }
      }),
    );
  });

  it('above 75 % of proof is refused', () => {
    expect(torqueAdvice({ ...bracket, shareOfProof: 0.76 })).toEqual({ kind: 'none', reasons: ['shareTooHigh'] });
    expect(torqueAdvice({ ...bracket, shareOfProof: 0 })).toEqual({ kind: 'none', reasons: ['shareTooHigh'] });
  });

  it('with a K that is a slip of the hand is refused', () => {
    for (const k of [0, 2, -0.2, Number.NaN]) expect(() => torqueNewtonMetres(k, 10, 1000)).toThrow(RangeError);
  });
});

describe('an extension on a torque wrench', () => {
  it('is taken back by the setting', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 900, noNaN: true }),
        fc.double({ min: 100, max: 1200, noNaN: true }),
        fc.double({ min: 1, max: 600, noNaN: true }),
        (wanted, wrenchMm, moreMm) => {
          const setting = wrenchSetting(wanted, wrenchMm, wrenchMm + moreMm);
          expect(setting).toBeLessThan(wanted);
          expect(torqueAtBolt(setting, wrenchMm, wrenchMm + moreMm)).toBeCloseTo(wanted, 9);
        },
      ),
    );
    expect(() => wrenchSetting(100, 0, 650)).toThrow(RangeError);
  });
});
