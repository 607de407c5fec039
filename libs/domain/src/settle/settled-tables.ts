import type { TableName } from '../tables/tables.js';

/** What `settle` looks at. A rule that limits what is loaded names these too, unless it changes none of them. */
export const settledTables: readonly TableName[] = [
  'workLine',
  'goAhead',
  'hold',
  'holdLine',
  'holdPart',
  'partLine',
  'arrival',
];
