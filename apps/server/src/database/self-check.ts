import type pg from 'pg';
import { appRole, directoryRole } from './roles.js';

/** Tables of the schema `public` that belong to no shop. */
const tablesWithoutShop = ['_prisma_migrations'];

/** Functions that run with their owner's rights. Each must set its own search_path and be reviewed before it is here. */
const trustedDefinerFunctions: string[] = [];

/**
 * Every table of shop data: all of `public` but the few above. The schema `directory` (shops, accounts, memberships)
 * stands outside the wall under a role of its own.
 */
const tenantTable = `c.relkind in ('r', 'p') and n.nspname = 'public' and c.relname <> all ($1::text[])`;

interface Check {
  /** Rows of one column `found`; none may come. */
  readonly sql: string;
  readonly values?: unknown[];
  readonly sentence: (found: string) => string;
}

const onTenantTables = { values: [tablesWithoutShop] };

const checks: readonly Check[] = [
  {
    sql: `select rolname as found from pg_roles where rolname = any ($1) and (rolsuper or rolbypassrls)`,
    values: [[appRole, directoryRole]],
    sentence: (found) => `The role ${found} may pass by row-level security.`,
  },
  {
    sql: `select r.rolname as found from pg_roles r
           where r.rolname = any ($1)
             and exists (select from pg_class c where c.relowner = r.oid and c.relkind in ('r', 'p', 'v', 'm'))`,
    values: [[appRole, directoryRole]],
    sentence: (found) => `The role ${found} owns tables, and an owner can lift row-level security.`,
  },
  {
    sql: `select r.rolname as found from pg_roles r where r.rolname = any ($1)
             and exists (select from pg_auth_members m where m.member = r.oid)`,
    values: [[appRole, directoryRole]],
    sentence: (found) => `The role ${found} is a member of another role and can take on its rights.`,
  },
  {
    sql: `select wanted.found from (select unnest($1::text[]) as setting, unnest($2::text[]) as found) wanted
           where coalesce(current_setting(wanted.setting)::interval, '0') = '0'::interval`,
    values: [
      ['lock_timeout', 'statement_timeout', 'idle_in_transaction_session_timeout'],
      ['waiting for a lock', 'a statement', 'idling in a transaction'],
    ],
    sentence: (found) => `The role ${appRole} has no limit of time for ${found}.`,
  },
  {
    ...onTenantTables,
    sql: `select c.relname as found from pg_class c join pg_namespace n on n.oid = c.relnamespace
           where ${tenantTable}
             and not exists (select from pg_attribute a
                              where a.attrelid = c.oid and a.attname = 'shop_id' and a.attnotnull and not a.attisdropped)`,
    sentence: (found) => `The table ${found} has no shop_id that is always filled in.`,
  },
  {
    ...onTenantTables,
    sql: `select c.relname as found from pg_class c join pg_namespace n on n.oid = c.relnamespace
           where ${tenantTable} and not (c.relrowsecurity and c.relforcerowsecurity)`,
    sentence: (found) => `The table ${found} is not under forced row-level security.`,
  },
  {
    sql: `select c.relname as found from pg_class c join pg_namespace n on n.oid = c.relnamespace
           where ${tenantTable}
             and not exists (select from pg_policy p where p.polrelid = c.oid and not p.polpermissive and p.polcmd = '*'
                              and (p.polroles = '{0}' or (select oid from pg_roles where rolname = $2) = any (p.polroles)))`,
    values: [tablesWithoutShop, appRole],
    sentence: (found) => `The table ${found} has no restrictive policy for ${appRole}.`,
  },
  {
    // Both ends must be tenant tables, and shop_id must be matched with shop_id.
    sql: `select format('%s of %s', k.conname, k.conrelid::regclass) as found
            from pg_constraint k join pg_class c on c.oid = k.conrelid join pg_namespace n on n.oid = c.relnamespace
           where ${tenantTable} and k.contype = 'f'
             and not exists (
               select from unnest(k.conkey, k.confkey) as pair (here, there)
                 join pg_attribute a on a.attrelid = k.conrelid and a.attnum = pair.here
                 join pg_attribute b on b.attrelid = k.confrelid and b.attnum = pair.there
                where a.attname = 'shop_id' and b.attname = 'shop_id')`,
    ...onTenantTables,
    sentence: (found) => `The foreign key ${found} does not carry shop_id.`,
  },
  {
    ...onTenantTables,
    sql: `select format('%s of %s', i.indexrelid::regclass, i.indrelid::regclass) as found
            from pg_index i join pg_class c on c.oid = i.indrelid join pg_namespace n on n.oid = c.relnamespace
           where ${tenantTable} and (i.indisunique or i.indisexclusion)
             and not exists (select from pg_attribute a
                              where a.attrelid = i.indrelid and a.attnum = i.indkey[0] and a.attname = 'shop_id')`,
    sentence: (found) => `The unique index ${found} does not start with shop_id.`,
  },
  {
    sql: `select c.relname as found from pg_class c join pg_namespace n on n.oid = c.relnamespace
           where n.nspname in ('public', 'directory') and c.relkind = 'v'
             and not coalesce(c.reloptions, '{}') && array['security_invoker=true', 'security_invoker=on', 'security_invoker=1']`,
    sentence: (found) => `The view ${found} reads with its owner's rights (security_invoker is not set).`,
  },
  {
    sql: `select c.relname as found from pg_class c join pg_namespace n on n.oid = c.relnamespace
           where n.nspname in ('public', 'directory') and c.relkind = 'm' and has_table_privilege($1, c.oid, 'SELECT')`,
    values: [appRole],
    sentence: (found) => `The materialised view ${found} can be read by ${appRole} and knows no row-level security.`,
  },
  {
    sql: `select p.oid::regprocedure::text as found from pg_proc p join pg_namespace n on n.oid = p.pronamespace
           where p.prosecdef and n.nspname not in ('pg_catalog', 'information_schema') and p.proname <> all ($1)`,
    values: [trustedDefinerFunctions],
    sentence: (found) => `The function ${found} runs with its owner's rights and is not on the list of those that may.`,
  },
  {
    sql: `select c.relname as found from pg_class c join pg_namespace n on n.oid = c.relnamespace
           where ${tenantTable} and has_table_privilege($2, c.oid, 'TRUNCATE')`,
    values: [tablesWithoutShop, appRole],
    sentence: (found) => `The role ${appRole} may empty the table ${found}, which row-level security does not govern.`,
  },
];

/**
 * Looks at the catalogue for every gap in the wall between shops and answers with one sentence for each; none means
 * that the wall stands. Run it on a pool of the application role: its own limits of time are looked at too.
 */
export async function selfCheck(pool: pg.Pool): Promise<string[]> {
  const sentences: string[] = [];
  for (const { sql, values, sentence } of checks) {
    const { rows } = await pool.query<{ found: string }>(sql, values ?? []);
    sentences.push(...rows.map(({ found }) => sentence(found)));
  }
  return sentences;
}
