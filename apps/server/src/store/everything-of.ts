/**
 * Every row that names a vehicle or a customer, for the few commands that go over all of them (two records become one,
 * personal data are erased): found by the columns of the tables, void rows too, whenever it was. One statement for each
 * table; it is rare.
 */
import { type Column, type Slices, type TableName, tableNames, tables } from '@holdfast/domain';
import type pg from 'pg';
import { readRow, rowOf, snake, storedTables } from './columns.js';
import type { TablesOfRows } from './shop-cache.js';

interface Ids {
  readonly customers: readonly string[];
  readonly vehicles: readonly string[];
  readonly jobs: readonly string[];
}

/** $1 shop, $2 vehicles, $3 customers: these, the records merged into them, what belongs to them, and its visits. */
const idsStatement = `WITH c AS (
  SELECT "id" FROM "customer" WHERE "shop_id" = $1 AND ("id" = ANY($3::uuid[]) OR "merged_into_id" = ANY($3::uuid[]))
), own AS (
  SELECT "id" FROM "vehicle" WHERE "shop_id" = $1 AND ("id" = ANY($2::uuid[]) OR "customer_id" IN (SELECT "id" FROM c))
), v AS (
  SELECT "id" FROM own UNION SELECT "id" FROM "vehicle" WHERE "shop_id" = $1 AND "merged_into_id" IN (SELECT "id" FROM own)
), j AS (
  SELECT "id" FROM "job" WHERE "shop_id" = $1 AND ("vehicle_id" IN (SELECT "id" FROM v) OR "customer_id" IN (SELECT "id" FROM c))
) SELECT ARRAY(SELECT "id" FROM c) AS customers, ARRAY(SELECT "id" FROM v) AS vehicles, ARRAY(SELECT "id" FROM j) AS jobs`;

const parameterOf = { customer: '$2', vehicle: '$3', job: '$4' } as const;
const isSubject = (name: string | null): name is keyof typeof parameterOf => name !== null && name in parameterOf;

/** For each table that names a customer, a vehicle or a visit, or is one of these: which of its rows do. */
const statements: readonly (readonly [TableName, string])[] = tableNames.flatMap((name) => {
  const named = Object.entries<Column<unknown>>(tables[name].columns).flatMap(([column, { ref }]) =>
    isSubject(ref) ? [`t."${snake(column)}" = ANY(${parameterOf[ref]}::uuid[])`] : [],
  );
  const itself = isSubject(name) ? [`t."id" = ANY(${parameterOf[name]}::uuid[])`] : [];
  const ways = [...itself, ...named];
  if (ways.length === 0) return [];
  const table = storedTables[name];
  // All three, so that each statement has the same parameters.
  const given = `cardinality($2::uuid[]) + cardinality($3::uuid[]) + cardinality($4::uuid[]) > 0`;
  const text = `SELECT ${readRow(table, 't')} AS row FROM ${table.sql} t WHERE t."shop_id" = $1 AND ${given} AND (${ways.join(' OR ')})`;
  return [[name, text] as const];
});

/** Null where a command asks for no such thing. */
export async function readEverythingOf(
  client: pg.ClientBase,
  shopId: string,
  { allOfVehicles, allOfCustomers }: Slices,
): Promise<TablesOfRows | null> {
  if (allOfVehicles === undefined && allOfCustomers === undefined) return null;
  const values = [shopId, allOfVehicles ?? [], allOfCustomers ?? []];
  const { rows } = await client.query<Ids>(idsStatement, values);
  const { customers, vehicles, jobs } = rows[0] ?? { customers: [], vehicles: [], jobs: [] };
  const content: Partial<Record<TableName, unknown[]>> = {};
  for (const [name, text] of statements) {
    const found = await client.query<{ row: unknown[] }>(text, [shopId, customers, vehicles, jobs]);
    content[name] = found.rows.map(({ row }) => rowOf(storedTables[name], row));
  }
  return content as TablesOfRows;
}
