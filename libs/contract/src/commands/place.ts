import { movedWays } from '@holdfast/domain';
import { z } from 'zod';
import { at, distance, instant, kilograms, name, shortText, uuid } from './fields.js';
import type { CommandSpec } from './spec.js';

const moved = { movedHow: z.enum(movedWays).optional(), movedByName: name.optional() };

export const placeCommands = {
  takeIntoBay: {
    schema: z.strictObject({
      ...at,
      ...moved,
      placeId: uuid.optional(),
      jobId: uuid,
      bayId: uuid,
      spot: z.int().min(1).max(20).optional(),
      loaded: z.boolean().optional(),
      loadKg: kilograms.optional(),
      alreadyThere: z.boolean().optional(),
    }),
    class: 'claim',
    row: null,
    offline: true,
    screens: ['floor', 'my-bay'],
    summary: 'A vehicle goes into a bay; with alreadyThere a report of what is seen, recorded and flagged.',
  } satisfies CommandSpec<'takeIntoBay'>,
  moveToYard: {
    schema: z.strictObject({
      ...at,
      ...moved,
      placeId: uuid.optional(),
      jobId: uuid,
      yardSpot: shortText(12).optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['floor', 'my-bay'],
    summary: 'A vehicle stands in the yard.',
  } satisfies CommandSpec<'moveToYard'>,
  recordRolls: {
    schema: z.strictObject({ ...at, vehicleId: uuid, rolls: z.boolean(), mayBeDriven: z.boolean() }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay', 'job'],
    summary: 'Whether a vehicle rolls and whether it may be driven, now.',
  } satisfies CommandSpec<'recordRolls'>,
  swapBays: {
    schema: z.strictObject({
      ...moved,
      jobIds: z.tuple([uuid, uuid]),
      loaded: z
        .array(z.strictObject({ jobId: uuid, loaded: z.boolean(), loadKg: kilograms.optional() }))
        .max(2)
        .optional(),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['floor', 'my-bay'],
    summary: 'Two vehicles change their bays.',
  } satisfies CommandSpec<'swapBays'>,
  takeOnRoadTest: {
    schema: z.strictObject({
      ...at,
      placeId: uuid.optional(),
      jobId: uuid,
      driverId: uuid.optional(),
      odometerOut: distance.optional(),
      keepSpot: z.boolean(),
      dueBackAt: instant.optional(),
      alreadyOut: z.boolean().optional(),
    }),
    class: 'claim',
    row: null,
    offline: true,
    screens: ['floor', 'my-bay'],
    summary: 'A vehicle goes on a road test: who drives, the reading, and whether its spot is kept.',
  } satisfies CommandSpec<'takeOnRoadTest'>,
  returnFromRoadTest: {
    schema: z.strictObject({
      ...at,
      placeId: uuid.optional(),
      jobId: uuid,
      odometerIn: distance.optional(),
      intoKeptSpot: z.boolean().optional(),
      yardSpot: shortText(12).optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['floor', 'my-bay'],
    summary: 'A vehicle is back from its road test, in the spot that was kept or in the yard.',
  } satisfies CommandSpec<'returnFromRoadTest'>,
} as const;
