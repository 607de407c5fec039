import {
  isTextKey,
  problemMediaType,
  problems,
  problemType,
  say,
  type FieldError,
  type Locale,
  type ProblemCode,
  type ProblemDetails,
  type RefusalOnTheWire,
  type TextValues,
} from '@holdfast/contract';
import type { CurrentRow } from '../engine/ports.js';
import type { HttpReply, HttpRequest } from './http-types.js';

/**
 * http/ hides the wire: routes, headers, cookies, media types, files. It knows no rule of the shop and no SQL. It
 * guarantees that every answer that is not what was asked for is one problem of the closed list in the contract, with
 * a sentence and a trace, that nothing hostile gets further than here, and that no answer carries an inside of the
 * server.
 *
 * A `Problem` is thrown where a request cannot go on before the engine is asked, and answered by the filter.
 */
export class Problem extends Error {
  override readonly name = 'Problem';
  readonly values: TextValues;
  readonly more: ProblemExtras;

  constructor(
    readonly problem: ProblemCode,
    { values = {}, ...more }: ProblemExtras & { readonly values?: TextValues } = {},
  ) {
    super(problem);
    this.values = values;
    this.more = more;
  }
}

export interface ProblemExtras {
  readonly errors?: readonly FieldError[];
  readonly refusals?: readonly RefusalOnTheWire[];
  readonly current?: CurrentRow;
  /** Other words than those of the problem's own key. */
  readonly detail?: string;
  /** The code to answer with, where it is a refusal's. */
  readonly code?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

/** The locale for words to somebody who is not signed in: by the browser's preference, else British English. */
export function localeOf(request: HttpRequest): Locale {
  return request.headers['accept-language']?.toLowerCase().startsWith('en-us') === true ? 'en-US' : 'en-GB';
}

export function problemDetails(problem: Problem, locale: Locale, traceId: string): ProblemDetails {
  const { status, title } = problems[problem.problem];
  const { errors, refusals, current, detail, code } = problem.more;
  return {
    type: problemType(problem.problem),
    code: code ?? problem.problem,
    title,
    status,
    detail: detail ?? sentenceOf(problem, locale, traceId, title),
    traceId,
    ...(errors === undefined ? {} : { errors }),
    ...(refusals === undefined ? {} : { refusals }),
    ...(current === undefined ? {} : { current }),
  };
}

function sentenceOf(problem: Problem, locale: Locale, traceId: string, title: string): string {
  const key = `problem.${problem.problem}`;
  return isTextKey(key) ? say(locale, key, { traceId, ...problem.values }) : `${title}.`;
}

export function sendProblem(request: HttpRequest, reply: HttpReply, problem: Problem, locale: Locale): void {
  const { status } = problems[problem.problem];
  for (const [name, value] of Object.entries(problem.more.headers ?? {})) reply.header(name, value);
  reply
    .code(status)
    .header('content-type', problemMediaType)
    .header('cache-control', 'no-store')
    // As bytes: to a text Fastify would add a character set, which this media type does not have.
    .send(Buffer.from(JSON.stringify(problemDetails(problem, locale, request.id))));
}
