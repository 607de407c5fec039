/**
 * Answers that are not what was asked for, as RFC 9457 problem details. `type` comes from the closed list below, so a
 * client can rely on it; the sentence in `detail` is for the person and changes with the locale. A refusal of the
 * domain has the type of its status and its own code in `code`.
 */
import type { Facts } from '@holdfast/domain';

export const problems = {
  'body.malformed': { status: 400, title: 'The body is not well-formed JSON' },
  'body.notJson': { status: 415, title: 'The body has another media type than this address takes' },
  'body.tooLarge': { status: 413, title: 'The body is too large' },
  'body.invalid': { status: 422, title: 'The body does not fit its schema' },
  'query.invalid': { status: 422, title: 'The query does not fit its schema' },
  'request.malformed': { status: 400, title: 'The request is malformed' },
  'key.missing': { status: 400, title: 'The header Idempotency-Key is missing or is not one UUID' },
  'key.usedOtherwise': { status: 422, title: 'The key was used before with something else' },
  'header.invalid': { status: 400, title: 'A header of the request is malformed' },
  'contract.reload': { status: 409, title: 'The client speaks another version of the contract' },
  'path.unknown': { status: 404, title: 'There is nothing at this address' },
  'command.unknown': { status: 404, title: 'There is no command of this name' },
  'method.notAllowed': { status: 405, title: 'This address does not take this method' },
  'session.missing': { status: 401, title: 'Nobody is signed in' },
  'session.notMatching': { status: 401, title: 'Shop, name and password do not belong together' },
  'session.wait': { status: 429, title: 'Too many attempts to sign in' },
  'session.needsHttps': { status: 403, title: 'Signing in needs HTTPS here' },
  'site.foreign': { status: 403, title: 'The request came from a page of another site' },
  'read.mayNot': { status: 403, title: 'None of the roles may read this' },
  'role.mayNot': { status: 403, title: 'None of the roles may do this' },
  'row.notFound': { status: 404, title: 'There is no such row in this shop' },
  'row.stale': { status: 412, title: 'The row has changed since' },
  'row.versionMissing': { status: 428, title: 'The version of the row is missing' },
  refused: { status: 409, title: 'A rule of the shop refuses this' },
  'setUp.codeWrong': { status: 403, title: 'The set-up code is not right' },
  'setUp.codeSpent': { status: 403, title: 'The set-up code was tried too often' },
  'setUp.notAwaited': { status: 409, title: 'This server is set up already' },
  'setUp.nameTaken': { status: 409, title: 'There is a shop of this name' },
  'upload.missing': { status: 400, title: 'The upload holds no file' },
  'upload.notAPhoto': { status: 422, title: 'The file is not a photo that can be read' },
  'upload.notCsv': { status: 422, title: 'The file is not text of comma-separated values' },
  'upload.tooManyRows': { status: 422, title: 'The file has too many rows' },
  'import.ended': { status: 409, title: 'The file was accepted or put aside' },
  'import.mapping': { status: 422, title: 'The columns do not fit this kind of file' },
  'photo.unknown': { status: 404, title: 'There is no such photo in this shop' },
  'demo.absent': { status: 404, title: 'This server runs without the demo' },
  'clock.real': { status: 409, title: 'This shop keeps real time' },
  'clock.behind': { status: 409, title: 'The clock of a shop does not run backwards' },
  'server.busy': { status: 503, title: 'Too much to do at once' },
  'server.stopping': { status: 503, title: 'The server is stopping' },
  'server.fault': { status: 500, title: 'Something went wrong in the server' },
} as const satisfies Record<string, { status: number; title: string }>;

export type ProblemCode = keyof typeof problems;
export const problemCodes = Object.keys(problems) as ProblemCode[];

export function problemType(code: ProblemCode): string {
  return `urn:holdfast:problem:${code}`;
}

export const problemMediaType = 'application/problem+json';

/** One place in the body or the query that does not fit; the value itself is never repeated. */
export interface FieldError {
  /** JSON pointer (RFC 6901) into the body; `/name` for a parameter of the query. */
  readonly pointer: string;
  /** A word of zod, such as `invalid_type` or `unrecognized_keys`, or `password.tooShort` and its like. */
  readonly code: string;
  readonly message: string;
}

export interface RefusalOnTheWire {
  readonly code: string;
  readonly facts: Facts;
  /** In the words of the shop's locale, with times in its zone. */
  readonly sentence: string;
  /** The row that a screen should offer as the way out. */
  readonly way: { readonly table: string; readonly id: string } | null;
}

export interface ProblemDetails {
  readonly type: string;
  /** A code of the list above, or the code of the first refusal. */
  readonly code: string;
  readonly title: string;
  readonly status: number;
  /** What is the matter and what to do, for the person. */
  readonly detail: string;
  /** Stands in the server's log beside what happened. */
  readonly traceId: string;
  readonly errors?: readonly FieldError[];
  readonly refusals?: readonly RefusalOnTheWire[];
  /** The row as it stands, where the answer is 412. */
  readonly current?: { readonly table: string; readonly row: Readonly<Record<string, unknown>> };
}
