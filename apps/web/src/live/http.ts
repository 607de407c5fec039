/**
 * This folder hides the line to the server: sessions, the live board, commands and the other reads. It guarantees that
 * the board a screen draws is always snapshot(N) with the changes after it, each applied once and in order, and that a
 * command is sent again with its own key until it is answered.
 */
import type { ProblemDetails } from '@holdfast/contract';

/** The server could not be reached, or did not answer in time. */
export class Unreachable extends Error {}

export class ProblemAnswer extends Error {
  constructor(readonly problem: ProblemDetails) {
    super(problem.detail);
  }
}

const patience = 20_000;
/** A file on its way and being read. */
const uploadPatience = 120_000;

/** Calls the server of this page. Throws `ProblemAnswer` with its sentence, or `Unreachable`. */
export async function call<T>(
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<T> {
  let response: Response;
  try {
    response = await fetch(path, {
      method,
      headers: {
        ...(body === undefined || body instanceof FormData ? {} : { 'content-type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: body instanceof FormData ? body : JSON.stringify(body) }),
      signal: AbortSignal.timeout(body instanceof FormData ? uploadPatience : patience),
      credentials: 'same-origin',
    });
  } catch (cause) {
    throw new Unreachable('the server cannot be reached', { cause });
  }
  if (response.status === 204) return undefined as T;
  const answer: unknown = await response.json().catch(() => null);
  if (!response.ok) {
    if (answer !== null && typeof answer === 'object' && 'code' in answer)
      throw new ProblemAnswer(answer as ProblemDetails);
    throw new Unreachable(`answer ${String(response.status)}`);
  }
  return answer as T;
}
