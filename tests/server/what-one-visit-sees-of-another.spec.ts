import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop, vehicleAndBay } from '../kit/engine-shop.js';
import { jobsInWindow } from '../../apps/server/src/read/bay-time-rows.js';
import { withShop } from '../../apps/server/src/database/pools.js';

// Rules whose outcome hangs on rows of other visits: the store has to bring those rows, or the rule sees nothing.
describe('what a rule sees of other visits', () => {
  let db: FreshDatabase;
  let shop: EngineShop;
  beforeAll(async () => {
    db = await freshDatabase();
    shop = await engineShop(db.app);
  });
  afterAll(() => db.drop());

  /** Two vehicles in bays that are next to each other in the order of the building. */
  async function neighbours(plate: string) {
    const [one, other] = [await vehicleAndBay(shop, `${plate}1`), await vehicleAndBay(shop, `${plate}2`)];
    for (const { jobId, bayId } of [one, other]) await shop.accept('takeIntoBay', { jobId, bayId });
    return [one, other] as const;
  }
  const caution = async (vehicleId: string, code: 'fuelOpen' | 'hotWork') =>
    shop.accept('addCaution', { vehicleId, standing: false, code });
  const rulesFlagged = async (jobId: string) => {
    const { rows } = await db.superuser.query<{ rule: string }>('select rule from flag where job_id = $1', [jobId]);
    return rows.map(({ rule }) => rule);
  };

  it('hot work in the next bay stops work beside open fuel, and is flagged when it is said', async () => {
    const [one, other] = await neighbours('HW ');
    await caution(one.vehicleId, 'fuelOpen');
    await shop.accept('startWork', { lineId: one.lineId });
    const clock = await db.superuser.query<{ id: string }>('select id from clock where job_id = $1', [one.jobId]);
    await shop.accept('stopWork', { clockId: clock.rows[0]?.id ?? '', version: 1 });
    await caution(other.vehicleId, 'hotWork');
    expect(await rulesFlagged(other.jobId)).toEqual(['place.hotWorkNearFuel']);
    expect(await shop.refused('startWork', { lineId: one.lineId })).toEqual(['caution.hotWorkNear']);
    await shop.accept('moveToYard', { jobId: other.jobId });
    await shop.accept('startWork', { lineId: one.lineId });
    expect(await shop.refused('takeIntoBay', { jobId: other.jobId, bayId: other.bayId })).toEqual([
      'caution.hotWorkNear',
    ]);
  });

  it('two vehicles change their bays in one change', async () => {
    const [one, other] = await neighbours('SW ');
    await shop.accept('swapBays', { jobIds: [one.jobId, other.jobId] });
    const { rows } = await db.superuser.query<{ job_id: string; bay_id: string }>(
      'select job_id, bay_id from spot_use where to_at is null and job_id = any($1)',
      [[one.jobId, other.jobId]],
    );
    expect(new Map(rows.map((use) => [use.job_id, use.bay_id]))).toEqual(
      new Map([
        [one.jobId, other.bayId],
        [other.jobId, one.bayId],
      ]),
    );
  });

  it('a hand-back that is undone finds its spot taken by whoever came since', async () => {
    const [one, other] = await neighbours('UN ');
    const leave = { leavesBy: 'road', receivedBy: 'A Driver', receivedHow: 'there', words: 'Sold' } as const;
    const release = async (jobId: string) => {
      const { rows } = await db.superuser.query<{ version: number }>('select version from job where id = $1', [jobId]);
      await shop.accept('releaseUnfinished', { jobId, version: rows[0]?.version ?? 0, ...leave });
    };
    const standsIn = async (jobId: string) => {
      const { rows } = await db.superuser.query<{ bay_id: string | null }>(
        'select bay_id from place where job_id = $1 and to_at is null',
        [jobId],
      );
      return rows.map((place) => place.bay_id);
    };
    await release(one.jobId);
    await shop.accept('undoHandBack', { jobId: one.jobId, words: 'Too early' });
    expect(await standsIn(one.jobId)).toEqual([one.bayId]);
    await release(one.jobId);
    await shop.accept('takeIntoBay', { jobId: other.jobId, bayId: one.bayId });
    await shop.accept('undoHandBack', { jobId: one.jobId, words: 'Too early again' });
    expect(await standsIn(one.jobId)).toEqual([null]);
  });

  it('bay time reads the three forms of a sublet as they are: kept, held, worked by nobody of the shop', async () => {
    const [one] = await neighbours('SU ');
    const { jobId } = one;
    const arranged = async (form: 'vehicleOut' | 'outsiderIn') =>
      (await shop.accept('arrangeSublet', { jobId, form, firm: 'Brig Paint' })).created['sublet'] ?? '';
    const out = await arranged('vehicleOut');
    await shop.accept('sendAway', { subletId: out, version: 1, keepSpot: true, movedHow: 'driven' });
    await shop.accept('bringBack', { subletId: out, version: 2, intoKeptSpot: true, price: '120' });
    const glass = await arranged('outsiderIn');
    await shop.accept('letOutsiderIn', { subletId: glass, version: 1 });
    const now = Date.now();
    const window = { from: now - 3_600_000, to: now + 3_600_000 };
    const jobs = await withShop(db.app, shop.shopId, (client) => jobsInWindow(client, shop.shopId, window));
    const read = jobs.find((job) => job.id === jobId);
    expect(read?.stays.sort((a, b) => a.from - b.from).map((stay) => stay.kept)).toEqual([false, true, false]);
    expect(read?.holds).toMatchObject([{ reason: 'sublet', lineIds: [] }]);
    expect(read?.holds[0]?.to).not.toBeNull();
    expect(read?.clocks).toMatchObject([{ personId: `outsider:${glass}`, bench: false, to: null }]);
  });
});
