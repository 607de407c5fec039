import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { makeReads } from '../../apps/server/src/read/reads.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop, vehicleAndBay } from '../kit/engine-shop.js';

/** Tables with a column that names a record, as the database itself tells it. */
async function naming(db: FreshDatabase, table: string, id: string): Promise<string[]> {
  const { rows } = await db.superuser.query<{ name: string; column: string }>(
    `select c.conrelid::regclass::text as name, a.attname as "column" from pg_constraint c
       join unnest(c.conkey) k(n) on true join pg_attribute a on a.attrelid = c.conrelid and a.attnum = k.n
      where c.contype = 'f' and c.confrelid = $1::regclass and a.attname <> 'shop_id' order by 1, 2`,
    [table],
  );
  const found: string[] = [];
  for (const { name, column } of rows) {
    const { rows: hits } = await db.superuser.query(`select from ${name} where "${column}" = $1`, [id]);
    if (hits.length > 0) found.push(`${name}.${column}`);
  }
  return found;
}

describe('records that were made twice', () => {
  let db: FreshDatabase;
  let shop: EngineShop;
  beforeAll(async () => {
    db = await freshDatabase();
    shop = await engineShop(db.app);
  });
  afterAll(() => db.drop());

  const version = async (table: string, id: string): Promise<number> => {
    const { rows } = await db.superuser.query<{ version: number }>(`select version from "${table}" where id = $1`, [
      id,
    ]);
    return rows[0]?.version ?? 0;
  };
  const customerOf = async (vehicleId: string): Promise<string> => {
    const { rows } = await db.superuser.query<{ customer_id: string }>(
      'select customer_id from job where vehicle_id = $1',
      [vehicleId],
    );
    return rows[0]?.customer_id ?? '';
  };

  it('become one, whose visits stay on the board; the old plate and name lead to it', async () => {
    const other = await vehicleAndBay(shop, 'OLD 77');
    await shop.accept('takeIntoBay', { jobId: other.jobId, bayId: other.bayId });
    await shop.accept('addFinding', { jobId: other.jobId, place: 'Sill', kind: 'wear' });
    await shop.accept('addFollowUp', {
      vehicleId: other.vehicleId,
      jobId: other.jobId,
      kind: 'permanentRepair',
      title: 'Mend the sill',
      withinDays: 30,
    });
    const kept =
      (await shop.accept('addVehicle', { plate: 'NEW 77', description: 'Van', kind: 'light', drive: 'combustion' }))
        .created['vehicle'] ?? '';
    const pair = { vehicleId: kept, otherId: other.vehicleId, words: 'New plates' };
    const merged = await shop.accept('mergeVehicles', {
      ...pair,
      version: 1,
      otherVersion: await version('vehicle', other.vehicleId),
    });
    expect(await naming(db, 'vehicle', other.vehicleId)).toEqual([]);
    expect(await naming(db, 'vehicle', kept)).toEqual(
      expect.arrayContaining([
        'follow_up.vehicle_id',
        'job.vehicle_id',
        'place.vehicle_id',
        'spot_use.vehicle_id',
        'finding.vehicle_id',
        'work_line.vehicle_id',
      ]),
    );
    const reads = makeReads(db.app);
    expect((await reads.find(shop.shopId, { q: 'old77' })).items).toContainEqual({
      kind: 'vehicle',
      id: kept,
      plate: 'NEW 77',
      description: 'Van',
    });
    const shown = JSON.parse((await reads.vehicle(shop.shopId, other.vehicleId)) ?? '{}') as {
      vehicle: { id: string };
      jobs: { id: string }[];
    };
    expect([shown.vehicle.id, shown.jobs.map(({ id }) => id)]).toEqual([kept, [other.jobId]]);
    expect(
      await shop.refused('recordOdometer', { vehicleId: other.vehicleId, value: 5, unit: 'km', source: 'read' }),
    ).toEqual(['row.notFound']);

    await shop.accept('takeBack', { seq: merged.seq });
    expect(await naming(db, 'vehicle', kept)).toEqual([]);
    expect(await shop.refused('mergeVehicles', { ...pair, version: 3, otherVersion: 1 })).toEqual(['row.stale']);

    const [a, b] = [
      await customerOf(other.vehicleId),
      await customerOf((await vehicleAndBay(shop, 'OLD 78')).vehicleId),
    ];
    await shop.accept('mergeCustomers', {
      customerId: b,
      version: await version('customer', b),
      otherId: a,
      otherVersion: await version('customer', a),
      words: 'One keeper',
    });
    expect(await naming(db, 'customer', a)).toEqual([]);
    expect((await reads.find(shop.shopId, { q: 'keeperofold77' })).items).toContainEqual({
      kind: 'customer',
      id: b,
      name: 'Keeper of OLD 78',
      fleet: null,
    });
    const customer = JSON.parse((await reads.customer(shop.shopId, a)) ?? '{}') as {
      contacts: unknown[];
      jobs: unknown[];
    };
    expect([customer.contacts.length, customer.jobs.length]).toEqual([2, 2]);
  });
});
