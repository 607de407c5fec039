/**
 * Names under which Nest hands out what the server is made of. The values are made in start.ts, so that Nest knows
 * classes of controllers and gateways only, and a test can hand in its own.
 */
export const CONFIG = Symbol('Config');
export const LOG = Symbol('Log');
export const METRICS = Symbol('Metrics');
export const DATABASE = Symbol('Database');
export const SESSIONS = Symbol('Sessions');
export const SIGN_IN = Symbol('SignIn');
export const SET_UP_CODE = Symbol('SetUpCode');
export const SET_UP_SHOP = Symbol('SetUpShop');
export const CHECK_PERSON = Symbol('CheckPerson');
export const RUN_COMMAND = Symbol('RunCommand');
export const LOG_READER = Symbol('LogReader');
/** List of `Wake`: who wants to know of each commit of this process adds itself. */
export const WAKES = Symbol('Wakes');
export const UPLOADS = Symbol('Uploads');
export const IMPORTS = Symbol('Imports');
export const AUDIT = Symbol('Audit');
export const SET_OWN_CLOCK = Symbol('SetOwnClock');
export const DEMO = Symbol('Demo');
export const READINESS = Symbol('Readiness');

/** A picture that lies under the data folder. `content` is the SHA-256 of its bytes, in hexadecimal. */
export interface Upload {
  readonly content: string;
  readonly width: number;
  readonly height: number;
  readonly bytes: number;
}

export interface Uploads {
  /** The same picture again is the same row. */
  add(shopId: string, personId: string, upload: Upload): Promise<void>;
  has(shopId: string, content: string): Promise<boolean>;
}

export interface ClockSetting {
  /** The shop's time from now on, epoch ms; null: the time it shows goes on. */
  readonly at: number | null;
  /** Shop seconds for each real second; 0 stands still. */
  readonly rate: number;
}

/** `real`: the shop has no clock of its own. `behind`: something was recorded later than `at`. `now` in epoch ms. */
export type ClockResult =
  { readonly kind: 'set'; readonly now: number } | { readonly kind: 'real' } | { readonly kind: 'behind' };

export type SetOwnClock = (shopId: string, setting: ClockSetting) => Promise<ClockResult>;

/** One read of the log: what was asked for, and how many of its entries were given. */
export interface LogRead {
  readonly filter: Readonly<Record<string, string>>;
  readonly form: 'page' | 'csv' | 'jsonl';
  readonly entries: number;
}

export interface Audit {
  keep(shopId: string, personId: string, read: LogRead): Promise<void>;
}
