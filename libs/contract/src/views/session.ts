import type { CommandName, Role } from '@holdfast/domain';
import { z } from 'zod';
import type { ReadName } from '../roles.js';

/** What `POST /api/session` takes. Nothing is said about length or signs here: what is wrong is simply not a match. */
export const signInBody = z.strictObject({
  shop: z.string().min(1).max(200),
  name: z.string().min(1).max(200),
  password: z.string().min(1).max(1_024),
});
export type SignInBody = z.infer<typeof signInBody>;

/** Who is signed in, where, and what they may do. `GET /api/session`. */
export interface SessionView {
  readonly shop: {
    readonly id: string;
    readonly name: string;
    readonly zone: string;
    readonly locale: 'en-GB' | 'en-US';
    readonly units: 'metric' | 'us';
    readonly currency: string;
  };
  readonly person: { readonly id: string; readonly name: string; readonly roles: readonly Role[] };
  readonly may: { readonly commands: readonly CommandName[]; readonly reads: readonly ReadName[] };
  readonly contract: number;
}

/** The answer of `POST /api/session`: with the token, which is told this once, for clients without a cookie jar. */
export interface SignedInView extends SessionView {
  /** `<shop>.<random>`, to be sent as `Authorization: Bearer …`. */
  readonly token: string;
}

/** `GET /api/sign-in-page`: what the page must know before anybody is signed in. */
export interface SignInPageView {
  /** The demo's sign-ins can be had from `GET /api/demo`. */
  readonly demo: boolean;
  /** No shop is set up yet: the set-up page asks for the code printed at start. */
  readonly setUp: boolean;
  /** Whether this very connection may be used to sign in. */
  readonly secure: boolean;
  /** Where it may not: what to do, in a sentence. */
  readonly way: string | null;
  readonly contract: number;
}

/** `GET /api/demo`. */
export interface DemoView {
  readonly shop: string;
  readonly people: readonly { readonly name: string; readonly roles: readonly Role[]; readonly password: string }[];
  /** Sets up further shops on this server, each on a clock of its own. */
  readonly setUpCode: string;
}

/** What `PUT /api/demo/clock` takes. */
export const clockBody = z.strictObject({
  /** The shop's time from now on, ISO 8601; left out, the time it shows goes on. */
  at: z.iso.datetime({ offset: true }).optional(),
  /** Shop seconds for each real second; 0 stands still until it is set again. */
  rate: z.number().min(0).max(100_000),
});
export type ClockBody = z.infer<typeof clockBody>;

/** The answer of `POST /api/uploads`. */
export interface UploadView {
  /** SHA-256 of the stored picture, in hexadecimal: its name under `/api/photos/`. */
  readonly content: string;
  readonly width: number;
  readonly height: number;
  readonly bytes: number;
}
