import { useEffect } from 'react';

import { useDeviceSettings, wearTheme } from './device-settings.js';

/** The wall screen wears its own theme while it is shown and gives the device's back afterwards. */
export const useWallTheme = (): void => {
  const theme = useDeviceSettings((settings) => settings.theme);
  useEffect(() => {
    wearTheme('wall');
    return () => {
      wearTheme(theme);
    };
  }, [theme]);
};
