/** A vehicle dropped in, without bay or visit, and its wheels were tightened again: that ends what was outstanding. */
import type { TorqueFacts } from '../inputs.js';
import { canonical } from '../kernel/amounts.js';
import type { CommandRule } from '../kernel/family.js';
import { refuse } from '../kernel/refusal.js';
import { odometerUnitOf, recordOdometer } from '../job/odometer.js';
import { closeFollowUpRow } from '../outstanding/follow-up-rows.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { badTorque } from './wheels.js';

export const recordRetorque: CommandRule<'recordRetorque'> = {
  needs: ({ followUpId }) => ({ followUps: [followUpId] }),
  decide(rows, input, at) {
    const followUp = live(rows, 'followUp', input.followUpId);
    if (!followUp) return notThere('followUp', input.followUpId);
    const { id: followUpId, vehicleId, kind, state } = followUp;
    if (kind !== 'retorque') return refuse('wheel.notRetorque', { followUpId });
    if (state !== 'open') return refuse('followUp.closedAlready', { followUpId, state });
    const refused = badTorque(input);
    if (refused) return refused;
    const unit = odometerUnitOf(rows, vehicleId);
    const { odometer } = input;
    if (odometer !== undefined) {
      recordOdometer(rows, at, { vehicleId, jobId: null }, { value: odometer, unit, source: 'read' });
    }
    const reading = odometer === undefined ? [] : [`${String(odometer)} ${unit}`];
    const words = [compact(input), ...reading, ...(input.words === undefined ? [] : [input.words])].join(' · ');
    closeFollowUpRow(rows, at, followUpId, { state: 'done', words, lineId: null });
    const { torque, torqueUnit, torqueSource } = input;
    return { facts: { vehicleId, followUpId, torque: canonical(torque), torqueUnit, source: torqueSource } };
  },
};

const unitSigns: Readonly<Record<TorqueFacts['torqueUnit'], string>> = { newtonMetre: 'N·m', poundFoot: 'lb·ft' };
const sources: Readonly<Record<TorqueFacts['torqueSource'], string>> = {
  vehicleMaker: 'vehicle maker',
  wheelMaker: 'wheel maker',
  partMaker: 'part maker',
  other: '',
};

/** Value, where it comes from and the tool, as one line that stays readable in a list of what was outstanding. */
function compact({ torque, torqueUnit, torqueSource, sourceWords, tool }: TorqueFacts): string {
  const source = [sources[torqueSource], sourceWords ?? ''].filter((some) => some !== '').join(', ');
  return `${canonical(torque)} ${unitSigns[torqueUnit]} (${source}) · ${tool}`;
}
