import { rowsOf, type Board } from '@holdfast/board';
import type { Row } from '@holdfast/domain';

import { useText, type Translate } from '../text/use-text.js';

/** What cannot be used in a bay now, the whole bay first. */
export const openOutages = (board: Board, bayId: string): Row<'outage'>[] =>
  rowsOf(board)
    .list('outage', (one) => one.bayId === bayId && one.toAt === null)
    .sort((a, b) => Number(a.equipment !== null) - Number(b.equipment !== null) || a.fromAt - b.fromAt);

type Kind = Row<'outage'>['equipment'];

/** "The bay", "Two-post lift". */
export const outOfUseName = (equipment: Kind, { t }: { readonly t: Translate }): string =>
  equipment === null ? t('outage.theBay') : t('outage.the', { kind: t(`word.equipment.${equipment}`) });

/** "Two-post lift cannot be used since 09:10: cable worn". */
export const useOutageWords = (now: number): ((outage: Row<'outage'>) => string) => {
  const text = useText();
  const { t, format } = text;
  return (outage) =>
    t('outage.is', {
      what: outOfUseName(outage.equipment, text),
      since: format.moment(outage.fromAt, now),
      words: outage.words,
    });
};
