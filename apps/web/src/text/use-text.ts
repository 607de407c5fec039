import { useMemo } from 'react';

import { say, type Locale, type TextKey, type TextValues } from '@holdfast/contract';

import { useDeviceSettings } from '../theme/device-settings.js';
import { formatsFor, type Formats } from './format.js';
import { useShopSettings } from './shop-settings.js';

export type Translate = (key: TextKey, values?: TextValues) => string;

export type Text = {
  readonly t: Translate;
  readonly format: Formats;
  readonly locale: Locale;
  /** IANA name of the shop's zone. */
  readonly zone: string;
};

/** The words and the number, date and money formats of the place, for the component that draws. */
export const useText = (): Text => {
  const shop = useShopSettings();
  const choice = useDeviceSettings((settings) => settings.locale);
  const locale = choice === 'shop' ? shop.locale : choice;
  return useMemo(
    () => ({
      t: (key, values) => say(locale, key, values),
      format: formatsFor({ ...shop, locale }),
      locale,
      zone: shop.zone,
    }),
    [shop, locale],
  );
};
