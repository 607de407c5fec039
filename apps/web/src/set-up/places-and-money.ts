import type { Option } from '../ui/fields/select.js';

export const deviceZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;

/** All zones the browser knows, the one of this device first. */
export const zoneChoices = (): Option<string>[] => {
  const own = deviceZone();
  const others = Intl.supportedValuesOf('timeZone').filter((zone) => zone !== own);
  return [own, ...others].map((zone) => ({ value: zone, label: zone.replaceAll('_', ' ') }));
};

const nearest = ['EUR', 'GBP', 'USD'] as const;

/** A first guess by the zone, to be changed where it is wrong. */
export const likelyCurrency = (zone: string): string => {
  if (/^Europe\/(London|Belfast|Guernsey|Jersey|Isle_of_Man)$/.test(zone)) return 'GBP';
  return zone.startsWith('America/') || zone === 'Pacific/Honolulu' ? 'USD' : 'EUR';
};

/** Currencies by ISO 4217 code and name, those of most shops first. */
export const currencyChoices = (locale: string): Option<string>[] => {
  const names = new Intl.DisplayNames(locale, { type: 'currency' });
  const others = Intl.supportedValuesOf('currency').filter((code) => !nearest.some((near) => near === code));
  return [...nearest, ...others].map((code) => ({ value: code, label: `${code} · ${names.of(code) ?? code}` }));
};
