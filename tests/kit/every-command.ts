/**
 * One story in which every command is accepted at least once: a van with a bumper on backorder and an estate car with a
 * worn pad. `step` is called after each accepted command, with its name. For tests that must hold whatever is done.
 */
import type { CommandName } from '@holdfast/domain';
import type pg from 'pg';
import type { Accepted, EngineShop } from './engine-shop.js';
import { commandsOfFiles } from './every-command-of-files.js';
import { commandsOfTheDay } from './every-command-of-the-day.js';

type Step = (name: CommandName, answer: Accepted) => Promise<void>;

const days = {
  mon: [['08:00', '17:00']],
  tue: [['08:00', '17:00']],
  wed: [['08:00', '17:00']],
  thu: [['08:00', '17:00']],
  fri: [['08:00', '17:00']],
  sat: [],
  sun: [],
} as const;
const week = structuredClone(days) as unknown as Record<
  'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun',
  [string, string][]
>;
const noBreaks = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };

export async function everyCommand(shop: EngineShop, pool: pg.Pool, step: Step): Promise<void> {
  const versions = new Map<string, number>();
  const go: EngineShop['accept'] = async (name, input, by, key) => {
    const answer = await shop.accept(name, input, by, key);
    await step(name, answer);
    return answer;
  };
  const made = async (name: Parameters<typeof go>[0], table: string, input: unknown, by?: Parameters<typeof go>[2]) =>
    (await go(name, input as never, by)).created[table] ?? '';
  /** The version of a row now; the story does not count along. */
  const version = async (table: string, id: string): Promise<number> => {
    const { rows } = await pool.query<{ version: number }>(
      `select version from "${table}" where shop_id = $1 and id = $2`,
      [shop.shopId, id],
    );
    versions.set(id, rows[0]?.version ?? 0);
    return rows[0]?.version ?? 0;
  };

  await go('setOpeningHours', { validFrom: '2020-01-01', week, breaks: noBreaks });
  await go('setSeasons', { seasons: [{ name: 'Salt', fromDay: '11-01', toDay: '03-31', validFrom: '2020-01-01' }] });
  const supplierId = await made('addSupplier', 'supplier', { name: 'Harbour Panels', phone: '01 23' });
  const lift = await made('addBay', 'bay', {
    name: 'Lift 1',
    spots: 1,
    equipment: [{ kind: 'twoPostLift', inUse: true, grips: 'points' }],
    capacity: '3000',
    capacityUnit: 'kg',
  });
  const flat = await made('addBay', 'bay', {
    name: 'Flat',
    spots: 2,
    equipment: [{ kind: 'flat', inUse: true, grips: null }],
  });
  await go('changeBay', { bayId: flat, version: await version('bay', flat), name: 'Flat bay' });
  const tech = await made('addPerson', 'person', {
    name: 'Tam',
    roles: ['technician'],
    skills: [{ skill: 'secondCheck' }],
    homeBayId: lift,
  });
  const second = await made('addPerson', 'person', {
    name: 'Ines',
    roles: ['technician'],
    skills: [{ skill: 'secondCheck' }],
  });
  await go('changePerson', {
    personId: second,
    version: await version('person', second),
    skills: [{ skill: 'secondCheck' }, { skill: 'airbags', until: '2031-01-01' }],
  });
  const technician = shop.sender(tech, ['technician']);
  const colleague = shop.sender(second, ['technician']);

  const vehicleId = await made('addVehicle', 'vehicle', {
    plate: 'HB 214 K',
    description: 'Delivery van',
    kind: 'light',
    drive: 'combustion',
    curbKg: 1900,
    curbSource: 'papers',
    grossKg: 2900,
    grossSource: 'plate',
  });
  const checkedIn = await go('checkIn', {
    vehicleId,
    customer: { name: 'Quay Parcels', fleet: 'Quay' },
    contact: { name: 'Nan Ferro', phone: '01 55', mayAgreeUpTo: '300.00' },
    concerns: [
      { words: 'Backed into a dock', conditions: 'Always' },
      { words: 'Rattle', conditions: 'Over kerbs' },
    ],
    odometer: { value: 81234, unit: 'km', source: 'read' },
    keyTag: 'K7',
    yardSpot: 'Y2',
  });
  await commandsOfFiles({ shop, pool, go }, 'HB 214 K');
  const jobId = checkedIn.created['job'] ?? '';
  await go('changePromisedTime', {
    jobId,
    version: await version('job', jobId),
    promisedAt: new Date(Date.now() + 86_400_000).toISOString(),
  });
  const line = await made('addLine', 'workLine', {
    jobId,
    title: 'Repair the rear step',
    bookMinutes: 120,
    price: '250.00',
  });
  const rattle = await made('addLine', 'workLine', {
    jobId,
    title: 'Find the rattle',
    bookMinutes: 30,
    price: '40.00',
  });
  const extra = await made('addLine', 'workLine', { jobId, title: 'Polish', price: '20.00' });
  for (const lineId of [line, rattle]) {
    await go('recordGoAhead', {
      lineId,
      version: await version('work_line', lineId),
      answer: 'given',
      byName: 'Nan Ferro',
      how: 'telephone',
      upTo: '300.00',
    });
  }
  await go('takeIntoBay', { jobId, bayId: lift }, technician);
  const clock = await made('startWork', 'clock', { lineId: line }, technician);
  const caution = await made(
    'addCaution',
    'caution',
    { vehicleId, jobId, standing: false, code: 'batteryOff' },
    technician,
  );
  await go('endCaution', { cautionId: caution, version: await version('caution', caution) }, technician);
  await go(
    'addFinding',
    { jobId, place: 'Rear step, left', kind: 'fault', words: 'Bracket torn', measure: '4.5', unit: 'mm' },
    technician,
  );
  await pool.query(
    `insert into upload (shop_id, content, width, height, bytes, person_id, uploaded_at) values ($1, $2, 10, 10, 100, $3, now())`,
    [shop.shopId, 'a'.repeat(64), shop.ownerId],
  );
  await go('attachPhoto', { jobId, content: 'a'.repeat(64), width: 10, height: 10, moment: 'before' }, technician);
  const part = await made(
    'wantPart',
    'partLine',
    { lineId: line, description: 'Step bumper', quantity: '1', needed: 'beforeRefit' },
    technician,
  );
  const bolts = await made(
    'wantPart',
    'partLine',
    { lineId: line, description: 'Bolts', quantity: '2', needed: 'mayFollow' },
    technician,
  );
  await made('openHold', 'hold', { jobId, reason: 'parts', lineIds: [line], partLineIds: [part] }, technician);
  await go(
    'stopWork',
    { clockId: clock, version: await version('clock', clock), handover: 'One end is off; the bolts lie in the cab' },
    technician,
  );
  await go('placeOrder', {
    supplierId,
    reference: 'HP-1',
    lines: [{ partLineId: part, version: await version('part_line', part) }],
  });
  await go('recordDueIn', { partLineIds: [part], state: 'backorderedWithDate', dueOn: '2031-02-03' });
  await go('cancelPart', { partLineId: bolts, version: await version('part_line', bolts), words: 'From the shelf' });
  const fix = await made(
    'addTemporaryFix',
    'temporaryFix',
    {
      jobId,
      kind: 'heldBy',
      standsInFor: 'Sensor bracket',
      place: 'Rear step, right',
      heldWith: 'Screw and washer',
      system: 'driverAssistance',
      endedByWhat: 'New bracket',
      withinDays: 30,
    },
    technician,
  );
  await go('recordSecondCheck', { temporaryFixId: fix, version: await version('temporary_fix', fix) }, colleague);
  const followUp = await made('addFollowUp', 'followUp', {
    vehicleId,
    jobId,
    kind: 'permanentRepair',
    title: 'New sensor bracket',
    temporaryFixId: fix,
    withinDays: 30,
  });
  await go('receiveParts', { supplierId, items: [{ partLineId: part, quantity: '1', verdict: 'damaged' }] });
  await go('receiveParts', { supplierId, items: [{ partLineId: part, quantity: '1', verdict: 'good', bin: 'B4' }] });
  const tool = await made('openHold', 'hold', { jobId, reason: 'tool', words: 'Puller is lent' }, technician);
  await go('endHold', { holdId: tool, version: await version('hold', tool) }, technician);
  await go('fitPart', { partLineId: part, version: await version('part_line', part) }, technician);
  await made('startWork', 'clock', { lineId: line }, technician);
  // Somebody else says the technician began elsewhere: contested, and settled as it stands.
  await go('startWork', { lineId: rattle, personId: tech, alreadyStarted: true });
  const { rows: reports } = await pool.query<{ id: string }>(
    `select id from report where shop_id = $1 and state = 'contested'`,
    [shop.shopId],
  );
  const reportId = reports[0]?.id ?? '';
  await go('settleCard', {
    reportId,
    version: await version('report', reportId),
    take: false,
    words: 'He was on the step',
  });
  await go('finishLine', { lineId: line, version: await version('work_line', line) }, technician);
  const rattleClock = await made('startWork', 'clock', { lineId: rattle }, technician);
  await go('stopWork', { clockId: rattleClock, version: await version('clock', rattleClock) }, technician);
  await go(
    'carryOverLine',
    {
      lineId: rattle,
      version: await version('work_line', rattle),
      done: 'Looked at the rear',
      remaining: 'Front still to look at',
      remainingMinutes: 20,
      limits: { withinDays: 60 },
    },
    technician,
  );
  await go('dropLine', { lineId: extra, version: await version('work_line', extra), words: 'Not wanted' }, technician);
  await go('recordRolls', { vehicleId, rolls: true, mayBeDriven: true }, technician);
  const note = await go('moveToYard', { jobId, yardSpot: 'Y3' }, technician);
  await go('takeBack', { seq: note.seq }, technician);
  const { rows: concerns } = await pool.query<{ id: string }>(
    'select id from concern where shop_id = $1 and job_id = $2',
    [shop.shopId, jobId],
  );
  for (const { id } of concerns) {
    await go('recordConcernOutcome', {
      concernId: id,
      version: await version('concern', id),
      outcome: 'gone',
      conditions: 'Over the same kerb',
      words: 'Quiet',
    });
  }
  await go('handBack', {
    jobId,
    version: await version('job', jobId),
    leavesBy: 'road',
    receivedBy: 'Nan Ferro',
    receivedHow: 'there',
    odometer: 81240,
  });
  await go('endTemporaryFix', {
    temporaryFixId: fix,
    version: await version('temporary_fix', fix),
    how: 'failed',
    words: 'Screw pulled out',
  });
  await go('endTemporaryFix', {
    temporaryFixId: fix,
    version: await version('temporary_fix', fix),
    how: 'mendedElsewhere',
    toldHow: 'told',
    words: 'By the maker',
  });
  const { rows: open } = await pool.query<{ id: string }>(
    `select id from follow_up where shop_id = $1 and state = 'open' and id <> $2`,
    [shop.shopId, followUp],
  );
  for (const { id } of open)
    await go('closeFollowUp', {
      followUpId: id,
      version: await version('follow_up', id),
      how: 'dropped',
      words: 'Sold',
    });
  const idsOf = async (table: string): Promise<string[]> => {
    const { rows } = await pool.query<{ id: string }>(
      `select id from "${table}" where shop_id = $1 and not void order by recorded_at desc, id desc`,
      [shop.shopId],
    );
    return rows.map(({ id }) => id);
  };
  await commandsOfTheDay({ shop, go, made, version, idsOf, lift, flat, tech, technician });
}
