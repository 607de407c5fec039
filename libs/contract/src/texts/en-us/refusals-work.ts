/** What is said when a line, a go-ahead or a clock is refused. */
export const refusalsWorkEnUs = {
  'refusal.work.jobEnded':
    'Repair order {jobNumber} has been handed back. Work on this vehicle goes on a new repair order.',
  'refusal.work.alreadyRecorded': 'This is in the record already. Look at the repair order before you send it again.',
  'refusal.work.otherJob':
    'What this operation refers to belongs to another repair order. Choose something of this one.',
  'refusal.work.followUpTaken':
    'This follow-up is closed, or an operation of this repair order has taken it up already.',
  'refusal.work.lineEnded':
    'This operation is {progress, select, done {done} carriedOver {carried over} dropped {dropped} other {ended}}. Add a new operation for more work.',
  'refusal.work.noGoAhead':
    '{goAhead, select, deferred {The customer has put this operation off.} declined {The customer has declined this operation.} other {The customer has not given the go-ahead for this operation yet.}} Work starts once the go-ahead is recorded.',
  'refusal.work.skillMissing':
    'This operation needs a person with the skill {skill, select, highVoltage {for high voltage} refrigerant {for refrigerant} airbags {for airbags} secondCheck {for second checks} other {it names}}. The owner names who is qualified.',
  'refusal.work.afterUnfinished':
    'Another operation has to be done before this one. Finish that operation first, or drop it.',
  'refusal.work.onAnotherClock':
    'This person is on the clock of another operation since {since}. Stop that clock first.',
  'refusal.work.personLeft': 'This person no longer works here. Choose somebody else.',
  'refusal.work.othersClock': 'Only a manager or the owner starts and stops the clock of somebody else.',
  'refusal.work.clockStopped': 'This clock stopped at {since}.',
  'refusal.work.clockRuns': 'Somebody is working on this operation. Stop the clock, then drop the operation.',
  'refusal.work.neverStarted': 'Nobody was on the clock for this operation. Say in a few words what was done.',
  'refusal.work.notStarted':
    'This operation was never started, so nothing of it is carried over. Drop it, or make a follow-up.',
  'refusal.work.goAheadNotYours': 'In this shop the desk records go-aheads. Ask the desk or a manager.',
  'refusal.work.goAheadByWhom': 'Say who gave the go-ahead, and how: there, by phone or by message.',
  'refusal.work.goAheadOfShop':
    'The shop gives its own go-ahead through a manager or the owner, for a comeback or for work that the shop or a warranty pays. Ask the customer for this operation.',
  'refusal.work.amountBelowPrice':
    'The price of this operation is {price} and the go-ahead covers {upTo}; the shop allows {tolerancePercent} percent on top. Ask again for the whole price.',
  'refusal.work.choiceTaken': 'Another operation of this choice has the go-ahead. Change the answer there first.',
  'refusal.work.startedAlready':
    'This operation has been started. Stop, put back, and charge what was done: finish the operation or drop it.',
} as const;
