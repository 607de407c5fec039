// theme/ hides how the client looks and where that is chosen. It guarantees one source of colours and sizes (tokens.css,
// measured by tokens.spec.ts) and that a choice belongs to the device it was made on, never to the shop.
import { create } from 'zustand';

import { isLocale, type Locale } from '@holdfast/contract';

export const themeChoices = ['system', 'light', 'dark', 'sun'] as const;
export type ThemeChoice = (typeof themeChoices)[number];

/** 'shop' follows the shop's setting; anything else was chosen on this device. */
export type LocaleChoice = Locale | 'shop';

type DeviceSettings = {
  readonly theme: ThemeChoice;
  readonly locale: LocaleChoice;
  readonly chooseTheme: (theme: ThemeChoice) => void;
  readonly chooseLocale: (locale: LocaleChoice) => void;
};

const themeKey = 'holdfast.theme';
const localeKey = 'holdfast.locale';

// Storage may be forbidden on a device; the choice then lasts until the page is closed.
const remembered = (key: string): string | null => {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
};

const remember = (key: string, value: string): void => {
  try {
    localStorage.setItem(key, value);
  } catch {
    return;
  }
};

const storedTheme = (): ThemeChoice => {
  const stored = remembered(themeKey);
  return themeChoices.find((choice) => choice === stored) ?? 'system';
};

const storedLocale = (): LocaleChoice => {
  const stored = remembered(localeKey);
  return stored !== null && isLocale(stored) ? stored : 'shop';
};

/** Writes the theme on the root element; `system` leaves the choice to the device's color-scheme. */
export const wearTheme = (theme: ThemeChoice | 'wall'): void => {
  if (theme === 'system') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = theme;
};

export const useDeviceSettings = create<DeviceSettings>()((set) => ({
  theme: storedTheme(),
  locale: storedLocale(),
  chooseTheme: (theme) => {
    remember(themeKey, theme);
    wearTheme(theme);
    set({ theme });
  },
  chooseLocale: (locale) => {
    remember(localeKey, locale);
    set({ locale });
  },
}));
