import { forbidsByCode } from '../forbids.js';
import { cautionsEnGb } from './cautions.js';

const forbids = forbidsByCode(cautionsEnGb);

/** What is said when a vehicle cannot be placed or moved, and every flag on what was recorded all the same. */
export const refusalsPlaceEnGb = {
  'refusal.place.jobEnded':
    'Job {jobNumber} has been handed back, so its vehicle is no longer here. Check it in again if it has come back.',
  'refusal.place.alreadyRecorded':
    'This move is in the record already. Look at where the vehicle stands before you send it again.',
  'refusal.place.noSuchSpot':
    'This bay has {spots, plural, one {one spot} other {# spots}}, and spot {spot} is not one of them. Choose another spot.',
  'refusal.place.bayEnded': 'This bay is no longer in use by the shop. Choose another bay.',
  'refusal.place.bayOutOfUse': 'This bay is out of use. Choose another one, or have a manager put it back into use.',
  'refusal.place.spotTaken':
    'Spot {spot} is taken by job {jobNumber} since {since}. Choose another spot, or move that vehicle first.',
  'refusal.place.thisSpot': 'The vehicle stands in spot {spot} of this bay already.',
  'refusal.place.doesNotRoll': 'This vehicle does not roll. Move it on dollies or tow it, and say who moved it.',
  'refusal.caution.forbids': `${forbids} End the caution first, or ask whoever put it there.`,
  'refusal.caution.hotWorkNear':
    '{code, select, hotWork {Hot work is going on in this bay or the next (job {jobNumber}), and fuel is open here. Let the hot work stop and its caution end first.} other {Fuel is open in this bay or the next (job {jobNumber}), and there is hot work here. Let the fuel be closed and its caution end first.}}',
  'refusal.wheel.stillOff': 'Wheel {position} is off. Put it on and record its torque first.',
  'refusal.wheel.notTorqued':
    'Wheel {position} was off, and no torque is recorded for it. Tighten it as the maker says and record the torque, its source and the tool.',
  'refusal.place.aboveCapacity':
    'The vehicle weighs {massKg, number} kg and the lift is rated for {capacityKg, number} kg, so it does not go up here. Choose another bay. If a figure is wrong, a manager corrects it with its source.',
  'refusal.place.loadAsked':
    'Nobody knows whether this vehicle stays within the {capacityKg, number} kg of this lift. Look inside and say whether it is loaded or empty.',
  'refusal.place.loadWeightAsked':
    'Loaded, this vehicle may weigh up to {grossKg, number} kg, and the lift is rated for {capacityKg, number} kg. Say how many kilograms are on it, unload it, or choose another bay.',
  'refusal.place.mayNotBeDriven':
    'This vehicle is recorded as not to be driven. Record first that it may be driven, or have it towed.',
  'refusal.place.driverLeft': 'Whoever is to drive no longer works here. Name another driver.',
  'refusal.place.notHere':
    '{kind, select, roadTest {The vehicle is on a road test. Record first that it is back.} away {The vehicle is at another firm. Record first that it is back.} other {Nobody has recorded where the vehicle stands. Move it to the yard or into a bay first.}}',
  'refusal.place.spotNotKept':
    'No spot was kept for this vehicle. Let it stand in the yard, or take it into a bay from there.',
  'refusal.place.notInBay':
    'The vehicle of job {jobNumber} does not stand in a bay, so there is nothing to swap. Take it into a bay.',
  'refusal.place.swapWithItself': 'Choose two vehicles to change places.',
  'refusal.sublet.alreadyThere': 'This work by another firm is recorded already.',
  'refusal.sublet.lineOfOtherJob': 'The line named with it is of another job. Choose a line of this one.',
  'refusal.sublet.componentMissing': 'Say which component goes out.',
  'refusal.sublet.otherForm':
    '{form, select, vehicleOut {It is arranged that the vehicle goes to the firm.} componentOut {It is arranged that a component goes to the firm.} other {It is arranged that somebody of the firm comes here.}} Arrange it anew if that has changed.',
  'refusal.sublet.notArranged':
    '{state, select, underWay {This work by another firm is under way already.} ended {This work by another firm is over.} other {This work by another firm was called off.}} Look at the list of what is out before you go on.',
  'refusal.sublet.notUnderWay':
    '{state, select, arranged {This work by another firm has not begun yet.} ended {This work by another firm is over already.} other {This work by another firm was called off.}} There is nothing to bring back.',
  'refusal.sublet.over':
    '{state, select, ended {This work by another firm is over.} other {This work by another firm was called off.}} Arrange it anew if it is needed.',
  'flag.place.aboveCapacity': 'Put on a lift rated for {capacityKg, number} kg although it weighs {massKg, number} kg.',
  'flag.place.loadNotAsked': 'Put on a lift rated for {capacityKg, number} kg, and nobody said what it is loaded with.',
  'flag.place.movedNotRolling':
    'Moved although it does not roll, and nobody is named who moved it on dollies or towed it.',
  'flag.place.bayOutOfUse': 'Put into a bay that is out of use.',
  'flag.place.tooLarge': 'Put into a bay that it is too long, too high or too wide for.',
  'flag.place.againstWheel':
    '{off, select, true {Moved or driven although wheel {position} was off.} other {Driven although no torque was recorded for wheel {position}.}}',
  'flag.place.hotWorkNearFuel': 'Hot work and open fuel in the same bay or in the next one.',
  'flag.place.drivenMayNot': 'Driven on the road although it does not roll or may not be driven.',
  'flag.work.noGoAhead': 'Started without the go-ahead.',
  'flag.work.madeSafe': 'Begun without the go-ahead, to make it safe where it stands.',
  'flag.work.skillMissing':
    'Started by a person without the skill {skill, select, highVoltage {for high voltage} refrigerant {for refrigerant} airbags {for airbags} secondCheck {for second checks} other {it needs}}.',
  'flag.work.afterUnfinished': 'Started before the line that comes first was done.',
  'flag.work.againstCaution': `{act, select, startWork {Work was begun although a caution stood against it.} roadTest {Taken on the road although a caution stood against it.} placeOverPit {Put over a pit although a caution warns of it.} liftByPoints {Put on a lift that grips points although a caution stood against it.} other {Moved although a caution stood against it.}} ${forbids}`,
  'flag.time.deviceClock': 'The clock of the device that sent this was more than two minutes off.',
  'flag.odometer.falling': 'The odometer reading is lower than an earlier one.',
  'flag.vin.doubtful': 'This does not look like a whole VIN. Read it again at the vehicle.',
  'flag.parts.more': 'More pieces came than were ordered.',
} as const;
