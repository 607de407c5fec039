/**
 * What each command is told: the shapes that decisions read. The wire schemas of the contract satisfy these types.
 * Ids of what a command makes are UUIDv7 made by the client; the server makes one where it is left out.
 * `at` (epoch ms here, ISO on the wire) is the device's time of a fact that was kept in an outbox.
 */
import type { AnyInputs } from './inputs/any.js';
import type { CustomerInputs } from './inputs/customer.js';
import type { HoldInputs } from './inputs/hold.js';
import type { ImportInputs } from './inputs/import.js';
import type { JobInputs } from './inputs/job.js';
import type { OutstandingInputs } from './inputs/outstanding.js';
import type { PartsInputs } from './inputs/parts.js';
import type { PlaceInputs } from './inputs/place.js';
import type { ShopInputs } from './inputs/shop.js';
import type { TimeInputs } from './inputs/time.js';
import type { WorkInputs } from './inputs/work.js';

export type * from './inputs/customer.js';
export type * from './inputs/job.js';
export type * from './inputs/work.js';
export type * from './inputs/place.js';
export type * from './inputs/hold.js';
export type * from './inputs/parts.js';
export type * from './inputs/outstanding.js';
export type * from './inputs/any.js';
export type * from './inputs/shop.js';
export type * from './inputs/time.js';
export type * from './inputs/import.js';
export type { Turn } from './inputs/shapes.js';

export interface CommandInputs
  extends
    CustomerInputs,
    JobInputs,
    WorkInputs,
    PlaceInputs,
    HoldInputs,
    PartsInputs,
    OutstandingInputs,
    AnyInputs,
    ShopInputs,
    TimeInputs,
    ImportInputs {}
export type CommandName = keyof CommandInputs;
