/**
 * Which limit a measurement is held against, and what comes of it. In this order: the figure on the part or the maker's;
 * the shop's own advise and replace values; a published rule for the vehicle's own class, never for another. The answer
 * says what a rule says about a number, with the rule's name, and nothing more.
 */
import { type LimitClass, type MeasuredPart, type PublishedLimit, publishedLimits } from './published-limits.js';
import { type LengthUnit, type Quantity, compare, convert } from './units.js';

export type Length = Quantity<LengthUnit>;

export interface LimitOutcome {
  /** what the rule says about the number */
  readonly outcome: 'holds' | 'fails';
  /** the figure it was compared with, in the unit it was compared in */
  readonly limit: Length;
  /** the measurement in that unit */
  readonly measured: Length;
}

/** Compares in the unit of the reading if the limit is printed in it, else in the limit's own unit. */
export function compareWithLimit(measured: Length, limit: Pick<PublishedLimit, 'printed' | 'failsWhen'>): LimitOutcome {
  const printed = limit.printed.find(({ unit }) => unit === measured.unit) ?? limit.printed[0];
  if (printed === undefined) throw new RangeError('A limit has to have a figure.');
  const value = convert(measured.value, measured.unit, printed.unit);
  const sign = compare(value, printed.value);
  const fails = sign < 0 || (sign === 0 && limit.failsWhen === 'atOrBelow');
  return {
    outcome: fails ? 'fails' : 'holds',
    limit: { value: printed.value, unit: printed.unit },
    measured: { value, unit: printed.unit },
  };
}

export interface OwnLimits {
  /** the figure on the part, or the maker's for this vehicle, with where it stands */
  readonly makers: (Length & { readonly source: string }) | null;
  /** the shop's own values; below `replace` it asks for the work, below `advise` it speaks of it */
  readonly shop: { readonly advise: Length | null; readonly replace: Length | null } | null;
}

export interface LimitVerdict {
  readonly by: 'maker' | 'shop' | 'published';
  readonly source: string | null;
  /** `memory`: the rule's text was not seen */
  readonly seen: PublishedLimit['seen'] | null;
  readonly says: 'fails' | 'replace' | 'advise' | 'holds';
  readonly detail: LimitOutcome;
}

function shopVerdict(measured: Length, shop: NonNullable<OwnLimits['shop']>): LimitVerdict | null {
  const against = (limit: Length): LimitOutcome => compareWithLimit(measured, { printed: [limit], failsWhen: 'below' });
  const verdict = (says: LimitVerdict['says'], detail: LimitOutcome): LimitVerdict => {
    return { by: 'shop', source: null, seen: null, says, detail };
  };
  if (shop.replace !== null) {
    const detail = against(shop.replace);
    if (detail.outcome === 'fails') return verdict('replace', detail);
  }
  const last = shop.advise ?? shop.replace;
  if (last === null) return null;
  const detail = against(last);
  return verdict(detail.outcome === 'fails' ? 'advise' : 'holds', detail);
}

/**
 * Every verdict on a measurement that grows smaller with wear (tread, lining, disc thickness), the one that counts first.
 * Empty: nothing known to compare with.
 */
export function verdictsOn(
  measured: Length,
  part: MeasuredPart,
  own: OwnLimits,
  classes: readonly LimitClass[],
): readonly LimitVerdict[] {
  if (!(measured.value >= 0)) throw new RangeError(`${measured.value} is not a depth.`);
  const verdicts: LimitVerdict[] = [];
  if (own.makers !== null) {
    const detail = compareWithLimit(measured, { printed: [own.makers], failsWhen: 'below' });
    verdicts.push({ by: 'maker', source: own.makers.source, seen: null, says: detail.outcome, detail });
  }
  const shop = own.shop === null ? null : shopVerdict(measured, own.shop);
  if (shop !== null) verdicts.push(shop);
  for (const limit of publishedLimits(classes, part)) {
    const detail = compareWithLimit(measured, limit);
    verdicts.push({ by: 'published', source: limit.source, seen: limit.seen, says: detail.outcome, detail });
  }
  return verdicts;
}

/** A greatest value: a drum's diameter, a disc's runout. Fails above it; the figure stands on the part. */
export function aboveGreatest(measured: Length, greatest: Length & { readonly source: string }): LimitVerdict {
  const value = convert(measured.value, measured.unit, greatest.unit);
  const fails = compare(value, greatest.value) > 0;
  return {
    by: 'maker',
    source: greatest.source,
    seen: null,
    says: fails ? 'fails' : 'holds',
    detail: {
      outcome: fails ? 'fails' : 'holds',
      limit: { value: greatest.value, unit: greatest.unit },
      measured: { value, unit: greatest.unit },
    },
  };
}

/**
 * Greatest difference between the main grooves of two tyres on one axle: 5 mm. Source: France, JORFARTI000038987859.
 * Only for vehicles of class `franceCar`.
 */
export function axleDifferenceInFrance(left: Length, right: Length): LimitOutcome & { readonly source: string } {
  const difference = Math.abs(convert(left.value, left.unit, 'mm') - convert(right.value, right.unit, 'mm'));
  return {
    outcome: compare(difference, 5) > 0 ? 'fails' : 'holds',
    limit: { value: 5, unit: 'mm' },
    measured: { value: difference, unit: 'mm' },
    source: 'JORFARTI000038987859',
  };
}

/**
 * Longest cut deep enough to reach ply or cord that Great Britain allows, in mm: 25, or a tenth of the section width if
 * that is more. Source: C&U Regulations 1986, reg. 27 (police guidance).
 */
export function cutLimitInGreatBritainMm(sectionWidthMm: number): number {
  if (!(sectionWidthMm > 0)) throw new RangeError(`${sectionWidthMm} is not a section width.`);
  return Math.max(25, sectionWidthMm / 10);
}
