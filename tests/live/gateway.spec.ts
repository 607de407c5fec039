import { afterAll, afterEach, beforeAll, describe, expect, it } from '@jest/globals';
import { apply, fromSnapshot, type Audience, type Board } from '@holdfast/board';
import { contractVersion, type BoardAnswer, type ChangesAnswer } from '@holdfast/contract';
import { randomUUID } from 'node:crypto';
import { startApp, type TestApp, type TestClient, type TestShop } from '../kit/app.js';
import { liveSocket, openLive, refusalOf, type LiveClient } from './live-client.js';

let app: TestApp;
let shop: TestShop;
const open: LiveClient[] = [];

beforeAll(async () => {
  app = await startApp();
  shop = await app.newShop();
});
afterEach(() => {
  for (const client of open.splice(0)) client.close();
});
afterAll(() => app.stop());

async function live(person: TestClient, url = app.url): Promise<LiveClient> {
  const client = await openLive(url, { token: person.token });
  open.push(client);
  return client;
}

const boardOf = async (person: TestClient) => (await person.get('/api/board')).json as BoardAnswer;
const addVehicle = (plate = randomUUID().slice(0, 8)) =>
  shop.owner.accepted('addVehicle', { plate, description: 'Estate car', kind: 'light', drive: 'combustion' });
const runs = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };
const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, at) => from + at);

describe('resuming', () => {
  it('gives every change after the number that the client has, in order, and then goes on live', async () => {
    const { epoch, seq } = await boardOf(shop.owner);
    await addVehicle();
    await addVehicle();
    const client = await live(shop.owner);
    expect(await client.resume({ epoch, after: seq })).toBe('beat');
    expect(client.numbers).toEqual([seq + 1, seq + 2]);
    expect(client.beats[0]?.seq).toBe(seq + 2);
    await addVehicle();
    await client.until(() => client.numbers.length === 3);
    expect(client.numbers).toEqual(range(seq + 1, seq + 3));
    expect(client.changes[2]?.command).toBe('addVehicle');
  });

  it('from the very start gives the whole log', async () => {
    const { epoch, seq } = await boardOf(shop.owner);
    const client = await live(shop.owner);
    expect(await client.resume({ epoch, after: 0 })).toBe('beat');
    expect(client.numbers).toEqual(range(1, seq));
  });

  it('loses and doubles nothing for clients that resume while commands pour in', async () => {
    const { epoch, seq } = await boardOf(shop.owner);
    const writing = (async () => {
      for (let count = 0; count < 40; count += 1) await addVehicle();
    })();
    const clients: LiveClient[] = [];
    for (let count = 0; count < 12; count += 1) {
      const client = await live(shop.owner);
      await client.resume({ epoch, after: seq });
      clients.push(client);
    }
    await writing;
    for (const client of clients) {
      await client.until(() => client.numbers.at(-1) === seq + 40);
      expect(client.numbers).toEqual(range(seq + 1, seq + 40));
    }
  });

  it('asks for a snapshot where the number lies beyond the log or belongs to another one', async () => {
    const { epoch, seq } = await boardOf(shop.owner);
    const ahead = await live(shop.owner);
    expect(await ahead.resume({ epoch, after: seq + 1 })).toBe('snapshot-needed');
    const other = await live(shop.owner);
    expect(await other.resume({ epoch: randomUUID(), after: seq })).toBe('snapshot-needed');
    await addVehicle();
    expect([...ahead.numbers, ...other.numbers]).toEqual([]);
  });

  it('asks for a snapshot where some of the changes are no longer kept', async () => {
    const gone = await app.newShop();
    const { epoch } = await boardOf(gone.owner);
    for (const name of ['One', 'Two', 'Three']) await gone.owner.accepted('addSupplier', { name, runs });
    await app.database.superuser.query('delete from change_rows where shop_id = $1 and seq <= 2', [gone.id]);
    const early = await live(gone.owner);
    expect(await early.resume({ epoch, after: 1 })).toBe('snapshot-needed');
    const late = await live(gone.owner);
    expect(await late.resume({ epoch, after: 2 })).toBe('beat');
    expect(late.numbers).toEqual([3, 4]);
  });

  it('tells a client of another contract, or one that asks in another shape, to load itself anew', async () => {
    const { epoch, seq } = await boardOf(shop.owner);
    const old = await live(shop.owner);
    expect(await old.resume({ epoch, after: seq, contract: 99 })).toBe('reload-needed');
    const odd = await live(shop.owner);
    odd.socket.emit('resume', 'everything');
    await odd.until(() => odd.words.includes('reload-needed'));
  });

  it('is answered at most once a second for each socket, the last one asked for', async () => {
    const { epoch, seq } = await boardOf(shop.owner);
    const client = await live(shop.owner);
    await client.resume({ epoch, after: seq });
    const began = Date.now();
    client.socket.emit('resume', { epoch: randomUUID(), after: seq, contract: contractVersion });
    client.socket.emit('resume', { epoch, after: seq - 1, contract: contractVersion });
    await client.until(() => client.numbers.length > 0);
    expect(Date.now() - began).toBeGreaterThan(800);
    expect(client.numbers).toEqual([seq]);
    expect(client.words).toEqual([]);
  });
});

describe('between processes', () => {
  it('each gives every change, in order, whichever of them took the command', async () => {
    const other = await app.another();
    const { epoch, seq } = await boardOf(shop.owner);
    const here = await live(shop.owner);
    const there = await live(shop.owner, other.url);
    await Promise.all([here.resume({ epoch, after: seq }), there.resume({ epoch, after: seq })]);
    const owners = [shop.owner, shop.owner.on(other.url)];
    await Promise.all(
      owners.flatMap((owner, process) =>
        range(1, 15).map((count) => owner.accepted('addSupplier', { name: `Supplier ${process} ${count}`, runs })),
      ),
    );
    for (const client of [here, there]) {
      await client.until(() => client.numbers.length >= 30);
      expect(client.numbers).toEqual(range(seq + 1, seq + 30));
    }
    expect((await boardOf(shop.owner.on(other.url))).seq).toBe(seq + 30);
  });
});

describe('who may open a socket', () => {
  it('nobody without a session', async () => {
    expect((await refusalOf(liveSocket(app.url, {}))).data).toEqual({ code: 'session.missing' });
    expect((await refusalOf(liveSocket(app.url, { token: `${shop.id}.${'a'.repeat(43)}` }))).data).toEqual({
      code: 'session.missing',
    });
  });

  it('no page of another site, with whatever cookie; our own page may', async () => {
    const cookie = `__Host-holdfast=${shop.owner.token}`;
    for (const origin of ['http://127.0.0.1', 'https://evil.example', app.url.replace('http:', 'https:'), 'null']) {
      const refused = await refusalOf(liveSocket(app.url, { headers: { origin, cookie } }));
      expect(refused.message).toBe('websocket error');
    }
    const own = await openLive(app.url, { headers: { origin: app.url, cookie } });
    open.push(own);
    expect(own.socket.connected).toBe(true);
  });

  it('no cookie without an origin; a token without one may', async () => {
    const refused = await refusalOf(
      liveSocket(app.url, { headers: { cookie: `__Host-holdfast=${shop.owner.token}` } }),
    );
    expect(refused.message).toBe('websocket error');
    const bearer = await openLive(app.url, { headers: { authorization: `Bearer ${shop.owner.token}` } });
    open.push(bearer);
    expect(bearer.socket.connected).toBe(true);
  });

  it('twenty for one session and no more', async () => {
    const { owner } = await app.newShop();
    for (let count = 0; count < 20; count += 1) await live(owner);
    const one = liveSocket(app.url, { token: owner.token });
    await new Promise<void>((resolve) => one.once('disconnect', () => resolve()));
    expect(open.filter(({ socket }) => socket.connected)).toHaveLength(20);
  });
});

describe('leaving', () => {
  it('signing out closes the sockets of that session in every process within a second, and no others', async () => {
    const other = await app.another();
    const leaving = await shop.addPerson({ name: 'Ines Moraud', roles: ['desk'] });
    const clients = [await live(leaving), await live(leaving, other.url)];
    const staying = await live(shop.owner, other.url);
    const closed = Promise.all(
      clients.map(
        ({ socket }) => new Promise<number>((resolve) => socket.once('disconnect', () => resolve(Date.now()))),
      ),
    );
    const began = Date.now();
    await leaving.request('/api/session', { method: 'DELETE' });
    for (const at of await closed) expect(at - began).toBeLessThan(1_000);
    expect(staying.socket.connected).toBe(true);
    expect((await refusalOf(liveSocket(app.url, { token: leaving.token }))).data).toEqual({ code: 'session.missing' });
  });
});

describe('audiences', () => {
  it('the wall hears the same numbers without names, and neither hears another shop', async () => {
    const foreign = await app.newShop();
    const wall = await shop.signIn('wallScreen');
    const { epoch, seq } = await boardOf(wall);
    const client = await live(wall);
    await client.resume({ epoch, after: seq });
    await foreign.owner.accepted('addSupplier', { name: 'Elsewhere', runs });
    await shop.owner.accepted('addSupplier', { name: 'Canary Parts', runs });
    await shop.owner.accepted('addPerson', { name: 'Canary Person', roles: ['technician'] });
    await client.until(() => client.numbers.length === 2);
    expect(client.numbers).toEqual([seq + 1, seq + 2]);
    expect(JSON.stringify(client.changes)).not.toContain('Canary');
    expect(client.changes.every(({ by }) => by === null)).toBe(true);
  });

  it('a snapshot with the changes after it is the later snapshot', async () => {
    const people: readonly (readonly [Audience, TestClient])[] = [
      ['staff', shop.owner],
      ['wall', await shop.signIn('wallScreen')],
    ];
    for (const [audience, person] of people) {
      const first = await boardOf(person);
      const { created } = await addVehicle();
      await shop.owner.accepted('checkIn', {
        vehicleId: created['vehicle'] ?? '',
        customer: { name: 'Tamsin Okoro' },
        concerns: [{ words: 'Knocks over bumps' }],
        keyTag: '7',
        yardSpot: 'Y2',
      });
      const { changes } = (await person.get(`/api/changes?after=${first.seq}&wait=0`)).json as ChangesAnswer;
      let board: Board = fromSnapshot(first, audience);
      for (const change of changes) {
        const next = apply(board, change);
        if (next === 'missing') throw new Error('a gap');
        board = next;
      }
      const later = fromSnapshot(await boardOf(person), audience);
      expect(board.seq).toBe(later.seq);
      expect(plain(board)).toEqual(plain(later));
    }
  });
});

function plain(board: Board): Record<string, unknown> {
  const tables = { ...board.tables } as unknown as Record<string, ReadonlyMap<string, unknown>>;
  return Object.fromEntries(Object.entries(tables).map(([name, rows]) => [name, Object.fromEntries([...rows].sort())]));
}
