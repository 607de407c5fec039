import type pg from 'pg';

/**
 * What Prisma's schema language cannot say, so it is looked for in the migrations only and has tests of its own:
 * generated columns (ranges that carry exclusion constraints), check and exclusion constraints, keys that are checked at
 * the end of the transaction (DEFERRABLE), policies, triggers, functions, extensions. They are simply not in the sentences below.
 */
const ourTables = `n.nspname in ('public', 'directory') and c.relkind in ('r', 'p') and c.relname <> '_prisma_migrations'`;

const sentences = [
  `select format('table %I.%I', n.nspname, c.relname) as said
     from pg_class c join pg_namespace n on n.oid = c.relnamespace where ${ourTables}`,
  // CURRENT_TIMESTAMP and now() are the same function.
  `select format('column %I.%I.%I %s%s%s', n.nspname, c.relname, a.attname, format_type(a.atttypid, a.atttypmod),
            case when a.attnotnull then ' not null' else '' end,
            coalesce(' default ' || replace(pg_get_expr(d.adbin, d.adrelid), 'CURRENT_TIMESTAMP', 'now()'), '')) as said
     from pg_attribute a join pg_class c on c.oid = a.attrelid join pg_namespace n on n.oid = c.relnamespace
     left join pg_attrdef d on d.adrelid = a.attrelid and d.adnum = a.attnum
    where ${ourTables} and a.attnum > 0 and not a.attisdropped and a.attgenerated = ''`,
  `select format('%s %I.%I: %s', case k.contype when 'p' then 'primary key' else 'foreign key' end,
            n.nspname, c.relname, regexp_replace(pg_get_constraintdef(k.oid), '( NOT)? DEFERRABLE.*', '')) as said
     from pg_constraint k join pg_class c on c.oid = k.conrelid join pg_namespace n on n.oid = c.relnamespace
    where ${ourTables} and k.contype in ('p', 'f')`,
  `select format('unique index: %s', regexp_replace(pg_get_indexdef(i.indexrelid), ' INDEX \\S+ ON ', ' ON ')) as said
     from pg_index i join pg_class c on c.oid = i.indrelid join pg_namespace n on n.oid = c.relnamespace
    where ${ourTables} and i.indisunique and not i.indisprimary`,
  `select format('enum %I.%I: %s', n.nspname, t.typname, string_agg(e.enumlabel, ', ' order by e.enumsortorder)) as said
     from pg_type t join pg_enum e on e.enumtypid = t.oid join pg_namespace n on n.oid = t.typnamespace
    where n.nspname in ('public', 'directory') group by n.nspname, t.typname`,
];

/**
 * Everything that both the migrations and Prisma's schema say about a database, one sentence each, in order: tables,
 * columns with type, nullability and default, primary and foreign keys with their actions, unique indexes with their
 * conditions, enums. Names of constraints and indexes are left out.
 */
export async function catalogueOf(pool: pg.Pool): Promise<string[]> {
  const answers = [];
  for (const sql of sentences) answers.push((await pool.query<{ said: string }>(sql)).rows);
  return answers
    .flat()
    .map(({ said }) => said)
    .sort();
}
