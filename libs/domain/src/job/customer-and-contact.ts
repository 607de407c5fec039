import { addContactRow, addCustomerRow, isBlank } from '../customer/new-rows.js';
import type { CheckIn } from '../inputs.js';
import type { Circumstances } from '../kernel/decision.js';
import { Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import { live } from '../questions/place-and-work.js';
import { absent, notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';

/** Whose job it is, and who brought the vehicle. */
export interface Party {
  readonly customerId: string | null;
  readonly contactId: string | null;
}

/** What check-in and booking say of both. */
export type SaidOfParty = Pick<CheckIn, 'customerId' | 'customer' | 'contactId' | 'contact'>;

/** A known customer, a new one, or the vehicle's own where nobody else is said; none only for an internal job. */
function customerOf(
  rows: Rows,
  input: SaidOfParty,
  at: Circumstances,
  vehicle: Row<'vehicle'>,
  kind: Row<'job'>['kind'],
): string | null | Refused {
  const { customerId, customer } = input;
  if (customer) {
    if (customerId !== undefined) return refuse('customer.twice');
    if (rows.find('customer', customer.customerId)) {
      return refuse('customer.alreadyThere', { customerId: customer.customerId ?? null });
    }
    if (isBlank(customer.name)) return refuse('customer.nameBlank');
    return addCustomerRow(rows, at, customer).id;
  }
  if (customerId !== undefined) return absent(rows, { customer: customerId }) ?? customerId;
  if (kind === 'internal') return null;
  return vehicle.customerId ?? refuse('job.customerMissing');
}

/** A known contact of this customer, a new one, or none. */
function contactOf(
  rows: Rows,
  input: SaidOfParty,
  at: Circumstances,
  customerId: string | null,
): string | null | Refused {
  const { contactId, contact } = input;
  if (contact) {
    const newId = contact.contactId ?? null;
    if (contactId !== undefined) return refuse('contact.twice');
    if (rows.find('contact', newId)) return refuse('contact.alreadyThere', { contactId: newId });
    if (customerId === null) return refuse('contact.ofOtherCustomer', { contactId: newId });
    if (isBlank(contact.name)) return refuse('contact.nameBlank');
    return addContactRow(rows, at, customerId, contact).id;
  }
  if (contactId === undefined) return null;
  const known = live(rows, 'contact', contactId);
  if (!known) return notThere('contact', contactId);
  return known.customerId === customerId ? contactId : refuse('contact.ofOtherCustomer', { contactId });
}

export function partyOf(
  rows: Rows,
  input: SaidOfParty,
  at: Circumstances,
  vehicle: Row<'vehicle'>,
  kind: Row<'job'>['kind'],
): Party | Refused {
  const customerId = customerOf(rows, input, at, vehicle, kind);
  if (customerId instanceof Refused) return customerId;
  const contactId = contactOf(rows, input, at, customerId);
  return contactId instanceof Refused ? contactId : { customerId, contactId };
}
