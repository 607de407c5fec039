import { describe, expect, it } from '@jest/globals';
import { Decimal } from 'decimal.js';
import fc from 'fast-check';
import { given } from '../kernel/given.js';
import type { Rows } from '../kernel/rows.js';
import { totalsOf } from '../questions/totals.js';
import { carryOut } from '../settle/carry-out.js';
import { changeLine } from './change-line.js';
import { dropLine } from './end-line.js';
import { recordGoAhead } from './record-go-ahead.js';
import { startWork } from './start-work.js';
import { stopWork } from './stop-work.js';
import { withdrawGoAhead } from './withdraw-go-ahead.js';

const cents = (max: number) => fc.integer({ min: 0, max }).map((value) => new Decimal(value).div(100).toFixed());
const lineId = fc.constantFrom('l1', 'l2');
const van = () =>
  given()
    .shop()
    .vehicle('v1')
    .job('j1')
    .line('l1', { price: '100', goAhead: 'withCustomer' })
    .line('l2', { price: '40', goAhead: 'withCustomer' })
    .rows();

type Act = (rows: Rows) => Rows;
const word = { byName: 'Mrs Hale', how: 'telephone' } as const;
const acts: fc.Arbitrary<Act> = fc.oneof(
  fc.tuple(lineId, cents(20_000)).map<Act>(
    ([id, price]) =>
      (rows) =>
        carryOut(changeLine, rows, { lineId: id, price }).rows,
  ),
  fc.tuple(lineId, fc.option(cents(20_000), { nil: undefined })).map<Act>(
    ([id, upTo]) =>
      (rows) =>
        carryOut(recordGoAhead, rows, { lineId: id, answer: 'given', upTo, ...word }).rows,
  ),
  lineId.map<Act>((id) => (rows) => carryOut(withdrawGoAhead, rows, { lineId: id, ...word }).rows),
  lineId.map<Act>((id) => (rows) => carryOut(startWork, rows, { lineId: id }).rows),
  fc.constant<Act>((rows) => {
    const clock = rows.list('clock', (one) => one.toAt === null)[0];
    return clock ? carryOut(stopWork, rows, { clockId: clock.id }).rows : rows;
  }),
  fc.tuple(lineId, fc.option(cents(10_000), { nil: undefined })).map<Act>(
    ([id, charge]) =>
      (rows) =>
        carryOut(dropLine, rows, { lineId: id, words: 'Back', charge }).rows,
  ),
);
const days = fc.array(acts, { maxLength: 25 });

/** What the customer last said yes to, of a line: told apart from the code, by following the answers and the prices. */
function followed(before: Rows, after: Rows, agreed: Map<string, Decimal>): void {
  for (const line of after.list('workLine')) {
    const was = before.get('workLine', line.id);
    const answers = after.list('goAhead', (one) => one.lineId === line.id && one.answer === 'given');
    const earlier = before.list('goAhead', (one) => one.lineId === line.id && one.answer === 'given');
    if (answers.length === earlier.length) continue;
    const said = answers.at(-1)?.upTo ?? was.price ?? '0';
    agreed.set(line.id, new Decimal(said));
  }
}

describe('what the customer agreed to', () => {
  it('is never passed by more than the shop allows while a line counts as given, however the price went there', () => {
    fc.assert(
      fc.property(days, (day) => {
        const agreed = new Map<string, Decimal>();
        let rows = van();
        for (const act of day) {
          const after = act(rows);
          followed(rows, after, agreed);
          rows = after;
          for (const line of rows.list('workLine', (one) => one.goAhead === 'given' && one.progress !== 'dropped')) {
            const most = (agreed.get(line.id) ?? new Decimal(0)).times('1.1');
            expect(new Decimal(line.price ?? '0').lte(most)).toBe(true);
          }
        }
      }),
    );
  });

  it('adds up: the total is the given lines, those begun and asked again, and the charges, and nothing else', () => {
    fc.assert(
      fc.property(days, (day) => {
        const rows = day.reduce((before, act) => act(before), van());
        const lines = rows.list('workLine');
        const owed = lines.filter((line) => {
          if (line.progress === 'dropped') return line.withdrawnAt !== null && line.startedAt !== null;
          return line.goAhead === 'given' || (line.goAhead === 'withCustomer' && line.startedAt !== null);
        });
        const sum = owed.reduce((total, line) => total.plus(line.price ?? '0'), new Decimal(0));
        expect(totalsOf(lines).soFar).toBe(sum.toFixed());
      }),
    );
  });

  it('once withdrawn leaves no clock running on the line, and no way to finish it but a charge', () => {
    fc.assert(
      fc.property(days, lineId, (day, id) => {
        const before = day.reduce((rows, act) => act(rows), van());
        const { rows, codes } = carryOut(withdrawGoAhead, before, { lineId: id, ...word });
        if (codes.length > 0) return;
        expect(rows.list('clock', (one) => one.lineId === id && one.toAt === null)).toEqual([]);
        const begun = rows.get('workLine', id).startedAt !== null;
        expect(carryOut(dropLine, rows, { lineId: id, words: 'Back' }).codes).toEqual(
          begun ? ['work.chargeMissing'] : [],
        );
      }),
    );
  });
});
