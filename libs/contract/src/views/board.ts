import { z } from 'zod';

/** `GET /api/board` takes nothing. */
export const boardQuery = z.strictObject({});

/** How many changes one answer or one resumption carries; whoever has missed more takes a snapshot. */
export const mostChanges = 1_000;

/** `GET /api/changes`: the changes after that number; while there is none, the answer waits so many seconds for one. */
export const changesQuery = z.strictObject({
  after: z.coerce.number().int().min(0).max(Number.MAX_SAFE_INTEGER),
  wait: z.coerce.number().int().min(0).max(10).default(10),
  /** The log that the number counts in; where it is another one now, a snapshot is needed. */
  epoch: z.uuid().optional(),
});
export type ChangesQuery = z.infer<typeof changesQuery>;

/** The changes are no longer kept, or belong to another log: take `GET /api/board` again. */
export interface ReloadAnswer {
  readonly reload: 'snapshot-needed';
}
