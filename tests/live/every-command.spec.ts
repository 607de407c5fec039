import {
  apply,
  type Audience,
  type Board,
  type BoardChange,
  fromSnapshot,
  prune,
  type Snapshot,
} from '@holdfast/board';
import { commandNames } from '@holdfast/contract';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { makeReads } from '../../apps/server/src/read/reads.js';
import { makeLogReader } from '../../apps/server/src/store/read-log.js';
import { plain } from '../faults/watcher.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';
import { engineShop, type EngineShop } from '../kit/engine-shop.js';
import { everyCommand } from '../kit/every-command.js';

describe('snapshot and changes', () => {
  let db: FreshDatabase;
  let shop: EngineShop;
  /** All that the wall was told: an erasure takes the images of what came before it out of the log. */
  const toldToWall: string[] = [];
  beforeAll(async () => {
    db = await freshDatabase();
    shop = await engineShop(db.app);
  });
  afterAll(() => db.drop());

  it('give the fresh snapshot after every command, for staff and for the wall', async () => {
    const log = makeLogReader(db.app);
    const fresh = async (audience: Audience): Promise<{ board: Board; now: number }> => {
      const snapshot = JSON.parse((await makeReads(db.app).board(shop.shopId, audience)) ?? '{}') as Snapshot & {
        now: string;
      };
      return { board: fromSnapshot(snapshot, audience), now: Date.parse(snapshot.now) };
    };
    const boards = { staff: (await fresh('staff')).board, wall: (await fresh('wall')).board };
    const done = new Set<string>(['setUpShop']);
    await everyCommand(shop, db.superuser, async (name) => {
      done.add(name);
      for (const audience of ['staff', 'wall'] as const) {
        const changes = (await log.changesAfter(shop.shopId, boards[audience].seq, audience, 100)) ?? [];
        expect(changes.length).toBe(1);
        for (const { text } of changes) {
          if (audience === 'wall') toldToWall.push(text);
          const next = apply(boards[audience], JSON.parse(text) as BoardChange);
          if (next === 'missing') throw new Error('a change is missing');
          boards[audience] = next;
        }
        const { board, now } = await fresh(audience);
        expect({ after: name, audience, ...plain(prune(boards[audience], now)) }).toEqual({
          after: name,
          audience,
          ...plain(prune(board, now)),
        });
      }
    });
    expect(commandNames.filter((name) => !done.has(name))).toEqual([]);
  });

  it('show the wall no names, telephone numbers or prices', async () => {
    const text = (await makeReads(db.app).board(shop.shopId, 'wall')) ?? '';
    expect(toldToWall.length).toBeGreaterThan(commandNames.length);
    for (const word of [
      'Quay Parcels',
      'Nan Ferro',
      '01 55',
      '250.00',
      'Tam',
      'Ines',
      'Harbour Panels',
      'Backed into',
      'Left sill is soft',
      'rear beam',
      'A. Stone',
      'Leaks',
    ]) {
      expect([word, text.includes(word) || toldToWall.some((change) => change.includes(word))]).toEqual([word, false]);
    }
  });
});
