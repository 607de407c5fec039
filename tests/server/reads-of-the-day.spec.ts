import {
  customerView,
  dayLoadView,
  type DayLoadView,
  findView,
  type FindView,
  jobsPage,
  jobView,
  type JobView,
  vehicleView,
  type VehicleView,
} from '@holdfast/contract';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { randomUUID } from 'node:crypto';
import { startApp, type TestApp, type TestShop } from '../kit/app.js';
import { at, day, problemOf, read } from './a-morning.js';

const id = {
  customer: randomUUID(),
  contact: randomUUID(),
  vehicle: randomUUID(),
  other: randomUUID(),
  first: randomUUID(),
  visit: randomUUID(),
  done: randomUUID(),
  pads: randomUUID(),
  concern: randomUUID(),
  standing: randomUUID(),
  booked: randomUUID(),
};
const week = { mon: [], tue: [], wed: [['08:00', '17:00']], thu: [['08:00', '17:00']], fri: [], sat: [], sun: [] };
const breaks = { ...week, wed: [['12:00', '12:30']], thu: [] };

let app: TestApp;
let shop: TestShop;

/** Two visits of one vehicle on a Wednesday, the second a comeback on the premises, and a booked one on Thursday. */
beforeAll(async () => {
  app = await startApp();
  shop = await app.newShop();
  const { owner } = shop;
  await shop.setClock('2030-03-12T09:00:00.000Z');
  await owner.accepted('setOpeningHours', { validFrom: '2030-01-01', week, breaks } as never);
  await owner.accepted('addPerson', { name: 'Tam Reed', roles: ['technician'] });
  await owner.accepted('addPerson', { name: 'Ines Carrow', roles: ['technician', 'manager'] });
  await owner.accepted('addCustomer', {
    customerId: id.customer,
    name: 'Gannet Parcels',
    fleet: 'Gannet',
    contacts: [{ contactId: id.contact, name: 'Nan Ferro', mayAgreeUpTo: '300' }],
  });
  const vehicle = { customerId: id.customer, description: 'Van', kind: 'light', drive: 'combustion' } as const;
  await owner.accepted('addVehicle', { ...vehicle, vehicleId: id.vehicle, plate: 'HB 1' });
  await owner.accepted('addVehicle', { ...vehicle, vehicleId: id.other, plate: 'HB 2' });
  await shop.setClock(at('08:00'));
  await owner.accepted('checkIn', { jobId: id.first, vehicleId: id.vehicle, concerns: [{ words: 'Squeals' }] });
  await owner.accepted('addLine', { lineId: id.done, jobId: id.first, title: 'Renew the pads', bookMinutes: 60 });
  await owner.accepted('recordGoAhead', { lineId: id.done, version: 1, answer: 'given', byName: 'Ada', how: 'there' });
  await owner.accepted('finishLine', { lineId: id.done, version: 2, words: 'Done at the gate' });
  await owner.accepted('addFinding', { jobId: id.first, place: 'Front left', kind: 'wear', measure: '4', unit: 'mm' });
  const { concerns }: JobView = await read(owner, `/api/jobs/${id.first}`, jobView);
  const outcome = { outcome: 'gone', conditions: 'Braked in the yard' } as const;
  await owner.accepted('recordConcernOutcome', { concernId: concerns[0]?.id ?? '', version: 1, ...outcome });
  const leaves = { leavesBy: 'road', receivedBy: 'Nan Ferro', receivedHow: 'there' } as const;
  await owner.accepted('handBack', { jobId: id.first, version: 1, ...leaves });
  await shop.setClock(at('10:00'));
  await owner.accepted('checkIn', {
    jobId: id.visit,
    vehicleId: id.vehicle,
    comebackOfLineId: id.done,
    concerns: [{ concernId: id.concern, words: 'Squeals again', conditions: 'Cold' }],
    standingGoAheads: [
      { standingGoAheadId: id.standing, kind: 'lookForFault', upTo: '200', byName: 'Nan Ferro' },
      { kind: 'fleetLimit', upTo: '500', orderNumber: 'G-1', byName: 'Nan Ferro' },
    ],
  });
  const pads = { jobId: id.visit, title: 'Look at the pads', bookMinutes: 90, price: '80', payer: 'customer' } as const;
  await owner.accepted('addLine', { lineId: id.pads, ...pads });
  const rests = { answer: 'given', how: 'standing', standingGoAheadId: id.standing } as const;
  await owner.accepted('recordGoAhead', { lineId: id.pads, version: 1, ...rests });
  await owner.accepted('addFinding', { jobId: id.visit, place: 'front LEFT', kind: 'wear', measure: '3', unit: 'mm' });
  await owner.accepted('recordAttempt', { concernId: id.concern, conditions: 'Cold', appeared: true });
  await owner.accepted('recordCause', {
    jobId: id.visit,
    concernIds: [id.concern],
    words: 'A bent shim',
    certainty: 'likely',
  });
  const reached = { way: 'telephone', reached: true, answer: 'Will wait', moveOf: 'shop' } as const;
  await owner.accepted('recordContact', { vehicleId: id.vehicle, jobId: id.visit, ...reached });
  const comes = { vehicleId: id.other, expectedAt: '2030-03-14T08:30:00.000Z' };
  const lines = [{ title: 'Service', bookMinutes: 240 }];
  await owner.accepted('bookJob', { jobId: id.booked, ...comes, lines });
  await shop.setClock(at('12:00'));
});
afterAll(() => app.stop());

describe('a visit on the premises', () => {
  it('shows attempts, causes with their concerns, the earlier finding at the place, and what a standing go-ahead has left', async () => {
    const view: JobView = await read(shop.owner, `/api/jobs/${id.visit}`, jobView);
    expect(view.attempts.map(({ conditions, appeared }) => [conditions, appeared])).toEqual([['Cold', true]]);
    expect(view.causes.map(({ words, concernIds }) => [words, concernIds])).toEqual([['A bent shim', [id.concern]]]);
    expect(view.findings.map(({ measure, earlier }) => [measure, earlier?.measure])).toEqual([['3', '4']]);
    expect(view.standing.map(({ kind, used }) => [kind, used]).sort()).toEqual([
      ['fleetLimit', '0'],
      ['lookForFault', '80'],
    ]);
    expect(view.contactEntries.map(({ answer }) => answer)).toEqual(['Will wait']);
  });

  it('is in the list of open visits, the booked one in that of expected ones', async () => {
    const numbers = async (state: string) =>
      (await read(shop.owner, `/api/jobs?state=${state}`, jobsPage)).items.map((job: { id: string }) => job.id);
    expect(await numbers('open')).toEqual([id.visit]);
    expect(await numbers('expected')).toEqual([id.booked]);
    expect(await numbers('ended')).toEqual([id.first]);
  });

  it('is found by the name of its customer', async () => {
    const { items }: FindView = await read(shop.owner, '/api/find?q=ganne', findView);
    expect(items.filter((item) => item.kind === 'job').map((item) => [item.id, item.by])).toEqual([
      [id.visit, 'customer'],
      [id.booked, 'customer'],
    ]);
  });
});

describe('a vehicle', () => {
  it('says what was done on it and until which day the shop guarantees it: twelve months unless it says otherwise', async () => {
    const view: VehicleView = await read(shop.owner, `/api/vehicles/${id.vehicle}`, vehicleView);
    expect(view.workDone.map(({ lineId, guaranteeUntil }) => [lineId, guaranteeUntil])).toEqual([
      [id.done, '2031-03-13'],
    ]);
  });
});

describe('a customer', () => {
  it('has contacts, standing go-aheads, vehicles and visits', async () => {
    const view = await read(shop.owner, `/api/customers/${id.customer}`, customerView);
    expect(view.vehicles.map(({ plate }: { plate: string }) => plate)).toEqual(['HB 1', 'HB 2']);
    expect(view.jobs.map((job: { id: string }) => job.id)).toEqual([id.booked, id.visit, id.first]);
    expect(view.standing).toHaveLength(2);
    expect(await problemOf(shop.owner, `/api/customers/${randomUUID()}`)).toEqual([404, 'row.notFound']);
  });
});

describe('the load of the days', () => {
  it('is the book time that is left against the hours of people: today what is left of it, a booked visit on its own day', async () => {
    const { days }: DayLoadView = await read(shop.owner, `/api/day-load?from=${day}&days=3`, dayLoadView);
    // Two technicians. Wednesday from 12:00: 17:00 less the break to 12:30 = 270 min each. Thursday 540 min each. Friday closed.
    expect(days).toEqual([
      { day: '2030-03-13', peopleMinutes: 540, loadMinutes: 90, bookedMinutes: 0, bookedJobs: 0 },
      { day: '2030-03-14', peopleMinutes: 1080, loadMinutes: 240, bookedMinutes: 240, bookedJobs: 1 },
      { day: '2030-03-15', peopleMinutes: 0, loadMinutes: 0, bookedMinutes: 0, bookedJobs: 0 },
    ]);
  });
});
