import type { Facts } from '@holdfast/domain';
import type { TextValues } from './say.js';

/** How the place writes what a sentence names. */
export interface Writing {
  /** Epoch ms. */
  readonly instant: (at: number) => string;
  /** A day without a time, `YYYY-MM-DD`. */
  readonly day: (isoDay: string) => string;
  /** A month, by its first day. */
  readonly month: (isoDay: string) => string;
  /** A decimal in the currency of the shop. */
  readonly money: (amount: string) => string;
}

/** Facts of refusals and flags that are amounts in the currency of the shop. */
const amounts: readonly string[] = ['price', 'upTo', 'left', 'limit'];
const day = /^\d{4}-\d\d-\d\d$/;
const instant = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/;

/** The facts of a refusal or a flag as values of its sentence. Nought stays "0": sentences choose their words by it. */
export function valuesOfFacts(facts: Facts, writing: Writing): TextValues {
  const written = (name: string, value: Facts[string]): string | number => {
    if (typeof value === 'number') return value;
    const text = String(value ?? '');
    if (instant.test(text)) return writing.instant(Date.parse(text));
    if (day.test(text)) return writing.day(text);
    if (name === 'month') return writing.month(`${text}-01`);
    return amounts.includes(name) && Number(text) > 0 ? writing.money(text) : text;
  };
  return Object.fromEntries(Object.entries(facts).map(([name, value]) => [name, written(name, value)]));
}
