import { useEffect } from 'react';

/** Keeps the screen awake while this is shown, where the browser can; asked again whenever the page is seen again. */
export const useAwake = (): void => {
  useEffect(() => {
    if (!('wakeLock' in navigator)) return undefined;
    let lock: WakeLockSentinel | null = null;
    let isGone = false;
    const ask = async (): Promise<void> => {
      if (document.visibilityState !== 'visible') return;
      try {
        lock = await navigator.wakeLock.request('screen');
        if (isGone) void lock.release();
      } catch {
        // A low battery or a setting says no: the screen goes dark as it does elsewhere.
        lock = null;
      }
    };
    const seen = (): void => void ask();
    void ask();
    document.addEventListener('visibilitychange', seen);
    return () => {
      isGone = true;
      document.removeEventListener('visibilitychange', seen);
      void lock?.release();
    };
  }, []);
};
