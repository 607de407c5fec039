import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop, vehicleAndBay } from '../kit/engine-shop.js';
import { makeRunCommand } from '../../apps/server/src/engine/run-command.js';
import { makeStore } from '../../apps/server/src/store/store.js';
import { commands, inputFromWire } from '@holdfast/contract';
import { randomUUID } from 'node:crypto';
import { v7 as newId } from 'uuid';

// Sixteen senders through four engines of their own (as in four server processes: no queue between them) for one bay.
const rounds = 25;
const senders = 16;
const engines = 4;

describe('a race for one bay', () => {
  let db: FreshDatabase;
  let shop: EngineShop;
  beforeAll(async () => {
    db = await freshDatabase();
    shop = await engineShop(db.app);
  });
  afterAll(() => db.drop());

  it(`never puts two vehicles into one spot and never deadlocks, ${String(rounds)} rounds of ${String(senders)}`, async () => {
    const runs = Array.from({ length: engines }, () =>
      makeRunCommand({ store: makeStore(db.app), wake: () => undefined, newId }),
    );
    const { bayId } = await vehicleAndBay(shop, 'HB 0');
    const jobs: string[] = [];
    for (let at = 1; at <= senders; at += 1) jobs.push((await vehicleAndBay(shop, `HB ${String(at)}`)).jobId);
    const owner = shop.sender(shop.ownerId, ['owner']);
    const take = (at: number, jobId: string) => {
      const input = inputFromWire<'takeIntoBay'>(commands.takeIntoBay.schema.parse({ jobId, bayId }));
      const run = runs[at % engines];
      if (!run) throw new Error('no engine');
      return run(owner, { name: 'takeIntoBay', input, key: randomUUID(), fingerprint: 'x', sentAt: null });
    };
    for (let round = 0; round < rounds; round += 1) {
      const answers = await Promise.all(jobs.map((jobId, at) => take(at, jobId)));
      const won = answers.flatMap((answer, at) => (answer.kind === 'accepted' ? [at] : []));
      expect(won).toHaveLength(1);
      for (const answer of answers) {
        if (answer.kind === 'refused') expect(answer.refusals.map((r) => r.code)).toEqual(['place.spotTaken']);
      }
      await shop.accept('moveToYard', { jobId: jobs[won[0] ?? 0] ?? '' });
    }
    const { rows } = await db.superuser.query<{ deadlocks: number }>(
      'select deadlocks from pg_stat_database where datname = current_database()',
    );
    expect(rows[0]?.deadlocks).toBe(0);
  });

  it('leaves a log numbered without a gap in the order of its times', async () => {
    const { rows } = await db.superuser.query<{ gaps: number; inversions: number }>(
      `select count(*) filter (where seq <> before + 1) as gaps, count(*) filter (where recorded_at <= earlier) as inversions
       from (select seq, lag(seq, 1, 0::bigint) over (order by seq) as before, recorded_at, lag(recorded_at) over (order by seq) as earlier
             from change where shop_id = $1) l`,
      [shop.shopId],
    );
    expect(rows[0]).toEqual({ gaps: 0, inversions: 0 });
  });
});
