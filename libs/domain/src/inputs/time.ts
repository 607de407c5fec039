import type * as w from '../tables/words.js';
import type { Opt, Turn, Word } from './shapes.js';

/** Somebody is here, on a break, on shop time (with a word), or has gone; oneself where nobody is named. */
export interface RecordAttendance {
  attendanceId?: Opt<string>;
  personId?: Opt<string>;
  kind: Word<typeof w.attendanceKinds> | 'gone';
  words?: Opt<string>;
  at?: Opt<number>;
}
/** What was missing in the account of a person: a stretch of presence, break or shop time. */
export interface AddAttendance {
  attendanceId?: Opt<string>;
  personId: string;
  kind: Word<typeof w.attendanceKinds>;
  fromAt: number;
  toAt: number;
  words: string;
}
/** Other times (or kind) for a stretch; what is left out stays. `toAt` null leaves it running. */
export interface CorrectAttendance extends Turn {
  attendanceId: string;
  kind?: Opt<Word<typeof w.attendanceKinds>>;
  fromAt?: Opt<number>;
  toAt?: Opt<number | null>;
  words: string;
}
export interface AddClock {
  clockId?: Opt<string>;
  personId: string;
  lineId: string;
  bench?: Opt<boolean>;
  fromAt: number;
  toAt: number;
  words: string;
}
/** Other times, line or person for a clock; a forgotten one is given its end. What is left out stays. */
export interface CorrectClock extends Turn {
  clockId: string;
  lineId?: Opt<string>;
  personId?: Opt<string>;
  bench?: Opt<boolean>;
  fromAt?: Opt<number>;
  toAt?: Opt<number | null>;
  words: string;
}
/** The vehicle stood there from then to then: what is recorded of it for that time makes room. */
export interface AddStay {
  placeId?: Opt<string>;
  jobId: string;
  kind: 'bay' | 'yard';
  bayId?: Opt<string>;
  spot?: Opt<number>;
  yardSpot?: Opt<string>;
  fromAt: number;
  toAt: number;
  words: string;
}
/** Another beginning or bay for a stay in bay or yard; its neighbours of the same vehicle follow. What is left out stays. */
export interface CorrectStay extends Turn {
  placeId: string;
  bayId?: Opt<string>;
  spot?: Opt<number>;
  fromAt?: Opt<number>;
  toAt?: Opt<number | null>;
  words: string;
}
export interface CorrectHold extends Turn {
  holdId: string;
  reason?: Opt<Word<typeof w.holdReasons>>;
  fromAt?: Opt<number>;
  toAt?: Opt<number | null>;
  words: string;
}
export interface CloseMonth {
  /** `YYYY-MM`, over in the zone of the shop. */
  month: string;
  words?: Opt<string>;
}
export interface ReopenMonth {
  month: string;
  words: string;
}

export interface TimeInputs {
  recordAttendance: RecordAttendance;
  addAttendance: AddAttendance;
  correctAttendance: CorrectAttendance;
  addClock: AddClock;
  correctClock: CorrectClock;
  addStay: AddStay;
  correctStay: CorrectStay;
  correctHold: CorrectHold;
  closeMonth: CloseMonth;
  reopenMonth: ReopenMonth;
}
