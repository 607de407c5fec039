import type { Text } from '../text/use-text.js';
import type { PartItem } from './part-rows.js';

type DueIn = PartItem['dueIns'][number];

const dayOf = (one: Pick<DueIn, 'dueOn' | 'state'>, { t, format }: Text): string =>
  one.dueOn === null ? t(`word.supplier.${one.state}`) : format.day(one.dueOn);

/** The date that holds now, with which one it is; null while none was told. */
export const dueWords = (item: PartItem, text: Text): string | null => {
  const last = item.dueIns.at(-1);
  if (!last) return null;
  const { t, format } = text;
  const state = t(`word.supplier.${last.state}`);
  const first =
    last.dueOn === null
      ? t('partsDesk.due.noDay', { state })
      : t('partsDesk.due.day', { day: format.day(last.dueOn), state });
  return last.ordinal === 1 ? first : t('partsDesk.due.again', { first, ordinal: last.ordinal });
};

/** Earlier dates, each with the day it was told: what slipped. */
export const slipLines = (item: PartItem, text: Text): { readonly when: string; readonly what: string }[] =>
  item.dueIns.length < 2
    ? []
    : item.dueIns.map((one) => ({
        when: text.format.date(Date.parse(one.effectiveAt)),
        what: text.t('partsDesk.due.told', { ordinal: one.ordinal, day: dayOf(one, text), words: one.words ?? '' }),
      }));

/** The unit of a part line for which none was named. */
const usualUnit = 'piece';

/** "2 pieces", "1.5 l". */
export const amountWords = (quantity: string, unit: string, { t, format }: Pick<Text, 't' | 'format'>): string =>
  unit === usualUnit
    ? t('partsDesk.pieces', { count: Number(quantity) })
    : t('partsDesk.quantity', { quantity: format.decimal(quantity), unit });

/** The amount of a part line, or what of it is here. */
export const quantityWords = (item: PartItem, text: Text): string => {
  const amount = amountWords(item.quantity, item.unit, text);
  if (item.state !== 'partArrived') return amount;
  return text.t('partsDesk.quantityOf', { here: text.format.decimal(item.here), amount });
};
