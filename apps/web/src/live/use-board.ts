import type { Board } from '@holdfast/board';
import { useEffect, useState } from 'react';

import { shopNow, useBoardStore } from './board-store.js';

/** The live board. Only below `SignedIn`, which waits for the first snapshot. */
export function useBoard(): Board {
  const board = useBoardStore((state) => state.board);
  if (!board) throw new Error('the board is not here yet');
  return board;
}

/** Shop time, epoch ms, drawn anew every `everyMs` and with each change of the board. */
export function useNow(everyMs = 15_000): number {
  const offset = useBoardStore((state) => state.offsetMs);
  const seq = useBoardStore((state) => state.board?.seq);
  const [now, setNow] = useState(() => shopNow());
  useEffect(() => {
    setNow(shopNow());
    const timer = setInterval(() => {
      setNow(shopNow());
    }, everyMs);
    return () => {
      clearInterval(timer);
    };
  }, [everyMs, offset, seq]);
  return now;
}
