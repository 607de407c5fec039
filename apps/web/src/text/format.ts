import type { ShopSettings } from './shop-settings.js';

/** All instants are epoch milliseconds and come out in the shop's zone. */
export type Formats = {
  /** "09:24" in en-GB, "9:24 AM" in en-US. */
  readonly time: (at: number) => string;
  /** "12:34:10": for the bar of a stopped board. */
  readonly timeToSecond: (at: number) => string;
  /** "Wed 25 Nov". */
  readonly date: (at: number) => string;
  /** "25 November 2026". */
  readonly dateLong: (at: number) => string;
  /** The time alone on the shop's day of `now`, else with its date: "Thu 26 Nov, 09:24". */
  readonly moment: (at: number, now: number) => string;
  /** A day without a time, `2026-11-25`, which is of no zone: "Wed 25 Nov 2026". Refuses anything else. */
  readonly day: (isoDay: string) => string;
  /** The month of a day, `2026-11-25`: "Nov 2026". Refuses anything else. */
  readonly month: (isoDay: string) => string;
  /** A day as on an axis: "25 Nov". Refuses anything else. */
  readonly dayShort: (isoDay: string) => string;
  /** Whole minutes: "48 min", "3 h 12", from 100 h on without minutes. */
  readonly duration: (minutes: number) => string;
  readonly number: (value: number) => string;
  /** A decimal string, exact, with as many places as it was recorded with. Refuses what is no decimal. */
  readonly decimal: (value: string) => string;
  /** An odometer value in the unit it was read in (kept, not converted). */
  readonly distance: (value: number, unit?: 'km' | 'mi') => string;
  /** A decimal string in the shop's currency. Refuses what is no decimal. */
  readonly money: (amount: string) => string;
};

type Numeral = `${number}`;

const asNumeral = (value: string): Numeral => {
  if (!/^-?\d+(\.\d+)?$/.test(value)) throw new RangeError(`"${value}" is not a decimal number.`);
  return value as Numeral;
};

const asDay = (isoDay: string): Date => {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(isoDay) ? new Date(`${isoDay}T00:00:00Z`) : new Date(Number.NaN);
  if (Number.isNaN(day.getTime())) throw new RangeError(`"${isoDay}" is not a day.`);
  return day;
};

const writeDuration = (minutes: number, write: (value: number) => string): string => {
  const whole = Math.max(0, Math.floor(minutes));
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return `${String(rest)}\u00a0min`;
  if (hours >= 100) return `${write(hours)}\u00a0h`;
  return `${String(hours)}\u00a0h\u00a0${String(rest).padStart(2, '0')}`;
};

const clockFormats = (locale: string, zone: string): Pick<Formats, 'time' | 'timeToSecond'> => {
  const cycle: Intl.DateTimeFormatOptions =
    locale === 'en-US' ? { hour: 'numeric', hourCycle: 'h12' } : { hour: '2-digit', hourCycle: 'h23' };
  const time = new Intl.DateTimeFormat(locale, { ...cycle, minute: '2-digit', timeZone: zone });
  const second = new Intl.DateTimeFormat(locale, { ...cycle, minute: '2-digit', second: '2-digit', timeZone: zone });
  return { time: (at) => time.format(at), timeToSecond: (at) => second.format(at) };
};

const build = (settings: ShopSettings): Formats => {
  const { locale, zone, currency, distanceUnit } = settings;
  const short = { weekday: 'short', day: 'numeric', month: 'short' } as const;
  const date = new Intl.DateTimeFormat(locale, { ...short, timeZone: zone });
  const long = new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: zone });
  const calendarDay = new Intl.DateTimeFormat(locale, { ...short, year: 'numeric', timeZone: 'UTC' });
  const monthOf = new Intl.DateTimeFormat(locale, { month: 'short', year: 'numeric', timeZone: 'UTC' });
  const shortDay = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', timeZone: 'UTC' });
  const number = new Intl.NumberFormat(locale);
  const exact = new Intl.NumberFormat(locale, { maximumFractionDigits: 20 });
  const price = new Intl.NumberFormat(locale, { style: 'currency', currency });
  const clock = clockFormats(locale, zone);
  return {
    ...clock,
    date: (at) => date.format(at),
    dateLong: (at) => long.format(at),
    moment: (at, now) =>
      long.format(at) === long.format(now) ? clock.time(at) : `${date.format(at)}, ${clock.time(at)}`,
    day: (isoDay) => calendarDay.format(asDay(isoDay)),
    month: (isoDay) => monthOf.format(asDay(isoDay)),
    dayShort: (isoDay) => shortDay.format(asDay(isoDay)),
    duration: (minutes) => writeDuration(minutes, (value) => number.format(value)),
    number: (value) => number.format(value),
    decimal: (value) => {
      const places = value.split('.')[1]?.length ?? 0;
      return places === 0
        ? exact.format(asNumeral(value))
        : new Intl.NumberFormat(locale, { minimumFractionDigits: places }).format(asNumeral(value));
    },
    distance: (value, unit = distanceUnit) => `${number.format(value)}\u00a0${unit}`,
    money: (amount) => price.format(asNumeral(amount)),
  };
};

const built = new Map<string, Formats>();

/** The formats of one place; built once for each combination of settings. */
export const formatsFor = (settings: ShopSettings): Formats => {
  const key = [settings.locale, settings.zone, settings.currency, settings.distanceUnit].join(' ');
  const known = built.get(key);
  if (known !== undefined) return known;
  const formats = build(settings);
  built.set(key, formats);
  return formats;
};
