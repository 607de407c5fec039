import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import {
  bayTimeView,
  changeLogPage,
  findView,
  jobsPage,
  jobView,
  ordersPage,
  outstandingPage,
  partLinesPage,
  vehiclesPage,
  vehicleView,
  type BoardAnswer,
  type ChangesAnswer,
  type FindView,
  type ProblemDetails,
  type VehiclesPage,
} from '@holdfast/contract';
import { randomUUID } from 'node:crypto';
import { startApp, type TestApp, type TestShop } from '../kit/app.js';
import { addVehicle, aMorning, day, ids, problemOf, read } from './a-morning.js';

let app: TestApp;
let shop: TestShop;
let other: TestShop;

beforeAll(async () => {
  app = await startApp();
  shop = await app.newShop();
  other = await app.newShop();
  await aMorning(shop);
});
afterAll(() => app.stop());

const everyRead = () =>
  [
    ['/api/jobs', jobsPage],
    ['/api/jobs?state=ended', jobsPage],
    [`/api/jobs/${ids.job}`, jobView],
    ['/api/vehicles', vehiclesPage],
    [`/api/vehicles/${ids.vehicle}`, vehicleView],
    ['/api/part-lines', partLinesPage],
    ['/api/orders', ordersPage],
    ['/api/outstanding', outstandingPage],
    [`/api/bay-time?from=${day}&to=${day}&segments=true`, bayTimeView],
    ['/api/find?q=12', findView],
    ['/api/change-log', changeLogPage],
  ] as const;

describe('every read', () => {
  it('answers in the shape that the contract says', async () => {
    for (const [path, schema] of everyRead()) await read(shop.owner, path, schema);
  });

  it('refuses a parameter that it does not know, and names it', async () => {
    for (const [path] of everyRead().filter(([each]) => !/\/[0-9a-f-]{36}$/.test(each))) {
      const answer = await shop.owner.get(`${path}${path.includes('?') ? '&' : '?'}colour=red`);
      expect([path, answer.status, (answer.json as ProblemDetails).errors]).toEqual([
        path,
        422,
        [{ pointer: '/colour', code: 'unrecognized_keys', message: 'There is no such field.' }],
      ]);
    }
    expect((await shop.owner.get('/api/board?x=1')).status).toBe(422);
  });

  it('refuses a limit and a cursor that are none', async () => {
    for (const path of [
      '/api/jobs?limit=0',
      '/api/jobs?limit=many',
      '/api/jobs?after=x',
      '/api/vehicles?after=1',
      '/api/orders?after=2030~x',
      `/api/orders?after=2030-02-30T00:00:00.000Z~${ids.job}`,
      `/api/part-lines?after=2030-99-01T00:00:00.000Z~${ids.job}`,
      `/api/part-lines?after=0000-01-01T00:00:00.000Z~${ids.job}`,
      `/api/vehicles?after=%00~${ids.job}`,
      '/api/find?q=%00',
      '/api/jobs?limit=1&limit=2',
    ]) {
      expect([path, await problemOf(shop.owner, path)]).toEqual([path, [422, 'query.invalid']]);
    }
  });

  it('takes any number as a cursor, however large', async () => {
    expect((await read(shop.owner, '/api/jobs?after=999999999999999', jobsPage)).items).toHaveLength(1);
    expect((await read(shop.owner, '/api/change-log?after=999999999999999&limit=1', changeLogPage)).items).toHaveLength(
      1,
    );
  });

  it('is closed to the wall screen, but for the board and its changes', async () => {
    const wall = await shop.signIn('wallScreen');
    for (const [path] of everyRead()) expect([path, await problemOf(wall, path)]).toEqual([path, [403, 'read.mayNot']]);
    expect((await wall.get('/api/board')).status).toBe(200);
    expect((await wall.get('/api/changes?after=0&wait=0')).status).toBe(200);
  });

  it('gives bay time and the log to owner and manager alone', async () => {
    const closed = [`/api/bay-time?from=${day}&to=${day}`, '/api/change-log'];
    for (const role of ['desk', 'technician', 'partsClerk'] as const) {
      const person = await shop.signIn(role);
      for (const path of closed)
        expect([role, path, await problemOf(person, path)]).toEqual([role, path, [403, 'read.mayNot']]);
      expect((await person.get(`/api/jobs/${ids.job}`)).status).toBe(200);
    }
    for (const path of closed) expect((await (await shop.signIn('manager')).get(path)).status).toBe(200);
  });

  it('answers an id of another shop like one that never was', async () => {
    for (const path of [
      `/api/jobs/${ids.job}`,
      `/api/vehicles/${ids.vehicle}`,
      `/api/jobs/${randomUUID()}`,
      '/api/jobs/none',
    ]) {
      expect([path, await problemOf(other.owner, path)]).toEqual([path, [404, 'row.notFound']]);
    }
    for (const path of [
      '/api/jobs',
      '/api/vehicles',
      '/api/part-lines?state=all',
      '/api/orders',
      '/api/outstanding',
      '/api/find?q=A',
    ]) {
      expect([path, ((await other.owner.get(path)).json as { items: unknown[] }).items]).toEqual([path, []]);
    }
    expect(JSON.stringify((await other.owner.get('/api/board')).json)).not.toContain(ids.vehicle);
  });

  it('gives nothing to who is not signed in', async () => {
    for (const [path] of everyRead()) expect([path, (await app.request(path)).status]).toEqual([path, 401]);
  });
});

describe('finding', () => {
  beforeAll(async () => {
    const { created } = await addVehicle(shop.owner, 'YARD 1');
    const concerns = [{ words: 'Will not start' }];
    await shop.owner.accepted('checkIn', {
      vehicleId: created['vehicle'] ?? '',
      customer: { name: 'Ines Moraud' },
      concerns,
      yardSpot: 'North 3',
    });
  });

  it.each([
    ['a12c', 'job', 'plate'],
    ['Ä 12', 'job', 'plate'],
    ['1', 'job', 'number'],
    ['k-17', 'job', 'keyTag'],
    ['north', 'job', 'yardSpot'],
    ['tamsin', 'customer', undefined],
  ])('%s gives the %s by its %s', async (q, kind, by) => {
    const { items }: FindView = await read(shop.owner, `/api/find?q=${encodeURIComponent(q)}`, findView);
    expect(items.map((item) => [item.kind, item.kind === 'job' ? item.by : undefined])).toContainEqual([kind, by]);
  });

  it('gives at most twenty', async () => {
    for (let count = 0; count < 25; count += 1) await addVehicle(other.owner, `FIND ${count}`);
    expect((await read(other.owner, '/api/find?q=find', findView)).items).toHaveLength(20);
    expect((await read(other.owner, '/api/find?q=--', findView)).items).toHaveLength(0);
  });
});

describe('paging', () => {
  it('gives each row once in one order, also while rows are added, and never more than two hundred at once', async () => {
    const { owner } = await app.newShop();
    const plates = Array.from({ length: 203 }, (_, count) => `P${String(count).padStart(3, '0')}`);
    for (let from = 0; from < plates.length; from += 20) {
      await Promise.all(plates.slice(from, from + 20).map((plate) => addVehicle(owner, plate)));
    }
    const most: VehiclesPage = await read(owner, '/api/vehicles?limit=5000', vehiclesPage);
    expect(most.items.map(({ plate }) => plate)).toEqual(plates.slice(0, 200));
    expect((await read(owner, '/api/vehicles', vehiclesPage)).items).toHaveLength(50);
    const first: VehiclesPage = await read(owner, '/api/vehicles?limit=2', vehiclesPage);
    await addVehicle(owner, 'A000');
    const second: VehiclesPage = await read(owner, `/api/vehicles?limit=2&after=${first.next ?? ''}`, vehiclesPage);
    expect(second.items.map(({ plate }) => plate)).toEqual(['P002', 'P003']);
    const last: VehiclesPage = await read(owner, `/api/vehicles?limit=200&after=${most.next ?? ''}`, vehiclesPage);
    expect([last.items.map(({ plate }) => plate), last.next]).toEqual([['P200', 'P201', 'P202'], null]);
  });
});

describe('changes', () => {
  it('come at once where there are some, and as soon as there is one where there is none', async () => {
    const { owner } = await app.newShop();
    const { epoch, seq } = (await owner.get('/api/board')).json as BoardAnswer;
    const nothing = (await owner.get(`/api/changes?after=${seq}&wait=0`)).json as ChangesAnswer;
    expect([nothing.epoch, nothing.seq, nothing.changes, nothing.more]).toEqual([epoch, seq, [], false]);
    const began = performance.now();
    const waiting = owner.get(`/api/changes?after=${seq}`);
    await new Promise((resolve) => setTimeout(resolve, 150));
    await addVehicle(owner, 'WAIT 1');
    const { changes } = (await waiting).json as ChangesAnswer;
    expect(performance.now() - began).toBeLessThan(3_000);
    expect(changes.map((change) => [change.seq, change.command])).toEqual([[seq + 1, 'addVehicle']]);
  });

  it('give word that a snapshot is needed where the number or the log is another', async () => {
    const { seq } = (await shop.owner.get('/api/board')).json as BoardAnswer;
    const reload = { reload: 'snapshot-needed' };
    expect((await shop.owner.get(`/api/changes?after=${seq + 5}&wait=0`)).json).toEqual(reload);
    expect((await shop.owner.get(`/api/changes?after=${seq}&wait=0&epoch=${randomUUID()}`)).json).toEqual(reload);
    for (const query of ['', '?after=-1', '?after=0&wait=11']) {
      expect([query, await problemOf(shop.owner, `/api/changes${query}`)]).toEqual([query, [422, 'query.invalid']]);
    }
  });

  it('the board is never older than the last command that was answered', async () => {
    const { owner } = await app.newShop();
    for (let count = 0; count < 15; count += 1) {
      const { seq } = await addVehicle(owner, `NEW ${count}`);
      const boards = await Promise.all([owner.get('/api/board'), owner.get('/api/board')]);
      for (const { json } of boards) expect((json as BoardAnswer).seq).toBe(seq);
    }
  });
});
