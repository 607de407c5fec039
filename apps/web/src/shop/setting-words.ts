import { useText } from '../text/use-text.js';
import type { SettingChange, SettingName, SettingValue } from './settings.js';

export type SettingWords = {
  readonly name: (name: SettingName) => string;
  readonly value: (name: SettingName, value: SettingValue) => string;
  readonly change: (change: SettingChange) => string;
};

/** Settings and their values in words. */
export const useSettingWords = (): SettingWords => {
  const { t, format } = useText();
  const name = (of: SettingName): string => t(`shop.setting.${of}`);
  const value = (of: SettingName, is: SettingValue): string => {
    if (typeof is === 'boolean') return t(is ? 'shop.setting.yes' : 'shop.setting.no');
    if (is === null) return t(of === 'recheckMinutes' ? 'shop.setting.notAllowed' : 'shop.setting.noneStated');
    if (typeof is === 'string') return t('shop.setting.percent', { percent: format.decimal(is) });
    if (of === 'graceMinutes' || of === 'recheckMinutes') return format.duration(is);
    return t('shop.months', { months: is });
  };
  return {
    name,
    value,
    change: ({ name: of, before, after }) =>
      t('shop.setting.became', { name: name(of), before: value(of, before), after: value(of, after) }),
  };
};
