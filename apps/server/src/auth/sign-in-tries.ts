import { createHash } from 'node:crypto';
import type { Database } from '../database/pools.js';

/**
 * Counts failed sign-ins in the database, so that several server processes count together. A try is counted before the
 * password is looked at and forgiven when it was right: a hundred tries at the same moment are a hundred tries.
 */
export interface SignInTries {
  /** Counts one more try, or says for how many seconds none is taken. */
  begin(subject: TrySubject): Promise<{ readonly failures: number } | { readonly waitSeconds: number }>;
  /** The password was right. */
  forgive(subject: TrySubject): Promise<void>;
  /** Drops counts that say nothing any more: names and addresses that were mistyped a few times a day ago. */
  cleanUp(): Promise<void>;
}

export interface TrySubject {
  readonly key: string;
  /** Tries without a wait. */
  readonly free: number;
}

/** After the free tries 1, 2, 4 … and at most this many seconds. */
const longestWaitSeconds = 60;
/** NIST SP 800-63B-4, 3.2.2: at most a hundred failures in a row, then the password no longer opens. */
export const mostFailures = 100;

/** One sign-in by name, whether or not there is anybody of that name. */
export function accountSubject(shopKey: string, nameKey: string): TrySubject {
  const name = createHash('sha256')
    .update(JSON.stringify([shopKey, nameKey]))
    .digest('base64url');
  return { key: `account:${name}`, free: 5 };
}

/** A whole shop often stands behind one address, so an address has more free tries than a person. */
export function addressSubject(address: string): TrySubject {
  return { key: `address:${address}`, free: 20 };
}

const count = `
  insert into directory.sign_in_try as t (subject, failures, wait_until) values ($1, 1, clock_timestamp())
  on conflict (subject) do update
    set failures = t.failures + 1,
        wait_until = clock_timestamp() + case when t.failures + 1 < $2 then interval '0'
          else least($3, power(2, least(t.failures + 1 - $2, 30))) * interval '1 second' end
    where t.wait_until <= clock_timestamp()
  returning failures`;

export function openSignInTries(database: Pick<Database, 'directory'>): SignInTries {
  const pool = database.directory;
  return {
    async begin({ key, free }) {
      const counted = await pool.query<{ failures: number }>(count, [key, free, longestWaitSeconds]);
      const failures = counted.rows[0]?.failures;
      if (failures !== undefined) return { failures };
      const { rows } = await pool.query<{ seconds: number }>(
        `select ceil(extract(epoch from wait_until - clock_timestamp()))::float8 as seconds
           from directory.sign_in_try where subject = $1`,
        [key],
      );
      return { waitSeconds: Math.max(1, rows[0]?.seconds ?? 1) };
    },
    async forgive({ key }) {
      await pool.query('delete from directory.sign_in_try where subject = $1', [key]);
    },
    async cleanUp() {
      await pool.query(
        `delete from directory.sign_in_try
          where wait_until < clock_timestamp() - interval '1 day' and (failures <= 5 or subject like 'address:%')`,
      );
    },
  };
}
