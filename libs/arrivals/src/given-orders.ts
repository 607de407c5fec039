/** A shop, its suppliers and what it ordered, for the specs of this library. */
import { type DeliveryRules, calendarOf, runsWithCutOff, sameHours } from '@holdfast/shop-calendar';
import type { Arrival } from './arrival.js';
import type { OrderedLine, SupplierState } from './history.js';
import { type ArrivalsModel, fitArrivals } from './model.js';

export const hourMs = 3_600_000;
export const dayMs = 24 * hourMs;
export const calendar = calendarOf({
  zone: 'Europe/London',
  hours: [
    {
      validFrom: '2000-01-01',
      week: sameHours(['mon', 'tue', 'wed', 'thu', 'fri'], [['08:00', '17:30']]),
      breaks: sameHours([], []),
    },
  ],
  exceptions: [{ date: '2026-04-03', hours: [] }],
});
export const at = (text: string): number => calendar.instantOf(text.slice(0, 10), text.slice(11));
/** Twice a day, ordered the evening before; no van on Good Friday. */
export const van: DeliveryRules = {
  runs: runsWithCutOff(
    {
      mon: ['10:00', '15:00'],
      tue: ['10:00', '15:00'],
      wed: ['10:00', '15:00'],
      thu: ['10:00', '15:00'],
      fri: ['07:15'],
      sat: [],
      sun: [],
    },
    '18:00',
  ),
  noRunOn: ['2026-04-03'],
};
export const runs = new Map([['Harbour Parts', van]]);

export const ordered = (lineId: string, when: string, over: Partial<OrderedLine> = {}): OrderedLine => ({
  lineId,
  orderId: null,
  supplierId: 'Northern Glass',
  partKind: 'glass',
  family: null,
  orderedAt: at(when),
  words: [],
  goodAt: null,
  closedAt: null,
  ...over,
});
export const said = (when: string, state: SupplierState, dueOn: string | null = null) => ({
  givenAt: at(when),
  state,
  dueOn,
});
export const fit = (history: readonly OrderedLine[], now: string): ArrivalsModel =>
  fitArrivals(history, { calendar, runs, now: at(now) });
export const kinds = (one: Arrival) => [one.p50.kind, one.p80.kind, one.p95.kind];

/** Deliveries of a backorder, each so many working days after the day named. */
export const backorders = (slips: readonly number[]): OrderedLine[] =>
  slips.map((slip, i) => {
    const named = `2026-01-${String(13 + (i % 4)).padStart(2, '0')}`;
    const good = calendar.nextWorkingDay(named, slip) ?? named;
    return ordered(`past ${String(i)}`, '2026-01-05T09:00', {
      words: [said('2026-01-05T09:00', 'backorderedWithDate', named)],
      goodAt: at(`${good}T11:00`),
    });
  });
