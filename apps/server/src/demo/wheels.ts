/** Wheels off and on, with the torque that somebody recorded and where it comes from; the demo knows none of its own. */
import type { CommandInputs } from '@holdfast/domain';
import type { PersonKey, Technician } from './cast.js';
import { minute, type Script } from './floor.js';
import type { Visit } from './visit.js';

/** What the demo's people write down; invented like all of it, and no value for any vehicle. */
const written = {
  torque: '118',
  torqueUnit: 'newtonMetre',
  torqueSource: 'vehicleMaker',
  sourceWords: 'Wheel page of the maker’s instructions',
  tool: 'Torque wrench 2',
} as const satisfies Omit<CommandInputs['recordTorque'], 'jobId' | 'positions'>;

export function wheelsOff({ floor, jobId }: Visit, by: PersonKey, positions: readonly string[], lineId: string): void {
  floor.send(by, 'recordWheelOff', { jobId, lineId, positions: [...positions] });
}

export function wheelsOn(
  { floor, jobId }: Visit,
  by: PersonKey,
  positions: readonly string[],
  { torqued = true }: { readonly torqued?: boolean } = {},
): void {
  floor.send(by, 'recordWheelOn', { jobId, positions: [...positions], ...(torqued ? { torque: written } : {}) });
}

/** On first, and tightened as a step of its own, with the wrench that was busy. */
export function tightened({ floor, jobId }: Visit, by: PersonKey, positions: readonly string[]): void {
  floor.send(by, 'recordTorque', { jobId, positions: [...positions], ...written });
}

/** Put down for later: the wheels are tightened again; gives the follow-up. */
export function tightenLater({ floor, jobId, vehicleId }: Visit, by: Technician): string {
  return floor.send(by, 'addFollowUp', {
    vehicleId,
    jobId,
    kind: 'retorque',
    title: 'Tighten the wheels again',
    words: 'Told at the hand-back: drop in, it takes five minutes',
    withinDistance: 80,
  })('followUp');
}

/** Most drop in some days later, without a visit; the others stay outstanding. */
export function* dropsIn({ floor, vehicle }: Visit, followUpId: string): Script {
  if (!floor.chance.odds(0.7)) return;
  yield floor.now + floor.chance.between(2, 6) * 24 * 60 * minute;
  yield* floor.untilWorking();
  if (vehicle.isHere) return;
  vehicle.odometer += 60;
  const by = floor.chance.of(['samuel', 'wen'] as const);
  floor.send(by, 'recordRetorque', { followUpId, ...written, odometer: vehicle.odometer });
}
