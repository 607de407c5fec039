import { z } from 'zod';
import { turn, uuid } from './fields.js';
import type { CommandSpec } from './spec.js';

export const importCommands = {
  acceptImport: {
    schema: z.strictObject({ ...turn, importId: uuid }),
    class: 'turn',
    row: { table: 'importBatch', field: 'importId' },
    offline: false,
    screens: ['existing-data'],
    summary: 'The good rows of a checked file become customers, vehicles or follow-ups of the shop, all in one change.',
  } satisfies CommandSpec<'acceptImport'>,
} as const;
