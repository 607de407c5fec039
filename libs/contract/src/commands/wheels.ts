import { torqueSources, torqueUnits, wheelPosition } from '@holdfast/domain';
import { z } from 'zod';
import { at, distance, measure, name, shortText, turn, uuid, words } from './fields.js';
import type { CommandSpec } from './spec.js';

const positions = z.array(z.string().regex(wheelPosition)).min(1).max(40);
const torqueFacts = {
  torque: measure,
  torqueUnit: z.enum(torqueUnits),
  torqueSource: z.enum(torqueSources),
  sourceWords: shortText(200).optional(),
  tool: name,
};

export const wheelCommands = {
  recordWheelOff: {
    schema: z.strictObject({ ...at, wheelRecordId: uuid.optional(), jobId: uuid, lineId: uuid.optional(), positions }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay'],
    summary: 'Wheels are off, each by its place.',
  } satisfies CommandSpec<'recordWheelOff'>,
  recordWheelOn: {
    schema: z.strictObject({ ...at, jobId: uuid, positions, torque: z.strictObject(torqueFacts).optional() }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay'],
    summary: 'Wheels are on again; with their torque, or tightened later.',
  } satisfies CommandSpec<'recordWheelOn'>,
  recordTorque: {
    schema: z.strictObject({ ...at, ...torqueFacts, jobId: uuid, positions }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['my-bay'],
    summary: 'Wheels are tightened: value, where it comes from, tool and who.',
  } satisfies CommandSpec<'recordTorque'>,
  recordRetorque: {
    schema: z.strictObject({
      ...turn,
      ...torqueFacts,
      followUpId: uuid,
      odometer: distance.optional(),
      words: words.optional(),
    }),
    class: 'turn',
    row: { table: 'followUp', field: 'followUpId' },
    offline: true,
    screens: ['outstanding', 'vehicle'],
    summary: 'A vehicle dropped in and its wheels were tightened again; no bay, no visit.',
  } satisfies CommandSpec<'recordRetorque'>,
} as const;
