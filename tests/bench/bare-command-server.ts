/**
 * The baseline of `command`: bare Fastify and bare pg, no framework and no rules. It takes the same head lock and
 * writes the same rows, log and key in one transaction as our `changePromisedTime`. Run as a process of its own;
 * prints its port.
 */
import fastify from 'fastify';
import pg from 'pg';

const pool = new pg.Pool({ connectionString: process.env['BARE_URL'], max: 8 });
await pool.query(`
create table if not exists head (shop_id uuid primary key, seq bigint not null, last_at timestamptz not null);
create table if not exists job (shop_id uuid, id uuid, version int not null, promised_at timestamptz, primary key (shop_id, id));
create table if not exists change (shop_id uuid, seq bigint, recorded_at timestamptz not null, command text not null, key uuid, subjects jsonb not null, facts jsonb not null, primary key (shop_id, seq));
create table if not exists change_rows (shop_id uuid, seq bigint, rows jsonb not null, staff text not null, wall text not null, primary key (shop_id, seq));
create table if not exists answer (shop_id uuid, sender uuid, key uuid, fingerprint text not null, body text not null, seq bigint not null, primary key (shop_id, sender, key))`);

interface Body {
  readonly shopId: string;
  readonly jobId: string;
  readonly version: number;
  readonly promisedAt: string;
}

// As long as ours for this command: the job's two images, and the wire texts for two audiences.
const image = 'x'.repeat(1_150);
const wire = 'x'.repeat(720);

const app = fastify({ bodyLimit: 262_144 });
app.post<{ Body: Body }>('/api/commands/changePromisedTime', async (request, reply) => {
  const { shopId, jobId, version, promisedAt } = request.body;
  const key = request.headers['idempotency-key'];
  const client = await pool.connect();
  try {
    await client.query('BEGIN');
    await client.query({
      name: 'lock',
      text: 'select seq from head where shop_id = $1 for no key update',
      values: [shopId],
    });
    const { rows } = await client.query<{ seq: string; stored: string | null; now: Date; version: number }>({
      name: 'read',
      text: `select h.seq, (select body from answer a where a.shop_id = $1 and a.sender = $2 and a.key = $3) as stored, clock_timestamp() as now, j.version
from head h join job j on j.shop_id = h.shop_id and j.id = $4 where h.shop_id = $1`,
      values: [shopId, shopId, key, jobId],
    });
    const row = rows[0];
    if (row?.version !== version) {
      await client.query('ROLLBACK');
      return await reply.code(412).send({});
    }
    const seq = Number(row.seq) + 1;
    const body = JSON.stringify({ seq, at: row.now.toISOString(), created: {}, flags: [], contested: [] });
    await client.query({
      name: 'update',
      text: 'update job set promised_at = $4, version = version + 1 where shop_id = $1 and id = $2 and version = $3',
      values: [shopId, jobId, version, promisedAt],
    });
    await client.query({
      name: 'log',
      text: `with h as (update head set seq = $2, last_at = $3 where shop_id = $1 returning shop_id),
c as (insert into change select $1, $2, $3, 'changePromisedTime', $4, '{"job":[]}', '{}' from h returning shop_id),
r as (insert into change_rows select $1, $2, to_jsonb($5::text), $6, $6 from c)
insert into answer select $1, $1, $4, 'fingerprint', $7, $2 from c`,
      values: [shopId, seq, row.now, key, image, wire, body],
    });
    await client.query('COMMIT');
    return await reply.header('content-type', 'application/json').send(body);
  } finally {
    client.release();
  }
});
app.post<{ Body: { shopId: string; jobId: string } }>('/job', async (request, reply) => {
  await pool.query('insert into head values ($1, 0, now()) on conflict do nothing', [request.body.shopId]);
  await pool.query('insert into job values ($1, $2, 1, null)', [request.body.shopId, request.body.jobId]);
  return reply.send({});
});
await app.listen({ port: Number(process.env['PORT']), host: '127.0.0.1' });
process.stdout.write('ready\n');
