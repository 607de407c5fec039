// text/ hides the two catalogues and Intl. It guarantees that no screen writes a word, a number or a time by itself: all
// come from useText(), in the locale of the device or the shop, and every time is of the shop's zone.
import { create } from 'zustand';

import { isLocale, type Locale } from '@holdfast/contract';

/** What the shop has set about writing. `zone` is an IANA name, `currency` an ISO 4217 code. */
export type ShopSettings = {
  readonly locale: Locale;
  readonly zone: string;
  readonly currency: string;
  readonly distanceUnit: 'km' | 'mi';
};

// Before anybody has signed in there is no shop: the browser's own language and zone stand in.
const browserLocale = (): Locale =>
  navigator.languages.find(isLocale) ?? (navigator.language.startsWith('en-US') ? 'en-US' : 'en-GB');

/** Written by whoever loads the shop (sign-in, snapshot); read by useText(). */
export const useShopSettings = create<ShopSettings>()(() => ({
  locale: browserLocale(),
  zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  currency: 'EUR',
  distanceUnit: 'km',
}));

type Shop = Pick<ShopSettings, 'locale' | 'zone' | 'currency'> & { readonly units: 'metric' | 'us' };

/** Writes as the shop has set it; nothing is drawn anew where nothing is other than before. */
export const wearShop = ({ locale, zone, currency, units }: Shop): void => {
  const distanceUnit = units === 'us' || locale === 'en-GB' ? 'mi' : 'km';
  const before = useShopSettings.getState();
  const isSame =
    before.locale === locale &&
    before.zone === zone &&
    before.currency === currency &&
    before.distanceUnit === distanceUnit;
  if (!isSame) useShopSettings.setState({ locale, zone, currency, distanceUnit });
};
