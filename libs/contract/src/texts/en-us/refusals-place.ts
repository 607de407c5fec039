/** What is said when a vehicle cannot be placed or moved, and every flag on what was recorded all the same. */
export const refusalsPlaceEnUs = {
  'refusal.place.jobEnded':
    'Repair order {jobNumber} has been handed back, so its vehicle is no longer here. Check it in again if it has come back.',
  'refusal.place.alreadyRecorded':
    'This move is in the record already. Look at where the vehicle stands before you send it again.',
  'refusal.place.noSuchSpot':
    'This bay has {spots, plural, one {one spot} other {# spots}}, and spot {spot} is not one of them. Choose another spot.',
  'refusal.place.bayEnded': 'This bay is no longer in use by the shop. Choose another bay.',
  'refusal.place.bayOutOfUse': 'This bay is out of use. Choose another one, or have a manager put it back into use.',
  'refusal.place.spotTaken':
    'Spot {spot} is taken by repair order {jobNumber} since {since}. Choose another spot, or move that vehicle first.',
  'refusal.place.thisSpot': 'The vehicle stands in spot {spot} of this bay already.',
  'refusal.place.doesNotRoll': 'This vehicle does not roll. Move it on dollies or tow it, and say who moved it.',
  'refusal.place.tagged':
    '{code, select, doNotStart {A tag says: do not start. Move it without the engine, or ask whoever put the tag on.} other {A tag says: do not move. Ask whoever put the tag on.}}',
  'refusal.place.aboveCapacity':
    'The vehicle weighs {massKg, number} kg and the lift is rated for {capacityKg, number} kg, so it does not go up here. Choose another bay. If a figure is wrong, a manager corrects it with its source.',
  'refusal.place.loadAsked':
    'Nobody knows whether this vehicle stays within the {capacityKg, number} kg of this lift. Look inside and say whether it is loaded or empty.',
  'refusal.place.loadWeightAsked':
    'Loaded, this vehicle may weigh up to {grossKg, number} kg, and the lift is rated for {capacityKg, number} kg. Say how many kilograms are on it, unload it, or choose another bay.',
  'flag.place.aboveCapacity': 'Put on a lift rated for {capacityKg, number} kg although it weighs {massKg, number} kg.',
  'flag.place.loadNotAsked': 'Put on a lift rated for {capacityKg, number} kg, and nobody said what it is loaded with.',
  'flag.place.movedNotRolling':
    'Moved although it does not roll, and nobody is named who moved it on dollies or towed it.',
  'flag.place.bayOutOfUse': 'Put into a bay that is out of use.',
  'flag.place.tooLarge': 'Put into a bay that it is too long, too high or too wide for.',
  'flag.work.noGoAhead': 'Started without the go-ahead.',
  'flag.work.skillMissing':
    'Started by a person without the skill {skill, select, highVoltage {for high voltage} refrigerant {for refrigerant} airbags {for airbags} secondCheck {for second checks} other {it needs}}.',
  'flag.work.afterUnfinished': 'Started before the operation that comes first was done.',
  'flag.work.againstCaution':
    '{code, select, doNotStart {Driven although a tag said: do not start.} doNotMove {Moved although a tag said: do not move.} other {Done although a caution spoke against it.}}',
  'flag.time.deviceClock': 'The clock of the device that sent this was more than two minutes off.',
  'flag.odometer.falling': 'The odometer reading is lower than an earlier one.',
  'flag.vin.doubtful': 'This does not look like a whole VIN. Read it again at the vehicle.',
  'flag.parts.more': 'More pieces came than were ordered.',
} as const;
