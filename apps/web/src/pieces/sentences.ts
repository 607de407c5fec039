import { isTextKey, valuesOfFacts } from '@holdfast/contract';
import type { Facts } from '@holdfast/domain';

import { useText } from '../text/use-text.js';

export type Sentences = {
  /** Why a command would be refused, as the server would say it. */
  readonly refusal: (refusal: { readonly code: string; readonly facts: Facts }) => string;
  /** What should not have happened and did. */
  readonly flag: (flag: { readonly rule: string; readonly facts: Facts }) => string;
};

/** The sentences of refusals and flags, with instants, days and amounts written as in the shop. */
export const useSentences = (): Sentences => {
  const { t, format } = useText();
  const writing = {
    instant: (at: number) => `${format.date(at)}, ${format.time(at)}`,
    day: format.day,
    month: format.month,
    money: format.money,
  };
  const sentence = (key: string, facts: Facts, code: string): string =>
    isTextKey(key) ? t(key, valuesOfFacts(facts, writing)) : t('problem.refusedOtherwise', { code });
  return {
    refusal: ({ code, facts }) => sentence(`refusal.${code}`, facts, code),
    flag: ({ rule, facts }) => sentence(`flag.${rule}`, facts, rule),
  };
};
