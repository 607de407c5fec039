import { z } from 'zod';
import { correctedTables } from '@holdfast/domain';
import { turn, uuid, words } from './fields.js';
import type { CommandSpec } from './spec.js';

const rowVersion = z.int().min(1);

export const anyCommands = {
  strikeEntry: {
    schema: z.strictObject({ table: z.enum(correctedTables), id: uuid, version: rowVersion.optional(), words }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['job', 'vehicle', 'bay-time'],
    summary: 'A wrong entry counts nowhere any more and stays readable.',
  } satisfies CommandSpec<'strikeEntry'>,
  mergeVehicles: {
    schema: z.strictObject({ ...turn, vehicleId: uuid, otherId: uuid, otherVersion: rowVersion, words }),
    class: 'turn',
    row: { table: 'vehicle', field: 'vehicleId' },
    offline: false,
    screens: ['vehicle'],
    summary: 'Two records of one vehicle become one.',
  } satisfies CommandSpec<'mergeVehicles'>,
  mergeCustomers: {
    schema: z.strictObject({ ...turn, customerId: uuid, otherId: uuid, otherVersion: rowVersion, words }),
    class: 'turn',
    row: { table: 'customer', field: 'customerId' },
    offline: false,
    screens: ['vehicle'],
    summary: 'Two records of one customer become one.',
  } satisfies CommandSpec<'mergeCustomers'>,
  erasePersonalData: {
    schema: z.strictObject({ ...turn, customerId: uuid, words }),
    class: 'turn',
    row: { table: 'customer', field: 'customerId' },
    offline: false,
    screens: ['vehicle'],
    summary:
      "A customer's name, telephone, mail, plates and photos of people are overwritten; the account of the work stays.",
  } satisfies CommandSpec<'erasePersonalData'>,
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
