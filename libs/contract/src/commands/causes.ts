import { certainties, distanceUnits } from '@holdfast/domain';
import { z } from 'zod';
import { at, distance, turn, uuid, words } from './fields.js';
import type { CommandSpec } from './spec.js';

export const causeCommands = {
  recordAttempt: {
    schema: z.strictObject({
      ...at,
      attemptId: uuid.optional(),
      concernId: uuid,
      conditions: words,
      odometer: distance.optional(),
      odometerUnit: z.enum(distanceUnits).optional(),
      appeared: z.boolean(),
      words: words.optional(),
      placeId: uuid.optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay', 'job', 'desk'],
    summary: 'One try to make a concern appear: under which conditions, and whether it did.',
  } satisfies CommandSpec<'recordAttempt'>,
  recordCause: {
    schema: z.strictObject({
      ...at,
      causeId: uuid.optional(),
      jobId: uuid,
      concernIds: z.array(uuid).min(1).max(20),
      words,
      certainty: z.enum(certainties),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay', 'job'],
    summary: 'What brings one or several concerns about: found, likely, or not found.',
  } satisfies CommandSpec<'recordCause'>,
  changeCause: {
    schema: z.strictObject({
      ...turn,
      causeId: uuid,
      concernIds: z.array(uuid).min(1).max(20).optional(),
      words: words.optional(),
      certainty: z.enum(certainties).optional(),
    }),
    class: 'turn',
    row: { table: 'cause', field: 'causeId' },
    offline: true,
    screens: ['job'],
    summary: 'A cause said anew.',
  } satisfies CommandSpec<'changeCause'>,
} as const;
