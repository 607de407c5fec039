import { describe, expect, it } from '@jest/globals';
import { type Given, given, tuesdayTen } from '../kernel/given.js';
import { recorded } from '../kernel/given-usual.js';
import { carryOut } from '../settle/carry-out.js';
import { erasePersonalData } from './erase-personal-data.js';
import { scrubberOf } from './scrub.js';

const name = 'Nan Ferro';
const gone = () =>
  given()
    .shop()
    .customer('c1', { name, nameKey: 'NANFERRO', fleet: 'Ferro Vans' })
    .contact('k1', { name: 'Ida Crane', phone: '01 55', mail: 'ida@crane.example' })
    .vehicle('v0000001', { plate: 'HB 214 K', plateKey: 'HB214K', vin: 'WDB9', notes: 'Key of Ida Crane on the hook' })
    .job('j1', { number: 1, endedAt: tuesdayTen - 1, boardNote: 'Ring 01 55' })
    .concern('co1', { words: `${name.toUpperCase()} says it knocks, HB 214 K only` })
    .line('l1', { title: 'Annual service', price: '90' })
    .row('contactEntry', {
      id: 'e1',
      ...recorded,
      vehicleId: 'v0000001',
      jobId: 'j1',
      followUpId: null,
      callId: null,
      contactId: 'k1',
      way: 'telephone',
      withName: 'Ida',
      reached: true,
      answer: 'Do it',
      nextTryAt: null,
      moveOf: 'shop',
    })
    .row('photo', {
      id: 'ph1',
      ...recorded,
      jobId: 'j1',
      vehicleId: 'v0000001',
      findingId: null,
      temporaryFixId: null,
      content: 'a'.repeat(64),
      width: 1,
      height: 1,
      caption: 'Ida at the door',
      moment: 'other',
      showsPeople: true,
    })
    .row('sheet', {
      id: 's1',
      ...recorded,
      jobId: 'j1',
      vehicleId: 'v0000001',
      content: {
        customer: name,
        vehicle: { plate: 'HB 214 K', vin: 'WDB9', description: 'Van' },
        receivedBy: 'Ida',
        notes: [name],
      },
      receivedBy: 'Ida',
      receivedHow: 'there',
      leavesBy: 'road',
      voidedWords: null,
      kind: 'handBack',
      words: null,
    })
    .row('goAhead', {
      id: 'g1',
      ...recorded,
      jobId: 'j1',
      lineId: 'l1',
      answer: 'given',
      byName: 'Ida C.',
      how: 'telephone',
      upTo: '100',
      words: null,
      standingId: null,
    })
    .call('call1', { jobId: 'j1', words: 'Ask for Ida' })
    .customer('c2', { name: 'Other' })
    .vehicle('v0000002', { plate: 'HB 9' })
    .job('j2', { number: 2 });
const erase = (of: Given = gone(), over: object = {}) =>
  carryOut(erasePersonalData, of.rows(), { customerId: 'c1', words: `${name} wrote to us`, ...over }, { by: 'owner' });

describe('personal data that are erased', () => {
  it('are nowhere in the rows afterwards, neither in their columns nor in what was written', () => {
    const { rows } = erase(gone().but('goAhead', 'g1', { void: true }));
    const all = JSON.stringify(rows.content());
    for (const text of [/nan ferro/i, /Ida/, /01 55/, /crane/i, /HB ?214/i, /WDB9/, /Ferro Vans/])
      expect(all).not.toMatch(text);
    expect(rows.get('concern', 'co1').words).toBe('erased says it knocks, erased only');
    expect(rows.get('customer', 'c1')).toMatchObject({ name: 'erased', nameKey: 'ERASED', erasedAt: tuesdayTen });
    expect(rows.list('erasure')).toMatchObject([{ customerId: 'c1', words: 'erased wrote to us' }]);
  });
  it('leave the account of the work, other people and plates that stay apart', () => {
    const before = gone().rows();
    const { rows, outcome } = erase();
    expect(rows.list('workLine')).toEqual(before.list('workLine'));
    expect(rows.get('vehicle', 'v0000001')).toMatchObject({
      plate: 'erased 000001',
      plateKey: 'ERASED000001',
      description: 'Panel van',
    });
    expect(rows.get('vehicle', 'v0000002').plate).toBe('HB 9');
    expect(rows.get('customer', 'c2').name).toBe('Other');
    expect(rows.get('photo', 'ph1')).toMatchObject({ void: true, caption: null });
    expect(rows.get('contactEntry', 'e1')).toMatchObject({ withName: 'erased', answer: 'erased', reached: true });
    expect(outcome?.facts).toEqual({ customerId: 'c1', vehicles: 1, photos: 1 });
  });
  it('go with the records that were merged into theirs', () => {
    const merged = gone()
      .customer('c3', { name: 'N. Ferro', mergedIntoId: 'c1' })
      .vehicle('v0000003', { plate: 'HB 214 X', customerId: 'c1', mergedIntoId: 'v0000001' });
    const { rows } = erase(merged);
    expect(rows.get('customer', 'c3').name).toBe('erased');
    expect(rows.get('vehicle', 'v0000003').plate).toBe('erased 000003');
  });
  it('stay while a visit of theirs, or of a vehicle of theirs, is here', () => {
    const facts = { code: 'erase.visitHere', facts: { number: 1 }, way: { table: 'job', id: 'j1' } };
    const here = () => gone().but('job', 'j1', { endedAt: null });
    expect(erase(here()).refusals).toMatchObject([facts]);
    expect(erase(here().but('job', 'j1', { customerId: 'c2' })).refusals).toMatchObject([facts]);
    expect(erase(here().but('job', 'j1', { arrivedAt: null })).codes).toEqual([]);
  });
  it('are erased once, of a customer who is there', () => {
    expect(erase(gone().but('customer', 'c1', { erasedAt: 1 })).codes).toEqual(['customer.erased']);
    expect(erase(gone(), { customerId: 'c9' }).codes).toEqual(['row.notFound']);
  });
});

describe('texts that are taken out', () => {
  it('are whole words in any case, the longest first, and signs are no pattern', () => {
    const { text } = scrubberOf(['Ann', 'Ann Lee', 'a.b@c', null, '', 'X'], '-');
    expect(text('ann lee and Ann did the annual X at a.b@c, not aXb@c')).toBe(
      '- and - did the annual X at -, not aXb@c',
    );
    expect(scrubberOf([], '-').text('Ann')).toBe('Ann');
  });
});
