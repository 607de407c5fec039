import { validOn } from '@holdfast/domain';

import type { TextKey } from '@holdfast/contract';

type Dated = { readonly id: string; readonly validFrom: string };
type Standing = 'now' | 'coming' | 'before';

const standingOf = <R extends Dated>(rows: readonly R[], row: R, today: string): Standing => {
  if (validOn(rows, today)?.id === row.id) return 'now';
  return row.validFrom > today ? 'coming' : 'before';
};

const keyOf: Readonly<Record<Standing, TextKey>> = {
  now: 'shop.when.now',
  coming: 'shop.when.coming',
  before: 'shop.when.before',
};

export type Valid<R> = { readonly row: R; readonly standing: Standing; readonly key: TextKey };

/** What is valid from a day on, what comes first, then what holds now, then what held before, each with the words for it. */
export const fromWhen = <R extends Dated>(rows: readonly R[], today: string): Valid<R>[] =>
  [...rows]
    .sort((a, b) => (a.validFrom < b.validFrom ? 1 : -1))
    .map((row) => {
      const standing = standingOf(rows, row, today);
      return { row, standing, key: keyOf[standing] };
    });
