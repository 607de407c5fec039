export const refusalsHoldEnGb = {
  'refusal.hold.alreadyThere': 'This hold is recorded already. Look at the job before you enter it again.',
  'refusal.hold.mayNotOpen':
    'The parts clerk opens holds for parts and for information. Ask the desk or a technician to open this one.',
  'refusal.hold.partsNeeded': 'A hold for parts names at least one part. Choose the part, or want it first.',
  'refusal.hold.partsElsewhere': 'Only a hold for parts names parts. Choose that reason, or leave the parts out.',
  'refusal.hold.partOfOtherVehicle': 'One of these parts is for another vehicle. Choose parts of this vehicle only.',
  'refusal.hold.lineOfOtherJob': 'One of these lines is on another job card. Choose lines of this job only.',
  'refusal.hold.endMissing': 'Say until when it has to set, charge or cool.',
  'refusal.hold.endBeforeStart': 'The end lies before the start of this hold. Enter a later time.',
  'refusal.hold.wordsMissing': 'Say in words what the job waits for.',
  'refusal.hold.endedAlready':
    'This hold has ended already: {endedHow, select, partsHere {its parts are here} partsNoLongerNeeded {its parts are no longer needed} lineEnded {its lines have ended} handedBack {the vehicle was handed back} goAheadAnswered {the customer has answered} other {somebody ended it by hand}}.',
  'refusal.hold.mayNotEnd':
    '{reason, select, parts {A hold for parts ends by itself when they are here. Before that, the parts clerk or a manager ends it.} goAhead {A hold for a go-ahead ends with the answer. Before that, the desk or a manager ends it.} other {Whoever opened this hold ends it, or a manager.}}',
  'refusal.hold.endWordsMissing':
    '{missing, plural, =0 {Say in words why this hold ends now.} one {One part of this hold is not here yet. Say in words why the work can go on without it.} other {# parts of this hold are not here yet. Say in words why the work can go on without them.}}',
  'refusal.hold.personLeft': 'This person no longer works here. Choose somebody else.',
  'refusal.hold.endNotSaid':
    'Only what has to set, charge or cool has an end that is known beforehand. Leave the time out.',
  'refusal.question.alreadyThere': 'This question is recorded already. Look at the job before you ask it again.',
  'refusal.question.personLeft': 'This person no longer works here. Ask somebody else.',
  'refusal.question.notYours': 'Somebody else was asked. They answer it, or a manager does.',
  'refusal.question.answeredAlready': 'This question has its answer already. Ask a new one.',
} as const;
