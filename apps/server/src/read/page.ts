import type pg from 'pg';

/** A statement whose rows are the items of a page as JSON text, in order, each with the cursor that follows it. */
export interface PageStatement {
  readonly name: string;
  /** Its last parameter is the number of rows. */
  readonly text: string;
  readonly values: readonly unknown[];
}

interface PageRow {
  readonly item: string;
  readonly cursor: string;
}

/** The page as JSON text. One row more than fits is read, which tells whether there is another page. */
export async function readPage(client: pg.ClientBase, statement: PageStatement, size: number): Promise<string> {
  const { name, text, values } = statement;
  const { rows } = await client.query<PageRow>({ name, text, values: [...values, size + 1] });
  const page = rows.slice(0, size);
  const next = rows.length > size ? (page.at(-1)?.cursor ?? null) : null;
  return `{"items":[${page.map(({ item }) => item).join(',')}],"next":${JSON.stringify(next)}}`;
}
