/** What the shop knows of a customer once they have been there: their ids, who speaks for them, what they agreed to beforehand. */
import type { CommandInputs } from '@holdfast/domain';
import type { Contact, Customer } from './cast.js';
import type { Floor } from './floor.js';

/** Ids of a customer and of whoever comes for them. */
interface CustomerIds {
  readonly customerId: string;
  readonly contactId: string;
}
interface CustomerFile extends CustomerIds {
  /** Of what is agreed to beforehand for all their visits; null where nothing is. */
  readonly standingId: string | null;
}
const files = new WeakMap<Floor, Map<string, CustomerFile>>();

type Party = Pick<CommandInputs['checkIn'], 'customerId' | 'contactId' | 'customer' | 'contact'>;

/** As a check-in or a booking says who it is: by id where they are known. */
export function partyOf(floor: Floor, { name, fleet, contact }: Customer): Party {
  const file = files.get(floor)?.get(name);
  if (file) return { customerId: file.customerId, contactId: file.contactId };
  return { customer: fleet === undefined ? { name } : { name, fleet }, contact: { ...contact, mayBring: true } };
}

/** After the first time: the other contacts are written down, and what the customer agrees to beforehand. */
export function remember(floor: Floor, customer: Customer, created: (table: string) => string): void {
  const all = files.get(floor) ?? new Map<string, CustomerFile>();
  files.set(floor, all);
  if (all.has(customer.name)) return;
  const ids: CustomerIds = { customerId: created('customer'), contactId: created('contact') };
  const { customerId } = ids;
  for (const other of customer.others ?? []) floor.send('desk', 'addContact', { customerId, ...other });
  const { standing } = customer;
  const standingId = standing
    ? floor.send('desk', 'giveStandingGoAhead', { customerId, ...standing })('standingGoAhead')
    : null;
  all.set(customer.name, { ...ids, standingId });
}

/** The standing go-ahead that has enough left on this visit for the price of the line; null where none has. */
export function standingWithEnough(
  floor: Floor,
  customer: Customer,
  jobId: string,
  price: string | null,
): string | null {
  const standingId = files.get(floor)?.get(customer.name)?.standingId ?? null;
  if (standingId === null || price === null) return null;
  const rows = floor.parts.ledger.atHand;
  const used = rows
    .list('workLine', (line) => line.jobId === jobId && line.standingId === standingId)
    .reduce((sum, line) => sum + Number(line.price), 0);
  return used + Number(price) <= Number(customer.standing?.upTo) ? standingId : null;
}

const agreesTo = ({ mayAgreeUpTo, mayAgreeAny }: Contact, isFleet: boolean, price: string): boolean =>
  mayAgreeAny === true || (mayAgreeUpTo === undefined ? !isFleet : Number(mayAgreeUpTo) >= Number(price));

/** Who may give the go-ahead for that price: whoever comes, else somebody who has more to say. */
export function whoAgrees({ contact, others = [], fleet }: Customer, price: string | null): string {
  const asked = [contact, ...others].find((one) => agreesTo(one, fleet !== undefined, price ?? '0'));
  return (asked ?? contact).name;
}
