import type { CustomersPage, ImportRowsPage, OutstandingPage, VehiclesPage, VehicleView } from '@holdfast/contract';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import { startApp, type TestApp, type TestShop } from '../kit/app.js';
import { checkedImport, importNow, mapImport, uploaded, uploadImport } from '../kit/import-file.js';

// What a shop kept elsewhere comes in from files: nothing before somebody accepts it, then exactly the good rows.
describe('existing data from a file', () => {
  let app: TestApp;
  let shop: TestShop;
  beforeAll(async () => {
    app = await startApp();
  });
  beforeEach(async () => {
    shop = await app.newShop();
  });
  afterAll(() => app.stop());

  const vehicles = async () => ((await shop.owner.get('/api/vehicles?limit=200')).json as VehiclesPage).items;
  const customers = async () => ((await shop.owner.get('/api/customers?limit=200')).json as CustomersPage).items;
  const seq = async () => ((await shop.owner.get('/api/board')).json as { seq: number }).seq;
  const badRows = async (importId: string) =>
    ((await shop.owner.get(`/api/imports/${importId}/rows?state=bad`)).json as ImportRowsPage).items;
  const accept = (importId: string, version: number) => shop.owner.accepted('acceptImport', { importId, version });

  it('proposes columns by the words of the header, whatever the separator and the encoding', async () => {
    const text = 'Registration;Make;Model;VIN;Owner;Mobile\r\nAB 1;Ford;Transit;;Böttcher;0123\r\n';
    const utf16 = new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'));
    const latin = new Uint8Array(Buffer.from(text, 'latin1'));
    for (const file of [text, `\ufeff${text}`, utf16, latin, text.replaceAll(';', '\t'), text.replaceAll(';', ',')]) {
      const view = await uploaded(shop.owner, 'vehicles', file);
      expect(view.batch.mapping).toEqual({ plate: 0, make: 1, model: 2, vin: 3, customerName: 4, phone: 5 });
      expect(view.preview[0]?.cells).toEqual(['AB 1', 'Ford', 'Transit', '', 'Böttcher', '0123']);
    }
  });

  it('takes exactly the good rows in one change, and nothing before', async () => {
    const file = [
      'Plate,Description,VIN,Customer,Phone,Fuel',
      'HB 1,Estate car,,Vale Foods,01 1,petrol',
      'HB 2,Van,WVWZZZ1JZXW000001,Vale Foods,01 1,diesel',
      'hb-1,Van,,Another,,petrol',
      'HB 4,Van,wvwzzz1jzxw000001,Another,,petrol',
      ',Van,,Another,,petrol',
      'HB 6,Van,,Another,,steam',
      'HB 7,"Van, ""long""",,,,',
      'HB 8,Van,,Another',
      'HB 9,5" Van,,Another,,',
    ].join('\n');
    const before = await seq();
    const view = await uploaded(shop.owner, 'vehicles', file);
    const checked = await checkedImport(shop.owner, view);
    expect(checked.batch).toMatchObject({ state: 'checked', rowCount: 9, checkedCount: 9, goodCount: 3, badCount: 6 });
    expect([await vehicles(), await customers(), await seq()]).toEqual([[], [], before]);
    expect(
      (await badRows(view.batch.id)).map(({ number, problems }) => [
        number,
        problems.map(({ column, value, code }) => [column, value, code]),
      ]),
    ).toEqual([
      [4, [['Plate', 'hb-1', 'twiceInFile']]],
      [5, [['VIN', 'wvwzzz1jzxw000001', 'twiceInFile']]],
      [6, [['Plate', null, 'missing']]],
      [7, [['Fuel', 'steam', 'unknownWord']]],
      [9, [[null, null, 'cellCount']]],
      [10, [[null, null, 'strayQuote']]],
    ]);
    const sentence = (await badRows(view.batch.id))[0]?.problems[0]?.sentence;
    expect(sentence).toBe('The same stands in row 2 already.');
    await accept(view.batch.id, checked.batch.version);
    expect(await seq()).toBe(before + 1);
    const there = await vehicles();
    expect(
      there.map(({ plate, description, drive, customer, phone }) => [plate, description, drive, customer?.name, phone]),
    ).toEqual([
      ['HB 1', 'Estate car', 'combustion', 'Vale Foods', '01 1'],
      ['HB 2', 'Van', 'combustion', 'Vale Foods', '01 1'],
      ['HB 7', 'Van, "long"', 'combustion', undefined, null],
    ]);
    expect(new Set(there.slice(0, 2).map(({ customer }) => customer?.id)).size).toBe(1);
    expect((await customers()).map(({ name, vehicles: owned }) => [name, owned])).toEqual([['Vale Foods', 2]]);
    // What it made is worked with as if it had been entered by hand.
    const first = there[0]?.id ?? '';
    await shop.owner.accepted('checkIn', {
      vehicleId: first,
      customerId: there[0]?.customer?.id ?? '',
      concerns: [{ words: 'Knocks' }],
    });
    const read = (await shop.owner.get(`/api/vehicles/${first}`)).json as VehicleView;
    expect(read.contacts.map(({ name, phone }) => [name, phone])).toEqual([['Vale Foods', '01 1']]);
  });

  it('leaves out what is there already, and finds the customers that are', async () => {
    const { created } = await shop.owner.accepted('addCustomer', { name: 'Vale Foods', contacts: [] });
    await shop.owner.accepted('addVehicle', {
      plate: 'HB 1',
      description: 'Van',
      kind: 'light',
      drive: 'none',
      vin: 'WVWZZZ1JZXW000001',
    });
    const file =
      'plate,description,vin,customer\nHB-1,Van,,Vale Foods\nHB 2,Van,WVWZZZ1JZXW000001,\nHB 3,Van,,vale foods\n';
    const checked = await checkedImport(shop.owner, await uploaded(shop.owner, 'vehicles', file));
    expect((await badRows(checked.batch.id)).flatMap(({ problems }) => problems.map(({ code }) => code))).toEqual([
      'plateThere',
      'vinThere',
    ]);
    await accept(checked.batch.id, checked.batch.version);
    const made = (await vehicles()).find(({ plate }) => plate === 'HB 3');
    expect(made?.customer?.id).toBe(created['customer']);
    expect(await customers()).toHaveLength(1);
  });

  it('refuses the whole where something was entered since, until the rows are looked at again', async () => {
    const checked = await checkedImport(
      shop.owner,
      await uploaded(shop.owner, 'vehicles', 'plate,description\nHB 1,Van\nHB 2,Van\n'),
    );
    await shop.owner.accepted('addVehicle', { plate: 'HB 2', description: 'Van', kind: 'light', drive: 'none' });
    const { id, version } = checked.batch;
    expect((await shop.owner.refused('acceptImport', { importId: id, version })).code).toBe('import.overtaken');
    expect(await vehicles()).toHaveLength(1);
    const again = await checkedImport(shop.owner, checked);
    expect((await shop.owner.refused('acceptImport', { importId: id, version })).code).toBe('row.stale');
    await accept(id, again.batch.version);
    expect((await vehicles()).map(({ plate }) => plate)).toEqual(['HB 1', 'HB 2']);
    expect((await shop.owner.refused('acceptImport', { importId: id, version: again.batch.version + 1 })).code).toBe(
      'import.ended',
    );
  });

  it('is answered twice alike with one key, and is not taken back', async () => {
    const checked = await checkedImport(
      shop.owner,
      await uploaded(shop.owner, 'customers', 'Name,Phone\nVale Foods,01\nAda,\n'),
    );
    const input = { importId: checked.batch.id, version: checked.batch.version };
    const key = randomUUID();
    const [first, second] = [
      await shop.owner.command('acceptImport', input, { key }),
      await shop.owner.command('acceptImport', input, { key }),
    ];
    expect([first.status, second.text]).toEqual([200, first.text]);
    expect(await customers()).toHaveLength(2);
    const { seq: number } = first.json as { seq: number };
    expect((await shop.owner.refused('takeBack', { seq: number })).code).toBe('change.hasOwnWayBack');
  });

  it('brings outstanding work to vehicles, and shows it live where a board shows the vehicle', async () => {
    for (const plate of ['HB 1', 'HB 2']) {
      const { created } = await shop.owner.accepted('addVehicle', {
        plate,
        description: 'Van',
        kind: 'light',
        drive: 'none',
      });
      if (plate !== 'HB 1') continue;
      await shop.owner.accepted('checkIn', {
        vehicleId: created['vehicle'] ?? '',
        customer: { name: 'Ada' },
        concerns: [{ words: 'x' }],
      });
    }
    const after = await seq();
    const file =
      'plate,title,kind,priority,due date,mileage\nHB 1,Rear pads,advisory,high,31/12/2030,"81,000"\nHB 2,Tyres,,,,\nHB 3,Tyres,,,,\nHB 2,Belt,,,31/02/2030,\n';
    const checked = await checkedImport(shop.owner, await uploaded(shop.owner, 'followUps', file));
    expect((await badRows(checked.batch.id)).flatMap(({ problems }) => problems.map(({ code }) => code))).toEqual([
      'plateUnknown',
      'notADay',
    ]);
    await accept(checked.batch.id, checked.batch.version);
    const page = (await shop.owner.get('/api/outstanding')).json as OutstandingPage;
    expect(
      page.items.map(({ vehicle, row }) => [
        vehicle.plate,
        'title' in row ? row.title : '',
        row.beforeDay,
        row.beforeOdometer,
      ]),
    ).toEqual([
      ['HB 1', 'Rear pads', '2030-12-31', 81_000],
      ['HB 2', 'Tyres', null, null],
    ]);
    const changes = (await shop.owner.get(`/api/changes?after=${String(after)}`)).text;
    expect(changes).toContain('Rear pads');
    expect(changes).not.toContain('Tyres');
    const board = JSON.stringify((await shop.owner.get('/api/board')).json);
    expect([board.includes('Rear pads'), board.includes('Tyres')]).toEqual([true, false]);
  });

  it('puts a file aside, with its rows', async () => {
    const view = await uploaded(shop.owner, 'customers', 'Name\nAda\n');
    expect((await shop.owner.request(`/api/imports/${view.batch.id}`, { method: 'DELETE' })).status).toBe(204);
    const now = await importNow(shop.owner, view.batch.id);
    expect([now.batch.state, now.preview]).toEqual(['discarded', []]);
    expect((await mapImport(shop.owner, view.batch.id, { name: 0 })).status).toBe(409);
    const { rows } = await app.database.superuser.query('select from import_row where import_id = $1', [view.batch.id]);
    expect(rows).toEqual([]);
  });

  it('says what no row can come from', async () => {
    const codeOf = async (answer: ReturnType<typeof uploadImport>) => ((await answer).json as { code: string }).code;
    const zip = new Uint8Array([0x50, 0x4b, 3, 4, 0, 0, 0, 0]);
    expect(await codeOf(uploadImport(shop.owner, 'customers', zip))).toBe('upload.notCsv');
    expect(await codeOf(uploadImport(shop.owner, 'customers', ''))).toBe('upload.notCsv');
    const many = `Name\n${'x\n'.repeat(30_001)}`;
    expect(await codeOf(uploadImport(shop.owner, 'customers', many))).toBe('upload.tooManyRows');
    const view = await uploaded(shop.owner, 'vehicles', 'a,b\n1,2\n');
    expect(await codeOf(mapImport(shop.owner, view.batch.id, { plate: 0 }))).toBe('import.mapping');
    expect(await codeOf(mapImport(shop.owner, view.batch.id, { plate: 0, description: 2 }))).toBe('import.mapping');
    expect(
      (await shop.owner.refused('acceptImport', { importId: view.batch.id, version: view.batch.version })).code,
    ).toBe('import.notChecked');
    const bad = await checkedImport(shop.owner, await uploaded(shop.owner, 'customers', 'Name,Phone\n,1\n'));
    expect(
      (await shop.owner.refused('acceptImport', { importId: bad.batch.id, version: bad.batch.version })).code,
    ).toBe('import.nothingGood');
  });

  it('is for owner and manager alone, and never for another shop', async () => {
    const desk = await shop.signIn('desk');
    expect((await uploadImport(desk, 'customers', 'Name\nAda\n')).status).toBe(403);
    expect((await desk.get('/api/imports')).status).toBe(403);
    const view = await uploaded(await shop.signIn('manager'), 'customers', 'Name\nAda\n');
    const other = await app.newShop();
    expect((await other.owner.get(`/api/imports/${view.batch.id}`)).status).toBe(404);
    expect((await mapImport(other.owner, view.batch.id, { name: 0 })).status).toBe(404);
    expect((await other.owner.request(`/api/imports/${view.batch.id}`, { method: 'DELETE' })).status).toBe(404);
    expect((await other.owner.refused('acceptImport', { importId: view.batch.id, version: 1 })).code).toBe(
      'row.notFound',
    );
  });

  it('gives the rows that are left out as a file that opens safely', async () => {
    const checked = await checkedImport(
      shop.owner,
      await uploaded(shop.owner, 'customers', 'Name,Phone,Note\n,+44 1,=1+1\n'),
    );
    const csv = await shop.owner.get(`/api/imports/${checked.batch.id}/rows?format=csv`);
    expect(csv.headers.get('content-type')).toContain('text/csv');
    expect(csv.text).toContain(`"'+44 1","'=1+1"`);
  });
});
