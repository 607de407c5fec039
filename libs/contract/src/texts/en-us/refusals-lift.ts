/** What is said about lifts, their inspections and what is out of use. Days come already written for the place. */
export const refusalsLiftEnUs = {
  'refusal.lift.alreadyRecorded': 'This is recorded already. Look at the page of the bay before you send it again.',
  'refusal.lift.noneInBay':
    'Nothing in this bay lifts. Choose the bay of the lift, or record the lift as equipment first.',
  'refusal.lift.inspectedInFuture':
    'The day of the inspection, {inspectedOn}, lies after today. Give the day on which it was done.',
  'refusal.lift.failed':
    'The inspection of {inspectedOn} failed, so this lift stays out of use. Have it put right and record an inspection that it passed.',
  'refusal.lift.notOverdue': 'The inspection of this lift is not overdue, so there is nothing to decide.',
  'refusal.lift.decidedAlready':
    'There was a decision to use this lift until {untilDay}, and there is no second one. Have the lift inspected.',
  'refusal.lift.endOutside': 'Such a decision ends between today and {latest}. Choose a day in between.',
  'refusal.lift.overdue':
    'The inspection of this lift counted until {dueOn}. Have it inspected, or owner or manager decide once, with words and an end, that it is used meanwhile.',
  'refusal.lift.pointsNotNamed':
    'A caution warns of lifting points of this vehicle, and this lift grips points. Owner or manager say first which points are used on this visit; the vehicle maker’s instructions come first.',
  'refusal.lift.noPointCaution': 'No caution about lifting points stands on this vehicle, so there is nothing to name.',
  'refusal.outage.already': 'It is out of use already. When it can be used again, owner or manager put it back in use.',
  'refusal.outage.noSuchEquipment':
    'No such equipment stands in this bay. Choose one of what is there, or the whole bay.',
  'refusal.outage.over': 'It is in use again already.',
  'flag.lift.overdue':
    'Put on a lift whose inspection counted until {dueOn}, and no decision to use it covers the day.',
} as const;
