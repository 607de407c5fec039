import { vehicleEnGb } from '../en-gb/vehicle.js';

/** Where the trade says it otherwise in the United States. */
export const vehicleEnUs = {
  ...vehicleEnGb,
  'vehicle.hereNow': 'Here now: repair order {number}',
  'vehicle.jobs': 'Repair orders',
  'vehicle.jobIs': 'Repair order {number}',
  'vehicle.jobFacts':
    '{lines, plural, one {# operation} other {# operations}}{left, select, empty {} other {, left {left}}}',
} as const;
