import type { VehicleFacts } from '../inputs.js';
import type { CommandRule } from '../kernel/family.js';
import { flag } from '../kernel/flags.js';
import { foldKey } from '../kernel/fold.js';
import { refuse } from '../kernel/refusal.js';
import { absent } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { looksLikeVin } from '../vin/vin.js';

type Mass = Pick<Row<'vehicle'>, 'curbKg' | 'curbSource' | 'grossKg' | 'grossSource' | 'weighedKg'>;

/** Kilograms as they were said. One said without where it comes from is kept as told. */
function masses(said: VehicleFacts): Mass {
  const { curbKg = null, grossKg = null, weighedKg = null } = said;
  return {
    curbKg,
    curbSource: curbKg === null ? null : (said.curbSource ?? 'told'),
    grossKg,
    grossSource: grossKg === null ? null : (said.grossSource ?? 'told'),
    weighedKg,
  };
}

function asRead(vin: string | undefined): string | null {
  const read = vin?.trim().toUpperCase() ?? '';
  return read === '' ? null : read;
}

/**
 * A fact. A doubtful VIN is kept as it was read and flagged (rule 15). A second vehicle with the same plate is kept too
 * and named in the facts of the log: plates change hands, and which of the two is which is for people to say.
 */
export const addVehicle: CommandRule<'addVehicle'> = {
  needs: (input) => ({
    ...(input.vehicleId === undefined ? {} : { vehicles: [input.vehicleId] }),
    ...(input.customerId === undefined ? {} : { customers: [input.customerId] }),
    plateKey: foldKey(input.plate),
  }),
  decide: (rows, input, at) => {
    if (rows.find('vehicle', input.vehicleId)) {
      return refuse('vehicle.alreadyThere', { vehicleId: input.vehicleId ?? null });
    }
    const missing = absent(rows, { customer: input.customerId });
    if (missing) return missing;
    const plateKey = foldKey(input.plate);
    const samePlate = rows.list('vehicle', (one) => one.plateKey === plateKey)[0];
    const vehicleId = input.vehicleId ?? at.newId();
    const vin = asRead(input.vin);
    const rolls = input.rolls ?? true;
    rows.add('vehicle', {
      id: vehicleId,
      customerId: input.customerId ?? null,
      plate: input.plate.trim(),
      plateKey,
      vin,
      description: input.description,
      kind: input.kind,
      drive: input.drive,
      ...masses(input),
      rolls,
      mayBeDriven: input.mayBeDriven ?? rolls,
      notes: input.notes ?? null,
      mergedIntoId: null,
    });
    if (vin !== null && !looksLikeVin(vin)) flag(rows, at, 'vin.doubtful', { vehicleId }, { characters: vin.length });
    const facts = { vehicleId, kind: input.kind, drive: input.drive };
    return {
      facts: samePlate ? { ...facts, samePlateAs: samePlate.id } : facts,
      created: { vehicle: vehicleId },
    };
  },
};
