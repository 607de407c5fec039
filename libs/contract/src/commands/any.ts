import { z } from 'zod';
import { turn, uuid, words } from './fields.js';
import type { CommandSpec } from './spec.js';

export const anyCommands = {
  takeBack: {
    schema: z.strictObject({ seq: z.int().min(1) }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['floor', 'desk', 'my-bay', 'job', 'parts-desk', 'outstanding'],
    summary: "One's own change of the last ten minutes is undone, if nothing was built on it.",
  } satisfies CommandSpec<'takeBack'>,
  settleCard: {
    schema: z.strictObject({ ...turn, reportId: uuid, take: z.boolean(), words }),
    class: 'turn',
    row: { table: 'report', field: 'reportId' },
    offline: false,
    screens: ['floor', 'my-bay'],
    summary: 'A contested report is settled: it is what happened, or what stands stays.',
  } satisfies CommandSpec<'settleCard'>,
  clearFlag: {
    schema: z.strictObject({ ...turn, flagId: uuid, words }),
    class: 'turn',
    row: { table: 'flag', field: 'flagId' },
    offline: false,
    screens: ['floor', 'job'],
    summary: 'What was flagged has been looked at, with words.',
  } satisfies CommandSpec<'clearFlag'>,
} as const;
