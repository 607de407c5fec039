import { isTextKey, type TextValues } from '@holdfast/contract';
import type { Facts } from '@holdfast/domain';

import { useText } from '../text/use-text.js';

const instant = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/;

export type Sentences = {
  /** Why a command would be refused, as the server would say it. */
  readonly refusal: (refusal: { readonly code: string; readonly facts: Facts }) => string;
  /** What should not have happened and did. */
  readonly flag: (flag: { readonly rule: string; readonly facts: Facts }) => string;
};

/** The sentences of refusals and flags, with the instants among their facts written in the zone of the shop. */
export const useSentences = (): Sentences => {
  const { t, format } = useText();
  const moment = (at: number): string => `${format.date(at)}, ${format.time(at)}`;
  const written = (facts: Facts): TextValues =>
    Object.fromEntries(
      Object.entries(facts).map(([name, value]): [string, string | number] => {
        if (typeof value === 'number') return [name, value];
        const text = String(value ?? '');
        return [name, instant.test(text) ? moment(Date.parse(text)) : text];
      }),
    );
  const sentence = (key: string, facts: Facts, code: string): string =>
    isTextKey(key) ? t(key, written(facts)) : t('problem.refusedOtherwise', { code });
  return {
    refusal: ({ code, facts }) => sentence(`refusal.${code}`, facts, code),
    flag: ({ rule, facts }) => sentence(`flag.${rule}`, facts, rule),
  };
};
