import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { allIndependent, frechetRange } from './all-of.js';
import { type Observation, kaplanMeier, survivalAt } from './kaplan-meier.js';
import { pinballLoss, sampleQuantile } from './sample-quantile.js';
import { type StepCurve, codeOf, mixedCurve, remainingAfter, shareAtStep, stepReaching } from './step-curve.js';

const observation: fc.Arbitrary<Observation> = fc.record({
  time: fc.integer({ min: -20, max: 40 }),
  event: fc.boolean(),
});
const observations = fc.array(observation, { minLength: 1, maxLength: 40 });
const codesOf = (all: readonly Observation[]): number[] =>
  all.map((one) => codeOf(one.time, one.event)).sort((a, b) => a - b);
const at = (curve: StepCurve | null, time: number): number =>
  curve?.survival[curve.times.findLastIndex((one) => one <= time)] ?? 1;
const curveOf = (all: readonly Observation[]): StepCurve => {
  const curve = mixedCurve(codesOf(all), null);
  if (curve === null) throw new Error('There were observations.');
  return curve;
};
const times = Array.from({ length: 64 }, (_, i) => i - 22);

describe('Kaplan–Meier', () => {
  it('is the plain share still waiting where nothing is censored', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 40 }), (all) => {
        const steps = kaplanMeier(all.map((time) => ({ time, event: true })));
        for (const time of times) {
          expect(survivalAt(steps, time)).toBeCloseTo(all.filter((one) => one > time).length / all.length, 9);
        }
      }),
    );
  });

  it('lies between all censored ones ending at once and never ending', () => {
    fc.assert(
      fc.property(observations, (all) => {
        const steps = kaplanMeier(all);
        for (const time of times) {
          const still = all.filter((one) => one.time > time).length;
          const open = all.filter((one) => one.time <= time && !one.event).length;
          expect(survivalAt(steps, time)).toBeGreaterThanOrEqual(still / all.length - 1e-9);
          expect(survivalAt(steps, time)).toBeLessThanOrEqual((still + open) / all.length + 1e-9);
        }
      }),
    );
  });

  it('is untouched by what is censored before the first event, and refuses what is no time', () => {
    const all = [3, 5, 5, 9].map((time) => ({ time, event: true }));
    expect(kaplanMeier([...all, { time: 1, event: false }])).toEqual(kaplanMeier(all));
    expect(() => kaplanMeier([{ time: Number.NaN, event: true }])).toThrow(RangeError);
  });
});

/** Susarla & Van Ryzin 1976 in their own form, for a prior that is a step curve. */
function susarlaVanRyzin(all: readonly Observation[], prior: StepCurve, weight: number, time: number): number {
  const beyond = (t: number): number => weight * at(prior, t) + all.filter((one) => one.time > t).length;
  let product = beyond(time) / (weight + all.length);
  for (const t of new Set(all.filter((one) => !one.event && one.time <= time).map((one) => one.time))) {
    const censored = all.filter((one) => one.time === t && !one.event).length;
    product *= (beyond(t) + censored) / beyond(t);
  }
  return product;
}

describe('a thin curve on a prior', () => {
  const weights = fc.double({ min: 0.1, max: 50, noNaN: true });

  it('is the estimator of Susarla and Van Ryzin', () => {
    fc.assert(
      fc.property(observations, observations, weights, (own, pooled, weight) => {
        // An open one that outlives all keeps the prior from 0, where their form divides by 0.
        const prior = curveOf([...pooled, { time: 60, event: false }]);
        const curve = mixedCurve(codesOf(own), { curve: prior, weight });
        for (const time of times) {
          expect(at(curve, time)).toBeCloseTo(susarlaVanRyzin(own, prior, weight, time), 8);
        }
      }),
    );
  });

  it("tends to Kaplan–Meier as the prior's weight goes to 0, and to the prior as it grows", () => {
    fc.assert(
      fc.property(observations, observations, (own, pooled) => {
        const prior = curveOf(pooled);
        const light = mixedCurve(codesOf(own), { curve: prior, weight: 1e-9 });
        const heavy = mixedCurve(codesOf(own), { curve: prior, weight: 1e9 });
        const steps = kaplanMeier(own);
        const last = Math.max(...own.map((one) => one.time));
        for (const time of times) {
          if (time < last) expect(at(light, time)).toBeCloseTo(survivalAt(steps, time), 6);
          expect(at(heavy, time)).toBeCloseTo(at(prior, time), 6);
        }
      }),
    );
  });

  it('with weight 0 is Kaplan–Meier exactly, and without observations the prior', () => {
    fc.assert(
      fc.property(observations, (own) => {
        const prior = curveOf([{ time: 7, event: true }]);
        const curve = mixedCurve(codesOf(own), { curve: prior, weight: 0 });
        const steps = kaplanMeier(own);
        expect(curve?.times).toEqual(steps.map((one) => one.time));
        curve?.survival.forEach((one, i) => expect(one).toBeCloseTo(steps[i]?.survival ?? 0, 9));
        expect(mixedCurve([], { curve: prior, weight: 3 })).toBe(prior);
        expect(mixedCurve([], null)).toBeNull();
      }),
    );
  });

  it('lies between its own curve and the prior where nothing of its own is censored', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1 }),
        observations,
        weights,
        (own, pooled, weight) => {
          const ended = own.map((time) => ({ time, event: true }));
          const prior = curveOf(pooled);
          const curve = mixedCurve(codesOf(ended), { curve: prior, weight });
          for (const time of times) {
            const two = [at(prior, time), survivalAt(kaplanMeier(ended), time)];
            expect(at(curve, time)).toBeGreaterThanOrEqual(Math.min(...two) - 1e-9);
            expect(at(curve, time)).toBeLessThanOrEqual(Math.max(...two) + 1e-9);
          }
        },
      ),
    );
  });
});

describe('what has already waited', () => {
  it('follows 1 − S(t)/S(waited), and its quantile is the first time that reaches the share', () => {
    fc.assert(
      fc.property(
        observations,
        fc.integer({ min: -22, max: 40 }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (all, waited, p) => {
          const curve = curveOf(all);
          const remaining = remainingAfter(curve, waited);
          if (remaining === null) {
            expect(at(curve, waited) < 1e-9 || Math.max(...all.map((one) => one.time)) <= waited).toBe(true);
            return;
          }
          const step = stepReaching(remaining, p);
          const reached = curve.times.filter(
            (time) => time > waited && 1 - at(curve, time) / at(curve, waited) >= p - 1e-8,
          );
          expect(step === null ? undefined : curve.times[step]).toBe(reached[0]);
          if (step !== null) expect(shareAtStep(remaining, step)).toBeGreaterThanOrEqual(p - 1e-8);
        },
      ),
    );
  });
});

describe('the last of several', () => {
  it('keeps the product of the shares inside the Fréchet range', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 8 }), (shares) => {
        const { low, high } = frechetRange(shares);
        expect(low).toBeLessThanOrEqual(allIndependent(shares) + 1e-12);
        expect(allIndependent(shares)).toBeLessThanOrEqual(high + 1e-12);
      }),
    );
  });
});

describe('quantiles and the loss of a date', () => {
  it('puts every type of quantile within the sample, rising with p', () => {
    const sample = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 30 });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(sample, share, share, fc.constantFrom(1, 2, 3, 4, 5, 6, 7, 8, 9), (values, a, b, type) => {
        const [low = 0, high = 0] = [Math.min(a, b), Math.max(a, b)].map((p) => sampleQuantile(values, p, type) ?? NaN);
        expect(low).toBeLessThanOrEqual(high + 1e-9);
        expect(low).toBeGreaterThanOrEqual(Math.min(...values));
        expect(high).toBeLessThanOrEqual(Math.max(...values));
      }),
    );
  });

  it('has no quantile of nothing and refuses a share above 1', () => {
    expect(sampleQuantile([], 0.5)).toBeNull();
    expect(() => sampleQuantile([1], 1.2)).toThrow(RangeError);
  });

  it('charges the level for each day late and the rest for each day early', () => {
    expect(
      [pinballLoss(0.8, 10, 15), pinballLoss(0.8, 15, 10), pinballLoss(0.8, 9, 9)].map((x) => +x.toFixed(9)),
    ).toEqual([4, 1, 0]);
  });
});
