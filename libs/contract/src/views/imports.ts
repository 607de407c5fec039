import { importKinds, type ImportKind } from '@holdfast/domain';
import { z } from 'zod';
import { limit, numberCursor, pageOf } from './paging.js';
import { rowSchema } from './rows.js';

/** Bytes of a file of existing data, and its rows, at most. */
export const largestImport = 20 * 1024 * 1024;
export const mostImportRows = 30_000;

/** What a column of a file can be. */
export const importFields = [
  'name',
  'contactName',
  'phone',
  'mail',
  'fleet',
  'plate',
  'vin',
  'description',
  'make',
  'model',
  'year',
  'vehicleKind',
  'drive',
  'curbKg',
  'grossKg',
  'notes',
  'customerName',
  'followUpKind',
  'title',
  'words',
  'urgency',
  'beforeDay',
  'beforeOdometer',
] as const;
export type ImportField = (typeof importFields)[number];

/** The fields of each kind of file, in the order in which they are asked for. */
export const fieldsOfImport: Readonly<Record<ImportKind, readonly ImportField[]>> = {
  customers: ['name', 'contactName', 'phone', 'mail', 'fleet'],
  vehicles: [
    ...([
      'plate',
      'description',
      'make',
      'model',
      'year',
      'vin',
      'vehicleKind',
      'drive',
      'curbKg',
      'grossKg',
      'notes',
    ] as const),
    ...(['customerName', 'phone', 'mail'] as const),
  ],
  followUps: ['plate', 'title', 'words', 'followUpKind', 'urgency', 'beforeDay', 'beforeOdometer'],
};

/** Of each group one column at least must be named, or nothing can be made of any row. */
export const neededByImport: Readonly<Record<ImportKind, readonly (readonly ImportField[])[]>> = {
  customers: [['name']],
  vehicles: [['plate'], ['description', 'make', 'model']],
  followUps: [['plate'], ['title']],
};

export const importQuery = z.strictObject({ kind: z.enum(importKinds) });

/** `PUT /api/imports/:id/mapping`: for each field the column it comes from, counted from 0. */
export const mappingBody = z.strictObject({
  mapping: z.partialRecord(z.enum(importFields), z.int().min(0).max(199)),
});
export type ImportMapping = z.infer<typeof mappingBody>['mapping'];

/** Why a row is not taken: column and value as the file has them, and the reason as a sentence. */
export const importProblem = z.strictObject({
  field: z.enum(importFields).nullable(),
  column: z.string().nullable(),
  value: z.string().nullable(),
  code: z.string(),
  sentence: z.string(),
});

/** A row of the file. `made` is what it would become, by field; null for a bad one. */
export const importRowView = z.strictObject({
  number: z.int(),
  state: z.enum(['staged', 'good', 'bad']),
  cells: z.array(z.string()),
  problems: z.array(importProblem),
  made: z.record(z.string(), z.union([z.string(), z.number(), z.null()])).nullable(),
});
export type ImportRowView = z.infer<typeof importRowView>;

export const importView = z.strictObject({ batch: rowSchema('importBatch'), preview: z.array(importRowView) });
export type ImportView = z.infer<typeof importView>;

export const importsView = z.strictObject({ items: z.array(rowSchema('importBatch')) });
export type ImportsView = z.infer<typeof importsView>;

export const importRowsQuery = z.strictObject({
  state: z.enum(['good', 'bad']).default('bad'),
  format: z.enum(['json', 'csv']).default('json'),
  limit,
  after: numberCursor,
});
export type ImportRowsQuery = z.infer<typeof importRowsQuery>;
export const importRowsPage = pageOf(importRowView);
export type ImportRowsPage = z.infer<typeof importRowsPage>;
