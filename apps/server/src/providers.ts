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
export const SET_OWN_CLOCK = Symbol('SetOwnClock');
export const DEMO = Symbol('Demo');
export const READINESS = Symbol('Readiness');
