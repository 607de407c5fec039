import { neededTimes, supplierStates, verdicts } from '@holdfast/domain';
import { z } from 'zod';
import { at, day, money, quantity, shortText, title, turn, uuid, words } from './fields.js';
import type { CommandSpec } from './spec.js';

const due = { state: z.enum(supplierStates), dueOn: day.optional(), words: words.optional() };

export const partsCommands = {
  wantPart: {
    schema: z.strictObject({
      ...at,
      partLineId: uuid.optional(),
      lineId: uuid.optional(),
      followUpId: uuid.optional(),
      number: shortText(60).optional(),
      description: title,
      quantity,
      unit: shortText(20).optional(),
      unitPrice: money.optional(),
      needed: z.enum(neededTimes),
      supplierId: uuid.optional(),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['job', 'my-bay', 'parts-desk'],
    summary: 'A part is wanted for a work line or a follow-up.',
  } satisfies CommandSpec<'wantPart'>,
  placeOrder: {
    schema: z.strictObject({
      orderId: uuid.optional(),
      supplierId: uuid,
      reference: shortText(60),
      words: words.optional(),
      lines: z
        .array(
          z.strictObject({
            partLineId: uuid,
            version: z.int().min(1).optional(),
            unitPrice: money.optional(),
            due: z.strictObject(due).optional(),
          }),
        )
        .min(1)
        .max(200),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['parts-desk'],
    summary: 'Part lines of one or more jobs are ordered from one supplier under one reference.',
  } satisfies CommandSpec<'placeOrder'>,
  recordDueIn: {
    schema: z.strictObject({ ...at, ...due, partLineIds: z.array(uuid).min(1).max(200) }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['parts-desk', 'waiting'],
    summary: "When a supplier says parts will come, with the supplier's state for them; every date is kept.",
  } satisfies CommandSpec<'recordDueIn'>,
  receiveParts: {
    schema: z.strictObject({
      ...at,
      deliveryId: uuid.optional(),
      supplierId: uuid.optional(),
      orderId: uuid.optional(),
      note: shortText(60).optional(),
      items: z
        .array(
          z.strictObject({
            partLineId: uuid,
            quantity,
            verdict: z.enum(verdicts),
            foundAtVehicle: z.boolean().optional(),
            bin: shortText(20).optional(),
            words: words.optional(),
          }),
        )
        .min(1)
        .max(200),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['parts-desk'],
    summary: 'Parts came and were checked: whole or part, good, accepted as they are, damaged, wrong.',
  } satisfies CommandSpec<'receiveParts'>,
  fitPart: {
    schema: z.strictObject({ ...turn, partLineId: uuid, quantity: quantity.optional() }),
    class: 'turn',
    row: { table: 'partLine', field: 'partLineId' },
    offline: true,
    screens: ['my-bay', 'job'],
    summary: 'Pieces of a part line are on the vehicle.',
  } satisfies CommandSpec<'fitPart'>,
  cancelPart: {
    schema: z.strictObject({ ...turn, partLineId: uuid, words }),
    class: 'turn',
    row: { table: 'partLine', field: 'partLineId' },
    offline: true,
    screens: ['parts-desk', 'job'],
    summary: 'A part is no longer wanted, with words.',
  } satisfies CommandSpec<'cancelPart'>,
} as const;
