import { movedWays, subletForms } from '@holdfast/domain';
import { z } from 'zod';
import { at, instant, money, name, shortText, title, turn, uuid, words } from './fields.js';
import type { CommandSpec } from './spec.js';

const subletFacts = {
  firm: name.optional(),
  supplierId: uuid.optional(),
  component: title.optional(),
  slotAt: instant.optional(),
  price: money.optional(),
  dueBackAt: instant.optional(),
  words: words.optional(),
};

export const subletCommands = {
  arrangeSublet: {
    schema: z.strictObject({
      ...subletFacts,
      firm: name,
      subletId: uuid.optional(),
      jobId: uuid,
      lineId: uuid.optional(),
      form: z.enum(subletForms),
    }),
    class: 'fact',
    row: null,
    offline: true,
    screens: ['job'],
    summary: 'Work by another firm is arranged: the vehicle goes out, a component goes out, or somebody comes in.',
  } satisfies CommandSpec<'arrangeSublet'>,
  changeSublet: {
    schema: z.strictObject({ ...turn, ...subletFacts, subletId: uuid }),
    class: 'turn',
    row: { table: 'sublet', field: 'subletId' },
    offline: true,
    screens: ['job'],
    summary: 'Firm, slot, price or day of return of a sublet said anew.',
  } satisfies CommandSpec<'changeSublet'>,
  cancelSublet: {
    schema: z.strictObject({ ...turn, subletId: uuid, words }),
    class: 'turn',
    row: { table: 'sublet', field: 'subletId' },
    offline: true,
    screens: ['job'],
    summary: 'An arranged sublet does not take place.',
  } satisfies CommandSpec<'cancelSublet'>,
  sendAway: {
    schema: z.strictObject({
      ...turn,
      ...at,
      subletId: uuid,
      placeId: uuid.optional(),
      keepSpot: z.boolean(),
      movedHow: z.enum(movedWays).optional(),
      movedByName: name.optional(),
      alreadyOut: z.boolean().optional(),
    }),
    class: 'turn',
    row: { table: 'sublet', field: 'subletId' },
    offline: true,
    screens: ['job'],
    summary: 'The vehicle goes to another firm.',
  } satisfies CommandSpec<'sendAway'>,
  sendComponentAway: {
    schema: z.strictObject({ ...turn, ...at, subletId: uuid }),
    class: 'turn',
    row: { table: 'sublet', field: 'subletId' },
    offline: true,
    screens: ['job'],
    summary: 'A component goes to another firm; the vehicle stays.',
  } satisfies CommandSpec<'sendComponentAway'>,
  letOutsiderIn: {
    schema: z.strictObject({ ...turn, ...at, subletId: uuid }),
    class: 'turn',
    row: { table: 'sublet', field: 'subletId' },
    offline: true,
    screens: ['job'],
    summary: 'Somebody of another firm comes in and works here.',
  } satisfies CommandSpec<'letOutsiderIn'>,
  bringBack: {
    schema: z.strictObject({
      ...turn,
      ...at,
      subletId: uuid,
      placeId: uuid.optional(),
      price: money.optional(),
      intoKeptSpot: z.boolean().optional(),
      yardSpot: shortText(12).optional(),
      words: words.optional(),
    }),
    class: 'turn',
    row: { table: 'sublet', field: 'subletId' },
    offline: true,
    screens: ['job', 'waiting'],
    summary: 'The vehicle or component is back from the other firm, or the outsider has gone.',
  } satisfies CommandSpec<'bringBack'>,
} as const;
