import type { Spot } from '@holdfast/board';
import { useEffect } from 'react';

import { useSpotName } from '../pieces/use-placing.js';
import { goToBay, goToFind } from './go-to.js';
import type { PickedState } from './picked.js';

const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && (target.isContentEditable || /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName));

/** The digit that goes to a bay; null from the tenth on. */
export const keyOfBay = (spots: readonly Spot[], bayId: string): string | null => {
  const at = [...new Set(spots.map((spot) => spot.bay.id))].indexOf(bayId);
  return at >= 0 && at < 9 ? String(at + 1) : null;
};

/** The spot a digit means: the first free one of the n-th bay in the order of the building, else its first. */
const spotOfKey = (spots: readonly Spot[], key: string): Spot | undefined => {
  const bayIds = [...new Set(spots.map((spot) => spot.bay.id))];
  const ofBay = spots.filter((spot) => spot.bay.id === bayIds[Number(key) - 1]);
  return ofBay.find((spot) => spot.use === null) ?? ofBay[0];
};

/** Keys 1 to 9 place what is picked in a bay, or go to it; `/` goes to the find box. Not while somebody types. */
export const useFloorKeys = (spots: readonly Spot[], picked: PickedState): void => {
  const nameOf = useSpotName();
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.metaKey || event.altKey || isTyping(event.target)) return;
      if (document.querySelector('.hf-veil') !== null) return;
      if (event.key === '/') {
        event.preventDefault();
        goToFind();
      }
      const spot = /^[1-9]$/.test(event.key) ? spotOfKey(spots, event.key) : undefined;
      if (spot === undefined) return;
      if (picked.visit === undefined) goToBay(nameOf(spot));
      else picked.placing.place(picked.visit, spot, picked.moving);
    };
    document.addEventListener('keydown', pressed);
    return () => {
      document.removeEventListener('keydown', pressed);
    };
  });
};
