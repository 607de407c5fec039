import { z } from 'zod';
import { clockTime, day, hoursOfDay, name, shortText, turn, uuid, week, words } from './fields.js';
import type { CommandSpec } from './spec.js';

const months = z.int().min(1).max(240).nullable().optional();

export const settingCommands = {
  changeShop: {
    schema: z.strictObject({
      ...turn,
      shopId: uuid,
      name: name.optional(),
      units: z.enum(['metric', 'us']).optional(),
      locale: z.enum(['en-GB', 'en-US']).optional(),
      zone: z.strictObject({ validFrom: day, zone: shortText(60) }).optional(),
    }),
    class: 'turn',
    row: { table: 'shop', field: 'shopId' },
    offline: false,
    screens: ['shop'],
    summary: 'Name, units and language of the shop; another time zone from a day on.',
  } satisfies CommandSpec<'changeShop'>,
  changeSettings: {
    schema: z.strictObject({
      validFrom: day.optional(),
      graceMinutes: z.int().min(0).max(240).optional(),
      tolerancePercent: z
        .string()
        .regex(/^\d{1,2}(\.\d{1,2})?$/)
        .optional(),
      floorRecordsGoAheads: z.boolean().optional(),
      recheckMinutes: z.int().min(1).max(10_080).nullable().optional(),
      workGuaranteeMonths: months,
      partGuaranteeMonths: months,
      personFiguresToLeads: z.boolean().optional(),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['shop'],
    summary: 'Settings that enter figures and rules, from a day on.',
  } satisfies CommandSpec<'changeSettings'>,
  setException: {
    schema: z.strictObject({
      exceptionId: uuid.optional(),
      day,
      personId: uuid.optional(),
      hours: hoursOfDay,
      breaks: hoursOfDay.optional(),
      words: words.optional(),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['shop'],
    summary: 'Other hours on one day, for the shop or for one person.',
  } satisfies CommandSpec<'setException'>,
  endException: {
    schema: z.strictObject({ ...turn, exceptionId: uuid }),
    class: 'turn',
    row: { table: 'hoursException', field: 'exceptionId' },
    offline: false,
    screens: ['shop'],
    summary: 'The usual hours hold on that day after all.',
  } satisfies CommandSpec<'endException'>,
  changeSupplier: {
    schema: z.strictObject({
      ...turn,
      supplierId: uuid,
      name: name.optional(),
      phone: shortText(40).nullable().optional(),
      mail: shortText(200).nullable().optional(),
      cutOff: clockTime.nullable().optional(),
      runs: week.nullable().optional(),
    }),
    class: 'turn',
    row: { table: 'supplier', field: 'supplierId' },
    offline: false,
    screens: ['shop', 'parts-desk'],
    summary: 'Name, telephone, order cut-off or delivery runs of a supplier.',
  } satisfies CommandSpec<'changeSupplier'>,
} as const;
