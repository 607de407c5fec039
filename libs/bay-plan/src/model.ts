/**
 * What a plan is made from. Instants are epoch milliseconds (no zone: whoever builds the model lays days and hours out
 * by the shop's calendar first); durations are whole minutes of work.
 */
import type { Interval } from '@holdfast/shop-calendar';

/** A place in a bay where one vehicle can stand. A bay with two spots gives two of these with one `bayId`. */
export interface PlanSpot {
  readonly spotId: string;
  readonly bayId: string;
  /** words for what the bay has in use; a line needs all the words it names */
  readonly equipment: readonly string[];
  /** rated capacity of its lift, kg; null: nothing to lift with, or no limit */
  readonly ratedKg: number | null;
  /** longest and highest vehicle that goes in, mm; null: no limit */
  readonly longestMm: number | null;
  readonly highestMm: number | null;
  /** when it can be used, outages taken out; null: always */
  readonly open: readonly Interval[] | null;
}

export interface PlanPerson {
  readonly personId: string;
  readonly skills: readonly string[];
  readonly homeBayId: string | null;
  /** when they are there to work, breaks and leave taken out; null: always */
  readonly open: readonly Interval[] | null;
}

/** Why a line cannot start before an instant: a word of the caller's (`goAhead`, `parts`, `setting` …). */
export interface NotBefore {
  readonly reason: string;
  readonly at: number;
}

/**
 * Work by another firm in one of the slots it offers. `vehicleGoes`: the vehicle is away for the slot and needs no bay
 * then; otherwise they come here, and the line needs a bay and nobody of the shop.
 */
export interface PlanSublet {
  readonly slots: readonly Interval[];
  readonly vehicleGoes: boolean;
}

/** What somebody has settled about a line and the plan keeps. A running clock is all three, from `now`. */
export interface FixedChoice {
  readonly spotId?: string;
  readonly personIds?: readonly string[];
  /** starts exactly then, in opening time or not; needs both others, as far as the line needs a spot and people */
  readonly startsAt?: number;
}

export interface PlanLine {
  readonly lineId: string;
  /** whole minutes, at least 1: what is expected, or what is left of a started line */
  readonly workMinutes: number;
  /** where the time differs by spot: minutes by spot id; spots that are not named do not suit */
  readonly minutesBySpot?: Readonly<Record<string, number>>;
  readonly equipment: readonly string[];
  /** each person on the line needs all of them */
  readonly skills: readonly string[];
  /** how many people at once: 0 (glue that sets in the bay), 1, or 2 */
  readonly people: 0 | 1 | 2;
  /** single tools: each is on one line at a time */
  readonly toolIds: readonly string[];
  /** lines of the same job that have to be finished first */
  readonly after: readonly string[];
  readonly notBefore: readonly NotBefore[];
  readonly sublet: PlanSublet | null;
  /** from the start of this line the vehicle cannot be moved until that line (of the same job) is finished */
  readonly keepsBayUntil: string | null;
  readonly fixed: FixedChoice | null;
}

/** Where a vehicle stands now, and until when it has to stay there. */
export interface StandsAt {
  readonly spotId: string;
  /** null: it can be moved now; an instant; or the end of a line of the job; or of all its lines */
  readonly staysUntil: null | { readonly at: number } | { readonly lineId: string } | 'done';
}

export interface PlanJob {
  readonly jobId: string;
  /** on the premises from then on (in the past: it is here) */
  readonly arrivesAt: number;
  readonly promisedAt: number | null;
  /** what a minute late counts: "waits here" 4, "promised" 2, "when it suits" 1; any whole number of at least 0 */
  readonly weight: number;
  /** mass today, kg; null: not known, which passes and is a fact of the explanation */
  readonly massKg: number | null;
  readonly lengthMm: number | null;
  readonly heightMm: number | null;
  readonly stands: StandsAt | null;
  /** at most one of them is worked at a time; open ones only */
  readonly lines: readonly PlanLine[];
}

export interface PlanModel {
  readonly now: number;
  /** the plan ends here: what does not fit before is left unplaced, with the reason */
  readonly horizon: number;
  /** the shop's local days from `now` on, as instants: `freeShare` is taken from each */
  readonly days: readonly Interval[];
  /** share of each day's open bay time, 0 to below 1, left free at its end for what nobody knows yet; usually 0.15 */
  readonly freeShare: number;
  /** what bringing a vehicle into a bay takes, minutes of that bay's time */
  readonly moveMinutes: number;
  readonly spots: readonly PlanSpot[];
  readonly people: readonly PlanPerson[];
  readonly jobs: readonly PlanJob[];
}

export const usualFreeShare = 0.15;

export const weights = { waitsHere: 4, promised: 2, whenItSuits: 1 } as const;
