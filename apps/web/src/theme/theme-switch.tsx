import type { ReactElement } from 'react';

import { useText } from '../text/use-text.js';
import { Choice } from '../ui/fields/choice.js';
import { themeChoices, useDeviceSettings } from './device-settings.js';

/** Light, dark, sun (for a tablet near an open door) or as the device says. Kept on this device. */
export const ThemeSwitch = (): ReactElement => {
  const { t } = useText();
  const { theme, chooseTheme } = useDeviceSettings();
  return (
    <Choice
      label={t('theme.label')}
      value={theme}
      onChange={chooseTheme}
      options={themeChoices.map((choice) => ({ value: choice, label: t(`theme.${choice}`) }))}
    />
  );
};
