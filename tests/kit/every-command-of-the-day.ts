/**
 * The story of ./every-command goes on: customers and what they agreed to, a booking, road tests, wheels, other firms,
 * ways to choose from, questions, a release and what is undone. Each command of the whole day is accepted at least once.
 */
import type { CommandName } from '@holdfast/domain';
import { commandsOfTheShop } from './every-command-of-the-shop.js';
import { commandsOfTime } from './every-command-of-time.js';
import type { Told } from './told.js';

const hours = (n: number) => new Date(Date.now() + n * 3_600_000).toISOString();

export async function commandsOfTheDay(told: Told): Promise<void> {
  const { vehicleId, jobId, customerId } = await customersAndBooking(told);
  await linesAndGoAheads(told, jobId, customerId);
  await asksAndIsTold(told, jobId);
  await attemptsAndCauses(told, jobId);
  await wheelsAndRoadTest(told, jobId, vehicleId);
  await otherFirms(told, jobId);
  await twoBaysChanged(told, jobId);
  const [line = ''] = await told.idsOf('work_line');
  await commandsOfTime(told, jobId, line);
  await released(told, jobId);
  await commandsOfTheShop(told);
}

async function customersAndBooking({ go, made, version }: Told) {
  const customerId = await made('addCustomer', 'customer', {
    name: 'Skerry Ferries',
    contacts: [{ name: 'Ida Crane', phone: '01 66', mayAgreeUpTo: '400.00' }],
  });
  await go('changeCustomer', { customerId, version: await version('customer', customerId), fleet: 'Skerry' });
  const contactId = await made('addContact', 'contact', { customerId, name: 'Per Crane', mayBring: true });
  await go('changeContact', { contactId, version: await version('contact', contactId), phone: '01 67' });
  const vehicleId = await made('addVehicle', 'vehicle', {
    customerId,
    plate: 'SK 9 F',
    description: 'Estate car, grey',
    kind: 'light',
    drive: 'combustion',
  });
  await go('correctVehicle', {
    vehicleId,
    version: await version('vehicle', vehicleId),
    curbKg: 1500,
    curbSource: 'papers',
    words: 'Read from the papers',
  });
  await go('recordOdometer', { vehicleId, value: 45_000, unit: 'km', source: 'told' });
  const gone = await made('bookJob', 'job', { vehicleId, customerId, expectedAt: hours(48) });
  await go('cancelJob', { jobId: gone, version: await version('job', gone), words: 'Sold it' });
  const jobId = await made('bookJob', 'job', {
    vehicleId,
    customerId,
    contactId,
    expectedAt: hours(24),
    concerns: [{ words: 'Hums at the rear', conditions: 'Above 80 km/h, warm' }],
    lines: [{ title: 'Look for the hum', bookMinutes: 60, price: '90.00' }],
  });
  await go('changeBooking', { jobId, version: await version('job', jobId), expectedAt: hours(1) });
  await go('recordArrival', { jobId, yardSpot: 'Y7', keyTag: 'K12' });
  const call = await made('recordContact', 'contactEntry', {
    vehicleId,
    jobId,
    way: 'telephone',
    withName: 'Ida Crane',
    reached: true,
    answer: 'May be looked at today',
    moveOf: 'shop',
  });
  if (call === '') throw new Error('the entry of the contact log has no id');
  await go('checkIn', {
    vehicleId,
    expectedJobId: jobId,
    concerns: [],
    odometer: { value: 45_010, unit: 'km', source: 'read' },
    standingGoAheads: [{ kind: 'lookForFault', upTo: '120.00', byName: 'Ida Crane' }],
  });
  await go('setBoardNote', { jobId, version: await version('job', jobId), note: 'Dog in the boot' });
  return { vehicleId, jobId, customerId };
}

async function linesAndGoAheads({ go, made, version, idsOf, technician }: Told, jobId: string, customerId: string) {
  const standing = await made('giveStandingGoAhead', 'standingGoAhead', {
    customerId,
    kind: 'fleetLimit',
    upTo: '500.00',
    orderNumber: 'SK-77',
    byName: 'Ida Crane',
  });
  const given = (await idsOf('standing_go_ahead')).find((id) => id !== standing) ?? '';
  const [look = ''] = await idsOf('work_line');
  await go(
    'recordGoAhead',
    {
      lineId: look,
      version: await version('work_line', look),
      answer: 'given',
      how: 'standing',
      standingGoAheadId: given,
    },
    technician,
  );
  await go('endStandingGoAhead', {
    standingGoAheadId: standing,
    version: await version('standing_go_ahead', standing),
    words: 'Order was used up',
  });
  const one = await made('addLine', 'workLine', { jobId, title: 'New bearing', price: '200.00', bookMinutes: 90 });
  const other = await made('addLine', 'workLine', { jobId, title: 'New hub with bearing', price: '320.00' });
  await go('makeChoice', { jobId, lineIds: [one, other] });
  await go('changeLine', { lineId: one, version: await version('work_line', one), bookMinutes: 100 });
  await go('recordGoAhead', {
    lineId: one,
    version: await version('work_line', one),
    answer: 'given',
    byName: 'Ida Crane',
    how: 'telephone',
  });
  const clock = await made('startWork', 'clock', { lineId: one }, technician);
  await go(
    'stopWork',
    { clockId: clock, version: await version('clock', clock), handover: 'Hub is loose' },
    technician,
  );
  await go('withdrawGoAhead', {
    lineId: one,
    version: await version('work_line', one),
    byName: 'Ida Crane',
    how: 'telephone',
    words: 'Too dear now',
  });
  await go('dropLine', {
    lineId: one,
    version: await version('work_line', one),
    words: 'Put back as it was',
    charge: '40.00',
  });
  await go('reopenLine', { lineId: one, version: await version('work_line', one), words: 'Wants it after all' });
}

async function asksAndIsTold({ go, made, version, technician }: Told, jobId: string) {
  const question = await made('askQuestion', 'question', { jobId, toId: told(technician), words: 'Was it dry?' });
  await go(
    'answerQuestion',
    { questionId: question, version: await version('question', question), answer: 'Dry, and warm' },
    technician,
  );
}

const told = (sender: Told['technician']) => sender?.personId ?? '';

async function attemptsAndCauses({ go, made, version, idsOf, technician }: Told, jobId: string) {
  const [concernId = ''] = await idsOf('concern');
  await go(
    'recordAttempt',
    { concernId, conditions: 'Above 80 km/h, warm', odometer: 45_020, appeared: true },
    technician,
  );
  const cause = await made(
    'recordCause',
    'cause',
    { jobId, concernIds: [concernId], words: 'Wheel bearing, rear left', certainty: 'likely' },
    technician,
  );
  await go('changeCause', { causeId: cause, version: await version('cause', cause), certainty: 'found' }, technician);
  const hold = await made('openHold', 'hold', { jobId, reason: 'conditions', words: 'Needs a cold start' }, technician);
  await go(
    'changeHold',
    { holdId: hold, version: await version('hold', hold), words: 'Cold start tomorrow' },
    technician,
  );
  await go('endHold', { holdId: hold, version: await version('hold', hold) }, technician);
}

async function wheelsAndRoadTest({ go, version, made, technician, lift }: Told, jobId: string, vehicleId: string) {
  await go('takeIntoBay', { jobId, bayId: lift, loaded: false }, technician);
  await go('recordWheelOff', { jobId, positions: ['2L', '2R'] }, technician);
  await go('recordWheelOn', { jobId, positions: ['2L', '2R'] }, technician);
  await go(
    'recordTorque',
    {
      jobId,
      positions: ['2L', '2R'],
      torque: '120',
      torqueUnit: 'newtonMetre',
      torqueSource: 'vehicleMaker',
      tool: 'Torque wrench 3',
    },
    technician,
  );
  await go('takeOnRoadTest', { jobId, keepSpot: true, odometerOut: 45_020 }, technician);
  await go('returnFromRoadTest', { jobId, odometerIn: 45_031, intoKeptSpot: true }, technician);
  const followUpId = await made('addFollowUp', 'followUp', {
    vehicleId,
    jobId,
    kind: 'retorque',
    title: 'Wheels tightened again',
    words: 'As the vehicle maker asks',
    withinDistance: 50,
    distanceUnit: 'km',
  });
  await go('recordRetorque', {
    followUpId,
    version: await version('follow_up', followUpId),
    torque: '120',
    torqueUnit: 'newtonMetre',
    torqueSource: 'vehicleMaker',
    tool: 'Torque wrench 3',
  });
}

async function otherFirms({ go, made, version }: Told, jobId: string) {
  const arrange = (form: string, more: object = {}) =>
    made('arrangeSublet', 'sublet', { jobId, form, firm: 'Brig Paint', dueBackAt: hours(30), ...more });
  const turn = async (name: CommandName, subletId: string, more: object = {}) =>
    go(name as 'sendAway', { subletId, version: await version('sublet', subletId), ...more } as never);
  const none = await arrange('outsiderIn');
  await turn('changeSublet', none, { price: '80.00' });
  await turn('cancelSublet', none, { words: 'No slot' });
  const component = await arrange('componentOut', { component: 'Bumper' });
  await turn('sendComponentAway', component);
  await turn('bringBack', component, { price: '150.00' });
  const outsider = await arrange('outsiderIn');
  await turn('letOutsiderIn', outsider);
  await turn('bringBack', outsider);
  const out = await arrange('vehicleOut');
  await turn('sendAway', out, { keepSpot: true, movedHow: 'driven' });
  await turn('bringBack', out, { intoKeptSpot: true });
}

async function twoBaysChanged({ go, made, idsOf, version, flat, technician }: Told, jobId: string) {
  const vehicleId = await made('addVehicle', 'vehicle', {
    plate: 'HB 77',
    description: 'Pick-up',
    kind: 'light',
    drive: 'combustion',
    curbKg: 1800,
    curbSource: 'papers',
    grossKg: 2600,
    grossSource: 'plate',
  });
  const otherId = await made('checkIn', 'job', {
    vehicleId,
    customer: { name: 'Cord Marine' },
    concerns: [{ words: 'Pulls left' }],
  });
  // It stands there though it does not roll: recorded, flagged, and looked at.
  await go('recordRolls', { vehicleId, rolls: false, mayBeDriven: false }, technician);
  await go('takeIntoBay', { jobId: otherId, bayId: flat, alreadyThere: true, movedHow: 'rolled' }, technician);
  const [flagId = ''] = await idsOf('flag');
  await go('clearFlag', { flagId, version: await version('flag', flagId), words: 'Pushed by three' });
  await go('recordRolls', { vehicleId, rolls: true, mayBeDriven: true }, technician);
  await go('swapBays', { jobIds: [jobId, otherId], loaded: [{ jobId: otherId, loaded: false }] }, technician);
}

async function released({ go, version }: Told, jobId: string) {
  await go('releaseUnfinished', {
    jobId,
    version: await version('job', jobId),
    leavesBy: 'transporter',
    receivedBy: 'Ida Crane',
    receivedHow: 'there',
    words: 'They want it at their own yard',
  });
  await go('undoHandBack', { jobId, words: 'The transporter did not come' });
}
