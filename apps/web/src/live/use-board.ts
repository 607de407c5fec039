import type { Board } from '@holdfast/board';
import { useMemo, useSyncExternalStore } from 'react';

import { shopNow, useBoardStore } from './board-store.js';

/** The live board. Only below `SignedIn`, which waits for the first snapshot. */
export function useBoard(): Board {
  const board = useBoardStore((state) => state.board);
  if (!board) throw new Error('the board is not here yet');
  return board;
}

/** Shop time that stands still between two ticks, and moves on with every change of the board. */
function shopClock(everyMs: number) {
  let now = shopNow();
  return {
    now: () => now,
    subscribe: (tell: () => void) => {
      const tick = (): void => {
        now = shopNow();
        tell();
      };
      const timer = setInterval(tick, everyMs);
      const stop = useBoardStore.subscribe(tick);
      tick();
      return () => {
        clearInterval(timer);
        stop();
      };
    },
  };
}

/** Shop time, epoch ms, drawn anew every `everyMs` and with each change of the board. */
export function useNow(everyMs = 15_000): number {
  const clock = useMemo(() => shopClock(everyMs), [everyMs]);
  return useSyncExternalStore(clock.subscribe, clock.now);
}
