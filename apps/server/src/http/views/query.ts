import type { z } from 'zod';
import { fieldErrors } from '../command-request.js';
import type { HttpReply, HttpRequest } from '../http-types.js';
import { Problem } from '../problem.js';

/**
 * views/ hides how reads are asked for: one handler for each, which checks the query, asks read/ for the JSON text and
 * sends it as it is. It guarantees that an unknown or ill-formed parameter is refused and not passed over, that an id of
 * another shop is answered like one that never was, and that nothing of a shop stays in a cache on the way.
 *
 * The query of a request by its strict schema.
 */
export function queryOf<S extends z.ZodType>(schema: S, request: HttpRequest): z.infer<S> {
  const checked = schema.safeParse(request.query);
  if (!checked.success) throw new Problem('query.invalid', { errors: fieldErrors(checked.error) });
  return checked.data;
}

const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** An id in the path; what is none names no row. */
export function idOf(text: string): string {
  const id = text.toLowerCase();
  if (!uuid.test(id)) throw new Problem('row.notFound');
  return id;
}

export function sendText(reply: HttpReply, text: string | null): void {
  if (text === null) throw new Problem('row.notFound');
  reply
    .code(200)
    .header('content-type', 'application/json; charset=utf-8')
    .header('cache-control', 'no-store')
    .send(text);
}
