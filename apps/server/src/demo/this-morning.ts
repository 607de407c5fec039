import type { Floor } from './floor.js';
import { bayScenes } from './in-the-bays.js';
import { yardScenes } from './in-the-yard.js';

/** What else stands in the shop this morning, so that a look at the board shows each state once. Each scene waits for its time. */
export function beginThisMorning(floor: Floor): void {
  for (const scene of [...bayScenes, ...yardScenes]) floor.begin(floor.on(-4, '07:00'), scene(floor));
}
