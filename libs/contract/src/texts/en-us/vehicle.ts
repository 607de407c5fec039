import { vehicleEnGb } from '../en-gb/vehicle.js';

/** Where the trade says it otherwise in the United States. */
export const vehicleEnUs = {
  ...vehicleEnGb,
  'vehicle.hereNow': 'Here now: repair order {number}',
  'vehicle.jobs': 'Repair orders',
  'vehicle.jobIs': 'Repair order {number}',
  'vehicle.jobLines': '{lines, plural, one {# operation} other {# operations}}',
  'vehicle.cameBackFor': 'Came back for: {title}, repair order {number}',
  'vehicle.expectedJob': 'Expected: repair order {number}',
  'vehicle.workJob': 'Repair order',
} as const;
