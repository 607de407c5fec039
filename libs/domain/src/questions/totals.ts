/**
 * What the customer's lines of a visit come to, against what the customer agreed to. One place for every screen and
 * sheet. All amounts are decimals in the shop's currency.
 */
import { compare, minus, plus, sum } from '../kernel/amounts.js';
import type { Row } from '../tables/tables.js';

export type PricedLine = Pick<
  Row<'workLine'>,
  'goAhead' | 'goAheadUpTo' | 'progress' | 'payer' | 'price' | 'standingId' | 'withdrawnAt' | 'startedAt'
>;

export interface Totals {
  /** Prices of the lines with the go-ahead, and the charges for what was withdrawn and put back. */
  readonly soFar: string;
  /** What was agreed to for these lines; a charge counts as agreed. */
  readonly given: string;
  readonly over: boolean;
  /** Lines with the go-ahead whose price is not known yet. */
  readonly unpriced: number;
  /** Of `soFar`: for started lines whose go-ahead was withdrawn. */
  readonly charged: string;
  /** What the standing go-aheads of this visit still cover; null where it has none. Below nought never. */
  readonly leftUnderStanding: string | null;
}

/** The customer took the word back on a line that had been begun: it is put back, and what was done is charged. */
export function isPutBack(line: Pick<Row<'workLine'>, 'withdrawnAt' | 'startedAt'>): boolean {
  return line.withdrawnAt !== null && line.startedAt !== null;
}

/** What was agreed to for the line: the amount that was named, else its price as it was told. */
export function agreedTo(line: Pick<Row<'workLine'>, 'goAheadUpTo' | 'price'>): string | null {
  return line.goAheadUpTo ?? line.price;
}

/** Given; or begun, and asked again because the price moved: what was agreed before still stands against it. */
function counts(line: PricedLine): boolean {
  if (line.payer !== 'customer' || line.progress === 'dropped') return false;
  return line.goAhead === 'given' || (line.goAhead === 'withCustomer' && line.startedAt !== null);
}

/** What of a standing go-ahead is taken by lines that rest on it. */
export function takenOf(standingId: string, lines: readonly PricedLine[]): string {
  const resting = lines.filter(
    (line) => line.standingId === standingId && line.progress !== 'dropped' && line.goAhead !== 'declined',
  );
  return sum(resting.map((line) => line.price ?? '0'));
}

/** `lines` of one visit; `standing` the standing go-aheads that cover it. */
export function totalsOf(
  lines: readonly PricedLine[],
  standing: readonly Pick<Row<'standingGoAhead'>, 'id' | 'upTo'>[] = [],
): Totals {
  const counted = lines.filter(counts);
  const putBack = lines.filter((line) => line.progress === 'dropped' && line.payer === 'customer' && isPutBack(line));
  const charged = sum(putBack.map((line) => line.price ?? '0'));
  const soFar = plus(sum(counted.map((line) => line.price ?? '0')), charged);
  const given = plus(sum(counted.map((line) => agreedTo(line) ?? '0')), charged);
  const left = standing.map(({ id, upTo }) => minus(upTo, takenOf(id, lines)));
  return {
    soFar,
    given,
    over: compare(soFar, given) > 0,
    unpriced: counted.filter((line) => line.price === null).length,
    charged,
    leftUnderStanding: standing.length > 0 ? sum(left.filter((one) => compare(one, '0') > 0)) : null,
  };
}
