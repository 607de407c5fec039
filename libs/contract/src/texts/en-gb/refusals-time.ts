/** What may be said against presence, corrections and months. Times in the arguments come already written for the place. */
export const refusalsTimeEnGb = {
  'refusal.time.othersAttendance': 'Only a manager or the owner says for somebody else that they are here or not.',
  'refusal.time.wordMissing': 'Say in a word what the shop time is for.',
  'refusal.time.alreadyRecorded': 'This is recorded already.',
  'refusal.time.notYours': 'This is somebody else’s time. A manager or the owner corrects it.',
  'refusal.time.dayIsOver':
    'You correct your own times on the day itself. After that a manager or the owner does, with words.',
  'refusal.time.endBeforeStart': 'It would end at {toAt}, not after it began at {fromAt}. Look at the times again.',
  'refusal.time.nothingChanged': 'This is what stands already. Change a time or something else of it first.',
  'refusal.time.cannotRun': 'The visit or the line has ended, so nothing of it goes on. Give the time when it ended.',
  'refusal.time.onAnotherClock':
    'From {fromAt} {runs, select, true {on} other {to {toAt}}} this person was on another clock, of job {jobNumber}. Correct that one first.',
  'refusal.time.otherPresence':
    'From {fromAt} {runs, select, true {on} other {to {toAt}}} this person is recorded as {kind, select, break {on a break} shopTime {on shop time} other {present}}. Correct that first.',
  'refusal.time.spotTaken':
    'From {fromAt} {runs, select, true {on} other {to {toAt}}} another vehicle had spot {spot, number}, that of job {jobNumber}. Correct its stay first.',
  'refusal.time.outsideVisit':
    'The vehicle of job {jobNumber} was here from {fromAt} {runs, select, true {on} other {to {toAt}}}. Give times within that.',
  'refusal.time.notArrived': 'The vehicle of job {jobNumber} has not arrived.',
  'refusal.time.nowhere':
    'From {fromAt} {runs, select, true {on} other {to {toAt}}} nothing would say where the vehicle was. Add the stay it had instead.',
  'refusal.time.otherStay': 'These times have nothing in common with the stay. Add a stay with them instead.',
  'refusal.time.notAStay':
    'The vehicle was {kind, select, roadTest {on a road test} other {away}} then. Correct the stay before or after it.',
  'refusal.time.notInBay': 'The vehicle stood in the yard then. Add a stay in the bay instead.',
  'refusal.time.bayMissing': 'Say which bay it stood in.',
  'refusal.time.monthClosed': 'The month {month} is closed. The owner opens it again, with words.',
  'refusal.time.monthNotOver': 'The month {month} is not over. It is closed from its last midnight on.',
  'refusal.time.monthClosedAlready': 'The month {month} is closed already.',
  'refusal.time.monthNotClosed': 'The month {month} is not closed.',
  'refusal.entry.named':
    'Something else rests on this entry: {by, select, workLine {a line came of it} photo {a photo belongs to it} attempt {an attempt was made on it} hold {another hold carries it on} other {another entry names it}}. Put that right first.',
  'refusal.entry.placeStays': 'A vehicle is always somewhere. Correct the stay instead of striking it.',
  'flag.time.inClosedMonth': 'Reported after its month, {month}, was closed.',
} as const;
