import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { ProblemDetails, SessionView } from '@holdfast/contract';
import { startApp, jsonInit, signedIn, testPassword, type TestApp, type TestShop } from '../kit/app.js';

let app: TestApp;
let shop: TestShop;

beforeAll(async () => {
  app = await startApp();
  shop = await app.newShop('Quay Street');
});
afterAll(() => app.stop());

const signIn = (body: unknown, headers: Record<string, string> = {}) => {
  const init = jsonInit('POST', body);
  return app.request('/api/session', { ...init, headers: { ...init.headers, ...headers } });
};

describe('signing in', () => {
  it('tells who, in which shop, and exactly the commands and reads of the roles', async () => {
    const clerk = await shop.signIn('partsClerk');
    const { json } = await clerk.get('/api/session');
    const view = json as SessionView;
    expect(view.shop).toEqual({
      id: shop.id,
      name: 'Quay Street',
      zone: 'Europe/London',
      locale: 'en-GB',
      units: 'metric',
      currency: 'GBP',
    });
    expect(view.person.roles).toEqual(['partsClerk']);
    expect(view.may.commands).toContain('placeOrder');
    expect(view.may.commands).not.toContain('checkIn');
    expect(view.may.commands).not.toContain('setUpShop');
    expect(view.may.reads).toContain('board');
    expect(view.may.reads).not.toContain('bayTime');
  });

  it('sets a cookie that only our own host can set and no script can read', async () => {
    const answer = await signIn({ shop: 'Quay Street', name: 'Ola Ferrand', password: testPassword });
    const cookie = answer.headers.get('set-cookie') ?? '';
    expect(cookie).toMatch(/^__Host-holdfast=[0-9a-f-]{36}\.[\w-]{43}; /);
    for (const part of ['Path=/', 'Secure', 'HttpOnly', 'SameSite=Lax', 'Max-Age=43200'])
      expect(cookie).toContain(part);
    const byCookie = await app.request('/api/session', { headers: { cookie: cookie.split(';')[0] ?? '' } });
    expect(byCookie.status).toBe(200);
  });

  it('finds shop and person however their names are typed', async () => {
    expect((await signIn({ shop: 'quay-street', name: 'ólá  ferrand', password: testPassword })).status).toBe(200);
  });

  it('answers alike for an unknown shop, an unknown name and a wrong password', async () => {
    const answers = [
      await signIn({ shop: 'Nowhere', name: 'Ola Ferrand', password: testPassword }),
      await signIn({ shop: 'Quay Street', name: 'Nobody', password: testPassword }),
      await signIn({ shop: 'Quay Street', name: 'Ola Ferrand', password: 'not this one, surely' }),
    ];
    const told = answers.map(({ status, json }) => ({ ...(json as ProblemDetails), status, traceId: '' }));
    expect(told[0]).toMatchObject({ status: 401, code: 'session.notMatching' });
    expect(told[1]).toEqual(told[0]);
    expect(told[2]).toEqual(told[0]);
  });

  it('keeps no token and no password in the database', async () => {
    const client = await shop.signIn('desk');
    const { rows } = await app.database.superuser.query<{ text: string }>(
      `select coalesce(string_agg(t::text, ' '), '') as text from (
         select to_jsonb(s) t from session s union all select to_jsonb(a) from directory.account a
         union all select to_jsonb(c) from change c union all select to_jsonb(r) from change_rows r
         union all select to_jsonb(w) from answer w) x`,
    );
    expect(rows[0]?.text).toContain('argon2id');
    expect(rows[0]?.text).not.toContain(client.token.split('.')[1] ?? 'none');
    expect(rows[0]?.text).not.toContain(testPassword);
  });

  it('is refused over plain HTTP from elsewhere, with what to do', async () => {
    const { request } = await import('node:http');
    const { port } = new URL(app.url);
    const body = JSON.stringify({ shop: 'Quay Street', name: 'Ola Ferrand', password: testPassword });
    const asked = (headers: Record<string, string>) =>
      new Promise<{ status: number; problem: ProblemDetails }>((resolve, reject) => {
        const all = { 'content-type': 'application/json', 'content-length': String(body.length), ...headers };
        request({ host: '127.0.0.1', port, path: '/api/session', method: 'POST', headers: all }, (response) => {
          let text = '';
          response.on('data', (part: Buffer) => (text += part.toString()));
          response.on('end', () =>
            resolve({ status: response.statusCode ?? 0, problem: JSON.parse(text) as ProblemDetails }),
          );
        })
          .on('error', reject)
          .end(body);
      });
    for (const headers of [{ host: `shop.example:${port}` }, { 'x-forwarded-for': '192.0.2.7' }]) {
      const { status, problem } = await asked(headers);
      expect(status).toBe(403);
      expect(problem.code).toBe('session.needsHttps');
      expect(problem.detail).toContain('npm run tls');
    }
    expect(
      (await asked({ host: 'shop.example', 'x-forwarded-for': '192.0.2.7', 'x-forwarded-proto': 'https' })).status,
    ).toBe(200);
  });
});

describe('guessing', () => {
  it('waits longer after each wrong password beyond the fifth, also for the right one, and forgets at the right one', async () => {
    const victim = await shop.addPerson({ name: 'Vera Lind', roles: ['desk'] });
    const wrong = () => signIn({ shop: shop.name, name: 'Vera Lind', password: 'wrong, wrong and wrong' });
    for (let count = 0; count < 5; count += 1) expect((await wrong()).status).toBe(401);
    const sixth = await signIn({ shop: shop.name, name: 'Vera Lind', password: victim.password });
    expect(sixth.status).toBe(429);
    expect(sixth.json).toMatchObject({ code: 'session.wait' });
    expect(Number(sixth.headers.get('retry-after'))).toBe(1);
    await new Promise((resolve) => setTimeout(resolve, 1_100));
    expect((await wrong()).status).toBe(401);
    const { rows } = await app.database.superuser.query<{ failures: number; seconds: number }>(
      `select failures, extract(epoch from wait_until - now())::float8 as seconds from directory.sign_in_try
        where subject like 'account:%' and failures > 5`,
    );
    expect(rows).toHaveLength(1);
    expect(rows[0]?.seconds).toBeGreaterThan(1);
    await app.database.superuser.query('update directory.sign_in_try set wait_until = now()');
    await expect(
      signedIn(app.url, { shop: shop.name, name: 'Vera Lind', password: victim.password }),
    ).resolves.toBeDefined();
    const left = await app.database.superuser.query(
      `select from directory.sign_in_try where failures > 5 and subject like 'account:%'`,
    );
    expect(left.rows).toHaveLength(0);
  });

  it('counts tries at the same moment one by one', async () => {
    await app.database.superuser.query('delete from directory.sign_in_try');
    const answers = await Promise.all(
      Array.from({ length: 12 }, () =>
        signIn({ shop: shop.name, name: 'No Such', password: 'wrong, wrong and wrong' }),
      ),
    );
    expect(answers.filter(({ status }) => status === 401)).toHaveLength(5);
    expect(answers.filter(({ status }) => status === 429)).toHaveLength(7);
  });

  it('closes a sign-in after a hundred failures in a row, even to the right password, until the owner sets a new one', async () => {
    await app.database.superuser.query('delete from directory.sign_in_try');
    const person = await shop.addPerson({ name: 'Hanne Moe', roles: ['desk'] });
    await signIn({ shop: shop.name, name: 'Hanne Moe', password: 'wrong, wrong and wrong' });
    await app.database.superuser.query(
      `update directory.sign_in_try set failures = 99, wait_until = now() where subject like 'account:%'`,
    );
    expect((await signIn({ shop: shop.name, name: 'Hanne Moe', password: 'wrong, wrong and wrong' })).status).toBe(401);
    await app.database.superuser.query('update directory.sign_in_try set wait_until = now()');
    expect((await signIn({ shop: shop.name, name: 'Hanne Moe', password: person.password })).status).toBe(401);
    await app.database.superuser.query('delete from directory.sign_in_try');
    await shop.owner.accepted('changePerson', {
      personId: person.session.person.id,
      version: 1,
      password: 'a very different sentence',
    });
    expect((await signIn({ shop: shop.name, name: 'Hanne Moe', password: 'a very different sentence' })).status).toBe(
      200,
    );
  });
});

describe('signing out', () => {
  it('ends the session here at once and in another server process within a second', async () => {
    const other = await app.another();
    const client = await shop.addPerson({ name: 'Arne Vik', roles: ['technician'] });
    const there = client.on(other.url);
    expect((await there.get('/api/session')).status).toBe(200);
    const out = await client.request('/api/session', { method: 'DELETE' });
    expect(out.status).toBe(204);
    expect(out.headers.get('set-cookie')).toContain('Max-Age=0');
    expect((await client.get('/api/session')).status).toBe(401);
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect((await there.get('/api/session')).status).toBe(401);
    expect((await there.refused('startWork', { lineId: shop.id })).code).toBe('session.missing');
  });

  it('happens to everybody who leaves the shop, and their name no longer signs in', async () => {
    const client = await shop.addPerson({ name: 'Per Dahl', roles: ['technician'] });
    await shop.owner.accepted('changePerson', { personId: client.session.person.id, version: 1, active: false });
    expect((await client.get('/api/session')).status).toBe(401);
    expect((await signIn({ shop: shop.name, name: 'Per Dahl', password: client.password })).status).toBe(401);
  });

  it('happens to a person whose password was changed, and new roles hold at once', async () => {
    const client = await shop.addPerson({ name: 'Siri Holm', roles: ['desk'] });
    const personId = client.session.person.id;
    await shop.owner.accepted('changePerson', { personId, version: 1, roles: ['manager'] });
    const { json } = await client.get('/api/session');
    expect((json as SessionView).person.roles).toEqual(['manager']);
    await shop.owner.accepted('changePerson', { personId, version: 2, password: 'a very different sentence' });
    expect((await client.get('/api/session')).status).toBe(401);
  });

  it('comes by itself after an hour without use and after twelve hours with it', async () => {
    const idle = await shop.addPerson({ name: 'Idle Ingrid', roles: ['desk'] });
    const long = await shop.addPerson({ name: 'Long Lars', roles: ['desk'] });
    const set = (column: string, interval: string, personId: string) =>
      app.database.superuser.query(`update session set ${column} = now() - $1::interval where person_id = $2`, [
        interval,
        personId,
      ]);
    await set('seen_at', '59 minutes', idle.session.person.id);
    await set('started_at', '11 hours 59 minutes', long.session.person.id);
    const other = await app.another();
    expect((await long.on(other.url).get('/api/session')).status).toBe(200);
    await set('seen_at', '61 minutes', idle.session.person.id);
    await set('started_at', '12 hours 1 minute', long.session.person.id);
    const third = await app.another();
    expect((await idle.on(third.url).get('/api/session')).status).toBe(401);
    expect((await long.on(third.url).get('/api/session')).status).toBe(401);
  });
});

describe('a new password', () => {
  it.each([
    ['fourteen signs', 'password.tooShort'],
    ['passwordpassword1', 'password.common'],
    ['1234567890123456', 'password.common'],
    ['aaaaaaaaaaaaaaaaaa', 'password.common'],
    ['quay street 2026 2026', 'password.context'],
    ['x'.repeat(3) + 'ø'.repeat(254), 'password.tooLong'],
  ])('is refused with its reason: %j', async (password, code) => {
    const answer = await shop.owner.command('addPerson', {
      name: 'Somebody New',
      roles: ['desk'],
      password: password.slice(0, 257),
    });
    expect(answer.status).toBe(422);
    const problem = answer.json as ProblemDetails;
    expect(problem.errors?.[0]).toMatchObject({ pointer: '/password' });
    if (password.length <= 256) expect(problem.errors?.[0]?.code).toBe(code);
    expect(answer.text).not.toContain(password);
  });
});

describe('setting up', () => {
  it('makes one shop with the printed code, gives the same answer to the same key, and then awaits none', async () => {
    const fresh = await startApp({ real: true });
    try {
      const { setUpCode } = fresh.server;
      expect(setUpCode).toMatch(/^(\w{4}-){3}\w{4}$/);
      const page = () => fresh.request('/api/sign-in-page');
      expect((await page()).json).toMatchObject({ demo: false, setUp: true, secure: true });
      const input = (code: string) => ({
        code,
        shop: { name: 'Harbour', zone: 'Europe/Oslo', currency: 'NOK', units: 'metric', locale: 'en-GB' },
        owner: { name: 'Eli Strand', password: testPassword },
      });
      const key = '0198c0de-0000-7000-8000-000000000001';
      const setUp = (code: string, body = input(code), withKey = key) => {
        const init = jsonInit('POST', body);
        return fresh.request('/api/commands/setUpShop', {
          ...init,
          headers: { ...init.headers, 'idempotency-key': withKey },
        });
      };
      expect((await setUp('AAAA-AAAA-AAAA-AAAA')).json).toMatchObject({ code: 'setUp.codeWrong' });
      const first = await setUp((setUpCode ?? '').toLowerCase());
      expect(first.status).toBe(200);
      expect(first.headers.get('set-cookie')).toContain('__Host-holdfast=');
      const again = await setUp((setUpCode ?? '').toLowerCase());
      expect(again.text).toBe(first.text);
      expect(again.headers.get('idempotency-replayed')).toBe('true');
      expect((await page()).json).toMatchObject({ setUp: false });
      const more = await setUp(setUpCode ?? '', input(setUpCode ?? ''), '0198c0de-0000-7000-8000-000000000002');
      expect(more.json).toMatchObject({ code: 'setUp.notAwaited' });
      const owner = await signedIn(fresh.url, { shop: 'Harbour', name: 'Eli Strand', password: testPassword });
      expect(owner.session.shop.id).toBe((first.json as { created: { shop: string } }).created.shop);
      expect((await owner.request('/api/demo/clock', jsonInit('PUT', { rate: 0 }))).json).toMatchObject({
        code: 'demo.absent',
      });
      const { rows } = await fresh.database.superuser.query('select clock_rate from head');
      expect(rows).toEqual([{ clock_rate: null }]);
    } finally {
      await fresh.stop();
    }
  });

  it('spends the code after ten wrong tries', async () => {
    const fresh = await startApp({ real: true });
    try {
      const attempt = (code: string) => {
        const body = {
          code,
          shop: { name: 'Harbour', zone: 'Europe/Oslo', currency: 'NOK', units: 'metric', locale: 'en-GB' },
          owner: { name: 'Eli Strand', password: testPassword },
        };
        const init = jsonInit('POST', body);
        const key = '0198c0de-0000-7000-8000-000000000003';
        return fresh.request('/api/commands/setUpShop', {
          ...init,
          headers: { ...init.headers, 'idempotency-key': key },
        });
      };
      for (let count = 0; count < 10; count += 1)
        expect((await attempt('WRONG')).json).toMatchObject({ code: 'setUp.codeWrong' });
      expect((await attempt(fresh.server.setUpCode ?? '')).json).toMatchObject({ code: 'setUp.codeSpent' });
    } finally {
      await fresh.stop();
    }
  });
});

describe("a shop's own clock", () => {
  it('is set by owner or manager, never backwards', async () => {
    const other = await app.newShop('Clockwork');
    const at = new Date(Date.now() + 86_400_000).toISOString();
    await other.setClock(at);
    const made = await other.owner.accepted('addBay', { name: 'Bay 1', spots: 1, equipment: [] });
    expect(Date.parse(made.at) - Date.parse(at)).toBeLessThanOrEqual(1);
    expect(Date.parse(made.at)).toBeGreaterThanOrEqual(Date.parse(at));
    const back = await other.owner.request(
      '/api/demo/clock',
      jsonInit('PUT', { at: new Date().toISOString(), rate: 0 }),
    );
    expect(back.json).toMatchObject({ status: 409, code: 'clock.behind' });
    const desk = await other.signIn('desk');
    expect((await desk.request('/api/demo/clock', jsonInit('PUT', { rate: 1 }))).json).toMatchObject({
      code: 'role.mayNot',
    });
  });
});
