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
  type BayTimeView,
  type BoardAnswer,
  type ChangesAnswer,
  type FindView,
  type JobView,
  type OutstandingPage,
  type PartLinesPage,
  type ProblemDetails,
  type VehiclesPage,
} from '@holdfast/contract';
import { v7 as uuidV7 } from 'uuid';
import type { z } from 'zod';
import { startApp, type TestApp, type TestClient, type TestShop } from '../kit/app.js';

// A Wednesday in a shop that opens from 08:00 to 17:00, London keeping UTC. Later than this machine's clock, because a
// shop's own clock does not run backwards.
const day = '2030-03-13';
const at = (time: string) => `${day}T${time}:00.000Z`;
const minutes = (count: number) => count * 60_000;
const noRuns = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };

let app: TestApp;
let shop: TestShop;
let other: TestShop;
const ids = { vehicle: uuidV7(), job: uuidV7(), line: uuidV7(), bay: uuidV7(), part: uuidV7(), hold: uuidV7(), supplier: uuidV7() };

/** One visit: taken into the bay at 08:00, worked on from 09:00 to 10:00, then held for a part. */
async function aMorning(owner: TestClient): Promise<void> {
  await owner.accepted('addBay', { bayId: ids.bay, name: 'Bay 1', spots: 1, equipment: [{ kind: 'flat', inUse: true, grips: null }] });
  await owner.accepted('addSupplier', { supplierId: ids.supplier, name: 'Harbour Factors', runs: noRuns });
  await owner.accepted('setSeasons', { seasons: [{ name: 'Salt', fromDay: '11-01', toDay: '03-31', validFrom: '2030-01-01' }] });
  await owner.accepted('addVehicle', { vehicleId: ids.vehicle, plate: 'Ä-12 cd', description: 'Panel van', kind: 'light', drive: 'combustion' });
  await owner.accepted('checkIn', {
    jobId: ids.job,
    vehicleId: ids.vehicle,
    customer: { name: 'Tamsin Okoro' },
    contact: { name: 'Tamsin Okoro', phone: '01632 960001' },
    concerns: [{ words: 'Backed into a loading dock' }],
    odometer: { value: 81_234, unit: 'km', source: 'read' },
    keyTag: 'K 17',
    yardSpot: 'North 3',
  });
  await owner.accepted('addLine', { lineId: ids.line, jobId: ids.job, title: 'Fit a rear step bumper', bookMinutes: 90 });
  await owner.accepted('recordGoAhead', { lineId: ids.line, version: 1, answer: 'given', how: 'telephone', byName: 'Tamsin Okoro' });
  await shop.setClock(at('08:00'));
  await owner.accepted('takeIntoBay', { jobId: ids.job, bayId: ids.bay });
  await shop.setClock(at('09:00'));
  const started = await owner.accepted('startWork', { lineId: ids.line });
  await shop.setClock(at('10:00'));
  await owner.accepted('stopWork', { clockId: started.created['clock'] ?? '', version: 1 });
  await shop.setClock(at('10:30'));
  await owner.accepted('wantPart', { partLineId: ids.part, lineId: ids.line, description: 'Step bumper', quantity: '1', needed: 'beforeRefit' });
  await owner.accepted('openHold', { holdId: ids.hold, jobId: ids.job, reason: 'parts', partLineIds: [ids.part] });
  await owner.accepted('placeOrder', { supplierId: ids.supplier, reference: 'HF-9', lines: [{ partLineId: ids.part, version: 1, due: { state: 'backorderedWithDate', dueOn: '2030-04-02' } }] });
  await shop.setClock(at('12:00'));
}

beforeAll(async () => {
  app = await startApp();
  shop = await app.newShop();
  other = await app.newShop();
  await shop.setClock('2030-03-12T09:00:00.000Z');
  await aMorning(shop.owner);
});
afterAll(() => app.stop());

async function read<S extends z.ZodType>(person: TestClient, path: string, schema: S): Promise<z.infer<S>> {
  const answer = await person.get(path);
  expect([answer.status, answer.text.slice(0, 200)]).toEqual([200, answer.text.slice(0, 200)]);
  return schema.parse(answer.json);
}

async function problem(person: TestClient, path: string): Promise<[number, string]> {
  const answer = await person.get(path);
  return [answer.status, (answer.json as ProblemDetails).code];
}

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
    ['/api/log', changeLogPage],
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
        400,
        [{ pointer: '/colour', code: 'unrecognized_keys', message: 'There is no such field.' }],
      ]);
    }
    expect((await shop.owner.get('/api/board?x=1')).status).toBe(400);
  });

  it('refuses a limit and a cursor that are none', async () => {
    for (const path of ['/api/jobs?limit=0', '/api/jobs?limit=many', '/api/jobs?after=x', '/api/vehicles?after=1', '/api/orders?after=2030~x']) {
      expect([path, await problem(shop.owner, path)]).toEqual([path, [400, 'query.invalid']]);
    }
  });

  it('is closed to the wall screen, but for the board and its changes', async () => {
    const wall = await shop.signIn('wallScreen');
    for (const [path] of everyRead()) expect([path, await problem(wall, path)]).toEqual([path, [403, 'read.mayNot']]);
    expect((await wall.get('/api/board')).status).toBe(200);
    expect((await wall.get('/api/changes?after=0&wait=0')).status).toBe(200);
  });

  it('gives bay time and the log to owner and manager alone', async () => {
    const closed = [`/api/bay-time?from=${day}&to=${day}`, '/api/log'];
    for (const role of ['desk', 'technician', 'partsClerk'] as const) {
      const person = await shop.signIn(role);
      for (const path of closed) expect([role, path, await problem(person, path)]).toEqual([role, path, [403, 'read.mayNot']]);
      expect((await person.get(`/api/jobs/${ids.job}`)).status).toBe(200);
    }
    for (const path of closed) expect((await (await shop.signIn('manager')).get(path)).status).toBe(200);
  });

  it('answers an id of another shop like one that never was', async () => {
    for (const path of [`/api/jobs/${ids.job}`, `/api/vehicles/${ids.vehicle}`, `/api/jobs/${uuidV7()}`, '/api/jobs/none']) {
      expect([path, await problem(other.owner, path)]).toEqual([path, [404, 'row.notFound']]);
    }
    for (const path of ['/api/jobs', '/api/vehicles', '/api/part-lines?state=all', '/api/orders', '/api/outstanding', '/api/find?q=A']) {
      expect([path, ((await other.owner.get(path)).json as { items: unknown[] }).items]).toEqual([path, []]);
    }
    expect(JSON.stringify((await other.owner.get('/api/board')).json)).not.toContain(ids.vehicle);
  });

  it('gives nothing to who is not signed in', async () => {
    for (const [path] of everyRead()) expect([path, (await app.request(path)).status]).toEqual([path, 401]);
  });
});

describe('a visit', () => {
  it('shows its lines with every answer, its holds with lines and parts, its parts with every date', async () => {
    const view: JobView = await read(shop.owner, `/api/jobs/${ids.job}`, jobView);
    expect(view.lines.map(({ title, goAheads }) => [title, goAheads.map(({ answer, how }) => [answer, how])])).toEqual([
      ['Fit a rear step bumper', [['given', 'telephone']]],
    ]);
    expect(view.holds.map(({ reason, partLineIds, toAt }) => [reason, partLineIds, toAt])).toEqual([['parts', [ids.part], null]]);
    expect(view.partLines.map(({ state, dueIns }) => [state, dueIns.map(({ dueOn }) => dueOn)])).toEqual([['ordered', ['2030-04-02']]]);
    expect(view.clocks.map(({ fromAt, toAt }) => [fromAt, toAt])).toEqual([[at('09:00'), at('10:00')]]);
    expect([view.customer?.name, view.contacts[0]?.phone, view.orders[0]?.reference]).toEqual(['Tamsin Okoro', '01632 960001', 'HF-9']);
  });

  it('says what stands against its hand-back, in sentences, with the row where the way out is', async () => {
    const { blockers }: JobView = await read(shop.owner, `/api/jobs/${ids.job}`, jobView);
    const unfinished = blockers?.transporter.find(({ code }) => code === 'handBack.lineUnfinished');
    expect(unfinished?.way).toEqual({ table: 'workLine', id: ids.line });
    expect(unfinished?.sentence).toContain('Fit a rear step bumper');
    expect(blockers?.transporter.map(({ code }) => code)).toContain('handBack.concernOpen');
  });

  it('has its own log, newest first, without those of other visits', async () => {
    const { log }: JobView = await read(shop.owner, `/api/jobs/${ids.job}`, jobView);
    expect(log.map(({ command }) => command)).toEqual([
      'placeOrder',
      'openHold',
      'wantPart',
      'stopWork',
      'startWork',
      'takeIntoBay',
      'recordGoAhead',
      'addLine',
      'checkIn',
    ]);
    const page = await read(shop.owner, `/api/log?job=${ids.job}&limit=2`, changeLogPage);
    expect(page.items.map(({ command }) => command)).toEqual(['placeOrder', 'openHold']);
  });
});

describe('bay time', () => {
  it('puts every opening millisecond of the day so far into one class, to the millisecond', async () => {
    const view: BayTimeView = await read(shop.owner, `/api/bay-time?from=${day}&to=${day}&segments=true`, bayTimeView);
    // 08:00 waiting (a quarter of an hour of grace, then nobody said why), 09:00 worked, 10:00 grace and nobody said why
    // until 10:30, then held for the part until now, 12:00.
    expect(view.totals).toEqual({
      classMs: { outOfUse: 0, worked: minutes(60), stored: 0, held: minutes(90), noReason: minutes(60), break: minutes(30), empty: 0 },
      heldMs: { parts: minutes(90) },
      openMs: minutes(240),
      availableMs: minutes(240),
      occupiedMs: minutes(240),
      occupancy: 1,
      utilisation: 0.25,
      technicianMs: minutes(60),
      technicianOvertimeMs: 0,
    });
    expect(view.open).toEqual([[at('08:00'), at('17:00')]]);
    expect(view.bays[0]?.spots[0]?.segments?.map(({ class: kind, from }) => [kind, from.slice(11, 16)])).toEqual([
      ['break', '08:00'],
      ['noReason', '08:15'],
      ['worked', '09:00'],
      ['break', '10:00'],
      ['noReason', '10:15'],
      ['held', '10:30'],
    ]);
  });

  it('counts a bay from the day of its first facts on, and what lies ahead of now not at all', async () => {
    const before: BayTimeView = await read(shop.owner, '/api/bay-time?from=2030-03-01&to=2030-03-11', bayTimeView);
    expect([before.bays, before.totals.openMs]).toEqual([[], 0]);
    const ahead: BayTimeView = await read(shop.owner, '/api/bay-time?from=2030-03-14&to=2030-03-20', bayTimeView);
    expect([ahead.bays.length, ahead.totals.openMs, ahead.open.length]).toEqual([1, 0, 5]);
    const both: BayTimeView = await read(shop.owner, `/api/bay-time?from=2030-03-12&to=${day}`, bayTimeView);
    expect([both.totals.openMs, both.totals.classMs.empty]).toEqual([minutes(540 + 240), minutes(540)]);
  });

  it('takes at most 400 days, 31 with segments, and only days that exist in their order', async () => {
    const asked = ['from=2029-01-01&to=2030-03-13', 'from=2030-03-13&to=2030-03-12', 'from=2030-02-30&to=2030-03-12', 'from=2030-03-13', `from=2030-01-01&to=${day}&segments=true`];
    for (const query of asked) expect([query, await problem(shop.owner, `/api/bay-time?${query}`)]).toEqual([query, [400, 'query.invalid']]);
    expect((await shop.owner.get(`/api/bay-time?from=2029-02-07&to=${day}`)).status).toBe(200);
  });
});

describe('parts', () => {
  it('come with the vehicle, the line, the order and the holds that wait for them since when', async () => {
    const { items }: PartLinesPage = await read(shop.owner, '/api/part-lines?state=ordered', partLinesPage);
    expect(items.map(({ plate, lineTitle, supplierName, orderReference, holds }) => [plate, lineTitle, supplierName, orderReference, holds])).toEqual([
      ['Ä-12 cd', 'Fit a rear step bumper', 'Harbour Factors', 'HF-9', [{ holdId: ids.hold, jobId: ids.job, fromAt: expect.stringContaining('T10:30:00') }]],
    ]);
    expect((await read(shop.owner, '/api/part-lines?state=wanted', partLinesPage)).items).toEqual([]);
  });
});

describe('outstanding', () => {
  it('is in the order of the first limit that has a day, those without one last, and pages through without gap', async () => {
    const { owner } = shop;
    const { created: seasons } = { created: ((await owner.get('/api/board')).json as BoardAnswer).rows['season'] ?? [] };
    const seasonId = seasons[0]?.id ?? '';
    const follow = (title: string, limits: object) =>
      owner.accepted('addFollowUp', { vehicleId: ids.vehicle, jobId: ids.job, kind: 'lookAgain', title, ...limits });
    await follow('by distance', { withinDistance: 500 });
    await follow('in ten days', { withinDays: 10 });
    await follow('before the salt', { seasonId });
    await follow('by a day', { beforeDay: '2030-03-20', beforeOdometer: 90_000 });
    await owner.accepted('addTemporaryFix', {
      jobId: ids.job,
      kind: 'heldBy',
      standsInFor: 'Bracket of the parking sensor',
      place: 'Rear left',
      heldWith: 'Two cable ties',
      system: 'body',
      endedByWhat: 'New bracket',
      withinDays: 30,
      beforeDay: '2030-05-01',
    });
    const whole: OutstandingPage = await read(owner, '/api/outstanding', outstandingPage);
    expect(whole.today).toBe(day);
    expect(whole.items.map(({ kind, firstLimit, undated }) => [kind, firstLimit?.day, firstLimit?.by, undated])).toEqual([
      ['followUp', '2030-03-20', 'beforeDay', ['beforeOdometer']],
      ['followUp', '2030-03-23', 'withinDays', []],
      ['temporaryFix', '2030-04-12', 'withinDays', []],
      ['followUp', '2030-11-01', 'season', []],
      ['followUp', undefined, undefined, ['withinDistance']],
    ]);
    const paged: unknown[] = [];
    let after = '';
    do {
      const page: OutstandingPage = await read(owner, `/api/outstanding?limit=2${after}`, outstandingPage);
      paged.push(...page.items);
      after = page.next === null ? '' : `&after=${encodeURIComponent(page.next)}`;
    } while (after !== '');
    expect(paged).toEqual(whole.items);
    expect((await read(owner, `/api/outstanding?vehicle=${uuidV7()}`, outstandingPage)).items).toEqual([]);
  });
});

describe('finding', () => {
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
    for (let count = 0; count < 25; count += 1) await vehicle(other.owner, `FIND ${count}`);
    expect((await read(other.owner, '/api/find?q=find', findView)).items).toHaveLength(20);
    expect((await read(other.owner, '/api/find?q=--', findView)).items).toHaveLength(0);
  });
});

const vehicle = (owner: TestClient, plate: string) =>
  owner.accepted('addVehicle', { plate, description: 'Estate car', kind: 'light', drive: 'combustion' });

describe('paging', () => {
  it('gives each row once in one order, also while rows are added, and never more than two hundred at once', async () => {
    const { owner } = await app.newShop();
    const plates = Array.from({ length: 203 }, (_, count) => `P${String(count).padStart(3, '0')}`);
    for (let from = 0; from < plates.length; from += 20) {
      await Promise.all(plates.slice(from, from + 20).map((plate) => vehicle(owner, plate)));
    }
    const most: VehiclesPage = await read(owner, '/api/vehicles?limit=5000', vehiclesPage);
    expect(most.items.map(({ plate }) => plate)).toEqual(plates.slice(0, 200));
    expect((await read(owner, '/api/vehicles', vehiclesPage)).items).toHaveLength(50);
    const first: VehiclesPage = await read(owner, '/api/vehicles?limit=2', vehiclesPage);
    await vehicle(owner, 'A000');
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
    await vehicle(owner, 'WAIT 1');
    const { changes } = (await waiting).json as ChangesAnswer;
    expect(performance.now() - began).toBeLessThan(3_000);
    expect(changes.map((change) => [change.seq, change.command])).toEqual([[seq + 1, 'addVehicle']]);
  });

  it('give word that a snapshot is needed where the number or the log is another', async () => {
    const { seq } = (await shop.owner.get('/api/board')).json as BoardAnswer;
    const reload = { reload: 'snapshot-needed' };
    expect((await shop.owner.get(`/api/changes?after=${seq + 5}&wait=0`)).json).toEqual(reload);
    expect((await shop.owner.get(`/api/changes?after=${seq}&wait=0&epoch=${uuidV7()}`)).json).toEqual(reload);
    for (const query of ['', '?after=-1', '?after=0&wait=11']) {
      expect([query, await problem(shop.owner, `/api/changes${query}`)]).toEqual([query, [400, 'query.invalid']]);
    }
  });

  it('the board is never older than the last command that was answered', async () => {
    const { owner } = await app.newShop();
    for (let count = 0; count < 15; count += 1) {
      const { seq } = await vehicle(owner, `NEW ${count}`);
      const boards = await Promise.all([owner.get('/api/board'), owner.get('/api/board')]);
      for (const { json } of boards) expect((json as BoardAnswer).seq).toBe(seq);
    }
  });
});
