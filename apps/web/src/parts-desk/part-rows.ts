// parts-desk/ hides how part lines of all vehicles become the clerk's lists. It guarantees that what keeps a bay standing
// comes first, that each part line stands in exactly one list, and that every date a supplier gave is still to be seen.
import type { Board } from '@holdfast/board';
import type { PartLinesPage } from '@holdfast/contract';
import { minus, neededTimes, plus, compare } from '@holdfast/domain';

export type PartItem = PartLinesPage['items'][number];

/** An order (or what was ordered from nobody in particular) with its part lines that have not all come. */
export type OpenOrder = {
  readonly key: string;
  readonly orderId: string | null;
  readonly supplierId: string | null;
  readonly supplierName: string | null;
  readonly reference: string | null;
  readonly items: readonly PartItem[];
};

export type PartLists = {
  /** On order, their day past; by order as well. */
  readonly late: readonly OpenOrder[];
  readonly wanted: readonly PartItem[];
  readonly orders: readonly OpenOrder[];
  /** All pieces here, not yet on the vehicle. */
  readonly arrived: readonly PartItem[];
};

/** The bay in which the vehicle stands that a hold for this part keeps; null where it keeps none. */
export const bayKeptBy = (item: Pick<PartItem, 'holds'>, board: Board): string | null => {
  for (const { jobId } of item.holds) {
    for (const place of board.tables.place.values()) {
      if (place.jobId !== jobId || place.toAt !== null || place.kind !== 'bay') continue;
      return board.tables.bay.get(place.bayId ?? '')?.name ?? null;
    }
  }
  return null;
};

/** Pieces that have not come yet, in the unit of the line. */
export const stillToCome = ({ quantity, here, fitted }: Pick<PartItem, 'quantity' | 'here' | 'fitted'>): string => {
  const came = plus(here, fitted);
  return compare(quantity, came) > 0 ? minus(quantity, came) : '0';
};

const never = '9';

/** What keeps a bay first, then what is waited for longest, then by when it is needed and since when it is wanted. */
const byCost = (board: Board) => {
  const key = (item: PartItem): string =>
    [
      bayKeptBy(item, board) === null ? '1' : '0',
      item.holds[0]?.fromAt ?? never,
      String(neededTimes.indexOf(item.needed)),
      item.effectiveAt,
      item.id,
    ].join(' ');
  return (a: PartItem, b: PartItem): number => (key(a) < key(b) ? -1 : 1);
};

const ordersOf = (items: readonly PartItem[]): OpenOrder[] => {
  const orders = new Map<string, PartItem[]>();
  for (const item of items) {
    const key = item.orderId ?? 'none';
    orders.set(key, [...(orders.get(key) ?? []), item]);
  }
  return [...orders].map(([key, list]) => ({
    key,
    orderId: list[0]?.orderId ?? null,
    supplierId: list[0]?.supplierId ?? null,
    supplierName: list[0]?.supplierName ?? null,
    reference: list[0]?.orderReference ?? null,
    items: list,
  }));
};

/** The clerk's lists at `today`, a day of the shop's zone. */
export const partLists = (items: readonly PartItem[], board: Board, today: string): PartLists => {
  const sorted = [...items].sort(byCost(board));
  const onOrder = sorted.filter((item) => item.state === 'ordered' || item.state === 'partArrived');
  return {
    late: ordersOf(onOrder.filter((item) => item.dueOn !== null && item.dueOn < today)),
    wanted: sorted.filter((item) => item.state === 'wanted'),
    orders: ordersOf(onOrder.filter((item) => item.dueOn === null || item.dueOn >= today)),
    arrived: sorted.filter((item) => item.state === 'arrived'),
  };
};

/** All open part lines of one order, late ones too: what a delivery for it may bring. */
export const wholeOrder = (
  order: Pick<OpenOrder, 'orderId' | 'items'>,
  all: readonly PartItem[],
): readonly PartItem[] =>
  order.orderId === null
    ? order.items
    : all.filter(
        (item) => item.orderId === order.orderId && (item.state === 'ordered' || item.state === 'partArrived'),
      );
