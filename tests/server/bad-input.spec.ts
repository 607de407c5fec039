import { afterAll, beforeAll, beforeEach, afterEach, describe, expect, it } from '@jest/globals';
import { commandNames, problemCodes, problemType, type ProblemDetails } from '@holdfast/contract';
import { randomUUID } from 'node:crypto';
import { connect } from 'node:net';
import { startApp, jsonInit, type HttpAnswer, type TestApp, type TestShop } from '../kit/app.js';

let app: TestApp;
let shop: TestShop;
let other: TestShop;
let bayId: string;
let otherBayId: string;
let before: string;

const bay = { spots: 1, equipment: [] };

/** Everything the database holds but what use itself writes down: sessions and counts of sign-in tries. */
async function contents(): Promise<string> {
  const { rows: tables } = await app.database.superuser.query<{ name: string }>(
    `select format('%I.%I', schemaname, tablename) as name from pg_tables
      where schemaname in ('public', 'directory') and tablename not in ('session', 'sign_in_try', '_prisma_migrations') order by 1`,
  );
  const counted = tables
    .map(({ name }) => `select '${name}' as name, count(*)::int as count from ${name}`)
    .join(' union all ');
  const { rows: counts } = await app.database.superuser.query(counted);
  const { rows: heads } = await app.database.superuser.query(
    'select shop_id, seq, config_seq, last_at from head order by 1',
  );
  return JSON.stringify([counts, heads]);
}

function post(name: string, body: string, headers: Record<string, string> = {}): Promise<HttpAnswer> {
  const all = { 'content-type': 'application/json', 'idempotency-key': randomUUID(), ...headers };
  return shop.owner.request(`/api/commands/${name}`, { method: 'POST', headers: all, body });
}

function expectProblem(answer: HttpAnswer, status: number, code: string): ProblemDetails {
  expect(answer.headers.get('content-type')).toBe('application/problem+json');
  const problem = answer.json as ProblemDetails;
  expect({ status: answer.status, code: problem.code }).toEqual({ status, code });
  expect(problem.status).toBe(status);
  expect(problemCodes.map(problemType)).toContain(problem.type);
  expect(problem.traceId).not.toBe('');
  expect(problem.detail).toMatch(/\.$/);
  expect(problem.detail).not.toMatch(/^Error/);
  return problem;
}

beforeAll(async () => {
  app = await startApp();
  shop = await app.newShop('Here');
  other = await app.newShop('There');
  bayId = (await shop.owner.accepted('addBay', { name: 'Bay 1', ...bay })).created['bay'] ?? '';
  otherBayId = (await other.owner.accepted('addBay', { name: 'Bay 1', ...bay })).created['bay'] ?? '';
});
afterAll(() => app.stop());

describe('what cannot be taken leaves no trace and says what is wrong', () => {
  beforeEach(async () => {
    before = await contents();
  });
  afterEach(async () => {
    expect(await contents()).toBe(before);
  });

  it('a field that the command does not know', async () => {
    const problem = expectProblem(
      await post('addBay', JSON.stringify({ name: 'Bay 2', ...bay, colour: 'red' })),
      422,
      'body.invalid',
    );
    expect(problem.errors).toEqual([{ pointer: '/colour', code: 'unrecognized_keys', message: expect.any(String) }]);
  });

  it('fields of the wrong type, each named by its place and never repeated', async () => {
    const answer = await post('addBay', JSON.stringify({ name: 7, spots: 'canary', equipment: [{ kind: 'canary' }] }));
    const problem = expectProblem(answer, 422, 'body.invalid');
    expect(problem.errors?.map(({ pointer }) => pointer)).toEqual(
      expect.arrayContaining(['/name', '/spots', '/equipment/0/kind', '/equipment/0/inUse']),
    );
    expect(answer.text).not.toContain('canary');
  });

  it.each(['null', '[]', '"text"', '7', 'true'])('a body that is JSON but no object: %s', async (body) => {
    expectProblem(await post('addBay', body), 422, 'body.invalid');
  });

  it.each(['', '{', '{"name":"Bay 2",}', '{"__proto__":{"spots":1}}', '{"constructor":{"prototype":{}}}', '\u0000'])(
    'a body that is not well-formed or would reach into prototypes: %j',
    async (body) => {
      expectProblem(await post('addBay', body), 400, 'body.malformed');
    },
  );

  it.each([
    ['text/plain', '{}'],
    ['application/x-www-form-urlencoded', 'name=Bay'],
    ['application/xml', '<bay/>'],
    ['multipart/form-data; boundary=x', '--x\r\nContent-Disposition: form-data; name="a"\r\n\r\nb\r\n--x--\r\n'],
  ])('a body that says it is %s', async (type, body) => {
    expectProblem(await post('addBay', body, { 'content-type': type }), 415, 'body.notJson');
  });

  it('a body above 256 kB', async () => {
    expectProblem(await post('addBay', JSON.stringify({ name: 'x'.repeat(300_000) })), 413, 'body.tooLarge');
  });

  it('text with signs that nobody types', async () => {
    for (const name of ['Bay\u0000', 'Bay\u0007', '   ', 'Bay \ud800']) {
      expectProblem(await post('addBay', JSON.stringify({ name, ...bay })), 422, 'body.invalid');
    }
  });

  it('a key that is missing, no UUID or given twice', async () => {
    const body = JSON.stringify({ name: 'Bay 2', ...bay });
    for (const key of ['', 'one', `${randomUUID()}, ${randomUUID()}`]) {
      expectProblem(await post('addBay', body, { 'idempotency-key': key }), 400, 'key.missing');
    }
    const init = jsonInit('POST', { name: 'Bay 2', ...bay });
    expectProblem(await shop.owner.request('/api/commands/addBay', init), 400, 'key.missing');
  });

  it('another version of the contract, and headers that cannot be read', async () => {
    const body = JSON.stringify({ name: 'Bay 2', ...bay });
    expectProblem(await post('addBay', body, { 'holdfast-contract': '99' }), 409, 'contract.reload');
    expectProblem(await post('addBay', body, { 'holdfast-contract': 'new' }), 400, 'header.invalid');
    expectProblem(await post('addBay', body, { 'holdfast-device': 'x'.repeat(61) }), 400, 'header.invalid');
    expectProblem(await post('addBay', body, { 'holdfast-sent-at': 'noon' }), 400, 'header.invalid');
  });

  it('a command that does not exist, also by a name that every object has', async () => {
    for (const name of ['openDoor', 'constructor', '__proto__', 'toString', 'a'.repeat(101), '%00', 'addBay%2F..']) {
      const answer = await post(name, '{}');
      expect(answer.status).toBe(404);
      expect(['command.unknown', 'path.unknown']).toContain((answer.json as ProblemDetails).code);
    }
  });

  it('an address that does not exist, and a method that one does not take', async () => {
    expectProblem(await app.request('/api/nothing'), 404, 'path.unknown');
    expectProblem(await app.request('/api/%'), 404, 'path.unknown');
    expectProblem(await app.request('/api/../../etc/passwd%00'), 404, 'path.unknown');
    const wrong = await app.request('/api/commands/addBay');
    expectProblem(wrong, 405, 'method.notAllowed');
    expect(wrong.headers.get('allow')).toBe('POST');
    expectProblem(await app.request('/api/session', { method: 'PUT' }), 405, 'method.notAllowed');
  });

  it('what is no HTTP at all', async () => {
    const { port, hostname } = new URL(app.url);
    const text = await new Promise<string>((resolve, reject) => {
      const socket = connect(Number(port), hostname, () => socket.end('NONSENSE\r\n\r\n'));
      let heard = '';
      socket.on('data', (part) => (heard += part.toString()));
      socket.on('end', () => resolve(heard));
      socket.on('error', reject);
    });
    expect(text).toMatch(/^HTTP\/1.1 400 /);
    expect(text).toContain('urn:holdfast:problem:request.malformed');
  });

  it('a request of nobody, or with a token that is none', async () => {
    const body = JSON.stringify({ name: 'Bay 2', ...bay });
    const cutShort = shop.owner.token.slice(0, -1);
    for (const token of ['', 'x', cutShort, `${other.id}.${shop.owner.token.split('.')[1] ?? ''}`, 'a'.repeat(5_000)]) {
      const headers = {
        'content-type': 'application/json',
        'idempotency-key': randomUUID(),
        authorization: `Bearer ${token}`,
      };
      expectProblem(
        await app.request('/api/commands/addBay', { method: 'POST', headers, body }),
        401,
        'session.missing',
      );
    }
  });

  it('a request from a page of another site', async () => {
    const body = JSON.stringify({ name: 'Bay 2', ...bay });
    expectProblem(await post('addBay', body, { origin: 'https://elsewhere.example' }), 403, 'site.foreign');
    expectProblem(await post('addBay', body, { origin: 'null' }), 403, 'site.foreign');
  });

  it('a row of another shop: there is no such row here', async () => {
    const problem = await shop.owner.refused('changeBay', { bayId: otherBayId, version: 1, name: 'Mine' });
    expect(problem).toMatchObject({ status: 404, code: 'row.notFound' });
    const unknown = await shop.owner.refused('changeBay', { bayId: randomUUID(), version: 1, name: 'Mine' });
    expect({ ...unknown, traceId: '', refusals: [] }).toEqual({ ...problem, traceId: '', refusals: [] });
  });

  it('a turn without the version of its row', async () => {
    expect(await shop.owner.refused('changeBay', { bayId, name: 'Bay One' })).toMatchObject({
      status: 428,
      code: 'row.versionMissing',
    });
  });

  it('a role that may not', async () => {
    const technician = await shop.signIn('technician');
    before = await contents();
    expect(await technician.refused('addBay', { name: 'Bay 2', ...bay })).toMatchObject({
      status: 403,
      code: 'role.mayNot',
    });
  });
});

describe('a command sent again', () => {
  it('is answered byte for byte alike under its key, quoted or not, and is refused with another body or name', async () => {
    const key = randomUUID();
    const first = await shop.owner.command('addBay', { name: 'Bay 2', ...bay }, { key });
    const again = await shop.owner.command('addBay', { ...bay, name: 'Bay 2' }, { key: `"${key.toUpperCase()}"` });
    expect(first.status).toBe(200);
    expect(first.headers.get('idempotency-replayed')).toBeNull();
    expect(again.text).toBe(first.text);
    expect(again.headers.get('idempotency-replayed')).toBe('true');
    before = await contents();
    expectProblem(await shop.owner.command('addBay', { name: 'Bay 3', ...bay }, { key }), 422, 'key.usedOtherwise');
    expectProblem(
      await shop.owner.command('changeBay', { bayId, version: 1, name: 'Bay 3' }, { key }),
      422,
      'key.usedOtherwise',
    );
    expect(await contents()).toBe(before);
  });

  it('is refused on an old version of its row, with the row as it stands', async () => {
    await shop.owner.accepted('changeBay', { bayId, version: 1, name: 'Bay One' });
    before = await contents();
    const problem = await shop.owner.refused('changeBay', { bayId, version: 1, name: 'Bay Uno' });
    expect(problem).toMatchObject({
      status: 412,
      code: 'row.stale',
      current: { table: 'bay', row: { id: bayId, version: 2, name: 'Bay One' } },
    });
    expect(await contents()).toBe(before);
  });
});

describe('every command', () => {
  it.each(commandNames.filter((name) => name !== 'setUpShop'))(
    '%s refuses an empty and an unknown input, changing nothing',
    async (name) => {
      before = await contents();
      for (const input of [{ version: 'x' }, { nonsense: true }, { jobId: '../../x' }]) {
        const answer = await post(name, JSON.stringify(input));
        expectProblem(answer, 422, 'body.invalid');
      }
      expect(await contents()).toBe(before);
    },
  );
});

describe('a photo', () => {
  const send = (bytes: Buffer, headers: Record<string, string> = {}) => {
    const form = new FormData();
    form.append('photo', new Blob([new Uint8Array(bytes)]), '../../photo.jpg');
    return shop.owner.request('/api/uploads', { method: 'POST', body: form, headers });
  };

  it('is drawn anew, upright and without what the camera wrote, and seen by its own shop alone', async () => {
    const { default: sharp } = await import('sharp');
    const picture = await sharp({ create: { width: 3_000, height: 1_000, channels: 3, background: '#808080' } })
      .withExif({ IFD0: { Copyright: 'canary' } })
      .withMetadata({ orientation: 6 })
      .jpeg()
      .toBuffer();
    expect(picture.toString('latin1')).toContain('canary');
    const answer = await send(picture);
    expect(answer.status).toBe(200);
    const { content, width, height } = answer.json as { content: string; width: number; height: number };
    expect([width, height]).toEqual([853, 2_560]);
    const bytes = async (path: string) => {
      const response = await fetch(`${app.url}${path}`, { headers: { authorization: `Bearer ${shop.owner.token}` } });
      expect(response.headers.get('cache-control')).toBe('private, max-age=31536000, immutable');
      return Buffer.from(await response.arrayBuffer());
    };
    expect((await bytes(`/api/photos/${content}`)).toString('latin1')).not.toContain('canary');
    const { height: small } = await sharp(await bytes(`/api/photos/${content}?size=small`)).metadata();
    expect(small).toBe(480);
    expectProblem(await other.owner.get(`/api/photos/${content}`), 404, 'photo.unknown');
    expectProblem(await app.request(`/api/photos/${content}`), 401, 'session.missing');
  });

  it('is refused when it is none, is cut short, unpacks too far or is too large', async () => {
    const { default: sharp } = await import('sharp');
    const whole = await sharp({ create: { width: 400, height: 400, channels: 3, background: '#123456' } })
      .png()
      .toBuffer();
    const huge = await sharp({ create: { width: 9_000, height: 9_000, channels: 3, background: '#123456' } })
      .png()
      .toBuffer();
    const drawing = Buffer.from('<svg xmlns="http://www.w3.org/2000/svg" width="1" height="1"/>');
    for (const bytes of [Buffer.from('hello'), drawing, whole.subarray(0, 120), huge]) {
      expectProblem(await send(bytes), 422, 'upload.notAPhoto');
    }
    expectProblem(await send(Buffer.alloc(16 * 1024 * 1024, 1)), 413, 'body.tooLarge');
  });

  it('does not come from a form of another site: a cookie alone is not enough', async () => {
    const form = new FormData();
    form.append('photo', new Blob(['x']), 'photo.jpg');
    const headers = { cookie: `__Host-holdfast=${shop.owner.token}` };
    expectProblem(await app.request('/api/uploads', { method: 'POST', body: form, headers }), 400, 'key.missing');
  });
});
