/** Fills a shop with vehicles through the API, as a desk would: to look at screens with few and with many of them. */
import type { TestClient } from './app.js';

export interface CheckedIn {
  readonly vehicleId: string;
  readonly jobId: string;
  readonly plate: string;
  readonly customer: string;
  readonly keyTag: string;
  readonly yardSpot: string;
}

const kinds = ['Estate car', 'Hatchback', 'Delivery van', 'Small car', 'Camper on a van', 'Tipper'] as const;
const first = ['Aud', 'Bertil', 'Cara', 'Dunstan', 'Eluned', 'Fritz', 'Greet', 'Hamish', 'Ilse', 'Jory'] as const;
const last = ['Abney', 'Birk', 'Corrigan', 'Dahl', 'Ebbing', 'Foss', 'Garvey'] as const;
const concerns = ['Grinds when braking', 'Starts badly', 'Rattle underneath', 'Pulls to the left'] as const;
const letters = 'ABCDEFGHJKLMNPRSTVWXYZ';

const nth = <T>(list: readonly T[], n: number): T => {
  const one = list[n % list.length];
  if (one === undefined) throw new RangeError('Nothing can be chosen from an empty list.');
  return one;
};

/** A pattern that no country issues; each number below 5000 another one. */
export function plateOfMany(n: number): string {
  const letter = letters.charAt(n % letters.length);
  return `MV ${String(1000 + ((n * 137) % 9000))} ${letter}`;
}

async function checkInOne(desk: TestClient, n: number): Promise<CheckedIn> {
  const plate = plateOfMany(n);
  const customer = `${nth(first, n)} ${nth(last, n + Math.floor(n / first.length))}`;
  const [keyTag, yardSpot] = [`K${String(n + 1)}`, `Y${String(n + 1)}`];
  const vehicle = { plate, description: nth(kinds, n), kind: 'light', drive: 'combustion' } as const;
  const { vehicle: vehicleId = '' } = (await desk.accepted('addVehicle', vehicle)).created;
  const { created } = await desk.accepted('checkIn', {
    vehicleId,
    customer: { name: customer },
    contact: { name: customer, phone: `020 555 ${String(1000 + n)}`, mayCollect: true },
    concerns: [{ words: nth(concerns, n), conditions: 'Cold, in the morning' }],
    odometer: { value: 30_000 + n * 811, unit: 'km', source: 'read' },
    keyTag,
    yardSpot,
  });
  return { vehicleId, jobId: created['job'] ?? '', plate, customer, keyTag, yardSpot };
}

/**
 * Checks in so many vehicles, each with its own plate, key and yard spot, counted from `from` on, so that a second call
 * can add more. `desk` is anybody who may check in. One after the other: the shop numbers them in this order.
 */
export async function checkInMany(desk: TestClient, howMany: number, from = 0): Promise<readonly CheckedIn[]> {
  const all: CheckedIn[] = [];
  for (let n = from; n < from + howMany; n += 1) all.push(await checkInOne(desk, n));
  return all;
}
