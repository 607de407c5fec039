import { deskEnGb } from '../en-gb/desk.js';

/** Where the trade says it otherwise in the United States. */
export const deskEnUs = {
  ...deskEnGb,
  'desk.callsUnder': 'Operations that wait for the customer’s word',
  'desk.noCallsWords': 'An operation added to a repair order appears here until its word is recorded.',
  'desk.noPhone': 'no phone number',
  'desk.readyUnder': 'Every operation has ended',
  'desk.job': 'Repair order {number}',
  'checkIn.plate': 'License plate',
  'checkIn.find': 'License plate, name or key',
  'checkIn.hereAlready': 'is here already, repair order {number}',
  'checkIn.descriptionHint': 'Make, model, year, color: as you would point it out.',
  'checkIn.jobKind': 'Kind of repair order',
  'checkIn.comebackJob': 'Comes back for the repair order',
  'checkIn.comebackJobIs': 'Repair order {number}, {day}',
  'checkIn.comebackLine': 'For the operation',
  'checkIn.internal': 'An internal repair order goes without a customer.',
  'checkIn.phone': 'Phone',
  'checkIn.yardSpot': 'Lot spot',
  'checkIn.doneNumber': 'Repair order {number}: {plate} is checked in.',
  'checkIn.putPhotos': 'Put the photos on the repair order',
  'checkIn.photosDone': '{count, plural, one {# photo is} other {# photos are}} on the repair order.',
  'checkIn.toJob': 'To the repair order',
} as const;
