import { holdReasons } from '@holdfast/domain';
import { z } from 'zod';
import { at, instant, name, turn, uuid, words } from './fields.js';
import type { CommandSpec } from './spec.js';

export const holdCommands = {
  openHold: {
    schema: z.strictObject({
      ...at,
      holdId: uuid.optional(),
      jobId: uuid,
      reason: z.enum(holdReasons),
      lineIds: z.array(uuid).max(50).optional(),
      partLineIds: z.array(uuid).max(50).optional(),
      words: words.optional(),
      moveOfId: uuid.optional(),
      moveOf: name.optional(),
      endsAt: instant.optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay', 'floor', 'job'],
    summary: 'Why a job, or named lines of it, cannot go on, and whose move it is.',
  } satisfies CommandSpec<'openHold'>,
  endHold: {
    schema: z.strictObject({ ...turn, ...at, holdId: uuid, words: words.optional() }),
    class: 'turn',
    row: { table: 'hold', field: 'holdId' },
    offline: true,
    screens: ['my-bay', 'waiting', 'job'],
    summary: 'A hold ends by hand. A parts hold ends by itself when its parts are here.',
  } satisfies CommandSpec<'endHold'>,
  changeHold: {
    schema: z.strictObject({
      ...turn,
      holdId: uuid,
      words: words.nullable().optional(),
      moveOfId: uuid.nullable().optional(),
      moveOf: name.nullable().optional(),
      endsAt: instant.optional(),
    }),
    class: 'turn',
    row: { table: 'hold', field: 'holdId' },
    offline: true,
    screens: ['waiting', 'job'],
    summary: 'What is said of a hold, and whose move it is.',
  } satisfies CommandSpec<'changeHold'>,
  askQuestion: {
    schema: z.strictObject({
      ...at,
      questionId: uuid.optional(),
      jobId: uuid,
      lineId: uuid.optional(),
      toId: uuid,
      words,
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay', 'job'],
    summary: 'A question to a named person; it waits without holding anything up.',
  } satisfies CommandSpec<'askQuestion'>,
  answerQuestion: {
    schema: z.strictObject({ ...turn, questionId: uuid, answer: words }),
    class: 'turn',
    row: { table: 'question', field: 'questionId' },
    offline: true,
    screens: ['my-bay', 'waiting', 'job'],
    summary: 'The answer to a question.',
  } satisfies CommandSpec<'answerQuestion'>,
} as const;
