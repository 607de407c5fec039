import type { Role } from '@holdfast/domain';
import { v7 as uuidV7 } from 'uuid';
import type { Database } from '../database/pools.js';
import { inShop } from '../store/shop-transaction.js';
import { zoneWhen } from '../store/zone-sql.js';
import { hashOfToken, newToken, shopOfToken } from './session-token.js';

type ShopClient = Parameters<Parameters<typeof inShop>[2]>[0];

/**
 * auth/ hides how people prove who they are: passwords, tokens, throttling, the code of the first set-up. It guarantees
 * that a session is of one shop and one active person, that only hashes are stored, and that what ends a session here
 * ends it in every server process within a second.
 */
export interface Session {
  readonly id: string;
  readonly shop: {
    readonly id: string;
    readonly name: string;
    readonly zone: string;
    readonly locale: 'en-GB' | 'en-US';
    readonly units: 'metric' | 'us';
    readonly currency: string;
  };
  readonly person: { readonly id: string; readonly name: string; readonly roles: readonly Role[] };
}

/** Whose sessions are no longer what they were. Null: notices may have been missed, so any of them. */
export type SessionsChanged = {
  readonly shopId: string;
  readonly personId: string | null;
  readonly sessionId: string | null;
} | null;

export interface Sessions {
  /**
   * The session of a token as it stands now (at most 5 s old), or null where it ended, ran out (12 h after sign-in, 60
   * minutes without a request; a wall screen 30 days) or never was. A request counts as use; a look that does not, such as a
   * socket's own check, says `use: false`.
   */
  of(token: string, options?: { readonly use: boolean }): Promise<Session | null>;
  /** A new session for an active person of the shop; null where there is no such person. */
  start(shopId: string, personId: string): Promise<Started | null>;
  end(session: Session): Promise<void>;
  /** Ends every session of a person, but `except`. */
  endAllOf(shopId: string, personId: string, except: string | null): Promise<void>;
  /** Roles or name of a person changed: every process looks again. */
  changed(shopId: string, personId: string): Promise<void>;
  /** Called in every process within a second of a change; sockets ask `of` again and close where it says null. */
  onChanged(listener: (changed: SessionsChanged) => void): void;
}

export interface Started {
  readonly token: string;
  readonly session: Session;
  readonly maxAgeSeconds: number;
}

const channel = 'holdfast_sessions';
const rememberMs = 5_000;
const mostRemembered = 10_000;
const hourMs = 3_600_000;
const staffLimits = { wholeMs: 12 * hourMs, idleMs: hourMs };
const wallLimits = { wholeMs: 30 * 24 * hourMs, idleMs: 30 * 24 * hourMs };
/** Use is written down this often, not with each request. */
const noteUseAfterMs = 60_000;

interface Remembered {
  readonly session: Session;
  readonly until: number;
  readonly usedUntil: number;
}

interface SessionRow {
  id: string;
  age_ms: number;
  idle_ms: number;
  person_id: string;
  person_name: string;
  roles: Role[];
  name: string;
  zone: string;
  locale: 'en-GB' | 'en-US';
  units: 'metric' | 'us';
  currency: string;
}

const lookUp = `
  select s.id, p.id as person_id, p.name as person_name, p.roles, h.name, ${zoneWhen('clock_timestamp()', 'h.zone')} as zone, h.locale, h.units, h.currency,
         (extract(epoch from clock_timestamp() - s.started_at) * 1000)::float8 as age_ms,
         (extract(epoch from clock_timestamp() - s.seen_at) * 1000)::float8 as idle_ms
    from session s
    join person p on p.shop_id = s.shop_id and p.id = s.person_id and p.active and not p.void
    join shop h on h.shop_id = s.shop_id and not h.void
   where s.shop_id = $1 and s.token_hash = $2 and s.ended_at is null and s.expires_at > clock_timestamp()`;

const insert = `
  insert into session (shop_id, id, token_hash, person_id, started_at, seen_at, expires_at)
  select p.shop_id, $3, $4, p.id, clock_timestamp(), clock_timestamp(),
         clock_timestamp() + case when p.roles = '["wallScreen"]' then interval '30 days' else interval '12 hours' end
    from person p where p.shop_id = $1 and p.id = $2 and p.active and not p.void
  returning id`;

/** Sessions in the database, remembered for a few seconds; `now` is this process's own clock in epoch ms. */
export async function openSessions(
  database: Pick<Database, 'app' | 'listen'>,
  now: () => number = Date.now,
): Promise<Sessions> {
  const sessions = new RememberedSessions(database.app, now);
  await database.listen(channel, (payload) => {
    sessions.forget(payload === undefined ? null : (JSON.parse(payload) as SessionsChanged));
  });
  return sessions;
}

class RememberedSessions implements Sessions {
  private readonly remembered = new Map<string, Remembered>();
  private readonly underway = new Map<string, Promise<Session | null>>();
  private readonly listeners: ((changed: SessionsChanged) => void)[] = [];
  /** A look that began before a change must not be remembered after it. */
  private generation = 0;

  constructor(
    private readonly pool: Database['app'],
    private readonly now: () => number,
  ) {}

  of(token: string, { use } = { use: true }): Promise<Session | null> {
    const known = this.remembered.get(token);
    const until = use ? known?.usedUntil : known?.until;
    if (known !== undefined && until !== undefined && until > this.now()) return Promise.resolve(known.session);
    const key = `${String(use)} ${token}`;
    const asked = this.underway.get(key);
    if (asked !== undefined) return asked;
    const asking = this.look(token, use).finally(() => this.underway.delete(key));
    this.underway.set(key, asking);
    return asking;
  }

  async start(shopId: string, personId: string): Promise<Started | null> {
    const token = newToken(shopId);
    const session = await inShop(this.pool, shopId, async (client) => {
      // Of what ended long ago nothing is needed; the rows of this person are at hand.
      await client.query(
        `delete from session where shop_id = $1 and person_id = $2 and expires_at < clock_timestamp() - interval '30 days'`,
        [shopId, personId],
      );
      await client.query(insert, [shopId, personId, uuidV7(), hashOfToken(token)]);
      return find(client, shopId, token, false);
    });
    if (session === null) return null;
    return { token, session, maxAgeSeconds: limitsOf(session.person.roles).wholeMs / 1000 };
  }

  async end({ id, shop, person }: Session): Promise<void> {
    await this.change({ shopId: shop.id, personId: person.id, sessionId: id }, async (client) => {
      await client.query(
        'update session set ended_at = clock_timestamp() where shop_id = $1 and id = $2 and ended_at is null',
        [shop.id, id],
      );
    });
  }

  async endAllOf(shopId: string, personId: string, except: string | null): Promise<void> {
    await this.change({ shopId, personId, sessionId: null }, async (client) => {
      await client.query(
        `update session set ended_at = clock_timestamp()
          where shop_id = $1 and person_id = $2 and ended_at is null and ($3::uuid is null or id <> $3)`,
        [shopId, personId, except],
      );
    });
  }

  changed(shopId: string, personId: string): Promise<void> {
    return this.change({ shopId, personId, sessionId: null }, () => Promise.resolve());
  }

  onChanged(listener: (changed: SessionsChanged) => void): void {
    this.listeners.push(listener);
  }

  forget(changed: SessionsChanged): void {
    this.generation += 1;
    for (const [token, { session }] of this.remembered) {
      if (changed === null || matches(session, changed)) this.remembered.delete(token);
    }
    for (const listener of this.listeners) listener(changed);
  }

  /** Writes, and tells every process with the commit. */
  private async change(
    changed: NonNullable<SessionsChanged>,
    write: (client: ShopClient) => Promise<void>,
  ): Promise<void> {
    await inShop(this.pool, changed.shopId, async (client) => {
      await write(client);
      await client.query('select pg_notify($1, $2)', [channel, JSON.stringify(changed)]);
    });
    this.forget(changed);
  }

  private async look(token: string, use: boolean): Promise<Session | null> {
    const shopId = shopOfToken(token);
    if (shopId === null) return null;
    const began = this.generation;
    const session = await inShop(this.pool, shopId, (client) => find(client, shopId, token, use));
    if (session === null || began !== this.generation) return session;
    const oldest = this.remembered.size >= mostRemembered ? this.remembered.keys().next().value : undefined;
    if (oldest !== undefined) this.remembered.delete(oldest);
    const until = this.now() + rememberMs;
    this.remembered.set(token, { session, until, usedUntil: use ? until : 0 });
    return session;
  }
}

async function find(client: ShopClient, shopId: string, token: string, use: boolean): Promise<Session | null> {
  const { rows } = await client.query<SessionRow>(lookUp, [shopId, hashOfToken(token)]);
  const row = rows[0];
  if (row === undefined) return null;
  const { wholeMs, idleMs } = limitsOf(row.roles);
  if (row.age_ms >= wholeMs || row.idle_ms >= idleMs) return null;
  if (use && row.idle_ms > noteUseAfterMs) {
    await client.query('update session set seen_at = clock_timestamp() where shop_id = $1 and id = $2', [
      shopId,
      row.id,
    ]);
  }
  const { name, zone, locale, units, currency } = row;
  return {
    id: row.id,
    shop: { id: shopId, name, zone, locale, units, currency },
    person: { id: row.person_id, name: row.person_name, roles: row.roles },
  };
}

/** By the roles as they are now, so that a wall screen made a manager does not keep thirty days. */
function limitsOf(roles: readonly Role[]): typeof staffLimits {
  return roles.length > 0 && roles.every((role) => role === 'wallScreen') ? wallLimits : staffLimits;
}

function matches(session: Session, changed: NonNullable<SessionsChanged>): boolean {
  return (
    session.shop.id === changed.shopId &&
    (changed.personId === null || session.person.id === changed.personId) &&
    (changed.sessionId === null || session.id === changed.sessionId)
  );
}
