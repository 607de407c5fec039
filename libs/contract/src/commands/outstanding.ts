import { fixEnds, fixKinds, followUpKinds, systems, toldWays, urgencies } from '@holdfast/domain';
import { z } from 'zod';
import { at, minutes, name, shortText, title, turn, uuid, words } from './fields.js';
import type { CommandSpec } from './spec.js';
import { limits } from './work.js';

export const outstandingCommands = {
  addTemporaryFix: {
    schema: z.strictObject({
      ...at,
      ...limits,
      temporaryFixId: uuid.optional(),
      jobId: uuid,
      lineId: uuid.optional(),
      kind: z.enum(fixKinds),
      standsInFor: title,
      place: shortText(120),
      heldWith: title.optional(),
      system: z.enum(systems),
      endedByWhat: title,
      removedPieceAt: name.optional(),
      followUpId: uuid.optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay', 'job'],
    summary: 'What stands in for the permanent repair, on which system, with at least one limit and what ends it.',
  } satisfies CommandSpec<'addTemporaryFix'>,
  recordSecondCheck: {
    schema: z.strictObject({ ...turn, secondCheckId: uuid.optional(), temporaryFixId: uuid, words: words.optional() }),
    class: 'turn',
    row: { table: 'temporaryFix', field: 'temporaryFixId' },
    offline: true,
    screens: ['my-bay', 'job', 'hand-back'],
    summary: 'Another person with the skill has looked at a temporary fix.',
  } satisfies CommandSpec<'recordSecondCheck'>,
  endTemporaryFix: {
    schema: z.strictObject({
      ...turn,
      temporaryFixId: uuid,
      how: z.enum([...fixEnds, 'failed', 'removed']),
      toldHow: z.enum(toldWays).optional(),
      lineId: uuid.optional(),
      words: words.optional(),
    }),
    class: 'turn',
    row: { table: 'temporaryFix', field: 'temporaryFixId' },
    offline: true,
    screens: ['outstanding', 'job', 'vehicle'],
    summary:
      'A temporary fix is repaired for good or otherwise ended; failed or removed leaves its follow-up open and urgent.',
  } satisfies CommandSpec<'endTemporaryFix'>,
  addFollowUp: {
    schema: z.strictObject({
      ...at,
      ...limits,
      followUpId: uuid.optional(),
      vehicleId: uuid,
      jobId: uuid.optional(),
      kind: z.enum(followUpKinds),
      title,
      words: words.optional(),
      urgency: z.enum(urgencies).optional(),
      temporaryFixId: uuid.optional(),
      lineId: uuid.optional(),
      partLineIds: z.array(uuid).max(50).optional(),
      remainingMinutes: minutes.optional(),
      needsGoAhead: z.boolean().optional(),
      needsFollowUpId: uuid.optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['hand-back', 'job', 'vehicle', 'outstanding'],
    summary: 'Something stays outstanding on a vehicle: what, what it needs first, before when.',
  } satisfies CommandSpec<'addFollowUp'>,
  closeFollowUp: {
    schema: z.strictObject({
      ...turn,
      followUpId: uuid,
      how: z.enum(['done', 'dropped']),
      lineId: uuid.optional(),
      words: words.optional(),
    }),
    class: 'turn',
    row: { table: 'followUp', field: 'followUpId' },
    offline: true,
    screens: ['outstanding', 'vehicle'],
    summary: 'A follow-up is done, or dropped with words; never while its temporary fix is still on.',
  } satisfies CommandSpec<'closeFollowUp'>,
} as const;
