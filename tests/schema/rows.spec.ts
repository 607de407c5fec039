import { type Column, type ColumnKind, tableNames, tables } from '@holdfast/domain';
import { rowSchema } from '@holdfast/contract';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { snake } from '../../apps/server/src/store/columns.js';
import { freshDatabase, type FreshDatabase } from '../kit/database.js';

const typeOf: Readonly<Record<ColumnKind, string>> = {
  id: 'uuid',
  text: 'text',
  int: 'integer',
  instant: 'timestamp with time zone',
  day: 'date',
  decimal: 'numeric',
  bool: 'boolean',
  texts: 'ARRAY',
  json: 'jsonb',
};

describe('the row types of the domain, the wire and the database', () => {
  let db: FreshDatabase;
  beforeAll(async () => {
    db = await freshDatabase();
  });
  afterAll(() => db.drop());

  it.each(tableNames)('%s has the same columns, types and nulls in the database', async (name) => {
    const { rows } = await db.superuser.query<{ column_name: string; data_type: string; is_nullable: string }>(
      `select column_name, data_type, is_nullable from information_schema.columns
       where table_schema = 'public' and table_name = $1 and is_generated = 'NEVER' and column_name <> 'shop_id' order by 1`,
      [snake(name)],
    );
    const said = Object.entries<Column<unknown>>(tables[name].columns)
      .map(([column, { kind, nullable }]) => ({
        column_name: snake(column),
        data_type: typeOf[kind],
        is_nullable: nullable ? 'YES' : 'NO',
      }))
      .sort((a, b) => (a.column_name < b.column_name ? -1 : 1));
    expect(rows).toEqual(said);
  });

  it.each(tableNames)('%s has the same columns on the wire, but for the void mark', (name) => {
    const onWire = Object.keys(rowSchema(name).shape).sort();
    expect(onWire).toEqual(
      Object.keys(tables[name].columns)
        .filter((column) => column !== 'void')
        .sort(),
    );
  });
});
