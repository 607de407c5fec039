export const refusalsPartsEnGb = {
  'refusal.parts.alreadyThere':
    'This {table, select, partsOrder {order} delivery {delivery} other {part}} is recorded already. Look at it before you enter it again.',
  'refusal.parts.purposeNotOne': 'Say what the part is for: one work line, or one follow-up.',
  'refusal.parts.namedTwice': 'A part is named twice in this order. Leave it in once.',
  'refusal.parts.notToOrder':
    'A part of this order {state, select, ordered {is on order already} partArrived {is on order already, and some of it is here} arrived {is here already} fitted {is on the vehicle already} cancelled {was cancelled; want it anew first} other {cannot be ordered now}}. Take it out of the order.',
  'refusal.parts.dueDayMissing': 'The supplier named a date for this backorder: enter the day.',
  'refusal.parts.dueDayTooMuch':
    'A backorder without a date has no day. Leave the day out, or choose “backordered with a date”.',
  'refusal.parts.cancelled': 'This part was cancelled. Want it anew before you fit it.',
  'refusal.parts.noneHere':
    '{state, select, fitted {All pieces of this part are recorded on the vehicle already.} other {No piece of this part is recorded as here. Have the parts clerk check it in first.}}',
  'refusal.parts.moreThanHere': 'Only {here} of this part are here, not {quantity}. Enter what was fitted.',
  'refusal.parts.notToCancel':
    'This part {state, select, arrived {is here already} fitted {is on the vehicle already} cancelled {was cancelled before} other {cannot be cancelled now}}.',
} as const;
