import type { CorrectVehicle } from '../inputs.js';
import { type Circumstances, recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { flag } from '../kernel/flags.js';
import { foldKey } from '../kernel/fold.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { isLead } from '../questions/people-and-shop.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { looksLikeVin } from '../vin/vin.js';

type Changed = Partial<
  Pick<
    Row<'vehicle'>,
    | 'plate'
    | 'vin'
    | 'description'
    | 'kind'
    | 'drive'
    | 'notes'
    | 'curbKg'
    | 'curbSource'
    | 'grossKg'
    | 'grossSource'
    | 'weighedKg'
  >
>;

/** A mass decides on which lift it may stand (rule 4): manager or owner corrects it, with where it comes from. */
function massRefused(input: CorrectVehicle, at: Circumstances): Refused | null {
  const { curbKg, curbSource, grossKg, grossSource, weighedKg } = input;
  if ([curbKg, grossKg, weighedKg].every((mass) => mass === undefined)) return null;
  if (!isLead(at.by)) return refuse('vehicle.massByLead');
  const unsourced = (curbKg !== undefined && !curbSource) || (grossKg !== undefined && !grossSource);
  return unsourced ? refuse('vehicle.massSourceMissing') : null;
}

function vinAsRead(vin: string | null): string | null {
  const read = vin?.trim().toUpperCase() ?? '';
  return read === '' ? null : read;
}

function saidOf(input: CorrectVehicle): Changed {
  const { plate, vin, description, kind, drive, notes, curbKg, curbSource, grossKg, grossSource, weighedKg } = input;
  return {
    ...(plate === undefined ? {} : { plate: plate.trim() }),
    ...(vin === undefined ? {} : { vin: vinAsRead(vin) }),
    ...(description === undefined ? {} : { description }),
    ...(kind === undefined ? {} : { kind }),
    ...(drive === undefined ? {} : { drive }),
    ...(notes === undefined ? {} : { notes }),
    ...(curbKg === undefined ? {} : { curbKg, curbSource: curbSource ?? null }),
    ...(grossKg === undefined ? {} : { grossKg, grossSource: grossSource ?? null }),
    ...(weighedKg === undefined ? {} : { weighedKg }),
  };
}

const sourceOf: Readonly<Record<string, 'curbSource' | 'grossSource'>> = {
  curbKg: 'curbSource',
  grossKg: 'grossSource',
};
const asText = (value: string | number | null | undefined): string | null => (value == null ? null : String(value));

/** Both values of each fact that changed are kept. Gives the names of these facts. */
function keep(rows: Rows, at: Circumstances, vehicle: Row<'vehicle'>, said: Changed, words: string | null): string[] {
  const fields = (Object.keys(said) as (keyof Changed)[]).filter(
    (field) => !field.endsWith('Source') && said[field] !== vehicle[field],
  );
  for (const field of fields) {
    const source = sourceOf[field];
    rows.add('vehicleCorrection', {
      id: at.newId(),
      ...recordedBy(at),
      vehicleId: vehicle.id,
      field,
      before: asText(vehicle[field]),
      after: asText(said[field]),
      source: source === undefined ? (field === 'weighedKg' ? 'weighed' : null) : asText(said[source]),
      words,
    });
  }
  return fields;
}

/** A turn: what was wrong or unknown about a vehicle. A doubtful VIN is kept as it was read and flagged (rule 15). */
export const correctVehicle: CommandRule<'correctVehicle'> = {
  needs: ({ vehicleId }) => ({ vehicles: [vehicleId] }),
  decide(rows, input, at) {
    const vehicle = live(rows, 'vehicle', input.vehicleId);
    if (!vehicle) return notThere('vehicle', input.vehicleId);
    const refused = massRefused(input, at);
    if (refused) return refused;
    const said = saidOf(input);
    const fields = keep(rows, at, vehicle, said, input.words ?? null);
    if (fields.length === 0) return refuse('vehicle.nothingChanged');
    rows.change('vehicle', vehicle.id, {
      ...said,
      ...(said.plate === undefined ? {} : { plateKey: foldKey(said.plate) }),
    });
    const { vin } = said;
    if (vin && fields.includes('vin') && !looksLikeVin(vin)) {
      flag(rows, at, 'vin.doubtful', { vehicleId: vehicle.id }, { characters: vin.length });
    }
    return { facts: { vehicleId: vehicle.id, fields: fields.join(' ') } };
  },
};
