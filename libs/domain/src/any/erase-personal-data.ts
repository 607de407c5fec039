/**
 * On request a customer's personal data are overwritten for good: names, telephone numbers, mail addresses, plates and
 * VINs, photos that show people, who signed, spoke and agreed. What was done to which vehicle, when, by whom of the shop
 * and for how much stays, so that no figure of the account changes. Beside the columns that hold such data, the exact
 * names, numbers, addresses and plates are taken out of whatever words were written about these visits and vehicles.
 * The engine sees to it that the log keeps no image of a row from before.
 */
import { recordedBy } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { foldKey } from '../kernel/fold.js';
import { refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { isOnPremises, live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import { type Row, tableNames } from '../tables/tables.js';
import { scrubberOf } from './scrub.js';

/** Stands where a name or a word was; the screens show it in their own language. */
export const erasedText = 'erased';
const erasedOrNull = (text: string | null): string | null => (text === null ? null : erasedText);

/** Whose data go: the customer, records merged into it, and the vehicles and visits of these. */
interface Theirs {
  readonly customers: ReadonlySet<string>;
  readonly contacts: readonly Row<'contact'>[];
  readonly vehicles: ReadonlyMap<string, Row<'vehicle'>>;
  readonly jobs: ReadonlySet<string>;
}

function theirsOf(rows: Rows, customerId: string): Theirs {
  const customers = rows.listAll('customer').filter((one) => one.id === customerId || one.mergedIntoId === customerId);
  const ids = new Set(customers.map(({ id }) => id));
  const isTheirs = (id: string | null) => id !== null && ids.has(id);
  const owned = new Set(
    rows
      .listAll('vehicle')
      .filter((one) => isTheirs(one.customerId))
      .map(({ id }) => id),
  );
  const vehicles = rows.listAll('vehicle').filter((one) => owned.has(one.id) || owned.has(one.mergedIntoId ?? ''));
  return {
    customers: ids,
    contacts: rows.listAll('contact').filter((one) => isTheirs(one.customerId)),
    vehicles: new Map(vehicles.map((one) => [one.id, one])),
    jobs: new Set(
      rows
        .listAll('job')
        .filter((one) => isTheirs(one.customerId))
        .map(({ id }) => id),
    ),
  };
}

/** The texts that say who it is. */
function personalTexts(rows: Rows, { customers, contacts, vehicles }: Theirs): (string | null)[] {
  return [
    ...[...customers].map((id) => rows.get('customer', id).name),
    ...contacts.flatMap(({ name, phone, mail }) => [name, phone, mail]),
    ...[...vehicles.values()].flatMap(({ plate, vin }) => [plate, vin]),
  ];
}

function eraseParties(rows: Rows, { customers, contacts }: Theirs, now: number): void {
  for (const id of customers) {
    rows.change('customer', id, { name: erasedText, nameKey: foldKey(erasedText), fleet: null, erasedAt: now });
  }
  for (const { id } of contacts) rows.change('contact', id, { name: erasedText, phone: null, mail: null });
  for (const one of rows.listAll('standingGoAhead')) {
    if (customers.has(one.customerId)) rows.change('standingGoAhead', one.id, { byName: erasedText });
  }
}

/** Plates stay apart from each other: each has the end of the record's id. */
function eraseVehicles(rows: Rows, { vehicles }: Theirs): void {
  for (const id of vehicles.keys()) {
    const plate = `${erasedText} ${id.slice(-6)}`;
    rows.change('vehicle', id, { plate, plateKey: foldKey(plate), vin: null });
  }
  const told = rows.listAll('vehicleCorrection').filter(({ vehicleId, field }) => {
    return vehicles.has(vehicleId) && (field === 'plate' || field === 'vin');
  });
  for (const { id } of told) rows.change('vehicleCorrection', id, { before: null, after: null });
}

/** Gives how many photos of people went. */
function erasePhotos(rows: Rows, { jobs }: Theirs): number {
  const photos = rows.listAll('photo').filter((photo) => photo.showsPeople && jobs.has(photo.jobId));
  for (const { id } of photos) rows.change('photo', id, { void: true, caption: null });
  return photos.length;
}

function eraseSheets(rows: Rows, { jobs }: Theirs): void {
  for (const sheet of rows.listAll('sheet').filter(({ jobId }) => jobs.has(jobId))) {
    const said = sheet.content as { readonly vehicle?: object; readonly customer?: string | null };
    const vehicle = { ...said.vehicle, plate: erasedText, vin: null };
    const content = { ...said, vehicle, customer: erasedOrNull(said.customer ?? null), receivedBy: erasedText };
    rows.change('sheet', sheet.id, { receivedBy: erasedText, content });
  }
}

/** What was said, by whom. */
function eraseTalk(rows: Rows, theirs: Theirs): void {
  const { customers, jobs, vehicles } = theirs;
  const contacts = new Set(theirs.contacts.map(({ id }) => id));
  const isTheirs = ({ jobId, contactId, vehicleId }: Row<'contactEntry'>) =>
    jobId !== null ? jobs.has(jobId) : contactId !== null ? contacts.has(contactId) : vehicles.has(vehicleId);
  const entries = rows.listAll('contactEntry').filter(isTheirs);
  for (const { id, withName, answer } of entries) {
    rows.change('contactEntry', id, { withName: erasedOrNull(withName), answer: erasedOrNull(answer) });
  }
  for (const call of rows.listAll('call')) {
    if (customers.has(call.customerId ?? '') || jobs.has(call.jobId ?? ''))
      rows.change('call', call.id, { words: null });
  }
  for (const one of rows.listAll('goAhead')) {
    if (jobs.has(one.jobId)) rows.change('goAhead', one.id, { byName: erasedOrNull(one.byName) });
  }
  const ids = new Set(entries.map(({ id }) => id));
  for (const one of rows.listAll('correction')) {
    if (ids.has(one.rowId ?? '') || ids.has(one.newRowId ?? '')) rows.change('correction', one.id, { before: null });
  }
}

function visitHere(rows: Rows, { jobs, vehicles }: Theirs): Row<'job'> | undefined {
  return rows.list('job', (job) => isOnPremises(job) && (jobs.has(job.id) || vehicles.has(job.vehicleId)))[0];
}

/** A turn on the customer, by the owner of the shop; there is no way back. Refused while a visit of theirs is here. */
export const erasePersonalData: CommandRule<'erasePersonalData'> = {
  needs: ({ customerId }) => ({ customers: [customerId], allOfCustomers: [customerId], tables: tableNames }),
  decide(rows, { customerId, words }, at) {
    const customer = live(rows, 'customer', customerId);
    if (!customer) return notThere('customer', customerId);
    if (customer.erasedAt !== null) return refuse('customer.erased', { customerId });
    const theirs = theirsOf(rows, customerId);
    const here = visitHere(rows, theirs);
    if (here) return refuse('erase.visitHere', { number: here.number }, { table: 'job', id: here.id });
    const scrubber = scrubberOf(personalTexts(rows, theirs), erasedText);
    eraseParties(rows, theirs, at.now);
    eraseVehicles(rows, theirs);
    const photos = erasePhotos(rows, theirs);
    eraseSheets(rows, theirs);
    eraseTalk(rows, theirs);
    scrubber.rows(rows);
    const said = { customerId, words: scrubber.text(words) };
    rows.add('erasure', { id: at.newId(), ...recordedBy(at), ...said });
    return { facts: { customerId, vehicles: theirs.vehicles.size, photos } };
  },
};
