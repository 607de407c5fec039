import { isTextKey, say, valuesOfFacts, type Locale, type RefusalOnTheWire } from '@holdfast/contract';
import type { Facts, Refusal } from '@holdfast/domain';

/** The words, the zone and the currency that a shop's sentences are written in. */
export interface ShopWords {
  readonly locale: Locale;
  readonly zone: string;
  /** ISO 4217. */
  readonly currency: string;
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** A refusal of the domain as the wire carries it: with its sentence, times and amounts written as in the shop. */
export function refusalOnTheWire({ code, facts, way }: Refusal, words: ShopWords): RefusalOnTheWire {
  return { code, facts, sentence: sentence(code, facts, words), way: way ?? null };
}

function sentence(code: string, facts: Facts, words: ShopWords): string {
  const key = `refusal.${code}`;
  const values = valuesOfFacts(facts, {
    instant: (at) => timeOf(at, words),
    day: (isoDay) => dayOf(isoDay, words, { day: 'numeric', month: 'long', year: 'numeric' }),
    month: (isoDay) => dayOf(isoDay, words, { month: 'long', year: 'numeric' }),
    money: (amount) => moneyOf(amount, words),
  });
  if (!isTextKey(key)) return say(words.locale, 'problem.refusedOtherwise', { code });
  try {
    return say(words.locale, key, values);
  } catch (failure) {
    // The database's own last guard speaks without facts; the person still gets a sentence.
    if (failure instanceof RangeError) return say(words.locale, 'problem.refusedOtherwise', { code });
    throw failure;
  }
}

function timeOf(at: number, { locale, zone }: ShopWords): string {
  const key = `${locale} ${zone}`;
  let format = formats.get(key);
  if (format === undefined) {
    format = new Intl.DateTimeFormat(locale, {
      timeZone: zone,
      weekday: 'short',
      day: 'numeric',
      month: 'short',
      hour: '2-digit',
      minute: '2-digit',
    });
    formats.set(key, format);
  }
  return format.format(at);
}

/** A day of no zone. */
function dayOf(isoDay: string, { locale }: ShopWords, written: Intl.DateTimeFormatOptions): string {
  return new Intl.DateTimeFormat(locale, { ...written, timeZone: 'UTC' }).format(Date.parse(`${isoDay}T00:00:00Z`));
}

function moneyOf(amount: string, { locale, currency }: ShopWords): string {
  return new Intl.NumberFormat(locale, { style: 'currency', currency }).format(Number(amount));
}
