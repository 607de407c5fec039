import type { ImportMapping } from '@holdfast/contract';
import { foldKey, type ImportKind } from '@holdfast/domain';
import type pg from 'pg';
import { v4 as uuidV4, v7 as uuidV7 } from 'uuid';
import type { CsvRecord } from '../csv/read-csv.js';
import { withShop } from '../database/pools.js';
import type { CheckedRow, CheckRun, ImportStore, KnownRows, NamedKeys, NewImport, StagedRow } from '../import/ports.js';
import { shopNow } from './head.js';
import { inShop } from './shop-transaction.js';

const chunk = 500;
const clearedAtOnce = 1_000;
/** What is beside the shop's rows holds names and numbers of people: it is not kept for longer than this. */
const keptDays = 30;

/** Nothing of the shop rests on these rows: a crash may lose the last of them, and commands need not wait for the disk. */
async function beside<T>(pool: pg.Pool, shopId: string, work: (client: pg.ClientBase) => Promise<T>): Promise<T> {
  return inShop(pool, shopId, async (client) => {
    await client.query('set local synchronous_commit = off');
    return work(client);
  });
}

const stageStatement = `insert into import_row (shop_id, import_id, number, cells, broken, state, problems, new_customer)
select $1, $2, r.number, r.cells, r.broken, 'staged', '[]', false
  from json_to_recordset($3::json) as r(number int, cells jsonb, broken text)`;

const keepStatement = `update import_row t set state = r.state, problems = r.problems, row_id = r."rowId", vehicle_id = r."vehicleId",
  plate_key = r."plateKey", vin = r.vin, customer_id = r."customerId", new_customer = r."newCustomer", name_key = r."nameKey",
  phone_key = r."phoneKey", contact_id = r."contactId", made = r.made
  from json_to_recordset($3::json) as r(number int, state text, problems jsonb, "rowId" uuid, "vehicleId" uuid, "plateKey" text,
    vin text, "customerId" uuid, "newCustomer" boolean, "nameKey" text, "phoneKey" text, "contactId" uuid, made jsonb)
 where t.shop_id = $1 and t.import_id = $2 and t.number = r.number and t.number between $4 and $5`;

/** Files of existing data beside the shop's rows. Nothing here touches the log or takes the lock on its head. */
export function makeImportStore(pool: pg.Pool, mostRows: number): ImportStore {
  return {
    stage: (shopId, personId, file) => stage(pool, mostRows, shopId, personId, file),
    startCheck: (shopId, importId, mapping) => startCheck(pool, shopId, importId, mapping),
    rowsAfter: ({ shopId, importId }, number, limit) =>
      withShop(pool, shopId, async (client) => {
        const { rows } = await client.query<StagedRow>(
          `select number, cells, broken from import_row
            where shop_id = $1 and import_id = $2 and number > $3 order by number limit $4`,
          [shopId, importId, number, limit],
        );
        return rows;
      }),
    known: (shopId, keys) => withShop(pool, shopId, (client) => known(client, shopId, keys)),
    keep: (run, rows) => keep(pool, run, rows),
    endCheck: ({ shopId, importId, checkId }, outcome) =>
      beside(pool, shopId, async (client) => {
        await client.query(
          `update import_batch set state = $4, check_id = null, version = version + 1
            where shop_id = $1 and id = $2 and check_id = $3 and state = 'checking'`,
          [shopId, importId, checkId, outcome],
        );
      }),
    discard: (shopId, importId) => discard(pool, shopId, importId),
  };
}

async function stage(
  pool: pg.Pool,
  mostRows: number,
  shopId: string,
  personId: string,
  file: NewImport,
): Promise<string | null> {
  await clearOld(pool, shopId);
  const importId = uuidV7();
  await beside(pool, shopId, async (client) => {
    await client.query(
      `insert into import_batch (shop_id, id, version, void, kind, file_name, encoding, separator, header, mapping, state,
         row_count, checked_count, good_count, bad_count, uploaded_at, uploaded_by_id)
       select $1, $2, 1, true, $3, $4, $5, $6, $7, $8, 'staged', 0, 0, 0, 0, ${shopNow}, $9 from head h where h.shop_id = $1`,
      [
        shopId,
        importId,
        file.kind,
        file.fileName,
        file.encoding,
        file.separator,
        JSON.stringify(file.header),
        JSON.stringify(file.mapping),
        personId,
      ],
    );
  });
  let number = 1;
  for (const records of inChunks(file.records, chunk)) {
    const rows = records.map(({ cells, broken }) => ({ number: (number += 1), cells, broken }));
    if (number - 1 > mostRows) {
      await clearRows(pool, shopId, importId);
      return null;
    }
    await beside(pool, shopId, (client) => client.query(stageStatement, [shopId, importId, JSON.stringify(rows)]));
  }
  await beside(pool, shopId, (client) =>
    client.query(
      'update import_batch set void = false, row_count = $3, version = version + 1 where shop_id = $1 and id = $2',
      [shopId, importId, number - 1],
    ),
  );
  return importId;
}

function* inChunks(records: Iterable<CsvRecord>, size: number): Generator<CsvRecord[]> {
  let gathered: CsvRecord[] = [];
  for (const record of records) {
    gathered.push(record);
    if (gathered.length < size) continue;
    yield gathered;
    gathered = [];
  }
  if (gathered.length > 0) yield gathered;
}

interface BatchRow {
  readonly kind: ImportKind;
  readonly header: readonly string[];
}

/** The row is locked, so that an acceptance under way is waited for and then seen. */
async function startCheck(
  pool: pg.Pool,
  shopId: string,
  importId: string,
  mapping: ImportMapping,
): Promise<CheckRun | 'ended' | null> {
  const checkId = uuidV4();
  return beside(pool, shopId, async (client) => {
    const { rows } = await client.query<BatchRow>(
      `update import_batch set state = 'checking', mapping = $3, check_id = $4, checked_count = 0, good_count = 0,
         bad_count = 0, version = version + 1
        where shop_id = $1 and id = $2 and not void and state in ('staged', 'checking', 'checked') returning kind, header`,
      [shopId, importId, JSON.stringify(mapping), checkId],
    );
    const batch = rows[0];
    if (batch) return { shopId, importId, checkId, mapping, ...batch };
    const there = await client.query('select from import_batch where shop_id = $1 and id = $2 and not void', [
      shopId,
      importId,
    ]);
    return there.rowCount === 0 ? null : 'ended';
  });
}

async function keep(pool: pg.Pool, run: CheckRun, rows: readonly CheckedRow[]): Promise<boolean> {
  const { shopId, importId, checkId } = run;
  const good = rows.filter(({ state }) => state === 'good').length;
  return beside(pool, shopId, async (client) => {
    const still = await client.query(
      `update import_batch set checked_count = checked_count + $4, good_count = good_count + $5, bad_count = bad_count + $6,
         version = version + 1
        where shop_id = $1 and id = $2 and check_id = $3 and state = 'checking'`,
      [shopId, importId, checkId, rows.length, good, rows.length - good],
    );
    if (still.rowCount === 0) return false;
    const range = [rows[0]?.number, rows.at(-1)?.number];
    await client.query(keepStatement, [shopId, importId, JSON.stringify(rows), ...range]);
    return true;
  });
}

async function known(client: pg.ClientBase, shopId: string, { plates, vins, names }: NamedKeys): Promise<KnownRows> {
  const vehicles = await client.query<{ plate_key: string; ids: string[] }>(
    `select plate_key, json_agg(distinct coalesce(merged_into_id, id)) as ids from vehicle
      where shop_id = $1 and plate_key = any($2) and not void group by plate_key`,
    [shopId, plates],
  );
  const sameVin = await client.query<{ vin: string }>(
    'select distinct vin from vehicle where shop_id = $1 and vin = any($2) and not void',
    [shopId, vins],
  );
  const customers = await client.query<{ name_key: string; id: string; phones: string[] }>(
    `select c.name_key, c.id, (select coalesce(json_agg(regexp_replace(k.phone, '\\D', '', 'g')), '[]'::json) from contact k
        where k.shop_id = $1 and k.customer_id = c.id and k.phone is not null and k.ended_at is null and not k.void) as phones
       from customer c where c.shop_id = $1 and c.name_key = any($2) and not c.void and c.erased_at is null
        and c.merged_into_id is null order by c.id`,
    [shopId, names],
  );
  const followUps = await client.query<{ vehicle_id: string; title: string }>(
    `select vehicle_id, title from follow_up where shop_id = $1 and vehicle_id = any($2) and state = 'open' and not void`,
    [shopId, vehicles.rows.flatMap(({ ids }) => ids)],
  );
  const byName = new Map<string, { id: string; phones: string[] }[]>();
  for (const { name_key, ...one } of customers.rows) byName.set(name_key, [...(byName.get(name_key) ?? []), one]);
  const titles = new Map<string, Set<string>>();
  for (const { vehicle_id: id, title } of followUps.rows) {
    titles.set(id, (titles.get(id) ?? new Set()).add(foldKey(title)));
  }
  return {
    plates: new Map(vehicles.rows.map(({ plate_key, ids }) => [plate_key, ids])),
    vins: new Set(sameVin.rows.map(({ vin }) => vin)),
    customers: byName,
    followUps: titles,
  };
}

async function discard(pool: pg.Pool, shopId: string, importId: string): Promise<boolean> {
  const found = await beside(pool, shopId, (client) =>
    client.query(
      `update import_batch set state = case when state = 'accepted' then state else 'discarded' end, check_id = null,
         version = version + 1 where shop_id = $1 and id = $2 and not void`,
      [shopId, importId],
    ),
  );
  if (found.rowCount === 0) return false;
  await clearRows(pool, shopId, importId);
  return true;
}

/** In pieces, so that no command waits for one large deletion. */
async function clearRows(pool: pg.Pool, shopId: string, importId: string): Promise<void> {
  const { rows } = await withShop(pool, shopId, (client) =>
    client.query<{ last: number | null }>(
      'select max(number) as last from import_row where shop_id = $1 and import_id = $2',
      [shopId, importId],
    ),
  );
  const last = rows[0]?.last ?? 0;
  for (let from = 0; from <= last; from += clearedAtOnce) {
    await beside(pool, shopId, (client) =>
      client.query('delete from import_row where shop_id = $1 and import_id = $2 and number between $3 and $4', [
        shopId,
        importId,
        from,
        from + clearedAtOnce - 1,
      ]),
    );
  }
}

/** Rows of files that were taken over, put aside, never finished or left lying. */
async function clearOld(pool: pg.Pool, shopId: string): Promise<void> {
  const { rows } = await withShop(pool, shopId, (client) =>
    client.query<{ id: string }>(
      `select b.id from import_batch b, head h where b.shop_id = $1 and h.shop_id = $1
          and (b.state = 'discarded' or b.uploaded_at < ${shopNow} - interval '${String(keptDays)} days')
          and exists (select from import_row r where r.shop_id = $1 and r.import_id = b.id)`,
      [shopId],
    ),
  );
  for (const { id } of rows) await clearRows(pool, shopId, id);
}
