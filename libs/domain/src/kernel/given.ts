/**
 * Rows for specs, in the order a day makes them: `given().shop().bay('b1').vehicle('v1').job('j1').line('l1').rows()`.
 * Every row is complete and unremarkable; a spec says only what its rule is about. A row belongs to the last vehicle, job,
 * line … named before it, unless told otherwise. `shop()` brings one person for each role, whose id is the role's name,
 * and `second`, a technician with the skill to make second checks.
 */
import { calendarOf } from '@holdfast/shop-calendar';
import type { Row, TableName } from '../tables/tables.js';
import { type Role, roles } from '../tables/words.js';
import type { By, Circumstances, TakenBack } from './decision.js';
import { breaks, hour, opening, recorded, started, tuesdayTen, usual, week } from './given-usual.js';
import { type NewRow, Rows } from './rows.js';

export { hour, minute, opening, tuesdayTen } from './given-usual.js';

const calendar = calendarOf({
  zone: 'Europe/London',
  hours: [{ validFrom: started, week, breaks }],
  exceptions: [],
});

type Over<T extends TableName> = Partial<NewRow<T>>;
type Content = { [T in TableName]?: Row<T>[] };

export class Given {
  private readonly content: Content = {};
  private readonly last = new Map<TableName, string>();

  private lastOf(table: TableName): string {
    return this.last.get(table) ?? `no ${table} given`;
  }
  private lastOrNull(table: TableName): string | null {
    return this.last.get(table) ?? null;
  }

  /** Any whole row, for what has no word of its own below. */
  row<T extends TableName>(table: T, row: NewRow<T> & { readonly void?: boolean; readonly version?: number }): this {
    const content = this.content as { [K in T]?: Row<K>[] };
    const whole = { version: 1, void: false, ...row } as Row<T>;
    (content[table] ??= []).push(whole);
    this.last.set(table, whole.id);
    return this;
  }

  /** Changes a row given before, also its version or void mark. */
  but<T extends TableName>(table: T, id: string, change: Partial<Row<T>>): this {
    const content = this.content as { [K in T]?: Row<K>[] };
    content[table] = (content[table] ?? []).map((row) => (row.id === id ? { ...row, ...change } : row));
    return this;
  }

  shop(over: Over<'shop'> = {}, setting: Over<'shopSetting'> = {}): this {
    this.row('shop', { id: 'shop', ...usual.shop, ...over });
    this.setting('setting', setting);
    this.row('openingHours', { id: 'hours', validFrom: started, week, breaks });
    this.row('counter', { id: 'counter', name: 'job', value: 100 });
    for (const role of roles) this.person(role, { name: `The ${role}`, roles: [role] });
    return this.person('second', { name: 'The second' }).skill('second', 'secondCheck');
  }
  setting(id: string, over: Over<'shopSetting'> = {}): this {
    return this.row('shopSetting', { id, ...usual.shopSetting, ...over });
  }
  season(id: string, over: Over<'season'> = {}): this {
    const salt = { name: 'Salt', fromDay: '11-01', toDay: '03-31', validFrom: started, endedOn: null };
    return this.row('season', { id, ...salt, ...over });
  }
  person(id: string, over: Over<'person'> = {}): this {
    return this.row('person', { id, name: id, roles: ['technician'], homeBayId: null, active: true, ...over });
  }
  skill(personId: string, skill: string, over: Over<'personSkill'> = {}): this {
    return this.row('personSkill', { id: `${personId}-${skill}`, personId, skill, until: null, ...over });
  }
  /** A bay with one two-post lift rated 3000 kg, unless told otherwise. */
  bay(id: string, spec: Over<'baySpec'> = {}, over: Over<'bay'> = {}): this {
    const position = (this.content.bay?.length ?? 0) + 1;
    this.row('bay', { id, name: `Bay ${String(position)}`, position, endedOn: null, ...over });
    return this.baySpec(`${id}-spec`, { bayId: id, ...spec });
  }
  baySpec(id: string, over: Over<'baySpec'> = {}): this {
    return this.row('baySpec', { id, ...usual.baySpec, bayId: this.lastOf('bay'), ...over });
  }
  supplier(id: string, over: Over<'supplier'> = {}): this {
    return this.row('supplier', { id, name: id, phone: null, mail: null, cutOff: null, runs: null, ...over });
  }

  customer(id: string, over: Over<'customer'> = {}): this {
    return this.row('customer', {
      id,
      name: id,
      nameKey: id.toUpperCase(),
      fleet: null,
      erasedAt: null,
      mergedIntoId: null,
      ...over,
    });
  }
  contact(id: string, over: Over<'contact'> = {}): this {
    return this.row('contact', { id, ...usual.contact, customerId: this.lastOf('customer'), name: id, ...over });
  }
  /** A light van of 2000 kg, 2800 kg gross, that rolls and may be driven. */
  vehicle(id: string, over: Over<'vehicle'> = {}): this {
    return this.row('vehicle', {
      id,
      ...usual.vehicle,
      customerId: this.lastOrNull('customer'),
      plate: id,
      plateKey: id.toUpperCase(),
      ...over,
    });
  }
  odometer(id: string, value: number | null, over: Over<'odometerReading'> = {}): this {
    const of = { vehicleId: this.lastOf('vehicle'), jobId: this.lastOrNull('job') };
    return this.row('odometerReading', { id, ...usual.odometerReading, value, ...of, ...over });
  }
  caution(id: string, over: Over<'caution'> = {}): this {
    return this.row('caution', {
      id,
      ...usual.caution,
      vehicleId: this.lastOf('vehicle'),
      jobId: this.lastOrNull('job'),
      ...over,
    });
  }
  /** An open job, checked in at 08:00; where it stands is said by `inYard` or `inBay`. */
  job(id: string, over: Over<'job'> = {}): this {
    return this.row('job', {
      id,
      ...usual.job,
      number: (this.content.job?.length ?? 0) + 1,
      vehicleId: this.lastOf('vehicle'),
      customerId: this.lastOrNull('customer'),
      ...over,
    });
  }
  /** A visit that is expected at noon. */
  booked(id: string, over: Over<'job'> = {}): this {
    return this.job(id, { expectedAt: tuesdayTen + 2 * hour, arrivedAt: null, checkedInAt: null, ...over });
  }
  /** An open call about a go-ahead; of the last vehicle, and of a visit or follow-up only where one is named. */
  call(id: string, over: Over<'call'> = {}): this {
    const of = { vehicleId: this.lastOf('vehicle'), customerId: this.lastOrNull('customer') };
    return this.row('call', { id, ...usual.call, ...of, ...over });
  }
  concern(id: string, over: Over<'concern'> = {}): this {
    return this.row('concern', {
      id,
      ...usual.concern,
      jobId: this.lastOf('job'),
      position: (this.content.concern?.length ?? 0) + 1,
      ...over,
    });
  }
  finding(id: string, over: Over<'finding'> = {}): this {
    const of = { jobId: this.lastOf('job'), vehicleId: this.lastOf('vehicle'), concernId: null };
    return this.row('finding', { id, ...usual.finding, ...of, ...over });
  }

  /** A planned line with its go-ahead given. */
  line(id: string, over: Over<'workLine'> = {}): this {
    return this.row('workLine', {
      id,
      ...usual.workLine,
      jobId: this.lastOf('job'),
      vehicleId: this.lastOf('vehicle'),
      position: (this.content.workLine?.length ?? 0) + 1,
      ...over,
    });
  }
  /** A clock of `technician` on the last line, running since 08:00. */
  clock(id: string, over: Over<'clock'> = {}): this {
    const of = { jobId: this.lastOf('job'), lineId: this.lastOf('workLine'), personId: 'technician' };
    return this.row('clock', { id, ...recorded, ...of, bench: false, fromAt: opening, toAt: null, ...over });
  }

  inYard(over: Over<'place'> = {}): this {
    const jobId = over.jobId ?? this.lastOf('job');
    return this.place(`${jobId}-yard`, { jobId, ...over });
  }
  /** In the bay since 08:00: the place and the use of its spot. */
  inBay(bayId: string, over: Over<'place'> = {}, use: Over<'spotUse'> = {}): this {
    const jobId = over.jobId ?? this.lastOf('job');
    const vehicleId = over.vehicleId ?? this.lastOf('vehicle');
    const spot = over.spot ?? 1;
    this.place(`${jobId}-${bayId}`, { jobId, kind: 'bay', bayId, spot, ...over });
    const where = { jobId, vehicleId, bayId, spot, kind: 'stands' } as const;
    const when = { fromAt: over.fromAt ?? opening, toAt: over.toAt ?? null };
    return this.row('spotUse', { id: `${jobId}-${bayId}-use`, ...recorded, ...where, ...when, ...use });
  }
  place(id: string, over: Over<'place'> = {}): this {
    return this.row('place', {
      id,
      ...usual.place,
      jobId: this.lastOf('job'),
      vehicleId: this.lastOf('vehicle'),
      ...over,
    });
  }
  /** A wheel of the last job that is off since 08:00. */
  wheel(id: string, position: string, over: Over<'wheelRecord'> = {}): this {
    const of = { jobId: this.lastOf('job'), vehicleId: this.lastOf('vehicle'), position };
    return this.row('wheelRecord', { id, ...usual.wheelRecord, ...of, ...over });
  }
  /** The last vehicle is to go to another firm. */
  sublet(id: string, over: Over<'sublet'> = {}): this {
    const of = { jobId: this.lastOf('job'), vehicleId: this.lastOf('vehicle') };
    return this.row('sublet', { id, ...usual.sublet, ...of, ...over });
  }
  report(id: string, over: Over<'report'> = {}): this {
    return this.row('report', {
      id,
      ...usual.report,
      jobId: this.lastOf('job'),
      vehicleId: this.lastOf('vehicle'),
      bayId: this.lastOrNull('bay'),
      ...over,
    });
  }

  /** An open hold of the whole last job; `lines` and `parts` name what it is about. */
  hold(id: string, over: Over<'hold'> = {}, lines: readonly string[] = [], parts: readonly string[] = []): this {
    const jobId = over.jobId ?? this.lastOf('job');
    this.row('hold', {
      id,
      ...usual.hold,
      jobId,
      vehicleId: this.lastOf('vehicle'),
      reason: parts.length > 0 ? 'parts' : 'information',
      ...over,
    });
    for (const lineId of lines) this.row('holdLine', { id: `${id}-${lineId}`, holdId: id, jobId, lineId });
    for (const partLineId of parts) this.row('holdPart', { id: `${id}-${partLineId}`, holdId: id, jobId, partLineId });
    return this;
  }

  /** One piece wanted before refit, for the last line. */
  part(id: string, over: Over<'partLine'> = {}): this {
    return this.row('partLine', {
      id,
      ...usual.partLine,
      vehicleId: this.lastOf('vehicle'),
      jobId: this.lastOrNull('job'),
      lineId: this.lastOrNull('workLine'),
      supplierId: this.lastOrNull('supplier'),
      ...over,
    });
  }
  order(id: string, over: Over<'partsOrder'> = {}): this {
    return this.row('partsOrder', {
      id,
      ...recorded,
      supplierId: this.lastOf('supplier'),
      reference: id,
      words: null,
      ...over,
    });
  }

  /** A fix that is on: the rear step held by a tie (tier 3, `body`), to be ended by the permanent step. */
  fix(id: string, over: Over<'temporaryFix'> = {}): this {
    return this.row('temporaryFix', {
      id,
      ...usual.temporaryFix,
      vehicleId: this.lastOf('vehicle'),
      jobId: this.lastOf('job'),
      ...over,
    });
  }
  secondCheck(id: string, over: Over<'secondCheck'> = {}): this {
    const of = { temporaryFixId: this.lastOf('temporaryFix'), vehicleId: this.lastOf('vehicle'), personId: 'second' };
    return this.row('secondCheck', { id, ...recorded, ...of, samePerson: false, words: null, ...over });
  }
  followUp(id: string, over: Over<'followUp'> = {}): this {
    return this.row('followUp', {
      id,
      ...usual.followUp,
      vehicleId: this.lastOf('vehicle'),
      fromJobId: this.lastOrNull('job'),
      ...over,
    });
  }

  rows(): Rows {
    return Rows.of(this.content);
  }
}

export function given(): Given {
  return new Given();
}

/** The person of `given().shop()` with that role. */
export function personOf(role: Role): By {
  return { personId: role, name: `The ${role}`, roles: [role] };
}

export interface GivenCircumstances {
  readonly now?: number;
  readonly effectiveAt?: number;
  /** A role stands for the person of `given().shop()` who has it. */
  readonly by?: By | Role;
  readonly device?: string | null;
  readonly skewMs?: number;
  readonly takenBack?: TakenBack;
  /** What new ids start with, where several commands of one spec write to the same rows. */
  readonly ids?: string;
}

/** Tuesday 10:00, the manager, no device. Ids are `new-1`, `new-2`, … */
export function circumstances(said: GivenCircumstances = {}): Circumstances {
  let made = 0;
  const now = said.now ?? tuesdayTen;
  const by = said.by ?? 'manager';
  return {
    now,
    effectiveAt: said.effectiveAt ?? now,
    by: typeof by === 'string' ? personOf(by) : by,
    device: said.device ?? null,
    skewMs: said.skewMs ?? 0,
    newId: () => `${said.ids ?? 'new'}-${String(++made)}`,
    calendar,
    ...(said.takenBack ? { takenBack: said.takenBack } : {}),
  };
}
