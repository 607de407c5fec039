import type { Locale } from '@holdfast/contract';
import {
  type drives,
  foldKey,
  type followUpKinds,
  type ImportKind,
  type urgencies,
  type vehicleKinds,
} from '@holdfast/domain';
import { CustomerMatch } from './customer-match.js';
import type { CheckedRow, CheckRun, KnownRows, NamedKeys, StagedRow } from './ports.js';
import { Cells } from './read-cells.js';

type Words<L extends readonly string[]> = Readonly<Record<L[number], readonly string[]>>;

/** Other people's words for ours; the first of each list stands for an empty cell. */
const kindWords: Words<typeof vehicleKinds> = {
  light: [
    'light',
    'car',
    'van',
    'passenger car',
    'pkw',
    'suv',
    'pickup',
    'hatchback',
    'estate',
    'saloon',
    'sedan',
    'lcv',
  ],
  heavy: ['heavy', 'truck', 'lorry', 'hgv', 'bus', 'coach', 'lkw'],
  trailer: ['trailer', 'caravan'],
  motorcycle: ['motorcycle', 'motorbike', 'bike', 'scooter'],
};
const driveWords: Words<typeof drives> = {
  combustion: ['combustion', 'petrol', 'diesel', 'gasoline', 'ice', 'benzin', 'gas oil'],
  hybrid: ['hybrid', 'phev', 'hev', 'plug-in hybrid', 'petrol hybrid', 'diesel hybrid', 'mild hybrid'],
  electric: ['electric', 'ev', 'bev', 'battery', 'elektro'],
  gas: ['gas', 'lpg', 'cng', 'lng', 'hydrogen'],
  none: ['none', 'no drive'],
};
const followUpWords: Words<typeof followUpKinds> = {
  lookAgain: ['look again', 'advisory', 'monitor', 'inspect', 'check again'],
  permanentRepair: ['permanent repair', 'repair'],
  carriedOver: ['carried over'],
  deferred: ['deferred', 'declined', 'postponed', 'put off', 'recommended'],
  question: ['question'],
  service: ['service', 'maintenance'],
  retorque: ['retorque', 're-torque', 'wheel check'],
};
const urgencyWords: Words<typeof urgencies> = {
  soon: ['soon', 'medium', 'normal'],
  urgent: ['urgent', 'high', 'critical', 'red'],
  whenItSuits: ['when it suits', 'low', 'none'],
};

export interface CheckerParts {
  readonly run: Pick<CheckRun, 'kind' | 'header' | 'mapping'>;
  readonly locale: Locale;
  readonly newId: () => string;
}

const nothing = {
  rowId: null,
  vehicleId: null,
  plateKey: null,
  vin: null,
  customerId: null,
  newCustomer: false,
  nameKey: null,
  phoneKey: null,
  contactId: null,
  made: null,
} as const satisfies Omit<CheckedRow, 'number' | 'state' | 'problems'>;

type Draft = Omit<CheckedRow, 'number' | 'state' | 'problems'>;
type Owner = Pick<Draft, 'customerId' | 'newCustomer' | 'nameKey' | 'phoneKey' | 'contactId'>;

const nobody: Owner = { customerId: null, newCustomer: false, nameKey: null, phoneKey: null, contactId: null };

const phoneKeyOf = (phone: string | null) => phone?.replace(/\D/g, '') || null;

/** Looks at the rows of one file, chunk after chunk in order; it remembers what the good rows before named. */
export class RowChecker {
  private readonly customers: CustomerMatch;
  /** Row that named a plate, a VIN or a follow-up first. */
  private readonly first = new Map<string, number>();

  constructor(private readonly parts: CheckerParts) {
    this.customers = new CustomerMatch(parts.newId);
  }

  /** What must be known of the shop before these rows are looked at. */
  keysOf(rows: readonly StagedRow[]): NamedKeys {
    const keys = { plates: new Set<string>(), vins: new Set<string>(), names: new Set<string>() };
    for (const { cells } of rows) {
      const read = new Cells(cells, this.parts.run.mapping);
      const [plate, vin, name] = [read.text('plate', 20), read.text('vin', 40), read.text(this.nameField, 120)];
      if (plate !== null) keys.plates.add(foldKey(plate));
      if (vin !== null) keys.vins.add(vin.toUpperCase());
      if (name !== null) keys.names.add(foldKey(name));
    }
    return { plates: [...keys.plates], vins: [...keys.vins], names: [...keys.names] };
  }

  check(rows: readonly StagedRow[], known: KnownRows): CheckedRow[] {
    return rows.map((row) => this.checkOne(row, known));
  }

  private get nameField(): 'name' | 'customerName' {
    return this.parts.run.kind === 'customers' ? 'name' : 'customerName';
  }

  private checkOne({ number, cells, broken }: StagedRow, known: KnownRows): CheckedRow {
    const read = new Cells(cells, this.parts.run.mapping);
    const { header } = this.parts.run;
    if (broken !== null) read.problem(null, broken);
    else if (cells.length !== header.length) {
      read.problem(null, 'cellCount', { cells: cells.length, wanted: header.length });
    }
    const draft = read.problems.length > 0 ? nothing : this.byKind[this.parts.run.kind](read, number, known);
    const bad = read.problems.length > 0;
    if (!bad) this.remember(draft, number);
    return { number, state: bad ? 'bad' : 'good', problems: read.problems, ...(bad ? nothing : draft) };
  }

  private readonly byKind: Readonly<Record<ImportKind, (read: Cells, number: number, known: KnownRows) => Draft>> = {
    customers: (read, number, known) => this.customer(read, number, known),
    vehicles: (read, number, known) => this.vehicle(read, number, known),
    followUps: (read, _number, known) => this.followUp(read, known),
  };

  private customer(read: Cells, number: number, known: KnownRows): Draft {
    const name = read.needed('name', 120);
    const said = {
      contactName: read.text('contactName', 120),
      phone: read.text('phone', 40),
      mail: read.text('mail', 200),
    };
    const fleet = read.text('fleet', 120);
    if (read.problems.length > 0) return nothing;
    const [nameKey, phoneKey] = [foldKey(name), phoneKeyOf(said.phone)];
    const match = this.customers.find(known.customers, nameKey, phoneKey);
    if (match.kind === 'unclear') read.problem('name', 'customerUnclear');
    if (match.kind === 'there') read.problem('name', 'customerThere');
    if (match.kind === 'inFile') read.problem('name', 'twiceInFile', { row: match.number });
    if (match.kind !== 'new') return nothing;
    this.customers.keep(nameKey, phoneKey, match, number);
    const reached = said.phone !== null || said.mail !== null || said.contactName !== null;
    return {
      ...nothing,
      rowId: match.id,
      customerId: match.id,
      newCustomer: true,
      nameKey,
      phoneKey,
      contactId: reached ? this.parts.newId() : null,
      made: { name, ...said, contactName: said.contactName ?? name, fleet },
    };
  }

  private vehicle(read: Cells, number: number, known: KnownRows): Draft {
    const plate = read.needed('plate', 20);
    const vin = read.text('vin', 40)?.toUpperCase() ?? null;
    if (vin !== null && !/^[\x20-\x7e]+$/.test(vin)) read.problem('vin', 'signs');
    const facts = {
      description: describedBy(read),
      vehicleKind: read.word('vehicleKind', kindWords),
      drive: read.word('drive', driveWords),
      curbKg: read.whole('curbKg', 1, 100_000),
      grossKg: read.whole('grossKg', 1, 100_000),
      notes: read.text('notes', 2_000),
    };
    const said = {
      customerName: read.text('customerName', 120),
      phone: read.text('phone', 40),
      mail: read.text('mail', 200),
    };
    if (read.problems.length > 0) return nothing;
    const plateKey = foldKey(plate);
    if (known.plates.has(plateKey)) read.problem('plate', 'plateThere');
    if (vin !== null && known.vins.has(vin)) read.problem('vin', 'vinThere');
    this.once(read, 'plate', plateKey);
    if (vin !== null) this.once(read, 'vin', vin);
    const owner = this.ownerOf(read, number, said, known);
    if (read.problems.length > 0) return nothing;
    return { ...nothing, rowId: this.parts.newId(), plateKey, vin, ...owner, made: { plate, vin, ...facts, ...said } };
  }

  private ownerOf(
    read: Cells,
    number: number,
    { customerName, phone, mail }: { customerName: string | null; phone: string | null; mail: string | null },
    known: KnownRows,
  ): Owner {
    if (customerName === null) {
      if (phone !== null || mail !== null) read.problem(phone === null ? 'mail' : 'phone', 'reachWithoutName');
      return nobody;
    }
    const [nameKey, phoneKey] = [foldKey(customerName), phoneKeyOf(phone)];
    const match = this.customers.find(known.customers, nameKey, phoneKey);
    if (match.kind === 'unclear') {
      read.problem('customerName', 'customerUnclear');
      return nobody;
    }
    // A row that is bad for another reason names nobody.
    if (read.problems.length > 0) return nobody;
    this.customers.keep(nameKey, phoneKey, match, number);
    const isNew = match.kind === 'new';
    const reaches = isNew
      ? phone !== null || mail !== null
      : match.kind === 'inFile' && !match.reachable && phone !== null;
    const contactId = reaches ? this.parts.newId() : null;
    return { customerId: match.id, newCustomer: isNew, nameKey, phoneKey, contactId };
  }

  private followUp(read: Cells, known: KnownRows): Draft {
    const plate = read.needed('plate', 20);
    const facts = {
      title: read.needed('title', 200),
      words: read.text('words', 2_000),
      followUpKind: read.word('followUpKind', followUpWords),
      urgency: read.word('urgency', urgencyWords),
      beforeDay: read.day('beforeDay', this.parts.locale === 'en-US'),
      beforeOdometer: read.whole('beforeOdometer', 0, 9_999_999),
    };
    if (facts.followUpKind === 'retorque') read.problem('followUpKind', 'notFromFile');
    if (read.problems.length > 0) return nothing;
    const plateKey = foldKey(plate);
    const [vehicleId, ...others] = known.plates.get(plateKey) ?? [];
    if (vehicleId === undefined) read.problem('plate', 'plateUnknown');
    else if (others.length > 0) read.problem('plate', 'plateUnclear');
    else if (known.followUps.get(vehicleId)?.has(foldKey(facts.title))) read.problem('title', 'followUpThere');
    this.once(read, 'title', `${plateKey} ${foldKey(facts.title)}`);
    if (vehicleId === undefined || read.problems.length > 0) return nothing;
    return { ...nothing, rowId: this.parts.newId(), vehicleId, plateKey, made: { plate, ...facts } };
  }

  private once(read: Cells, field: 'plate' | 'vin' | 'title', key: string): void {
    const before = this.first.get(`${field} ${key}`);
    if (before !== undefined) read.problem(field, 'twiceInFile', { row: before });
  }

  /** Only good rows count: of two rows with one plate the first is taken, unless it is bad for another reason. */
  private remember({ plateKey, vin, vehicleId, made }: Draft, number: number): void {
    if (vehicleId !== null) this.first.set(`title ${plateKey ?? ''} ${foldKey(String(made?.['title']))}`, number);
    else if (plateKey !== null) this.first.set(`plate ${plateKey}`, number);
    if (vin !== null) this.first.set(`vin ${vin}`, number);
  }
}

function describedBy(read: Cells): string {
  const said = (['description', 'make', 'model', 'year'] as const).map((field) => read.text(field, 120));
  const words = said.filter((text) => text !== null).join(' ');
  if (said.slice(0, 3).every((text) => text === null)) read.problem('description', 'missing');
  else if (words.length > 120) read.problem('description', 'tooLong', { longest: 120 });
  return words;
}
