import {
  type ChangeLogItem,
  changeLogPage,
  type CustomersPage,
  type LogReadsPage,
  type VehiclesPage,
} from '@holdfast/contract';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startApp, type TestApp, type TestShop } from '../kit/app.js';
import { checkedImport, uploaded } from '../kit/import-file.js';
import { aMorning, day, ids } from './a-morning.js';

describe('lists as files, and the record', () => {
  let app: TestApp;
  let shop: TestShop;
  beforeAll(async () => {
    app = await startApp();
    shop = await app.newShop();
    await aMorning(shop);
    await shop.owner.accepted('addCustomer', {
      name: '=cmd|calc',
      contacts: [{ name: '@Ada', phone: '+44 1632 960002' }],
    });
  });
  afterAll(() => app.stop());

  const lists = [
    '/api/customers',
    '/api/vehicles',
    '/api/outstanding',
    '/api/jobs?state=open',
    '/api/part-lines?state=all',
    '/api/orders',
    `/api/times?from=${day}&to=${day}`,
    `/api/bay-time?from=${day}&to=${day}`,
    '/api/change-log',
  ];

  it.each(lists)('%s goes out as CSV with a mark, headings and as many cells in each line', async (path) => {
    const csv = await shop.owner.get(`${path}${path.includes('?') ? '&' : '?'}format=csv`);
    expect(csv.status).toBe(200);
    expect(csv.headers.get('content-type')).toContain('text/csv');
    expect(csv.headers.get('content-disposition')).toMatch(/^attachment; filename="[\w-]+\.csv"$/);
    const bytes = csv.text.replace(/^\ufeff/, '');
    const lines = bytes.split('\r\n').slice(0, -1);
    const headings = lines[0]?.replace(/"(?:[^"]|"")*"/g, '').split(',') ?? [];
    expect(headings.length).toBeGreaterThan(4);
    // No cell of these holds a line break, and a comma only within quotes.
    for (const line of lines) expect(line.replace(/"(?:[^"]|"")*"/g, '').split(',')).toHaveLength(headings.length);
    if (path !== '/api/orders' && path !== '/api/outstanding') expect(lines.length).toBeGreaterThan(1);
  });

  it('says nothing a spreadsheet would run', async () => {
    const csv = (await shop.owner.get('/api/customers?format=csv')).text;
    expect(csv).toContain(`"'=cmd|calc","'@Ada","'+44 1632 960002"`);
  });

  it('has every row of a list longer than a page, and comes in again elsewhere as it went out', async () => {
    const many = await app.newShop();
    const rows = Array.from(
      { length: 450 },
      (_none, n) => `HB ${String(n)},Van ${String(n)},Keeper ${String(n)},+44 ${String(n)}`,
    );
    const checked = await checkedImport(
      many.owner,
      await uploaded(many.owner, 'vehicles', `plate,description,customer,phone\n${rows.join('\n')}\n`),
    );
    await many.owner.accepted('acceptImport', { importId: checked.batch.id, version: checked.batch.version });
    const csv = (await many.owner.get('/api/vehicles?format=csv')).text;
    expect(csv.split('\r\n')).toHaveLength(452);
    const other = await app.newShop();
    const again = await checkedImport(other.owner, await uploaded(other.owner, 'vehicles', csv));
    expect(again.batch).toMatchObject({ goodCount: 450, badCount: 0 });
    await other.owner.accepted('acceptImport', { importId: again.batch.id, version: again.batch.version });
    const read = (await other.owner.get('/api/vehicles?limit=1')).json as VehiclesPage;
    expect(read.items[0]).toMatchObject({ plate: 'HB 0', phone: '+44 0', customer: { name: 'Keeper 0' } });
    const customers = (await other.owner.get('/api/customers?format=csv')).text;
    expect(customers.split('\r\n')).toHaveLength(452);
    expect(((await other.owner.get('/api/customers?limit=200')).json as CustomersPage).items).toHaveLength(200);
  });

  it('refuses a file to whom it refuses the list', async () => {
    const technician = await shop.signIn('technician');
    expect((await technician.get('/api/change-log?format=csv')).status).toBe(403);
    expect((await technician.get('/api/change-log/reads')).status).toBe(403);
    const wall = await shop.signIn('wallScreen');
    expect((await wall.get('/api/customers?format=csv')).status).toBe(403);
  });

  const logOf = async (query: string) => {
    const answer = await shop.owner.get(`/api/change-log?${query}`);
    expect(answer.status).toBe(200);
    return changeLogPage.parse(answer.json).items;
  };

  it('reads the record by person, vehicle, job, day and command', async () => {
    const all = await logOf('limit=200');
    const owner = shop.owner.session.person.id;
    expect(all.filter(({ personId }) => personId === owner)).toEqual(await logOf(`limit=200&person=${owner}`));
    const ofVehicle = await logOf(`limit=200&vehicle=${ids.vehicle}`);
    expect(ofVehicle).toEqual(all.filter(({ subjects }) => subjects.vehicle.includes(ids.vehicle)));
    expect(ofVehicle[0]?.about.vehicles[0]?.plate).toBe('Ä-12 cd');
    expect(await logOf(`limit=200&job=${ids.job}`)).toEqual(
      all.filter(({ subjects }) => subjects.job.includes(ids.job)),
    );
    expect((await logOf('command=startWork')).map(({ command }) => command)).toEqual(['startWork']);
    const before = await logOf('limit=200&to=2030-03-12');
    const since = await logOf(`limit=200&from=${day}`);
    expect([...since, ...before]).toEqual(all);
    expect(since.length).toBeGreaterThan(3);
    expect(before.length).toBeGreaterThan(3);
    expect((await shop.owner.get('/api/change-log?from=2030-03-13&to=2030-03-12')).status).toBe(422);
  });

  it('gives the record as JSON lines, whole', async () => {
    const all = await logOf('limit=200&command=addCustomer');
    const file = await shop.owner.get('/api/change-log?format=jsonl&command=addCustomer');
    expect(file.headers.get('content-type')).toContain('application/jsonl');
    const lines = file.text.split('\n').slice(0, -1);
    expect(lines.map((line) => JSON.parse(line) as ChangeLogItem)).toEqual(all);
  });

  it('keeps who read it, which part and how much, in no change of the shop', async () => {
    const manager = await shop.signIn('manager');
    const before = (await logOf('limit=1'))[0]?.seq;
    const readsBefore = ((await shop.owner.get('/api/change-log/reads?limit=200')).json as LogReadsPage).items.length;
    await manager.get(`/api/change-log?command=startWork&vehicle=${ids.vehicle}`);
    await manager.get('/api/change-log?format=csv&command=startWork');
    const reads = ((await shop.owner.get('/api/change-log/reads?limit=200')).json as LogReadsPage).items;
    expect(reads).toHaveLength(readsBefore + 2);
    expect(reads.slice(0, 2).map(({ personId, filter, form, entries }) => [personId, filter, form, entries])).toEqual([
      [manager.session.person.id, { command: 'startWork' }, 'csv', 1],
      [manager.session.person.id, { command: 'startWork', vehicle: ids.vehicle }, 'page', 1],
    ]);
    expect((await logOf('limit=1'))[0]?.seq).toBe(before);
    const other = await app.newShop();
    expect(((await other.owner.get('/api/change-log/reads')).json as LogReadsPage).items).toEqual([]);
  });
});
