import type { Row } from '@holdfast/domain';

import { dayWords } from '../pieces/week-hours.js';
import { useText } from '../text/use-text.js';

type Exception = Pick<Row<'hoursException'>, 'personId' | 'hours' | 'breaks' | 'words'>;

/** "closed, public holiday", "09:00–13:00, breaks 11:00–11:15". */
export const useExceptionWords = (): ((exception: Exception) => string) => {
  const { t } = useText();
  return ({ personId, hours, breaks, words }) =>
    [
      hours.length > 0 ? dayWords(hours) : t(personId === null ? 'shop.exception.closed' : 'shop.exception.notHere'),
      ...(breaks.length === 0 ? [] : [t('shop.exception.breaks', { hours: dayWords(breaks) })]),
      ...(words === null ? [] : [words]),
    ].join(', ');
};
