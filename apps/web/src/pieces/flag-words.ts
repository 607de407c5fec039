import { isTextKey } from '@holdfast/contract';

import type { Translate } from '../text/use-text.js';

/** What was recorded although it should not have happened, as a sentence; facts are ids, numbers and words of closed lists. */
export const flagWords = (flag: { readonly rule: string; readonly facts: unknown }, t: Translate): string => {
  const key = `flag.${flag.rule}`;
  if (!isTextKey(key)) return flag.rule;
  const facts = (flag.facts ?? {}) as Readonly<Record<string, string | number | boolean | null>>;
  const values = Object.entries(facts).map(([name, value]): [string, string | number] => [
    name,
    typeof value === 'number' ? value : String(value ?? ''),
  ]);
  return t(key, Object.fromEntries(values));
};
