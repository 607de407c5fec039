import { isTextKey, say, type Locale, type RefusalOnTheWire, type TextValues } from '@holdfast/contract';
import type { Facts, Refusal } from '@holdfast/domain';

/** The words and the zone that a shop's sentences are written in. */
export interface ShopWords {
  readonly locale: Locale;
  readonly zone: string;
}

const instant = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/;
const formats = new Map<string, Intl.DateTimeFormat>();

/** A refusal of the domain as the wire carries it: with its sentence, times written in the zone of the shop. */
export function refusalOnTheWire({ code, facts, way }: Refusal, words: ShopWords): RefusalOnTheWire {
  return { code, facts, sentence: sentence(code, facts, words), way: way ?? null };
}

function sentence(code: string, facts: Facts, words: ShopWords): string {
  const key = `refusal.${code}`;
  const values = valuesOf(facts, words);
  if (!isTextKey(key)) return say(words.locale, 'problem.refusedOtherwise', { code });
  try {
    return say(words.locale, key, values);
  } catch (failure) {
    // The database's own last guard speaks without facts; the person still gets a sentence.
    if (failure instanceof RangeError) return say(words.locale, 'problem.refusedOtherwise', { code });
    throw failure;
  }
}

function valuesOf(facts: Facts, words: ShopWords): TextValues {
  const values: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(facts)) {
    if (typeof value === 'string') values[name] = instant.test(value) ? timeOf(value, words) : value;
    else if (typeof value === 'number') values[name] = value;
    else values[name] = String(value ?? '');
  }
  return values;
}

function timeOf(iso: string, { locale, zone }: ShopWords): string {
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
  return format.format(Date.parse(iso));
}
