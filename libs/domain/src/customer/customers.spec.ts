import { describe, expect, it } from '@jest/globals';
import { given, tuesdayTen } from '../kernel/given.js';
import { carryOut } from '../settle/carry-out.js';
import { addContact, addCustomer, changeContact, changeCustomer } from './customers.js';
import { mayAgree } from './may-agree.js';

const known = () => given().shop().customer('c1', { fleet: 'Skerry' }).contact('k1', { phone: '01' });
const erased = () => known().but('customer', 'c1', { erasedAt: tuesdayTen });

describe('a customer', () => {
  it('is added with the people around them, and found by name however it is typed', () => {
    const contacts = [{ contactId: 'k7', name: 'Ida', mayAgreeUpTo: '0400.00' }, { name: 'Per' }];
    const { rows, outcome } = carryOut(addCustomer, known().rows(), { name: 'Dünn & Co', fleet: 'Dünn', contacts });
    const id = outcome?.created?.['customer'] ?? '';
    expect(rows.get('customer', id)).toMatchObject({ name: 'Dünn & Co', nameKey: 'DUNNCO', fleet: 'Dünn' });
    expect(rows.list('contact', (one) => one.customerId === id)).toHaveLength(2);
    expect(rows.get('contact', 'k7')).toMatchObject({ mayAgreeUpTo: '400', mayAgreeAny: false, mayCollect: false });
    expect(outcome?.facts).toEqual({ customerId: id, contacts: 2 });
  });
  it('is not added without a name, with a contact without one, or under an id that is taken', () => {
    const add = (input: Parameters<typeof addCustomer.decide>[1]) => carryOut(addCustomer, known().rows(), input).codes;
    expect(add({ name: ' ' })).toEqual(['customer.nameBlank']);
    expect(add({ name: 'N', contacts: [{ name: ' ' }] })).toEqual(['contact.nameBlank']);
    expect(add({ customerId: 'c1', name: 'N' })).toEqual(['customer.alreadyThere']);
    expect(add({ name: 'N', contacts: [{ contactId: 'k1', name: 'N' }] })).toEqual(['contact.alreadyThere']);
    const twice = { contactId: 'k9', name: 'N' };
    expect(add({ name: 'N', contacts: [twice, twice] })).toEqual(['contact.alreadyThere']);
  });
  it('changes name and fleet, each alone, and loses the fleet by null', () => {
    const change = (input: object) => carryOut(changeCustomer, known().rows(), { customerId: 'c1', ...input });
    expect(change({ name: 'New' }).rows.get('customer', 'c1')).toMatchObject({ nameKey: 'NEW', fleet: 'Skerry' });
    expect(change({ fleet: null }).rows.get('customer', 'c1')).toMatchObject({ name: 'c1', fleet: null });
    expect(change({ name: ' ' }).codes).toEqual(['customer.nameBlank']);
    expect(change({ customerId: 'c9', name: 'N' }).codes).toEqual(['row.notFound']);
    expect(carryOut(changeCustomer, erased().rows(), { customerId: 'c1', name: 'N' }).codes).toEqual([
      'customer.erased',
    ]);
  });
});

describe('a contact', () => {
  it('is one of a known customer; of a fleet they agree only where that is said', () => {
    const add = (input: object, rows = known().rows()) =>
      carryOut(addContact, rows, { customerId: 'c1', contactId: 'k9', name: 'Per', ...input });
    expect(add({}).rows.get('contact', 'k9')).toMatchObject({ mayBring: true, mayAgreeAny: false, mayAgreeUpTo: null });
    const own = known().but('customer', 'c1', { fleet: null }).rows();
    expect(add({}, own).rows.get('contact', 'k9').mayAgreeAny).toBe(true);
    expect(add({ mayAgreeUpTo: '50' }, own).rows.get('contact', 'k9').mayAgreeAny).toBe(false);
    expect(add({ name: ' ' }).codes).toEqual(['contact.nameBlank']);
    expect(add({ contactId: 'k1' }).codes).toEqual(['contact.alreadyThere']);
    expect(add({ customerId: 'c9' }).codes).toEqual(['row.notFound']);
    expect(add({}, erased().rows()).codes).toEqual(['customer.erased']);
  });
  it('changes what is said and nothing else', () => {
    const change = (input: object) => carryOut(changeContact, known().rows(), { contactId: 'k1', ...input });
    expect(change({ mayAgreeUpTo: '007.50', mayAgreeAny: false }).rows.get('contact', 'k1')).toMatchObject({
      mayAgreeUpTo: '7.5',
      mayAgreeAny: false,
      phone: '01',
      mayCollect: true,
    });
    expect(change({ phone: null }).rows.get('contact', 'k1').phone).toBeNull();
    expect(change({ name: ' ' }).codes).toEqual(['contact.nameBlank']);
    expect(change({ contactId: 'k9' }).codes).toEqual(['row.notFound']);
    expect(carryOut(changeContact, erased().rows(), { contactId: 'k1', name: 'N' }).codes).toEqual(['customer.erased']);
  });
  it('ends when they are one no longer, once, and can be one again', () => {
    const change = (rows = known().rows(), active?: boolean, now = tuesdayTen) =>
      carryOut(changeContact, rows, { contactId: 'k1', active }, { now }).rows;
    const gone = change(known().rows(), false);
    expect(gone.get('contact', 'k1').endedAt).toBe(tuesdayTen);
    expect(change(gone, false, tuesdayTen + 5).get('contact', 'k1').endedAt).toBe(tuesdayTen);
    expect(change(gone, undefined, tuesdayTen + 5).get('contact', 'k1').endedAt).toBe(tuesdayTen);
    expect(change(gone, true).get('contact', 'k1').endedAt).toBeNull();
  });
  it('may agree without limit, or up to an amount and not a penny more; one who has ended to nothing', () => {
    const who = (over: object) =>
      known()
        .but('contact', 'k1', { mayAgreeAny: false, ...over })
        .rows();
    const may = (amount: string, over: object = {}) => mayAgree(who(over), who(over).get('contact', 'k1'), amount);
    expect(may('0')).toBe(false);
    expect(may('9999', { mayAgreeAny: true })).toBe(true);
    expect(may('150', { mayAgreeUpTo: '150.00' })).toBe(true);
    expect(may('150.01', { mayAgreeUpTo: '150' })).toBe(false);
    expect(may('0', { mayAgreeAny: true, endedAt: tuesdayTen })).toBe(false);
  });
});
