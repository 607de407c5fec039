// texts/ hides every word a person reads: one catalogue for each locale, cut into files by screen or family, and say().
// It guarantees that all catalogues have the same keys with the same arguments (catalogues.spec.ts), so that no screen
// or refusal is ever half translated.
//
// A file of texts is `export const floor = {…} as const` of flat ICU messages, the same keys under en-gb/ and en-us/,
// and one line in each of the two lists below. Keys read `area.thing`.
import { styleTexts as styleTextsEnGb } from './en-gb/style.js';
import { ui as uiEnGb } from './en-gb/ui.js';
import { styleTexts as styleTextsEnUs } from './en-us/style.js';
import { ui as uiEnUs } from './en-us/ui.js';

export const locales = ['en-GB', 'en-US'] as const;
export type Locale = (typeof locales)[number];

const enGb = {
  ...uiEnGb,
  ...styleTextsEnGb,
};

export type TextKey = keyof typeof enGb;

const enUs: Readonly<Record<TextKey, string>> = {
  ...uiEnUs,
  ...styleTextsEnUs,
};

export const catalogues: Readonly<Record<Locale, Readonly<Record<TextKey, string>>>> = { 'en-GB': enGb, 'en-US': enUs };

export const isLocale = (value: string): value is Locale => locales.some((locale) => locale === value);

export const isTextKey = (key: string): key is TextKey => Object.hasOwn(enGb, key);
