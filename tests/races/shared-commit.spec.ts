import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { commands, inputFromWire } from '@holdfast/contract';
import { randomUUID } from 'node:crypto';
import pg from 'pg';
import { v7 as newId } from 'uuid';
import type { Answer, OpenCall, RunCommand, WriteStore } from '../../apps/server/src/engine/ports.js';
import { makeRunCommand } from '../../apps/server/src/engine/run-command.js';
import { makeStore } from '../../apps/server/src/store/store.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop, vehicleAndBay } from '../kit/engine-shop.js';

// Commands of one shop that wait share a commit (engine/run-command.ts). Each must come out as if it had been alone.
const visits = 8;
const tomorrow = new Date(Date.now() + 86_400_000).toISOString();

/** Counts how many commands each transaction carried. */
function counting(store: WriteStore, sizes: number[]): WriteStore {
  return {
    transaction: (shopId, calls: readonly OpenCall[], work) => {
      sizes.push(calls.length);
      return store.transaction(shopId, calls, work);
    },
  };
}

describe('commands that share a commit', () => {
  let db: FreshDatabase;
  let shop: EngineShop;
  const sizes: number[] = [];
  let run: RunCommand;
  const places: { jobId: string; bayId: string; vehicleId: string }[] = [];
  const versions = new Map<string, number>();

  beforeAll(async () => {
    db = await freshDatabase();
    shop = await engineShop(db.app);
    for (let at = 0; at < visits; at += 1) places.push(await vehicleAndBay(shop, `HB ${String(at)}`));
    run = makeRunCommand({ store: counting(makeStore(db.app), sizes), wake: () => undefined, newId });
  });
  afterAll(() => db.drop());

  const owner = () => shop.sender(shop.ownerId, ['owner']);
  const promise = (jobId: string, version = versions.get(jobId) ?? 1, key: string = randomUUID(), by = run) => {
    const input = inputFromWire<'changePromisedTime'>(
      commands.changePromisedTime.schema.parse({ jobId, version, promisedAt: tomorrow }),
    );
    return by(owner(), { name: 'changePromisedTime', input, key, fingerprint: 'same', sentAt: null });
  };
  const take = (jobId: string, bayId: string) => {
    const input = inputFromWire<'takeIntoBay'>(commands.takeIntoBay.schema.parse({ jobId, bayId }));
    return run(owner(), { name: 'takeIntoBay', input, key: randomUUID(), fingerprint: 'x', sentAt: null });
  };
  const jobIds = () => places.map(({ jobId }) => jobId);
  const accepted = (jobId: string) => versions.set(jobId, (versions.get(jobId) ?? 1) + 1);
  const log = async () =>
    (
      await db.superuser.query<{ seq: number; recorded_at: number; key: string }>(
        'select seq, recorded_at, key from change where shop_id = $1 order by seq',
        [shop.shopId],
      )
    ).rows;

  it('are one change each, numbered without a gap, each later than the one before, and in few transactions', async () => {
    sizes.length = 0;
    const before = (await log()).length;
    const answers = await Promise.all(jobIds().map((jobId) => promise(jobId)));
    jobIds().forEach(accepted);
    expect(answers.map(({ kind }) => kind)).toEqual(answers.map(() => 'accepted'));
    const lines = await log();
    expect(lines).toHaveLength(before + visits);
    lines.slice(1).forEach((line, at) => {
      expect(line.seq).toBe((lines[at]?.seq ?? 0) + 1);
      expect(line.recorded_at).toBeGreaterThan(lines[at]?.recorded_at ?? 0);
    });
    expect(Math.max(...sizes)).toBeGreaterThan(1);
    expect(sizes.length).toBeLessThan(visits);
  });

  it('do not stop each other when one is refused, which leaves nothing', async () => {
    const before = (await log()).length;
    const stale = jobIds()[3] ?? '';
    const answers = await Promise.all(jobIds().map((jobId) => promise(jobId, jobId === stale ? 1 : undefined)));
    jobIds().forEach((jobId) => jobId !== stale && accepted(jobId));
    expect(answers.filter(({ kind }) => kind === 'accepted')).toHaveLength(visits - 1);
    expect(answers[3]).toMatchObject({ kind: 'refused', refusals: [{ code: 'row.stale' }] });
    expect(await log()).toHaveLength(before + visits - 1);
  });

  it('of one row are decided one after the other: of many turns on one version one is accepted', async () => {
    const jobId = jobIds()[0] ?? '';
    const answers = await Promise.all(jobIds().map(() => promise(jobId)));
    accepted(jobId);
    expect(answers.filter(({ kind }) => kind === 'accepted')).toHaveLength(1);
    for (const answer of answers) if (answer.kind === 'refused') expect(answer.refusals[0]?.code).toBe('row.stale');
  });

  it('with one key are carried out once and answered alike', async () => {
    const jobId = jobIds()[1] ?? '';
    const key = randomUUID();
    const version = versions.get(jobId) ?? 1;
    const answers = await Promise.all([
      ...jobIds().map(() => promise(jobId, version, key)),
      promise(jobIds()[2] ?? ''),
    ]);
    accepted(jobId);
    accepted(jobIds()[2] ?? '');
    const same = answers.slice(0, visits) as Extract<Answer, { kind: 'accepted' }>[];
    expect(new Set(same.map(({ body }) => body)).size).toBe(1);
    expect(same.filter(({ replayed }) => !replayed)).toHaveLength(1);
    expect((await log()).filter((line) => line.key === key)).toHaveLength(1);
  });

  it('see what those before them left: two for one bay that nobody named before are not both taken in', async () => {
    const bayId = places[0]?.bayId ?? '';
    const answers = await Promise.all(jobIds().map((jobId) => take(jobId, bayId)));
    expect(answers.filter(({ kind }) => kind === 'accepted')).toHaveLength(1);
    for (const answer of answers)
      if (answer.kind === 'refused') expect(answer.refusals[0]?.code).toBe('place.spotTaken');
    const moved = places.findIndex((_, at) => answers[at]?.kind === 'accepted');
    await shop.accept('moveToYard', { jobId: places[moved]?.jobId ?? '' });
  });

  it('are each carried out alone where the database refuses what they wrote together', async () => {
    const before = (await log()).length;
    // Stands for any guard of the database that one command of several runs into.
    await db.superuser.query(
      `alter table job add constraint refused_here check (id <> '${jobIds()[5] ?? ''}' or version < 0) not valid`,
    );
    const results = await Promise.allSettled(jobIds().map((jobId) => promise(jobId)));
    await db.superuser.query('alter table job drop constraint refused_here');
    jobIds().forEach((jobId, at) => at !== 5 && accepted(jobId));
    expect(results.map(({ status }) => status)).toEqual(jobIds().map((_, at) => (at === 5 ? 'rejected' : 'fulfilled')));
    expect(await log()).toHaveLength(before + visits - 1);
  });

  it('leave nothing behind whichever message to the database fails, and are carried out when they are sent again', async () => {
    let broken = 0;
    for (let nth = 1; nth < 200; nth += 1) {
      const breaking = breakingAt(db.app, nth);
      const by = makeRunCommand({ store: makeStore(breaking.pool), wake: () => undefined, newId });
      const keys = jobIds().map(() => randomUUID());
      const results = await Promise.allSettled(jobIds().map((jobId, at) => promise(jobId, undefined, keys[at], by)));
      const logged = new Set((await log()).map(({ key }) => key));
      results.forEach(({ status }, at) => expect(logged.has(keys[at] ?? '')).toBe(status === 'fulfilled'));
      const again = await Promise.all(jobIds().map((jobId, at) => promise(jobId, undefined, keys[at])));
      jobIds().forEach(accepted);
      again.forEach((answer, at) => {
        expect(answer).toMatchObject({ kind: 'accepted', replayed: results[at]?.status === 'fulfilled' });
      });
      if (!breaking.broke()) break;
      broken += 1;
    }
    expect(broken).toBeGreaterThan(1);
  });
});

/** As pg tells it: by the callback of a query object, else by the promise. */
function broken(query: unknown): Promise<never> | undefined {
  const failure = new Error('broken on purpose');
  const { callback } = query as { callback?: (failure: Error) => void };
  if (callback === undefined) return Promise.reject(failure);
  callback(failure);
  return undefined;
}

/** A pool whose nth message to the database from now on fails. */
function breakingAt(pool: pg.Pool, nth: number): { pool: pg.Pool; broke: () => boolean } {
  let sent = 0;
  return {
    broke: () => sent >= nth,
    pool: {
      connect: async () => {
        const client = await pool.connect();
        const { query } = pg.Client.prototype as unknown as { query: (...words: unknown[]) => unknown };
        const counted = (...words: unknown[]) => {
          sent += 1;
          return sent === nth ? broken(words[0]) : query.apply(client, words);
        };
        return Object.assign(client, { query: counted });
      },
    } as unknown as pg.Pool,
  };
}
