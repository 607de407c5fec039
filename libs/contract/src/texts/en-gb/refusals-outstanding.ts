export const refusalsOutstandingEnGb = {
  'refusal.fix.alreadyThere': 'This temporary fix is recorded already. Look at the job before you enter it again.',
  'refusal.fix.checkAlreadyThere': 'This second check is recorded already.',
  'refusal.fix.limitMissing':
    'A temporary fix needs at least one limit: before a day or a reading, within a distance or a number of days, or before a season.',
  'refusal.fix.seasonEnded': 'The shop no longer dates that season. Choose another limit.',
  'refusal.fix.lineElsewhere': 'The line is not on this vehicle’s job card. Choose a line of this vehicle.',
  'refusal.fix.followUpElsewhere': 'That follow-up belongs to another vehicle. Choose one of this vehicle.',
  'refusal.fix.notOn':
    'This temporary fix {state, select, failed {is recorded as failed} removed {was removed} other {has ended}}, so there is nothing to check.',
  'refusal.fix.checkSkillMissing':
    'You have no valid skill for second checks in this shop. Ask somebody who has it, or the owner to enter it.',
  'refusal.fix.checkBySamePerson':
    '{tier, plural, =1 {Whoever made a temporary fix on brakes, steering or the like cannot check it. Ask another person with the skill.} other {Whoever made a temporary fix cannot check it. Ask another person with the skill.}}',
  'refusal.fix.recheckTooEarly':
    '{minutes, plural, one {It is too early to check your own work again. Come back in one minute.} other {It is too early to check your own work again. Come back in # minutes.}}',
  'refusal.fix.endedAlready':
    'This temporary fix has ended already: {endedHow, select, repaired {repaired for good} mendedElsewhere {mended elsewhere} vehicleGone {the vehicle is gone} ownerRefuses {the owner refuses the repair} other {ended}}.',
  'refusal.fix.stateAlready':
    'This temporary fix is recorded as {state, select, failed {failed} removed {removed} other {that}} already.',
  'refusal.fix.lineMissing': 'Choose the line that repaired it for good.',
  'refusal.fix.lineNotDone': 'The line that is to repair it is not done yet. Finish the line first.',
  'refusal.fix.toldHowMissing':
    '{how, select, mendedElsewhere {Say how you know that it was mended elsewhere: told or seen.} ownerRefuses {Say how the owner refused: told or signed.} other {Say how you know.}}',
  'refusal.fix.wordsMissing':
    '{how, select, mendedElsewhere {Say in words where and when it was mended.} vehicleGone {Say in words what became of the vehicle.} ownerRefuses {Say in words what the owner was told and answered.} other {Say in words why it ends.}}',
  'refusal.followUp.alreadyThere': 'This follow-up is recorded already. Look at the vehicle before you enter it again.',
  'refusal.followUp.seasonEnded': 'The shop no longer dates that season. Choose another limit.',
  'refusal.followUp.ofOtherVehicle':
    '{table, select, job {The job} workLine {The line} partLine {A part} temporaryFix {The temporary fix} other {The other follow-up}} named here belongs to another vehicle.',
  'refusal.followUp.partStillWanted':
    'A part is still wanted for a line that goes on. Carry the line over, drop it or finish it first; then its parts can move.',
  'refusal.followUp.closedAlready':
    'This follow-up is {state, select, done {done} dropped {dropped} other {closed}} already.',
  'refusal.followUp.fixStillOn':
    '{state, select, on {The temporary fix is still on the vehicle.} failed {The temporary fix has failed and nothing permanent replaced it.} removed {The temporary fix was removed and nothing permanent replaced it.} other {The temporary fix has not ended.}} Say first how it ended: repaired for good, mended elsewhere, vehicle gone, or refused by the owner.',
  'refusal.followUp.lineNotDone': 'The line that is to do it is not done yet. Finish the line first.',
  'refusal.followUp.wordsMissing': 'Say in words why this follow-up is dropped.',
  'refusal.outstanding.retorqueNeedsDistance':
    'Say within what distance the wheels are to be tightened again, and in words where that distance comes from.',
} as const;
