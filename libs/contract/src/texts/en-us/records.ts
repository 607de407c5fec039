import { recordsEnGb } from '../en-gb/records.js';

/** Where the trade says it otherwise in the United States. */
export const recordsEnUs = {
  ...recordsEnGb,
  'records.count.jobs': 'Repair orders',
  'records.erase.stays.work': 'the account of the work: visits, operations, times, parts, amounts, bay time',
} as const;
