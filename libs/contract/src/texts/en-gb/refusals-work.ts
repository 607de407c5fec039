/** What is said when a line, a go-ahead or a clock is refused. */
export const refusalsWorkEnGb = {
  'refusal.work.jobEnded': 'Job {jobNumber} has been handed back. Work on this vehicle goes on a new job.',
  'refusal.work.alreadyRecorded': 'This is in the record already. Look at the job before you send it again.',
  'refusal.work.otherJob': 'What this line refers to belongs to another job. Choose something of this job.',
  'refusal.work.followUpTaken': 'This follow-up is closed, or a line of this job has taken it up already.',
  'refusal.work.lineEnded':
    'This line is {progress, select, done {done} carriedOver {carried over} dropped {dropped} other {ended}}. Add a new line for more work.',
  'refusal.work.noGoAhead':
    '{goAhead, select, deferred {The customer has put this line off.} declined {The customer has declined this line.} other {The customer has not given the go-ahead for this line yet.}} Work starts once the go-ahead is recorded.',
  'refusal.work.skillMissing':
    'This line needs a person with the skill {skill, select, highVoltage {for high voltage} refrigerant {for refrigerant} airbags {for airbags} secondCheck {for second checks} other {it names}}. The owner names who is qualified.',
  'refusal.work.afterUnfinished': 'Another line has to be done before this one. Finish that line first, or drop it.',
  'refusal.work.onAnotherClock': 'This person is on the clock of another line since {since}. Stop that clock first.',
  'refusal.work.personLeft': 'This person no longer works here. Choose somebody else.',
  'refusal.work.othersClock': 'Only a manager or the owner starts and stops the clock of somebody else.',
  'refusal.work.clockStopped': 'This clock stopped at {since}.',
  'refusal.work.clockRuns': 'Somebody is working on this line. Stop the clock, then drop the line.',
  'refusal.work.neverStarted': 'Nobody was on the clock for this line. Say in a few words what was done.',
  'refusal.work.notStarted':
    'This line was never started, so nothing of it is carried over. Drop it, or make a follow-up.',
  'refusal.work.goAheadNotYours': 'In this shop the desk records go-aheads. Ask the desk or a manager.',
  'refusal.work.goAheadByWhom': 'Say who gave the go-ahead, and how: there, by telephone or by message.',
  'refusal.work.goAheadOfShop':
    'The shop gives its own go-ahead through a manager or the owner, for a comeback or for work that the shop or a guarantee pays. Ask the customer for this line.',
  'refusal.work.amountBelowPrice':
    'The price of this line is {price} and the go-ahead covers {upTo}; the shop allows {tolerancePercent} per cent on top. Ask again for the whole price.',
  'refusal.work.choiceTaken': 'Another line of this choice has the go-ahead. Change the answer there first.',
  'refusal.work.startedAlready':
    'This line has been started. Stop, put back, and charge what was done: finish the line or drop it.',
} as const;
