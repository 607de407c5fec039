import {
  cautionCodes,
  concernOutcomes,
  distanceUnits,
  drives,
  findingKinds,
  jobKinds,
  leavesBy,
  massSources,
  readingSources,
  vehicleKinds,
} from '@holdfast/domain';
import { z } from 'zod';
import { at, distance, instant, kilograms, measure, name, shortText, turn, uuid, words } from './fields.js';
import { contactFacts, standingFacts } from './customer.js';
import type { CommandSpec } from './spec.js';

/** What the customer reports, with the conditions under which it appears. */
export const concerned = z.strictObject({ concernId: uuid.optional(), words, conditions: words.optional() });
const odometer = z.strictObject({
  value: distance.optional(),
  unit: z.enum(distanceUnits),
  source: z.enum(readingSources),
});

export const jobCommands = {
  changeOwner: {
    schema: z.strictObject({ ...turn, vehicleId: uuid, customerId: uuid, words: words.optional() }),
    class: 'turn',
    row: { table: 'vehicle', field: 'vehicleId' },
    offline: false,
    screens: ['vehicle'],
    summary: 'The vehicle has another owner from now on; its history stays.',
  } satisfies CommandSpec<'changeOwner'>,
  addVehicle: {
    schema: z.strictObject({
      vehicleId: uuid.optional(),
      customerId: uuid.optional(),
      plate: shortText(20),
      vin: z
        .string()
        .max(40)
        .regex(/^[\x20-\x7e]+$/)
        .optional(),
      description: shortText(120),
      kind: z.enum(vehicleKinds),
      drive: z.enum(drives),
      curbKg: kilograms.optional(),
      curbSource: z.enum(massSources).optional(),
      grossKg: kilograms.optional(),
      grossSource: z.enum(massSources).optional(),
      weighedKg: kilograms.optional(),
      rolls: z.boolean().optional(),
      mayBeDriven: z.boolean().optional(),
      notes: words.optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['desk'],
    summary: 'A vehicle that the shop has not seen before.',
  } satisfies CommandSpec<'addVehicle'>,
  checkIn: {
    schema: z.strictObject({
      jobId: uuid.optional(),
      expectedJobId: uuid.optional(),
      vehicleId: uuid,
      kind: z.enum(jobKinds).optional(),
      comebackOfLineId: uuid.optional(),
      customerId: uuid.optional(),
      customer: z.strictObject({ customerId: uuid.optional(), name, fleet: name.optional() }).optional(),
      contactId: uuid.optional(),
      contact: z.strictObject(contactFacts).optional(),
      concerns: z.array(concerned).max(20),
      standingGoAheads: z.array(z.strictObject(standingFacts)).max(10).optional(),
      odometer: odometer.optional(),
      keyTag: shortText(12).optional(),
      yardSpot: shortText(12).optional(),
      promisedAt: instant.optional(),
      waitsHere: z.boolean().optional(),
      boardNote: shortText(40).optional(),
      rolls: z.boolean().optional(),
      mayBeDriven: z.boolean().optional(),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['desk'],
    summary:
      'A vehicle comes in: who brings it, what they report under which conditions, odometer, key, spot, promised time.',
  } satisfies CommandSpec<'checkIn'>,
  recordOdometer: {
    schema: z.strictObject({
      ...at,
      vehicleId: uuid,
      jobId: uuid.optional(),
      value: distance.optional(),
      unit: z.enum(distanceUnits),
      source: z.enum(readingSources),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay', 'job', 'vehicle'],
    summary: 'What the odometer shows, or that it cannot be read. A lower reading than before is kept and marked.',
  } satisfies CommandSpec<'recordOdometer'>,
  setBoardNote: {
    schema: z.strictObject({ ...turn, jobId: uuid, note: shortText(40).nullable() }),
    class: 'turn',
    row: { table: 'job', field: 'jobId' },
    offline: true,
    screens: ['floor', 'job'],
    summary: 'A note of at most 40 characters beside the vehicle on every board, or none.',
  } satisfies CommandSpec<'setBoardNote'>,
  correctVehicle: {
    schema: z.strictObject({
      ...turn,
      vehicleId: uuid,
      plate: shortText(20).optional(),
      vin: z
        .string()
        .max(40)
        .regex(/^[\x20-\x7e]+$/)
        .nullable()
        .optional(),
      description: shortText(120).optional(),
      kind: z.enum(vehicleKinds).optional(),
      drive: z.enum(drives).optional(),
      curbKg: kilograms.optional(),
      curbSource: z.enum(massSources).optional(),
      grossKg: kilograms.optional(),
      grossSource: z.enum(massSources).optional(),
      weighedKg: kilograms.optional(),
      notes: words.nullable().optional(),
      words: words.optional(),
    }),
    class: 'turn',
    row: { table: 'vehicle', field: 'vehicleId' },
    offline: true,
    screens: ['vehicle'],
    summary:
      'What was wrong or unknown about a vehicle; both values are kept. Masses by manager or owner, with their source.',
  } satisfies CommandSpec<'correctVehicle'>,
  changePromisedTime: {
    schema: z.strictObject({ ...turn, jobId: uuid, promisedAt: instant.nullable() }),
    class: 'turn',
    row: { table: 'job', field: 'jobId' },
    offline: true,
    screens: ['desk', 'job'],
    summary: 'Another promised time for a job, or none.',
  } satisfies CommandSpec<'changePromisedTime'>,
  recordConcernOutcome: {
    schema: z.strictObject({
      ...turn,
      concernId: uuid,
      outcome: z.enum(concernOutcomes),
      conditions: words.optional(),
      words: words.optional(),
    }),
    class: 'turn',
    row: { table: 'concern', field: 'concernId' },
    offline: true,
    screens: ['job', 'hand-back'],
    summary:
      'What became of a concern: gone under the conditions that showed it, still there, could not be made to appear, not tried.',
  } satisfies CommandSpec<'recordConcernOutcome'>,
  addCaution: {
    schema: z.strictObject({
      ...at,
      cautionId: uuid.optional(),
      vehicleId: uuid,
      jobId: uuid.optional(),
      standing: z.boolean(),
      code: z.enum(cautionCodes),
      words: words.optional(),
      secondId: uuid.optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay', 'job'],
    summary: 'A caution on a vehicle: standing, or working for this visit.',
  } satisfies CommandSpec<'addCaution'>,
  endCaution: {
    schema: z.strictObject({ ...turn, cautionId: uuid, words: words.optional(), lineId: uuid.optional() }),
    class: 'turn',
    row: { table: 'caution', field: 'cautionId' },
    offline: true,
    screens: ['my-bay', 'job'],
    summary: 'A caution no longer applies.',
  } satisfies CommandSpec<'endCaution'>,
  addFinding: {
    schema: z.strictObject({
      ...at,
      findingId: uuid.optional(),
      jobId: uuid,
      concernId: uuid.optional(),
      place: shortText(120),
      kind: z.enum(findingKinds),
      words: words.optional(),
      measure: measure.optional(),
      unit: shortText(20).optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay', 'job'],
    summary: 'What was seen or measured at a place on the vehicle.',
  } satisfies CommandSpec<'addFinding'>,
  attachPhoto: {
    schema: z.strictObject({
      ...at,
      photoId: uuid.optional(),
      jobId: uuid,
      findingId: uuid.optional(),
      temporaryFixId: uuid.optional(),
      content: z.string().regex(/^[0-9a-f]{64}$/),
      width: z.int().min(1).max(20_000),
      height: z.int().min(1).max(20_000),
      caption: shortText(200).optional(),
      moment: z.enum(['walkRound', 'before', 'after', 'other']).optional(),
      showsPeople: z.boolean().optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay', 'job', 'desk'],
    summary: 'An uploaded photo belongs to a job, and where said to a finding or a temporary fix.',
  } satisfies CommandSpec<'attachPhoto'>,
  handBack: {
    schema: z.strictObject({
      ...turn,
      jobId: uuid,
      leavesBy: z.enum(leavesBy),
      receivedBy: name,
      receivedHow: z.enum(['there', 'telephone']),
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
    summary: 'The vehicle goes to its owner with its sheet; refused with every reason while something is open.',
  } satisfies CommandSpec<'handBack'>,
} as const;
