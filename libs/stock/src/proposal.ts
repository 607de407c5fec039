/**
 * What to order of an item, and why. A proposal is never an order: somebody turns it into one.
 *
 * Slow movers go by the low and full marks that the shop has set. For the rest the mark is worked out from the item's
 * own movements and the supplier's lead times. Every figure that led to the answer is in the reasons.
 */
import { Decimal } from 'decimal.js';
import { type Movement, tallyOf } from './movements.js';
import { type LeadTime, type ReorderPoint, normalReorderPoint, poissonReorderPoint } from './reorder.js';
import { type Usage, usageOf } from './usage.js';

export interface StockItem {
  readonly itemId: string;
  /** order when what is there and on order is at or below this; decimal, null: not set */
  readonly low: string | null;
  /** order up to this; decimal, null: not set */
  readonly full: string | null;
  /** sold in packs of so many; decimal, null: any quantity */
  readonly pack: string | null;
  /** on order and not yet here; decimal */
  readonly onOrder: string;
}

export interface ProposalOptions {
  /** epoch ms */
  readonly now: number;
  /** the supplier's lead time for it, in weeks of seven days; null: not known */
  readonly leadWeeks: LeadTime | null;
  /** share of lead times that are to pass without a shortage; 0.95 unless told */
  readonly level?: number;
  /** an order is to last so many weeks beyond its lead time, where no full mark is set; 4 unless told */
  readonly coverWeeks?: number;
}

export type Method = 'marks' | 'poisson' | 'normal' | 'none';

/**
 * Codes with their facts; quantities as decimals, the rest as numbers. `usage`: weeks, takings, mean and sd per week.
 * `leadTime`: mean and sd in weeks. `mark`: the mark applied, what is expected until it comes, what is kept beside it.
 */
export type Reason =
  | { readonly code: 'emptyNow' }
  | { readonly code: 'atLowMark'; readonly low: string; readonly position: string }
  | { readonly code: 'atReorderPoint'; readonly at: string; readonly position: string }
  | { readonly code: 'aboveMark'; readonly mark: string; readonly position: string }
  | { readonly code: 'onOrder'; readonly quantity: string }
  | {
      readonly code: 'usage';
      readonly weeks: number;
      readonly takings: number;
      readonly mean: number;
      readonly sd: number;
    }
  | { readonly code: 'leadTime'; readonly mean: number; readonly sd: number }
  | {
      readonly code: 'mark';
      readonly method: 'poisson' | 'normal';
      readonly level: number;
      readonly expected: number;
      readonly safety: number;
    }
  | { readonly code: 'slowMover'; readonly takings: number; readonly weeks: number }
  | { readonly code: 'leadTimeUnknown' }
  | { readonly code: 'noMark' }
  | { readonly code: 'upTo'; readonly quantity: string; readonly by: 'fullMark' | 'cover' | 'lowMark' }
  | { readonly code: 'wholePacks'; readonly pack: string; readonly packs: number };

export interface Proposal {
  readonly itemId: string;
  readonly count: string;
  /** what is there and on order */
  readonly position: string;
  readonly method: Method;
  /** order so much; null: nothing to order now */
  readonly order: string | null;
  readonly reasons: readonly Reason[];
}

/** Below so many takings, or so many whole weeks, nothing can be worked out: common practice, not a law. */
const fewestTakings = 8;
const fewestWeeks = 8;
/** Up to this demand in a lead time, piece by piece, and a variance near the mean, demand is taken as Poisson. */
const mostForPoisson = 20;
const nearPoisson = 1.5;

interface Mark {
  readonly method: Method;
  readonly at: Decimal | null;
  readonly upTo: { readonly quantity: Decimal; readonly by: 'fullMark' | 'cover' | 'lowMark' };
  readonly reasons: readonly Reason[];
}

const decimalOrNull = (text: string | null): Decimal | null => (text === null ? null : new Decimal(text));

function marksOf(item: StockItem, reasons: readonly Reason[]): Mark {
  const low = decimalOrNull(item.low);
  const full = decimalOrNull(item.full);
  if (low === null) {
    const upTo = { quantity: full ?? new Decimal(0), by: 'fullMark' as const };
    return { method: 'none', at: null, upTo, reasons: [...reasons, { code: 'noMark' }] };
  }
  // Without a full mark: one more than the low one, so that the mark is passed.
  const upTo =
    full === null || full.lte(low)
      ? { quantity: low.plus(1), by: 'lowMark' as const }
      : { quantity: full, by: 'fullMark' as const };
  return { method: 'marks', at: low, upTo, reasons };
}

function reckoned(item: StockItem, usage: Usage, lead: LeadTime, level: number, coverWeeks: number): Mark | null {
  const { perWeek } = usage;
  if (perWeek === null) return null;
  const inLead = perWeek.mean * lead.mean;
  const poisson =
    usage.wholePieces && inLead <= mostForPoisson && lead.sd === 0 && perWeek.sd ** 2 <= nearPoisson * perWeek.mean;
  const method = poisson ? 'poisson' : 'normal';
  const point: ReorderPoint = poisson
    ? poissonReorderPoint(perWeek.mean, lead.mean, level)
    : normalReorderPoint(perWeek, lead, { level });
  const whole = (value: number): Decimal => {
    const decimal = new Decimal(value).toDecimalPlaces(6);
    return usage.wholePieces ? decimal.ceil() : decimal.toDecimalPlaces(2, Decimal.ROUND_UP);
  };
  const at = whole(point.at);
  const full = decimalOrNull(item.full);
  const upTo =
    full !== null && full.gt(at)
      ? { quantity: full, by: 'fullMark' as const }
      : { quantity: Decimal.max(at.plus(1), whole(point.at + perWeek.mean * coverWeeks)), by: 'cover' as const };
  return {
    method,
    at,
    upTo,
    reasons: [
      { code: 'usage', weeks: usage.weeks, takings: usage.takings, ...perWeek },
      { code: 'leadTime', ...lead },
      { code: 'mark', method, level, expected: point.expected, safety: point.safety },
    ],
  };
}

function markOf(item: StockItem, usage: Usage, options: ProposalOptions): Mark {
  const { takings, weeks } = usage;
  const slow = takings < fewestTakings || weeks < fewestWeeks;
  if (slow) return marksOf(item, [{ code: 'slowMover', takings, weeks }]);
  if (options.leadWeeks === null) return marksOf(item, [{ code: 'leadTimeUnknown' }]);
  const mark = reckoned(item, usage, options.leadWeeks, options.level ?? 0.95, options.coverWeeks ?? 4);
  return mark ?? marksOf(item, [{ code: 'slowMover', takings, weeks }]);
}

/**
 * What to order of an item at `now`, from all its movements in the order in which they were written down. Refuses marks,
 * packs and levels that are no such thing with a RangeError or a DecimalError.
 */
export function proposalFor(item: StockItem, movements: readonly Movement[], options: ProposalOptions): Proposal {
  const past = movements.filter((one) => one.at <= options.now);
  const count = new Decimal(tallyOf(past).count);
  const onOrder = new Decimal(item.onOrder);
  const position = count.plus(onOrder);
  const mark = markOf(item, usageOf(past, options.now), options);
  const reasons: Reason[] = [];
  if (count.isZero()) reasons.push({ code: 'emptyNow' });
  if (onOrder.gt(0)) reasons.push({ code: 'onOrder', quantity: onOrder.toFixed() });
  reasons.push(...mark.reasons);
  const answer = { itemId: item.itemId, count: count.toFixed(), position: position.toFixed(), method: mark.method };
  if (mark.at === null) return { ...answer, order: null, reasons };
  const at = mark.at.toFixed();
  if (position.gt(mark.at)) {
    reasons.push({ code: 'aboveMark', mark: at, position: position.toFixed() });
    return { ...answer, order: null, reasons };
  }
  reasons.push(
    mark.method === 'marks'
      ? { code: 'atLowMark', low: at, position: position.toFixed() }
      : { code: 'atReorderPoint', at, position: position.toFixed() },
    { code: 'upTo', quantity: mark.upTo.quantity.toFixed(), by: mark.upTo.by },
  );
  const missing = mark.upTo.quantity.minus(position);
  const pack = decimalOrNull(item.pack);
  if (pack === null) return { ...answer, order: missing.toFixed(), reasons };
  if (pack.lte(0)) throw new RangeError(`A pack of ${pack.toFixed()} holds nothing.`);
  const packs = missing.div(pack).ceil();
  reasons.push({ code: 'wholePacks', pack: pack.toFixed(), packs: packs.toNumber() });
  return { ...answer, order: packs.times(pack).toFixed(), reasons };
}
