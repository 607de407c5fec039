export const refusalsShopEnGb = {
  'refusal.shop.alreadyThere': 'This shop is set up already. Sign in instead.',
  'refusal.shop.zoneUnknown': 'The time zone “{zone}” is not known here. Choose one such as Europe/London.',
  'refusal.shop.zoneInPast':
    'Another time zone holds from today or from a later day on, not from {validFrom}. What happened until now keeps its days.',
  'refusal.shop.nameBlank': 'The shop needs a name.',
  'refusal.exception.alreadyThere': 'These hours are recorded already.',
  'refusal.shop.hoursFaulty': 'These hours cannot be right. {fault}',
  'refusal.shop.seasonFaulty': 'This season cannot be right. {fault}',
  'refusal.shop.runsFaulty': 'These delivery times cannot be right. {fault}',
  'refusal.person.alreadyThere': 'This person is recorded already.',
  'refusal.person.nameTaken':
    'Somebody who works here signs in with that name already. Add something that tells the two apart.',
  'refusal.person.wallScreenAlone':
    'A wall screen is nothing else. Give the person other roles, or the screen an entry of its own.',
  'refusal.person.skillTwice': 'One skill is named twice. Keep the entry with the right end date.',
  'refusal.person.lastOwner': 'The shop needs an owner who works here. Make somebody else an owner first.',
  'refusal.person.onClock': 'This person is still on the clock. Stop the clock first.',
  'refusal.bay.alreadyThere': 'This bay is recorded already.',
  'refusal.bay.nameTaken': 'Another bay has that name. Choose one that is not used.',
  'refusal.bay.capacityNotPositive': 'A rated capacity is above nought. Enter it as on the plate, or leave it out.',
  'refusal.bay.occupied':
    'The vehicle of job {number} stands in this bay. Move it first, or take the bay out of use as it is.',
  'refusal.bay.spotsInUse':
    'The vehicle of job {number} stands in spot {spot}, which this bay would no longer have. Move it first.',
  'refusal.season.twice': 'The season “{seasonName}” is in the list twice. Keep one of them.',
  'refusal.supplier.alreadyThere': 'This supplier is recorded already.',
  'refusal.supplier.nameTaken': 'There is a supplier with that name already. Choose it from the list.',
} as const;
