import { IntlMessageFormat } from 'intl-messageformat';

import { catalogues, type Locale, type TextKey } from './catalogues.js';

/** Values for the ICU arguments of a text. Times, dates, durations and money come already written for the place. */
export type TextValues = Readonly<Record<string, string | number>>;

const parsed = new Map<string, IntlMessageFormat>();

const messageOf = (locale: Locale, key: TextKey): IntlMessageFormat => {
  const cacheKey = `${locale} ${key}`;
  const known = parsed.get(cacheKey);
  if (known !== undefined) return known;
  const message = new IntlMessageFormat(catalogues[locale][key], locale, undefined, { ignoreTag: true });
  parsed.set(cacheKey, message);
  return message;
};

/** The text of `key` in the words of `locale`. Throws a RangeError when a value that the text names is missing. */
export const say = (locale: Locale, key: TextKey, values: TextValues = {}): string => {
  try {
    return String(messageOf(locale, key).format(values));
  } catch (cause) {
    throw new RangeError(`The text "${key}" could not be written in ${locale}.`, { cause });
  }
};
