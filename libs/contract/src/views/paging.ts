import { z } from 'zod';

/** Rows on a page where the request names no number, and the most it ever gets. */
export const usualPage = 50;
export const mostOnPage = 200;

/** How many rows a page has; whoever asks for more than `mostOnPage` gets that many. */
export const limit = z.coerce.number().int().min(1).max(1_000_000).default(usualPage);

export function pageSize(asked: number): number {
  return Math.min(asked, mostOnPage);
}

const uuidPattern = '[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}';

/** The `next` of the page before: opaque to clients, checked here so that a broken one is refused and not misread. */
export function cursor(key: string) {
  return z
    .string()
    .max(400)
    .regex(new RegExp(`^${key}~${uuidPattern}$`, 'u'))
    .optional();
}
/** A cursor whose key is an instant that exists: the database would stumble over the 30th of February. */
export const instantCursor = cursor('[12]\\d{3}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d\\.\\d{3}Z').refine((text) => {
  const [key] = cursorParts(text);
  const at = Date.parse(key ?? '');
  return key === null || (!Number.isNaN(at) && new Date(at).toISOString() === key);
}, 'There is no such page.');

export const numberCursor = z
  .string()
  .regex(/^\d{1,15}$/)
  .optional();

/** The two parts of a cursor that `cursor` let pass: the sort key and the id. */
export function cursorParts(text: string | undefined): readonly [key: string | null, id: string | null] {
  if (text === undefined) return [null, null];
  const at = text.lastIndexOf('~');
  return [text.slice(0, at), text.slice(at + 1)];
}

/** A page in a fixed order that later writes do not shift; `next` is the `after` of the following page, null on the last. */
export function pageOf<S extends z.ZodType>(item: S) {
  return z.strictObject({ items: z.array(item), next: z.string().nullable() });
}

/** `csv`: all rows of the list as a file, safe for spreadsheets, in the words of the shop; `limit` and `after` then count not. */
export const format = z.enum(['json', 'csv']).optional();

export const vehicleName = z.strictObject({ id: z.uuid(), plate: z.string(), description: z.string() });
export const customerName = z.strictObject({ id: z.uuid(), name: z.string() }).nullable();
