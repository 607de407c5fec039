import type { ContactFacts } from '../inputs.js';
import { canonical } from '../kernel/amounts.js';
import type { Circumstances } from '../kernel/decision.js';
import { foldKey } from '../kernel/fold.js';
import type { Rows } from '../kernel/rows.js';
import type { Row } from '../tables/tables.js';

/** A name that says nothing. */
export const isBlank = (name: string | undefined): boolean => name?.trim() === '';

export interface CustomerFacts {
  readonly customerId?: string | undefined;
  readonly name: string;
  readonly fleet?: string | undefined;
}

export function addCustomerRow(
  rows: Rows,
  at: Circumstances,
  { customerId, name, fleet }: CustomerFacts,
): Row<'customer'> {
  const id = customerId ?? at.newId();
  return rows.add('customer', {
    id,
    name,
    nameKey: foldKey(name),
    fleet: fleet ?? null,
    erasedAt: null,
    mergedIntoId: null,
  });
}

/**
 * Who brings a vehicle may bring it; whether they may collect it is said, or they may not. Where nothing is said of
 * agreeing, a private customer's people speak for them, and those of a fleet do not.
 */
export function addContactRow(
  rows: Rows,
  at: Circumstances,
  customerId: string,
  contact: ContactFacts,
): Row<'contact'> {
  const speaks = contact.mayAgreeUpTo === undefined && rows.get('customer', customerId).fleet === null;
  const { name, phone = null, mail = null, mayBring = true, mayAgreeAny = speaks, mayCollect = false } = contact;
  const mayAgreeUpTo = contact.mayAgreeUpTo === undefined ? null : canonical(contact.mayAgreeUpTo);
  const id = contact.contactId ?? at.newId();
  const may = { mayBring, mayAgreeUpTo, mayAgreeAny, mayCollect };
  return rows.add('contact', { id, customerId, name, phone, mail, ...may, endedAt: null });
}
