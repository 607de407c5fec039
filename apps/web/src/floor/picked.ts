import { visitOf, type Board, type Visit } from '@holdfast/board';
import { useEffect, useState } from 'react';

import { useMovedHow, type MovedHowState } from '../pieces/moved-how.js';
import type { Moving } from '../pieces/placing.js';
import { usePlacing, useSpotName, type Placing } from '../pieces/use-placing.js';
import { useSwapping, type Swapping } from '../pieces/use-swapping.js';
import { focusBay } from './go-to.js';

export type PickedState = {
  /** The vehicle that is picked; undefined while none is, or when its visit has ended meanwhile. */
  readonly visit: Visit | undefined;
  readonly pick: (jobId: string) => void;
  readonly putBack: () => void;
  readonly placing: Placing;
  readonly swapping: Swapping;
  readonly movedHow: MovedHowState;
  readonly moving: Moving;
};

/** Pick, then place: one vehicle at a time; Esc puts it back. */
export const usePicked = (board: Board, now: number): PickedState => {
  const [jobId, setJobId] = useState<string | null>(null);
  const movedHow = useMovedHow();
  const putBack = (): void => {
    setJobId(null);
    movedHow.setHow(null);
    movedHow.setName('');
  };
  const nameOf = useSpotName();
  // The button that placed it is gone; the focus goes on to where the vehicle stands now.
  const placing = usePlacing((spot) => {
    putBack();
    if (spot !== null) focusBay(nameOf(spot));
  });
  const swapping = useSwapping(putBack);
  const found = jobId === null ? undefined : visitOf(board, jobId, now);
  const visit = found?.job.endedAt === null ? found : undefined;
  const moving = visit?.vehicle.rolls === false ? movedHow.moving : {};
  return { visit, pick: setJobId, putBack, placing, swapping, movedHow, moving };
};

/** Calls `leave` on Esc while something is picked and no layer lies over the screen. */
export const useEscape = (isPicked: boolean, leave: () => void): void => {
  useEffect(() => {
    if (!isPicked) return undefined;
    const pressed = (event: KeyboardEvent): void => {
      if (event.key === 'Escape' && document.querySelector('.hf-veil') === null) leave();
    };
    document.addEventListener('keydown', pressed);
    return () => {
      document.removeEventListener('keydown', pressed);
    };
  });
};
