/** Invented suppliers, parts and orders in any number, the same for the same seed. */
import type { OrderedLine, SupplierWord } from '@holdfast/arrivals';
import {
  type Calendar,
  type DeliveryRules,
  calendarOf,
  dateOfDayNumber,
  runsWithCutOff,
  sameHours,
} from '@holdfast/shop-calendar';
import { seededRandom } from '../kit/seeded-random.js';

const dayMs = 86_400_000;
const suppliers = Array.from({ length: 20 }, (_, i) => `supplier ${String(i + 1)}`);
const kinds = ['glass', 'body', 'engine', 'brakes', 'trim', 'electrical'];
const span = 900;

export const inventedShop = (): Calendar =>
  calendarOf({
    zone: 'Europe/London',
    hours: [
      {
        validFrom: '2000-01-01',
        week: sameHours(['mon', 'tue', 'wed', 'thu', 'fri'], [['08:00', '17:30']]),
        breaks: sameHours([], []),
      },
    ],
    exceptions: [],
  });

const twiceADay: DeliveryRules = {
  runs: runsWithCutOff(
    {
      mon: ['10:00', '15:00'],
      tue: ['10:00', '15:00'],
      wed: ['10:00', '15:00'],
      thu: ['10:00', '15:00'],
      fri: ['10:00'],
      sat: [],
      sun: [],
    },
    '18:00',
  ),
  noRunOn: [],
};

/** Half of the suppliers have a van. */
export const inventedRuns: ReadonlyMap<string, DeliveryRules> = new Map(
  suppliers.filter((_, i) => i % 2 === 0).map((id) => [id, twiceADay]),
);

/** Half in stock, a third to order, the rest on backorder with a new day each time the old one passes. */
export function inventedHistory(
  lines: number,
  openLines: number,
  seed: number,
): { readonly history: OrderedLine[]; readonly open: OrderedLine[]; readonly now: number } {
  const random = seededRandom(seed);
  const pick = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)] as T;
  const now = Date.parse('2026-03-02T11:00:00Z');
  const exponential = (mean: number): number => -mean * Math.log(1 - random());
  const made = (at: number, isOpen: boolean): OrderedLine => {
    const roll = random();
    const state = roll < 0.5 ? 'inStock' : roll < 0.8 ? 'toOrder' : 'backorderedWithDate';
    const mean = state === 'inStock' ? 0.6 : state === 'toOrder' ? 5 : 40;
    const age = isOpen ? exponential(mean) : mean * 4 + random() * span;
    const orderedAt = Math.floor(now - age * dayMs);
    const lead = isOpen ? age + exponential(mean) : exponential(mean);
    const words: SupplierWord[] = [];
    for (let said = orderedAt; said <= Math.min(now, orderedAt + lead * dayMs); said += 14 * dayMs) {
      const dueOn =
        state === 'inStock' ? null : dateOfDayNumber(Math.floor(said / dayMs) + (state === 'toOrder' ? 4 : 14));
      words.push({ givenAt: said, state, dueOn });
    }
    return {
      lineId: `line ${String(at)}`,
      orderId: `order ${String(Math.floor(at / 3))}`,
      supplierId: pick(suppliers),
      partKind: pick(kinds),
      family: at % 7 === 0 ? 'lamps' : null,
      orderedAt,
      words,
      goodAt: isOpen ? null : Math.floor(orderedAt + lead * dayMs),
      closedAt: null,
    };
  };
  const open = Array.from({ length: openLines }, (_, i) => made(i, true));
  const history = [...open, ...Array.from({ length: lines - openLines }, (_, i) => made(openLines + i, false))];
  return { history, open, now };
}
