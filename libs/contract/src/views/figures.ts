import { z } from 'zod';
import { isoInstant } from './rows.js';

const dayMs = 86_400_000;
const longestDays = 400;
const day = z.iso.date().regex(/^(19[7-9]|20\d|21\d)\d-/);

/** `GET /api/figures`: the figures of working days of the shop (both included), in all and by day, week or month. */
export const figuresQuery = z
  .strictObject({ from: day, to: day, by: z.enum(['day', 'week', 'month']).default('day') })
  .refine(({ from, to }) => from <= to, { path: ['to'], message: 'The last day lies before the first.' })
  .refine(({ from, to }) => (Date.parse(to) - Date.parse(from)) / dayMs < longestDays, {
    path: ['to'],
    message: 'At most 400 days at once.',
  });
export type FiguresQuery = z.infer<typeof figuresQuery>;

const ms = z.int().min(0);
/** A ratio; null where there is nothing to divide by. */
const ratio = z.number().min(0).nullable();
const soleAndShared = z.strictObject({
  /** Nothing else was holding. */
  soleMs: ms,
  /** Something else was holding as well: the same time stands at each of them. */
  sharedMs: ms,
});
const held = z.record(z.string(), soleAndShared);

const bayFigures = z.strictObject({
  openMs: ms,
  availableMs: ms,
  occupiedMs: ms,
  workedMs: ms,
  heldMs: ms,
  noReasonMs: ms,
  /** The smaller of bays open and technicians present, added up over time. */
  mannedMs: ms,
  occupancy: ratio,
  /** worked / available: bay use. */
  use: ratio,
  /** worked / manned: bay use against what the people there could man. */
  useManned: ratio,
});
export type BayFiguresView = z.infer<typeof bayFigures>;

const hours = z.strictObject({
  presentMs: ms,
  clockedMs: ms,
  bookMs: z.number().min(0),
  /** book hours of finished work / hours clocked. */
  efficiency: ratio,
  /** hours clocked / hours present. */
  productivity: ratio,
});
export type PersonHoursView = z.infer<typeof hours>;

const period = z.strictObject({
  first: z.iso.date(),
  last: z.iso.date(),
  /** False: only a part of the week or month was asked for. */
  whole: z.boolean(),
  shop: bayFigures,
  people: hours,
});

const flow = z.strictObject({
  meanHere: z.number().nullable(),
  mostHere: z.int(),
  arrived: z.int(),
  left: z.int(),
  leftPerDay: z.number().nullable(),
  /** Time here of all vehicles, by what it was spent on. */
  timeMs: z.record(z.enum(['worked', 'overtime', 'us', 'parts', 'customer', 'others', 'closed']), ms),
  comebacks: z.int(),
  comebacksPerHundred: z.number().nullable(),
  /** Those longest here, in days of the zone. */
  vehicles: z.array(
    z.strictObject({ vehicleId: z.uuid(), plate: z.string(), description: z.string(), days: z.number() }),
  ),
  fleets: z.array(z.strictObject({ fleet: z.string(), vehicles: z.int(), days: z.number() })),
  /** Little's law: where the window starts and ends without a vehicle it must hold; else null. */
  littleHolds: z.boolean().nullable(),
});

export const figuresView = z.strictObject({
  from: z.iso.date(),
  to: z.iso.date(),
  zone: z.string(),
  now: isoInstant,
  all: bayFigures,
  periods: z.array(period),
  bays: z.array(z.strictObject({ bayId: z.uuid(), name: z.string(), figures: bayFigures })),
  equipment: z.array(z.strictObject({ kind: z.string(), figures: bayFigures })),
  held: z.strictObject({
    heldMs: ms,
    /** Held for more than one reason at once. */
    severalReasonsMs: ms,
    byReason: held,
    bySupplier: z.array(z.strictObject({ supplierId: z.uuid(), name: z.string(), ...soleAndShared.shape })),
    byPart: z.array(
      z.strictObject({
        partLineId: z.uuid(),
        description: z.string(),
        jobId: z.uuid().nullable(),
        plate: z.string(),
        ...soleAndShared.shape,
      }),
    ),
  }),
  /** Of all people together, and of those whose figures the reader may see. */
  people: z.strictObject({
    all: hours,
    people: z.array(z.strictObject({ personId: z.uuid(), name: z.string(), hours })),
    /** Book time of finished lines that nobody was clocked on. */
    bookWithoutClockMs: z.number().min(0),
  }),
  flow,
});
export type FiguresView = z.infer<typeof figuresView>;

/** `GET /api/my-hours`: one's own figures of some working days. */
export const myHoursView = z.strictObject({ from: z.iso.date(), to: z.iso.date(), hours });
export type MyHoursView = z.infer<typeof myHoursView>;
