/** What returns are proposed from, and what a proposal says. */
import type { LocalDate } from '@holdfast/shop-calendar';
import type { CustomersDays } from './day-room.js';
import type { FirstDay, FollowUpLimit, OpenFollowUp, Ordered } from './follow-up-windows.js';

export interface BookedReturn {
  readonly returnId: string;
  readonly vehicleId: string;
  readonly day: LocalDate;
  /** what is booked for it already: left where it is */
  readonly followUpIds: readonly string[];
}

export interface ReturnsInput {
  readonly today: LocalDate;
  /** days on which the shop works, rising, today or later, as far ahead as returns are proposed */
  readonly workingDays: readonly LocalDate[];
  readonly followUps: readonly OpenFollowUp[];
  readonly booked?: readonly BookedReturn[];
  readonly customersDays?: readonly CustomersDays[];
  /** bay minutes still free by day, what is booked taken off; absent: days have no bounds */
  readonly freeBayMinutes?: ReadonlyMap<LocalDate, number>;
  /** chance in [0, 1] that a shipment is here by the start of a day; null: nothing is known. Absent: the same */
  readonly chanceHere?: (shipmentId: string, day: LocalDate) => number | null;
}

export type WhatCanBeDone =
  | 'earlierOffer'
  | 'otherSource'
  | 'askForGoAhead'
  | 'otherFollowUpSooner'
  | 'otherDayWithCustomer'
  | 'newMeasureAndLimit';

/** A window without a day in it. */
export interface EmptyWindow {
  readonly followUpId: string;
  readonly vehicleId: string;
  readonly why: 'needAfterLimit' | 'limitPassed' | 'noDate' | 'noDaySuits';
  readonly first: FirstDay;
  readonly limit: FollowUpLimit;
  /** from the limit to the first day on which it could be done; null: no such day is known */
  readonly daysMissing: number | null;
  readonly canBeDone: readonly WhatCanBeDone[];
}

export interface ProposedReturn {
  readonly vehicleId: string;
  readonly day: LocalDate;
  /** it joins this booked return */
  readonly joins: string | null;
  readonly followUpIds: readonly string[];
  readonly bayMinutes: number;
  /** the days between which all its windows leave it */
  readonly between: { readonly from: LocalDate; readonly to: LocalDate | null };
  /** every part in hand and every go-ahead given: it can be booked; else it is pencilled and needs the customer's word */
  readonly bookable: boolean;
  /** that all parts are here by the day: independent shipments multiplied; null: not known of one of them */
  readonly chanceAllParts: number | null;
}

export type NotPlanned =
  /** needs without a date and no limit */
  | { readonly followUpId: string; readonly why: 'noDate' }
  /** what it waits for has no day */
  | { readonly followUpId: string; readonly why: 'waitsFor'; readonly other: string }
  /** first day after the last of the working days given */
  | { readonly followUpId: string; readonly why: 'beyondHorizon' }
  | { readonly followUpId: string; readonly why: 'noRoom' }
  | { readonly followUpId: string; readonly why: 'circle'; readonly circle: readonly string[] };

export interface ReturnsProposal {
  /** those longest past their limit first, then those whose end nobody can name, then by the days missing */
  readonly empty: readonly EmptyWindow[];
  /** by day, then by vehicle */
  readonly returns: readonly ProposedReturn[];
  readonly notPlanned: readonly NotPlanned[];
  /** by vehicle: follow-ups whose windows lie apart from each other, which is why it comes that often */
  readonly apart: ReadonlyMap<string, readonly string[]>;
  readonly otherVehicle: Ordered['otherVehicle'];
}
