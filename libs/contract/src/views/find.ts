import { z } from 'zod';

/** `GET /api/find`: what begins with these letters, however they are written: plate, name, key, job number, yard spot. */
export const findQuery = z.strictObject({
  q: z
    .string()
    .min(1)
    .max(100)
    .regex(/^[^\u0000-\u001f\u007f]*$/u),
});
export type FindQuery = z.infer<typeof findQuery>;

export const mostFound = 20;

/** At most twenty: visits that are here first, then vehicles, then customers. */
export const findView = z.strictObject({
  items: z.array(
    z.discriminatedUnion('kind', [
      z.strictObject({
        kind: z.literal('job'),
        id: z.uuid(),
        number: z.int(),
        plate: z.string(),
        description: z.string(),
        by: z.enum(['plate', 'number', 'keyTag', 'yardSpot', 'customer']),
        open: z.boolean(),
      }),
      z.strictObject({ kind: z.literal('vehicle'), id: z.uuid(), plate: z.string(), description: z.string() }),
      z.strictObject({ kind: z.literal('customer'), id: z.uuid(), name: z.string(), fleet: z.string().nullable() }),
    ]),
  ),
});
export type FindView = z.infer<typeof findView>;
