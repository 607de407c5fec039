import { equipmentKinds, massUnits, roles, skills } from '@holdfast/domain';
import { z } from 'zod';
import { clockTime, day, measure, monthDay, name, password, shortText, turn, uuid, week, words } from './fields.js';
import type { CommandSpec } from './spec.js';

const equipment = z
  .array(
    z.strictObject({
      kind: z.enum(equipmentKinds),
      inUse: z.boolean(),
      grips: z.enum(['points', 'wheels']).nullable(),
    }),
  )
  .max(12);
const millimetres = z.int().min(500).max(30_000);
const bayFacts = {
  spots: z.int().min(1).max(20),
  equipment,
  capacity: measure.optional(),
  capacityUnit: z.enum(massUnits).optional(),
  maxLengthMm: millimetres.optional(),
  maxHeightMm: millimetres.optional(),
  maxWheelbaseMm: millimetres.optional(),
  inspectedOn: day.optional(),
  inspectionOutcome: z.enum(['passed', 'failed']).optional(),
  inspectionIntervalMonths: z.int().min(1).max(120).optional(),
  outOfUse: z.boolean().optional(),
  outOfUseWords: words.optional(),
};
const skillList = z.array(z.strictObject({ skill: z.enum(skills), until: day.optional() })).max(20);
const hours = z.strictObject({ validFrom: day, week, breaks: week });
const personRoles = z.array(z.enum(roles)).min(1).max(roles.length);

export const shopCommands = {
  setUpShop: {
    schema: z.strictObject({
      code: shortText(40),
      shop: z.strictObject({
        name,
        zone: shortText(60),
        currency: z.string().regex(/^[A-Z]{3}$/),
        units: z.enum(['metric', 'us']),
        locale: z.enum(['en-GB', 'en-US']),
      }),
      owner: z.strictObject({ name, password }),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['set-up'],
    summary: 'A new shop and its owner, with the code printed at start.',
  } satisfies CommandSpec<'setUpShop'>,
  addPerson: {
    schema: z.strictObject({
      personId: uuid.optional(),
      name,
      roles: personRoles,
      password: password.optional(),
      homeBayId: uuid.optional(),
      skills: skillList.optional(),
      hours: hours.optional(),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['shop'],
    summary: 'A person of the shop, with roles, skills, hours and a password to sign in with.',
  } satisfies CommandSpec<'addPerson'>,
  changePerson: {
    schema: z.strictObject({
      ...turn,
      personId: uuid,
      name: name.optional(),
      roles: personRoles.optional(),
      active: z.boolean().optional(),
      homeBayId: uuid.nullable().optional(),
      skills: skillList.optional(),
      hours: hours.optional(),
      password: password.optional(),
    }),
    class: 'turn',
    row: { table: 'person', field: 'personId' },
    offline: false,
    screens: ['shop'],
    summary: 'Roles, skills, hours, home bay or password of a person; or that they no longer work here.',
  } satisfies CommandSpec<'changePerson'>,
  addBay: {
    schema: z.strictObject({
      ...bayFacts,
      bayId: uuid.optional(),
      name: shortText(40),
      position: z.int().min(1).max(500).optional(),
      validFrom: day.optional(),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['shop'],
    summary: 'A bay with its spots, equipment, rated capacity and limits.',
  } satisfies CommandSpec<'addBay'>,
  changeBay: {
    schema: z.strictObject({
      ...turn,
      bayId: uuid,
      name: shortText(40).optional(),
      position: z.int().min(1).max(500).optional(),
      endedOn: day.nullable().optional(),
      validFrom: day.optional(),
      facts: z.strictObject(bayFacts).optional(),
    }),
    class: 'turn',
    row: { table: 'bay', field: 'bayId' },
    offline: false,
    screens: ['shop'],
    summary: 'Another name or place in the order, other facts from a day on, or a bay that is no more.',
  } satisfies CommandSpec<'changeBay'>,
  setOpeningHours: {
    schema: hours,
    class: 'claim',
    row: null,
    offline: false,
    screens: ['shop'],
    summary: 'Opening hours and breaks by weekday, from a day on.',
  } satisfies CommandSpec<'setOpeningHours'>,
  setSeasons: {
    schema: z.strictObject({
      seasons: z
        .array(
          z.strictObject({
            seasonId: uuid.optional(),
            name: shortText(60),
            fromDay: monthDay,
            toDay: monthDay,
            validFrom: day,
          }),
        )
        .max(20),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['shop'],
    summary: 'The seasons that this shop dates; one that is left out ends.',
  } satisfies CommandSpec<'setSeasons'>,
  addSupplier: {
    schema: z.strictObject({
      supplierId: uuid.optional(),
      name,
      phone: shortText(40).optional(),
      mail: shortText(200).optional(),
      cutOff: clockTime.optional(),
      runs: week.optional(),
    }),
    class: 'claim',
    row: null,
    offline: false,
    screens: ['shop', 'parts-desk'],
    summary: 'A supplier with order cut-off and delivery runs.',
  } satisfies CommandSpec<'addSupplier'>,
} as const;
