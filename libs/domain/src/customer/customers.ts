import { canonical } from '../kernel/amounts.js';
import type { Circumstances } from '../kernel/decision.js';
import type { CommandRule } from '../kernel/family.js';
import { foldKey } from '../kernel/fold.js';
import { type Refused, refuse } from '../kernel/refusal.js';
import type { Rows } from '../kernel/rows.js';
import type { ChangeContact } from '../inputs.js';
import { live } from '../questions/place-and-work.js';
import { notThere } from '../questions/references.js';
import type { Row } from '../tables/tables.js';
import { addContactRow, addCustomerRow, isBlank } from './new-rows.js';

function known(rows: Rows, customerId: string): Row<'customer'> | Refused {
  const customer = live(rows, 'customer', customerId);
  if (!customer) return notThere('customer', customerId);
  return customer.erasedAt === null ? customer : refuse('customer.erased', { customerId });
}

const isRow = <R extends object>(found: R | Refused): found is R => 'id' in found;

/** A fact: a customer, with the people who bring, agree and collect. */
export const addCustomer: CommandRule<'addCustomer'> = {
  needs: ({ customerId, contacts = [] }) => ({
    customers: customerId === undefined ? [] : [customerId],
    contacts: contacts.flatMap(({ contactId }) => contactId ?? []),
    tables: ['customer', 'contact'],
  }),
  decide(rows, input, at) {
    if (rows.find('customer', input.customerId)) {
      return refuse('customer.alreadyThere', { customerId: input.customerId ?? null });
    }
    if (isBlank(input.name)) return refuse('customer.nameBlank');
    const customer = addCustomerRow(rows, at, input);
    for (const contact of input.contacts ?? []) {
      const { contactId = null } = contact;
      if (rows.find('contact', contactId)) return refuse('contact.alreadyThere', { contactId });
      if (isBlank(contact.name)) return refuse('contact.nameBlank');
      addContactRow(rows, at, customer.id, contact);
    }
    const facts = { customerId: customer.id, contacts: input.contacts?.length ?? 0 };
    return { facts, created: { customer: customer.id } };
  },
};

/** A turn: another name (found by it from now on) or another fleet. */
export const changeCustomer: CommandRule<'changeCustomer'> = {
  needs: ({ customerId }) => ({ customers: [customerId], tables: ['customer'] }),
  decide(rows, { customerId, name, fleet }) {
    const customer = known(rows, customerId);
    if (!isRow(customer)) return customer;
    if (isBlank(name)) return refuse('customer.nameBlank');
    rows.change('customer', customerId, {
      ...(name === undefined ? {} : { name, nameKey: foldKey(name) }),
      ...(fleet === undefined ? {} : { fleet }),
    });
    return { facts: { customerId } };
  },
};

/** A fact: one more contact of a customer. */
export const addContact: CommandRule<'addContact'> = {
  needs: ({ customerId, contactId }) => ({
    customers: [customerId],
    tables: ['customer', 'contact'],
    ...(contactId === undefined ? {} : { contacts: [contactId] }),
  }),
  decide(rows, input, at) {
    const customer = known(rows, input.customerId);
    if (!isRow(customer)) return customer;
    const { contactId = null } = input;
    if (rows.find('contact', contactId)) return refuse('contact.alreadyThere', { contactId });
    if (isBlank(input.name)) return refuse('contact.nameBlank');
    const contact = addContactRow(rows, at, customer.id, input);
    return { facts: { customerId: customer.id, contactId: contact.id }, created: { contact: contact.id } };
  },
};

/** A turn: how a contact is reached and what they may do; `active` false: they are a contact no longer. */
export const changeContact: CommandRule<'changeContact'> = {
  needs: ({ contactId }) => ({ contacts: [contactId], tables: ['customer', 'contact'] }),
  decide(rows, input, at) {
    const contact = live(rows, 'contact', input.contactId);
    if (!contact) return notThere('contact', input.contactId);
    const customer = known(rows, contact.customerId);
    if (!isRow(customer)) return customer;
    if (isBlank(input.name)) return refuse('contact.nameBlank');
    rows.change('contact', contact.id, { ...saidOf(input), endedAt: endOf(contact, input, at) });
    return { facts: { customerId: customer.id, contactId: contact.id } };
  },
};

function saidOf(input: ChangeContact): Partial<Row<'contact'>> {
  const { name, phone, mail, mayBring, mayAgreeAny, mayCollect, mayAgreeUpTo } = input;
  return {
    ...(name === undefined ? {} : { name }),
    ...(phone === undefined ? {} : { phone }),
    ...(mail === undefined ? {} : { mail }),
    ...(mayBring === undefined ? {} : { mayBring }),
    ...(mayAgreeAny === undefined ? {} : { mayAgreeAny }),
    ...(mayCollect === undefined ? {} : { mayCollect }),
    ...(mayAgreeUpTo === undefined ? {} : { mayAgreeUpTo: mayAgreeUpTo === null ? null : canonical(mayAgreeUpTo) }),
  };
}

function endOf(contact: Row<'contact'>, { active }: ChangeContact, at: Circumstances): number | null {
  if (active === undefined) return contact.endedAt;
  return active ? null : (contact.endedAt ?? at.effectiveAt);
}
