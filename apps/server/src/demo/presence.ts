/** Who is here when: each person comes a little before opening, and goes when the day is done and no clock of theirs runs. */
import { type PersonKey, owner, people, technicians } from './cast.js';
import { type Floor, minute, type Script } from './floor.js';

const lookAgain = 4 * minute;
const staff: readonly PersonKey[] = [owner.key, ...people.map(({ key }) => key)].filter((key) => key !== 'wall');
const isTechnician = (key: PersonKey): boolean => (technicians as readonly PersonKey[]).includes(key);

/** One working day, `YYYY-MM-DD`: everybody is here, now and then on shop time, and goes home. */
export function beginPresence(floor: Floor, day: string): void {
  for (const key of staff) floor.begin(floor.at(day, '07:18'), dayOf(floor, key, day));
}

function* dayOf(floor: Floor, key: PersonKey, day: string): Script {
  yield floor.later(0, 10);
  floor.send(key, 'recordAttendance', { kind: 'present' });
  if (isTechnician(key) && floor.chance.odds(0.25)) yield* tidiesUp(floor, key, day);
  yield floor.at(day, '17:00') + floor.chance.between(0, 5) * minute;
  while (floor.isClocked(key)) yield floor.now + lookAgain;
  floor.send(key, 'recordAttendance', { kind: 'gone' });
}

/** Ten minutes for the floor before the first vehicle comes. */
function* tidiesUp(floor: Floor, key: PersonKey, day: string): Script {
  const words = floor.chance.of(['sweeping up', 'waste oil', 'tool board']);
  floor.send(key, 'recordAttendance', { kind: 'shopTime', words });
  yield floor.at(day, '07:31');
  if (!floor.isClocked(key)) floor.send(key, 'recordAttendance', { kind: 'present' });
}
