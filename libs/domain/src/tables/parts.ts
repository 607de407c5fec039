import {
  bool,
  day,
  decimal,
  instant,
  int,
  offBoard,
  offWall,
  oneOf,
  orNull,
  recorded,
  ref,
  table,
  text,
} from '../kernel/column.js';
import { neededTimes, partSources, partStates, supplierStates, verdicts } from './words.js';

/** Part lines belong to the vehicle; their current purpose is a work line or a follow-up. */
export const partsTables = {
  partLine: table('all', {
    ...recorded,
    vehicleId: ref('vehicle'),
    jobId: orNull(ref('job')),
    lineId: orNull(ref('workLine')),
    followUpId: offBoard(orNull(ref('followUp'))),
    number: offWall(orNull(text())),
    description: offWall(text()),
    quantity: decimal(),
    unit: text(),
    unitPrice: offWall(orNull(decimal())),
    needed: oneOf(neededTimes),
    source: oneOf(partSources),
    supplierId: offWall(orNull(ref('supplier'))),
    orderId: offWall(orNull(ref('partsOrder'))),
    state: oneOf(partStates),
    /** Pieces here and usable (good or accepted as they are), and pieces on the vehicle. */
    here: decimal(),
    fitted: decimal(),
    bin: offWall(orNull(text())),
    /** The last due-in date told, if any, and the supplier's state with it. */
    dueOn: orNull(day()),
    dueState: orNull(oneOf(supplierStates)),
    endWords: offWall(orNull(text())),
    endedAt: offBoard(orNull(instant())),
  }),
  partsOrder: table('none', { ...recorded, supplierId: ref('supplier'), reference: text(), words: orNull(text()) }),
  /** Every date that a supplier named, with the instant it was told (`effectiveAt`) and which one it was (1, 2, …). */
  dueIn: table('none', {
    ...recorded,
    partLineId: ref('partLine'),
    supplierId: orNull(ref('supplier')),
    state: oneOf(supplierStates),
    dueOn: orNull(day()),
    ordinal: int(),
    words: orNull(text()),
  }),
  delivery: table('none', {
    ...recorded,
    supplierId: orNull(ref('supplier')),
    orderId: orNull(ref('partsOrder')),
    note: orNull(text()),
  }),
  arrival: table('none', {
    ...recorded,
    deliveryId: ref('delivery'),
    partLineId: ref('partLine'),
    quantity: decimal(),
    verdict: oneOf(verdicts),
    /** Found at the vehicle after it had been taken as good. */
    foundAtVehicle: bool(),
    bin: orNull(text()),
    words: orNull(text()),
  }),
} as const;
