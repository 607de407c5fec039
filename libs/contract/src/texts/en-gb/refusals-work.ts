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
    'This line has been started. Record that the customer withdraws the go-ahead; then it is put back, and what was done is charged.',
  'refusal.work.afterItself':
    'This line would have to wait for itself: the one you chose waits for it already. Choose another line to come first.',
  'refusal.work.skillGuarded':
    'This line needs a person with the skill {skill, select, highVoltage {for high voltage} refrigerant {for refrigerant} other {it names}}, and only the owner changes that. Ask the owner.',
  'refusal.work.choiceOfOne': 'A choice is between two lines at least. Choose one more.',
  'refusal.work.inOtherChoice': 'One of these lines is part of another choice. Take it out of that one first.',
  'refusal.work.choiceGivenTwice':
    'Two of these lines have the go-ahead, and of a choice at most one is given. Withdraw one of them first.',
  'refusal.work.standingMissing':
    'Choose the standing go-ahead that this line rests on, or say who gave the go-ahead and how.',
  'refusal.work.standingNotForThis':
    'This standing go-ahead does not cover this job today. Choose another one, or ask the customer.',
  'refusal.work.standingNeedsPrice':
    'This line has no price yet. Enter its price; then it can rest on a standing go-ahead.',
  'refusal.work.standingUsedUp':
    'This line costs {price} and {left} is left under the standing go-ahead. Ask the customer for it.',
  'refusal.work.contactMayNotAgree':
    '{limit, select, 0 {This contact may not give the go-ahead for the customer. Ask somebody who may, or have the desk or a manager record it with words.} other {This contact may agree up to {limit}. Ask somebody who may agree to more, or have the desk or a manager record it with words.}}',
  'refusal.work.notGiven':
    '{goAhead, select, deferred {The customer has put this line off.} declined {The customer has declined this line.} other {The customer has not given the go-ahead for this line yet.}} There is nothing to withdraw.',
  'refusal.work.goAheadWithdrawn':
    'The customer has withdrawn the go-ahead for this line. Put back what was done, then drop the line and say what is charged.',
  'refusal.work.chargeMissing': 'Say what is charged for what was done and put back. Enter 0 when nothing is.',
  'refusal.work.chargeNotDue':
    'A charge is for work that was begun and then withdrawn by the customer. Record first that the go-ahead was withdrawn, or leave the charge out.',
  'refusal.work.lineOpen': 'This line has not ended, so it goes on as it is.',
  'refusal.work.followUpGoesOn':
    'What was left of this line has gone on as a follow-up: it is closed, taken up by another line, or a temporary fix waits for it. Add a new line for more work.',
  'flag.concern.noAttempt':
    'Concern {position} is said not to appear, and no attempt to make it appear stands in the record.',
  'refusal.wheel.positionUnknown':
    '{position} is no place of a wheel. Give the axle from the front and the side, for example 1L, of twins 2RO or 2RI, or the spare.',
  'refusal.wheel.torqueNotPositive': 'A torque is more than nought. Enter the value from the source that you name.',
  'refusal.wheel.sourceMissing': 'Say in words where this torque comes from.',
  'refusal.wheel.notRetorque': 'This follow-up is not about tightening wheels again. Choose the one that is.',
  'flag.work.goAheadBeyondContact':
    '{limit, select, 0 {The go-ahead came from a contact who may not give it.} other {The go-ahead came from a contact who may agree up to {limit}.}}',
  'flag.concern.goneNotRetried':
    '{conditions, plural, one {Said to be gone, and nobody has tried again under the conditions that had shown it.} other {Said to be gone, and nobody has tried again under # conditions that had shown it.}}',
} as const;
