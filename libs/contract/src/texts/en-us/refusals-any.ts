/** What any command may meet, and what take back and cards may meet. Times in the arguments come already written for the place. */
export const refusalsAnyEnUs = {
  'refusal.row.notFound':
    'This is no longer there, or it was never part of this shop. Look at the screen again and choose what you mean.',
  'refusal.row.stale': 'Somebody else changed this in the meantime. Look at what it says now and decide again.',
  'refusal.row.versionMissing':
    'This was sent without saying which state of it you saw. Reload the page and try again.',
  'refusal.role.mayNot': 'Your roles do not include this. Ask somebody whose roles do.',
  'refusal.time.inFuture':
    "The time you gave, {at}, lies after the shop''s own time, {now}. Give the time when it happened.",
  'refusal.change.notYours': 'Only the person who made this change takes it back.',
  'refusal.change.tooOld':
    'This change is more than {minutes} minutes old and is not taken back any more. Correct it by a new entry.',
  'refusal.change.hasOwnWayBack': 'This kind of change is not taken back. Change it where it was made.',
  'refusal.change.builtOn':
    'Something has been entered since that rests on this change. Undo that first, or correct it by a new entry.',
  'refusal.change.clashes':
    '{table, select, clock {The person is on another clock by now.} attendance {Something else is recorded of the person’s presence by now.} spotUse {Another vehicle stands in that spot by now.} other {The vehicle stands somewhere else by now.}} This change stays.',
  'refusal.card.settled': 'This card is settled already.',
  'refusal.card.notYours': 'Somebody else reported this. They settle it, or a manager does.',
  'refusal.card.jobEnded':
    'Repair order {jobNumber} has been handed back, so this report changes nothing any more. Leave what stands.',
  'refusal.card.lineEnded':
    'The operation is {progress, select, done {done} carriedOver {carried over} dropped {dropped} other {ended}}, so this report changes nothing any more. Leave what stands.',
  'refusal.card.overtaken': 'Something else is settled for that very time. Leave what stands.',
  'refusal.merge.withItself': 'This is one record. Choose the other one.',
  'refusal.merge.bothHere':
    'Both are here, on repair order {number} and on repair order {otherNumber}, so they are two. Hand one of them back first, or correct the plates.',
  'refusal.merge.placesOverlap':
    'At some time both stood in a place at once, so these are two vehicles, or one of the stays is wrong. Correct the stay first.',
  'refusal.erase.visitHere':
    'A vehicle of this customer is here, on repair order {number}. Hand it back first; then the personal data can be erased.',
  'refusal.flag.clearedAlready': 'Somebody has looked at this already.',
} as const;
