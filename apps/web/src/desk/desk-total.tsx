import { runningTotal } from '@holdfast/board';
import { compare, minus, type Row } from '@holdfast/domain';
import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';

type TotalProps = {
  readonly lines: readonly Row<'workLine'>[];
  readonly standing: readonly Row<'standingGoAhead'>[];
};

/** What the lines of a visit come to against what was agreed to, in one sentence. */
export const DeskTotal = ({ lines, standing }: TotalProps): ReactElement => {
  const { t, format } = useText();
  const { soFar, given, over, unpriced, leftUnderStanding } = runningTotal(lines, standing);
  const left = over ? minus(soFar, given) : minus(given, soFar);
  const isEven = compare(left, '0') === 0;
  const values = { soFar: format.money(soFar), given: format.money(given), left: isEven ? 'none' : format.money(left) };
  const more = [
    ...(leftUnderStanding === null ? [] : [t('desk.totalStanding', { left: format.money(leftUnderStanding) })]),
    ...(unpriced === 0 ? [] : [t('desk.totalUnpriced', { count: unpriced })]),
  ];
  return (
    <p className="hf-small hf-desk-total">
      {over ? <strong>{t('desk.totalOver', values)}</strong> : t('desk.total', values)}
      {more.map((words) => ` · ${words}`).join('')}
    </p>
  );
};
