import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startApp, type TestApp, type TestClient, type TestShop } from '../kit/app.js';

// Sixteen people at sixteen screens, half of them on a second server on the same database, reach for one bay at once.
const rounds = process.env['LONG_MATRIX'] === 'sample' ? 10 : 200;
const people = 16;

describe('a race for one bay through the API', () => {
  let app: TestApp;
  let shop: TestShop;
  const clients: TestClient[] = [];
  const jobs: string[] = [];
  let bayId = '';

  beforeAll(async () => {
    app = await startApp();
    const second = await app.another();
    shop = await app.newShop('Mole Head');
    const bay = await shop.owner.accepted('addBay', {
      name: 'The bay',
      spots: 1,
      equipment: [{ kind: 'flat', inUse: true, grips: null }],
    });
    bayId = bay.created['bay'] ?? '';
    const technician = await shop.signIn('technician');
    for (let at = 0; at < people; at += 1) {
      const vehicle = await shop.owner.accepted('addVehicle', {
        plate: `HB ${String(at)}`,
        description: 'Van',
        kind: 'light',
        drive: 'combustion',
      });
      const visit = await shop.owner.accepted('checkIn', {
        vehicleId: vehicle.created['vehicle'] ?? '',
        customer: { name: `Keeper ${String(at)}` },
        concerns: [{ words: 'Knocks' }],
      });
      jobs.push(visit.created['job'] ?? '');
      clients.push(at % 2 === 0 ? technician : technician.on(second.url));
    }
  });
  afterAll(() => app.stop());

  it(`never puts two vehicles in, ${String(rounds)} rounds of ${String(people)}, and never deadlocks`, async () => {
    for (let round = 0; round < rounds; round += 1) {
      const answers = await Promise.all(
        clients.map((client, at) => client.command('takeIntoBay', { jobId: jobs[at] ?? '', bayId })),
      );
      const won = answers.flatMap((answer, at) => (answer.status === 200 ? [at] : []));
      expect(won).toHaveLength(1);
      const others = answers
        .filter((answer) => answer.status !== 200)
        .map((answer) => (answer.json as { code: string }).code);
      expect(new Set(others)).toEqual(new Set(['place.spotTaken']));
      await shop.owner.accepted('moveToYard', { jobId: jobs[won[0] ?? 0] ?? '' });
    }
    const { rows } = await app.database.superuser.query<{ deadlocks: number; overlaps: number }>(
      `select (select deadlocks from pg_stat_database where datname = current_database()) as deadlocks,
        (select count(*) from spot_use a join spot_use b on a.shop_id = b.shop_id and a.bay_id = b.bay_id and a.spot = b.spot
          and a.id < b.id and not a.void and not b.void and a.during && b.during) as overlaps`,
    );
    expect(rows[0]).toEqual({ deadlocks: 0, overlaps: 0 });
  });

  it('leaves a log without a gap', async () => {
    const { rows } = await app.database.superuser.query<{ gaps: number }>(
      `select count(*) filter (where seq <> before + 1) as gaps from
        (select seq, lag(seq, 1, 0::bigint) over (order by seq) as before from change where shop_id = $1) l`,
      [shop.id],
    );
    expect(rows[0]?.gaps).toBe(0);
  });
});
