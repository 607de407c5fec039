import { movedWays } from '@holdfast/domain';
import { z } from 'zod';
import { at, kilograms, name, shortText, uuid } from './fields.js';
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
} as const;
