import { equipmentKinds, inspectionOutcomes } from '@holdfast/domain';
import { z } from 'zod';
import { at, day, name, turn, uuid, words } from './fields.js';
import type { CommandSpec } from './spec.js';

export const liftCommands = {
  recordLiftInspection: {
    schema: z.strictObject({
      inspectionId: uuid.optional(),
      bayId: uuid,
      inspectedOn: day,
      outcome: z.enum(inspectionOutcomes),
      intervalMonths: z.int().min(1).max(120).optional(),
      inspector: name.optional(),
      words: words.optional(),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['shop'],
    summary: "An inspection of a bay's lift; a failed one puts that lift out of use.",
  } satisfies CommandSpec<'recordLiftInspection'>,
  allowOverdueLift: {
    schema: z.strictObject({ decisionId: uuid.optional(), bayId: uuid, untilDay: day, words }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['shop'],
    summary: 'One decision that a lift with an overdue inspection is used until a day, at most 14 days on.',
  } satisfies CommandSpec<'allowOverdueLift'>,
  takeOutOfUse: {
    schema: z.strictObject({
      outageId: uuid.optional(),
      bayId: uuid,
      equipment: z.enum(equipmentKinds).optional(),
      words,
      ...at,
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['floor', 'my-bay', 'shop'],
    summary: 'A bay, or a piece of its equipment, cannot be used; a vehicle may stand in it.',
  } satisfies CommandSpec<'takeOutOfUse'>,
  putBackInUse: {
    schema: z.strictObject({ ...turn, outageId: uuid, words: words.optional() }),
    class: 'turn',
    row: { table: 'outage', field: 'outageId' },
    offline: false,
    screens: ['floor', 'shop'],
    summary: 'A bay, or a piece of its equipment, is used again.',
  } satisfies CommandSpec<'putBackInUse'>,
  nameLiftingPoints: {
    schema: z.strictObject({ jobId: uuid, words }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['floor', 'job'],
    summary: 'Which points of a vehicle with a lifting-point caution are used on this visit.',
  } satisfies CommandSpec<'nameLiftingPoints'>,
} as const;
