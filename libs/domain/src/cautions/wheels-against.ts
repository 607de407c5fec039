/** What wheels that are off, or on without a torque record, stop (rule 3): a road, and while one is off any move on wheels. */
import type { Refusal } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { wheelsOff, wheelsUntorqued } from '../questions/wheels.js';
import type { Act } from './caution-table.js';

/** Every wheel that speaks against the act, each with its record as the way out. */
export function againstWheels(rows: Rows, jobId: string, act: Act): Refusal[] {
  const onRoad = act === 'roadTest' || act === 'handBackByRoad';
  const onWheels = onRoad || act === 'moveRolling' || act === 'moveDriven';
  const off = onWheels ? wheelsOff(rows, jobId) : [];
  const untorqued = onRoad ? wheelsUntorqued(rows, jobId) : [];
  return [
    ...off.map(({ id, position }) => ({
      code: 'wheel.stillOff' as const,
      facts: { wheelRecordId: id, position },
      way: { table: 'wheelRecord', id },
    })),
    ...untorqued.map(({ id, position }) => ({
      code: 'wheel.notTorqued' as const,
      facts: { wheelRecordId: id, position },
      way: { table: 'wheelRecord', id },
    })),
  ];
}
