import type { ReactElement } from 'react';

import { locales } from '@holdfast/contract';

import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { useDeviceSettings } from './device-settings.js';

/** The words this device speaks: as the shop has set it, or a catalogue of its own. */
export const LocaleSwitch = (): ReactElement => {
  const { t } = useText();
  const { locale, chooseLocale } = useDeviceSettings();
  return (
    <Choice
      label={t('locale.label')}
      value={locale}
      onChange={chooseLocale}
      options={(['shop', ...locales] as const).map((choice) => ({ value: choice, label: t(`locale.${choice}`) }))}
    />
  );
};
