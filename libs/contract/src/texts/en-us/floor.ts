import { floorEnGb } from '../en-gb/floor.js';

/** Where the trade says it otherwise in the United States. */
export const floorEnUs = {
  ...floorEnGb,
  'floor.yard': 'In the lot',
  'floor.yardEmpty': 'The lot is empty.',
  'floor.foundJob': 'Repair order {number}, {description}',
  'floor.foundEnded': 'Repair order {number}, {description}, handed back',
  'floor.yardSpot': 'Lot spot',
  'floor.toYard': 'To the lot',
  'visit.noLines': 'no operation yet',
  'visit.yardSpot': 'lot spot {spot}',
  'visit.rest.noBook':
    '{count, plural, one {# operation to do, no book time} other {# operations to do, no book time}}',
  'card.said.moveToYard': '{plate} stands in the lot since {at}.',
  'floor.toJob': 'Open the repair order',
  'card.stands.place':
    'In the record, {plate} is {kind, select, yard {in the lot} bay {in a bay} roadTest {on a road test} other {at another firm}} since {since}.',
} as const;
