import type { Floor } from './floor.js';
import { bayScenes } from './in-the-bays.js';
import { yardScenes } from './in-the-yard.js';
import { outScenes } from './out-and-about.js';

/** What else stands in the shop this morning, so that a look at the board shows each state once. Each scene waits for its time. */
export function beginThisMorning(floor: Floor): void {
  for (const scene of [...bayScenes, ...yardScenes, ...outScenes]) {
    floor.begin(floor.on(-6, '07:00'), scene(floor));
  }
}
