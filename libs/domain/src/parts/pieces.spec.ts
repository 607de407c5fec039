import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { compare, plus, sum } from '../kernel/amounts.js';
import { given, minute, tuesdayTen } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { carryOut } from '../settle/carry-out.js';
import { verdicts } from '../tables/words.js';
import { cancelPart } from './cancel-part.js';
import { fitPart } from './fit-part.js';
import { receiveParts } from './receive-parts.js';

const quantity = fc.constantFrom('0.25', '0.5', '1', '2', '3.75');
const receive = fc.record({
  what: fc.constant('receive' as const),
  quantity,
  verdict: fc.constantFrom(...verdicts),
  foundAtVehicle: fc.boolean(),
});
const fit = fc.record({ what: fc.constant('fit' as const), quantity: fc.option(quantity, { nil: undefined }) });
const cancel = fc.record({ what: fc.constant('cancel' as const) });
const step = fc.oneof(
  { weight: 6, arbitrary: receive },
  { weight: 4, arbitrary: fit },
  { weight: 1, arbitrary: cancel },
);
type Step = Parameters<Parameters<typeof step.map>[0]>[0];

const van = () => given().shop().supplier('s1').vehicle('v1').job('j1').line('l1').part('p1', { quantity: '4' }).rows();

function carry(rows: Rows, one: Step, now: number) {
  const partLineId = 'p1';
  switch (one.what) {
    case 'receive':
      return carryOut(receiveParts, rows, { items: [{ partLineId, ...one }] }, { now });
    case 'fit':
      return carryOut(fitPart, rows, { partLineId, quantity: one.quantity }, { now });
    case 'cancel':
      return carryOut(cancelPart, rows, { partLineId, words: 'Not wanted' }, { now });
  }
}

const isGood = (one: Step & { what: 'receive' }) => one.verdict === 'good' || one.verdict === 'accepted';
const received = (steps: readonly Step[], counts: (one: Step & { what: 'receive' }) => boolean) =>
  sum(steps.flatMap((one) => (one.what === 'receive' && counts(one) ? [one.quantity] : [])));

describe('the pieces of a part line', () => {
  it('are never lost or doubled by any sequence of arrivals, finds, fittings and cancelling', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
        let rows = van();
        const done: Step[] = [];
        steps.forEach((one, n) => {
          const before = rows.get('partLine', 'p1');
          const result = carry(rows, one, tuesdayTen + n * minute);
          rows = result.rows;
          const after = rows.get('partLine', 'p1');
          if (result.outcome) done.push(one);
          const present = plus(after.here, after.fitted);
          const came = received(done, (it) => isGood(it) && !it.foundAtVehicle);
          const spoilt = received(done, (it) => !isGood(it) && it.foundAtVehicle);
          expect(plus(present, spoilt)).toBe(compare(came, spoilt) > 0 ? came : spoilt);
          expect(compare(after.here, '0') >= 0 && compare(after.fitted, '0') >= 0).toBe(true);
          if (one.what !== 'receive') expect(present).toBe(plus(before.here, before.fitted));
          if (one.what === 'receive') expect(compare(after.fitted, before.fitted)).not.toBe(1);
          if (one.what === 'receive' && !one.foundAtVehicle) expect(after.fitted).toBe(before.fitted);
        });
      }),
    );
  });

  it('count alike in whatever order arrivals and finds are told', () => {
    fc.assert(
      fc.property(
        fc
          .array(receive, { maxLength: 8 })
          .chain((all) => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }))),
        ([told, shuffled]) => {
          const after = (steps: readonly Step[]) =>
            steps.reduce((rows, one, n) => carry(rows, one, tuesdayTen + n * minute).rows, van()).get('partLine', 'p1');
          const { here, fitted, state } = after(told);
          expect(after(shuffled)).toMatchObject({ here, fitted, state });
        },
      ),
    );
  });
});
