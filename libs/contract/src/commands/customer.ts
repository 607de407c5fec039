import { contactWays, movesOf, standingKinds } from '@holdfast/domain';
import { z } from 'zod';
import { at, day, instant, money, name, shortText, turn, uuid, words } from './fields.js';
import type { CommandSpec } from './spec.js';

/** What is said of a contact, wherever one is made. */
export const contactFacts = {
  contactId: uuid.optional(),
  name,
  phone: shortText(40).optional(),
  mail: shortText(200).optional(),
  mayBring: z.boolean().optional(),
  mayAgreeUpTo: money.optional(),
  mayAgreeAny: z.boolean().optional(),
  mayCollect: z.boolean().optional(),
};
/** What is said of a standing go-ahead, wherever one is given. */
export const standingFacts = {
  standingGoAheadId: uuid.optional(),
  kind: z.enum(standingKinds),
  upTo: money,
  orderNumber: shortText(60).optional(),
  byName: name,
  untilDay: day.optional(),
};

export const customerCommands = {
  addCustomer: {
    schema: z.strictObject({
      customerId: uuid.optional(),
      name,
      fleet: name.optional(),
      contacts: z.array(z.strictObject(contactFacts)).max(20).optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['desk'],
    summary: 'Somebody who owns or runs vehicles, with the people who may bring them, agree and collect.',
  } satisfies CommandSpec<'addCustomer'>,
  changeCustomer: {
    schema: z.strictObject({ ...turn, customerId: uuid, name: name.optional(), fleet: name.nullable().optional() }),
    class: 'turn',
    row: { table: 'customer', field: 'customerId' },
    offline: true,
    screens: ['vehicle'],
    summary: 'Another name for a customer, or another fleet.',
  } satisfies CommandSpec<'changeCustomer'>,
  addContact: {
    schema: z.strictObject({ ...contactFacts, customerId: uuid }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['desk', 'vehicle'],
    summary: 'Somebody who may bring a vehicle, give the go-ahead up to an amount, or collect it.',
  } satisfies CommandSpec<'addContact'>,
  changeContact: {
    schema: z.strictObject({
      ...turn,
      contactId: uuid,
      name: name.optional(),
      phone: shortText(40).nullable().optional(),
      mail: shortText(200).nullable().optional(),
      mayBring: z.boolean().optional(),
      mayAgreeUpTo: money.nullable().optional(),
      mayAgreeAny: z.boolean().optional(),
      mayCollect: z.boolean().optional(),
      active: z.boolean().optional(),
    }),
    class: 'turn',
    row: { table: 'contact', field: 'contactId' },
    offline: true,
    screens: ['vehicle'],
    summary: 'What a contact may do and how they are reached, or that they no longer are one.',
  } satisfies CommandSpec<'changeContact'>,
  giveStandingGoAhead: {
    schema: z.strictObject({ ...standingFacts, customerId: uuid, vehicleId: uuid.optional(), jobId: uuid.optional() }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['job', 'vehicle'],
    summary:
      'What the customer agrees to in advance: looking for the fault, small things, a fleet limit with its order number.',
  } satisfies CommandSpec<'giveStandingGoAhead'>,
  endStandingGoAhead: {
    schema: z.strictObject({ ...turn, standingGoAheadId: uuid, words }),
    class: 'turn',
    row: { table: 'standingGoAhead', field: 'standingGoAheadId' },
    offline: true,
    screens: ['job', 'vehicle'],
    summary: 'A standing go-ahead holds no longer.',
  } satisfies CommandSpec<'endStandingGoAhead'>,
  recordContact: {
    schema: z.strictObject({
      ...at,
      contactEntryId: uuid.optional(),
      vehicleId: uuid,
      jobId: uuid.optional(),
      followUpId: uuid.optional(),
      callId: uuid.optional(),
      contactId: uuid.optional(),
      way: z.enum(contactWays),
      withName: name.optional(),
      reached: z.boolean(),
      answer: words.optional(),
      nextTryAt: instant.optional(),
      moveOf: z.enum(movesOf),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['desk', 'outstanding'],
    summary: 'An entry of the contact log: a call, a message, a letter, the answer, the next try, whose move it is.',
  } satisfies CommandSpec<'recordContact'>,
} as const;
