/**
 * The story of ./every-command goes on in the office: the shop, its settings and other hours, lifts and what is out of
 * use, another owner, records that were made twice, and personal data that are erased. Each is accepted at least once.
 */
import type { Told } from './told.js';

const dayMs = 86_400_000;
const day = (n: number) => new Date(Date.now() + n * dayMs).toISOString().slice(0, 10);

export async function commandsOfTheShop(told: Told): Promise<void> {
  await settings(told);
  await lifts(told);
  await ownersAndTwins(told);
  await erased(told);
}

async function settings({ shop, go, made, version }: Told) {
  const { shopId } = shop;
  const zone = { validFrom: '2031-01-01', zone: 'Europe/Berlin' };
  await go('changeShop', { shopId, version: await version('shop', shopId), name: 'Quay North', zone });
  await go('changeSettings', { graceMinutes: 10 });
  await go('setException', { day: '2031-05-01', hours: [], words: 'Holiday' });
  const exceptionId = await made('setException', 'hoursException', { day: '2031-05-01', hours: [['09:00', '12:00']] });
  await go('endException', { exceptionId, version: await version('hours_exception', exceptionId) });
  const supplierId = await made('addSupplier', 'supplier', { name: 'Mill Lamps' });
  await go('changeSupplier', { supplierId, version: await version('supplier', supplierId), cutOff: '16:00' });
}

async function lifts({ go, made, version, lift, technician }: Told) {
  const inspection = { bayId: lift, inspectedOn: '2024-01-10', outcome: 'passed', intervalMonths: 12 } as const;
  await go('recordLiftInspection', inspection);
  await go('allowOverdueLift', { bayId: lift, untilDay: day(5), words: 'The inspector comes on Friday' });
  await go('recordLiftInspection', { bayId: lift, inspectedOn: day(-2), outcome: 'passed', inspector: 'A. Stone' });
  const outageId = await made('takeOutOfUse', 'outage', { bayId: lift, words: 'Leaks' }, technician);
  await go('putBackInUse', { outageId, version: await version('outage', outageId), words: 'Seal renewed' });
  const vehicleId = await made('addVehicle', 'vehicle', {
    plate: 'HB 500',
    description: 'Van',
    kind: 'light',
    drive: 'combustion',
  });
  await made('addCaution', 'caution', { vehicleId, standing: true, code: 'liftingPoint', words: 'Left sill is soft' });
  const visit = await made('bookJob', 'job', { vehicleId, customer: { name: 'Cleat Hire' }, expectedAt: soon() });
  await go('nameLiftingPoints', { jobId: visit, words: 'Front points and the rear beam' });
}

const soon = () => new Date(Date.now() + 2 * dayMs).toISOString();

async function ownersAndTwins({ go, made, version }: Told) {
  const add = (plate: string, customerId: string) =>
    made('addVehicle', 'vehicle', { plate, customerId, description: 'Van', kind: 'light', drive: 'combustion' });
  const person = (name: string) =>
    made('addCustomer', 'customer', { name, contacts: [{ name: `${name} at the gate`, phone: '01 88' }] });
  const [keel, stern] = [await person('Keel Freight'), await person('Stern Freight')];
  const [vehicleId, otherId] = [await add('HB 600', keel), await add('HB 6OO', stern)];
  await made('bookJob', 'job', { vehicleId: otherId, customerId: stern, expectedAt: soon() });
  await go('changeOwner', {
    vehicleId,
    version: await version('vehicle', vehicleId),
    customerId: stern,
    words: 'Sold',
  });
  await go('mergeVehicles', {
    vehicleId,
    version: await version('vehicle', vehicleId),
    otherId,
    otherVersion: await version('vehicle', otherId),
    words: 'The plate was misread',
  });
  await go('mergeCustomers', {
    customerId: keel,
    version: await version('customer', keel),
    otherId: stern,
    otherVersion: await version('customer', stern),
    words: 'One firm',
  });
}

async function erased({ go, made, version }: Told) {
  const customerId = await made('addCustomer', 'customer', {
    name: 'Ola Brand',
    contacts: [{ name: 'Ola Brand', phone: '01 99' }],
  });
  const vehicle = { plate: 'HB 700', customerId, description: 'Van', kind: 'light', drive: 'combustion' } as const;
  const vehicleId = await made('addVehicle', 'vehicle', vehicle);
  await made('bookJob', 'job', { vehicleId, customerId, expectedAt: soon(), boardNote: 'Ring Ola Brand' });
  await go('erasePersonalData', { customerId, version: await version('customer', customerId), words: 'By letter' });
}
