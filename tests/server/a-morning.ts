import { expect } from '@jest/globals';
import type { ProblemDetails } from '@holdfast/contract';
import { randomUUID } from 'node:crypto';
import type { z } from 'zod';
import type { TestClient, TestShop } from '../kit/app.js';

/**
 * A Wednesday in a shop that opens from 08:00 to 17:00, London keeping UTC. Later than this machine's clock, because a
 * shop's own clock does not run backwards.
 */
export const day = '2030-03-13';
export const at = (time: string) => `${day}T${time}:00.000Z`;
const noRuns = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };

export const ids = {
  vehicle: randomUUID(),
  job: randomUUID(),
  line: randomUUID(),
  bay: randomUUID(),
  part: randomUUID(),
  hold: randomUUID(),
  supplier: randomUUID(),
};

async function aShop(owner: TestClient): Promise<void> {
  const flat = { kind: 'flat', inUse: true, grips: null } as const;
  await owner.accepted('addBay', { bayId: ids.bay, name: 'Bay 1', spots: 1, equipment: [flat] });
  await owner.accepted('addSupplier', { supplierId: ids.supplier, name: 'Harbour Factors', runs: noRuns });
  const salt = { name: 'Salt', fromDay: '11-01', toDay: '03-31', validFrom: '2030-01-01' };
  await owner.accepted('setSeasons', { seasons: [salt] });
}

/** A shop since the day before, with one visit on the day: in the bay from 08:00, worked on from 09:00 to 10:00, held for a part from 10:30, and now it is 12:00. */
export async function aMorning(shop: TestShop): Promise<void> {
  const { owner } = shop;
  await shop.setClock('2030-03-12T09:00:00.000Z');
  await aShop(owner);
  await addVehicle(owner, 'Ä-12 cd', ids.vehicle);
  await owner.accepted('checkIn', {
    jobId: ids.job,
    vehicleId: ids.vehicle,
    customer: { name: 'Tamsin Okoro' },
    contact: { name: 'Tamsin Okoro', phone: '01632 960001' },
    concerns: [{ words: 'Backed into a loading dock' }],
    odometer: { value: 81_234, unit: 'km', source: 'read' },
    keyTag: 'K 17',
  });
  const { line: lineId, job: jobId, part: partLineId } = ids;
  await owner.accepted('addLine', { lineId, jobId, title: 'Fit a rear step bumper', bookMinutes: 90 });
  const given = { answer: 'given', how: 'telephone', byName: 'Tamsin Okoro' } as const;
  await owner.accepted('recordGoAhead', { lineId, version: 1, ...given });
  await shop.setClock(at('08:00'));
  await owner.accepted('takeIntoBay', { jobId, bayId: ids.bay });
  await shop.setClock(at('09:00'));
  const { created } = await owner.accepted('startWork', { lineId });
  await shop.setClock(at('10:00'));
  await owner.accepted('stopWork', { clockId: created['clock'] ?? '', version: 1 });
  await shop.setClock(at('10:20'));
  const bumper = { description: 'Step bumper', quantity: '1', needed: 'beforeRefit' } as const;
  await owner.accepted('wantPart', { partLineId, lineId, ...bumper });
  await shop.setClock(at('10:30'));
  await owner.accepted('openHold', { holdId: ids.hold, jobId, reason: 'parts', partLineIds: [partLineId] });
  const due = { state: 'backorderedWithDate', dueOn: '2030-04-02' } as const;
  const order = { supplierId: ids.supplier, reference: 'HF-9', lines: [{ partLineId, version: 1, due }] };
  await owner.accepted('placeOrder', order);
  await shop.setClock(at('12:00'));
}

export function addVehicle(owner: TestClient, plate: string, vehicleId: string = randomUUID()) {
  return owner.accepted('addVehicle', {
    vehicleId,
    plate,
    description: 'Panel van',
    kind: 'light',
    drive: 'combustion',
  });
}

/** The answer of a read, which has to fit the schema that the contract gives it. */
export async function read<S extends z.ZodType>(person: TestClient, path: string, schema: S): Promise<z.infer<S>> {
  const answer = await person.get(path);
  expect([answer.status, answer.text.slice(0, 200)]).toEqual([200, answer.text.slice(0, 200)]);
  return schema.parse(answer.json);
}

export async function problemOf(person: TestClient, path: string): Promise<[status: number, code: string]> {
  const answer = await person.get(path);
  return [answer.status, (answer.json as ProblemDetails).code];
}
