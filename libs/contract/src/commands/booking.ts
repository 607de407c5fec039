import { jobKinds, leavesBy } from '@holdfast/domain';
import { z } from 'zod';
import { contactFacts } from './customer.js';
import { at, distance, instant, minutes, money, name, shortText, title, turn, uuid, words } from './fields.js';
import { concerned } from './job.js';
import type { CommandSpec } from './spec.js';

export const visitEndsAndBeginnings = {
  bookJob: {
    schema: z.strictObject({
      jobId: uuid.optional(),
      vehicleId: uuid,
      kind: z.enum(jobKinds).optional(),
      comebackOfLineId: uuid.optional(),
      customerId: uuid.optional(),
      customer: z.strictObject({ customerId: uuid.optional(), name, fleet: name.optional() }).optional(),
      contactId: uuid.optional(),
      contact: z.strictObject(contactFacts).optional(),
      expectedAt: instant,
      promisedAt: instant.optional(),
      waitsHere: z.boolean().optional(),
      boardNote: shortText(40).optional(),
      concerns: z.array(concerned).max(20).optional(),
      lines: z
        .array(
          z.strictObject({ lineId: uuid.optional(), title, bookMinutes: minutes.optional(), price: money.optional() }),
        )
        .max(30)
        .optional(),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['desk'],
    summary: 'A visit that is expected, with what the customer reports and what is to be done.',
  } satisfies CommandSpec<'bookJob'>,
  changeBooking: {
    schema: z.strictObject({
      ...turn,
      jobId: uuid,
      expectedAt: instant.optional(),
      promisedAt: instant.nullable().optional(),
      waitsHere: z.boolean().optional(),
    }),
    class: 'turn',
    row: { table: 'job', field: 'jobId' },
    offline: true,
    screens: ['desk'],
    summary: 'A booked visit comes at another time.',
  } satisfies CommandSpec<'changeBooking'>,
  recordArrival: {
    schema: z.strictObject({
      ...at,
      placeId: uuid.optional(),
      jobId: uuid,
      yardSpot: shortText(12).optional(),
      keyTag: shortText(12).optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['desk'],
    summary: 'A vehicle that was expected stands here, and nobody has checked it in yet.',
  } satisfies CommandSpec<'recordArrival'>,
  cancelJob: {
    schema: z.strictObject({ ...turn, jobId: uuid, words }),
    class: 'turn',
    row: { table: 'job', field: 'jobId' },
    offline: true,
    screens: ['desk', 'job'],
    summary: 'A visit does not take place, with words; of one that is here only while nothing has been done on it.',
  } satisfies CommandSpec<'cancelJob'>,
  releaseUnfinished: {
    schema: z.strictObject({
      ...turn,
      jobId: uuid,
      leavesBy: z.enum(leavesBy),
      receivedBy: name,
      receivedHow: z.enum(['there', 'telephone']),
      words,
      odometer: distance.optional(),
      byRoad: z
        .array(z.strictObject({ temporaryFixId: uuid, words, receiverSigned: z.boolean() }))
        .max(50)
        .optional(),
    }),
    class: 'turn',
    row: { table: 'job', field: 'jobId' },
    offline: false,
    screens: ['hand-back'],
    summary: 'The vehicle leaves unfinished, by manager or owner, with its own sheet; what is open becomes follow-ups.',
  } satisfies CommandSpec<'releaseUnfinished'>,
  undoHandBack: {
    schema: z.strictObject({ jobId: uuid, words }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['hand-back'],
    summary:
      'Within the hour: a hand-back or release is undone, its sheet marked void, the vehicle in its bay again where the spot is free, else in the yard.',
  } satisfies CommandSpec<'undoHandBack'>,
} as const;
