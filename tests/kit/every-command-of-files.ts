/** The story's shop takes a file over: outstanding work, of a vehicle that stands here and of none. */
import type { CommandName } from '@holdfast/domain';
import type pg from 'pg';
import { v7 as newId } from 'uuid';
import { csvRecords } from '../../apps/server/src/csv/read-csv.js';
import { makeImports } from '../../apps/server/src/import/check-import.js';
import { makeImportStore } from '../../apps/server/src/store/imports.js';
import type { EngineShop } from './engine-shop.js';

interface Told {
  readonly shop: EngineShop;
  readonly pool: pg.Pool;
  readonly go: EngineShop['accept'];
}

export async function commandsOfFiles({ shop, pool, go }: Told, plate: string): Promise<void> {
  const name: CommandName = 'acceptImport';
  const imports = makeImports({
    store: makeImportStore(pool, 100),
    localeOf: () => Promise.resolve('en-GB'),
    newId,
    failed: (failure) => {
      throw failure;
    },
  });
  const header = ['plate', 'title'];
  const records = csvRecords(`${plate},Rear pads\n${plate},Belt\nHB 0 NONE,Tyres\n`, ',');
  const file = { kind: 'followUps', fileName: 'old.csv', encoding: 'utf-8', separator: ',', header, records } as const;
  const importId = (await imports.add(shop.shopId, shop.ownerId, file)) ?? '';
  await imports.map(shop.shopId, importId, { plate: 0, title: 1 });
  for (;;) {
    const { rows } = await pool.query<{ state: string; version: number }>(
      'select state, version from import_batch where shop_id = $1 and id = $2',
      [shop.shopId, importId],
    );
    const [batch] = rows;
    if (batch?.state === 'checked') {
      await go(name, { importId, version: batch.version });
      return;
    }
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}
