import { useCallback } from 'react';

import { useText } from '../text/use-text.js';
import { fromZonedInput } from '../text/zoned-input.js';

/** Instants of one sample day in the shop's zone, by their time of day ("09:24"). */
export const useSampleTime = (): ((time: string) => number) => {
  const { zone } = useText();
  return useCallback((time: string) => fromZonedInput(`2026-11-25T${time}`, zone) ?? 0, [zone]);
};
