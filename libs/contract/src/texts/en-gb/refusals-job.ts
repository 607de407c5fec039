import { forbidsByCode } from '../forbids.js';
import { cautionsEnGb } from './cautions.js';

const forbids = forbidsByCode(cautionsEnGb);

const system =
  '{system, select, brakes {the brakes} steering {the steering} restraints {belts or airbags} fuel {the fuel system} highVoltage {the high-voltage system} wheelsTyres {wheels or tyres} structure {the structure} suspension {the suspension} lighting {the lights} driverAssistance {driver assistance} latches {a latch} glass {glass or vision} exhaust {the exhaust} towing {the towing gear} cooling {the cooling system} mayDrop {something that may drop} other {this system}}';
const caution =
  '{code, select, highVoltageLive {high voltage live} highVoltageDead {high voltage proven dead} airbagUnplugged {airbag unplugged} fuelOpen {fuel open} brakesOpen {brakes open} noOil {no oil} wheelsNotTorqued {wheel fasteners not torqued} batteryOff {battery off} onStands {on stands} hotWork {hot work} pitOpen {pit open} doNotStart {do not start} doNotMove {do not move} liftingPoint {lifting point} electricDrive {electric drive} gasTank {gas tank} other {other}}';

export const refusalsJobEnGb = {
  'refusal.photo.notUploaded': 'The picture of this photo is not on the server. Upload it again, then attach it.',
  'refusal.vehicle.alreadyThere': 'This vehicle is recorded already. Find it by its plate.',
  'refusal.job.alreadyThere': 'This visit is recorded already. Look at the job before you enter it again.',
  'refusal.job.alreadyHere':
    'This vehicle is here already, on job {number}. Add what is new to that job, or hand it back first.',
  'refusal.job.ended': 'Job {number} is over. Check the vehicle in again for new work.',
  'refusal.job.comebackLineMissing': 'A comeback names the line it comes back for. Choose the line of the earlier job.',
  'refusal.job.comebackOfOtherVehicle':
    'The line it is said to come back for was done on another vehicle. Choose a line of this one.',
  'refusal.job.promisedInPast': 'The promised time is over already. Choose a later one.',
  'refusal.job.expectedInPast': 'The day it is expected on is over already. Choose today or a later day.',
  'refusal.job.calledOff': 'Job {number} was called off. Check the vehicle in without that booking, or book it anew.',
  'refusal.job.concernMissing': 'Say what the customer reports: a visit begins with at least one concern.',
  'refusal.job.workedOn':
    'Job {number} was worked on, so it cannot be called off. Hand the vehicle back, or ask the manager to release it unfinished.',
  'refusal.job.notInYard':
    'The vehicle of job {number} does not stand in the yard. Move it to the yard first, then call the job off.',
  'refusal.job.partOrdered':
    '“{description}” is on order or here already. Make a follow-up for it, or cancel it, then call the job off.',
  'refusal.vehicle.massByLead': 'A mass decides on which lift a vehicle may stand. Ask owner or manager to correct it.',
  'refusal.vehicle.massSourceMissing': 'Say where the mass was read: plate, papers, weighed, maker or told.',
  'refusal.vehicle.nothingChanged': 'This is what is recorded already. Change something, or leave it as it is.',
  'refusal.vehicle.ownerAlready': 'It is this customer’s vehicle already.',
  'refusal.odometer.valueMissing': 'Enter what the odometer shows, or say that it cannot be read.',
  'refusal.job.customerMissing':
    'Say whose vehicle it is: choose the customer or enter a new one. Only an internal job goes without.',
  'refusal.customer.twice': 'Choose a known customer or enter a new one, not both.',
  'refusal.customer.alreadyThere': 'This customer is recorded already. Choose them from the list.',
  'refusal.contact.twice': 'Choose a known contact or enter a new one, not both.',
  'refusal.contact.alreadyThere': 'This contact is recorded already. Choose them from the list.',
  'refusal.contact.ofOtherCustomer':
    'A contact belongs to a customer. Choose the customer of this job first, then one of their contacts.',
  'refusal.concern.alreadyThere':
    'One of these concerns is recorded already. Look at the job before you enter it again.',
  'refusal.concern.conditionsMissing': 'Say under which conditions it is gone: those under which it had appeared.',
  'refusal.concern.wordsMissing':
    '{outcome, select, notTried {Say in words why it was not tried.} other {Say under which conditions it is still there, or how, in words.}}',
  'refusal.caution.alreadyThere': 'This caution is recorded already.',
  'refusal.caution.saySomething': 'Say in words what to be careful of.',
  'refusal.caution.noVisit':
    'A working caution belongs to a visit, and this vehicle is not here. Make it a standing one, or check the vehicle in.',
  'refusal.caution.jobOfOtherVehicle': 'The job named with this caution is of another vehicle.',
  'refusal.caution.ended': 'This caution has ended already.',
  'refusal.caution.notYours': `The caution “${caution}” is ended by whoever put it there or the person named with it. Ask them, or the manager.`,
  'refusal.caution.standing': `The caution “${caution}” stays with the vehicle. Name the line that mended it, or ask the manager.`,
  'refusal.caution.wordsMissing': 'Say in words why this caution no longer applies, or name the line that mended it.',
  'refusal.caution.lineOfOtherVehicle': 'The line named with it is of another vehicle. Choose a line of this one.',
  'refusal.caution.lineNotDone': 'The line “{title}” is not done yet. Finish it first, then end the caution.',
  'refusal.finding.alreadyThere': 'This finding is recorded already.',
  'refusal.finding.concernOfOtherJob': 'The concern named with this finding is of another job.',
  'refusal.finding.unitMissing': 'Say in which unit it was measured.',
  'refusal.photo.alreadyThere': 'This photo is on the job already.',
  'refusal.photo.ofOtherVehicle':
    '{table, select, finding {The finding it is to show is of another job.} other {The temporary fix it is to show is on another vehicle.}}',

  'refusal.handBack.clockRuns': 'Somebody is still on the clock on “{title}”. Stop the clock.',
  'refusal.handBack.lineUnfinished': '“{title}” was started and is not done. Finish it, carry it over or drop it.',
  'refusal.handBack.lineOpen':
    '{goAhead, select, given {“{title}” has its go-ahead and is not done. Do it, drop it, or make a follow-up.} other {“{title}” is still with the customer. Record their answer, drop it, or make a follow-up.}}',
  'refusal.handBack.cautionOpen': `{act, select, handBackByRoad {It cannot leave by road.} other {It cannot leave yet.}} ${forbids} Do what it asks, then end the caution.`,
  'refusal.handBack.retorqueUntold':
    'Wheels were off. Put down when they are to be tightened again: a follow-up with its distance and where that distance comes from.',
  'refusal.handBack.subletUnderWay':
    '{form, select, vehicleOut {The vehicle is still at another firm. Bring it back first.} componentOut {A component is still at another firm. Bring it back first.} other {Somebody of another firm is still at work on it. Record when they are done.}}',
  'refusal.handBack.notArrived': 'Job {number} is only expected: the vehicle has not come yet.',
  'refusal.handBack.concernOpen': 'Concern {position} has no outcome. Say what became of it.',
  'refusal.handBack.fixWithoutFollowUp':
    '{state, select, failed {The temporary fix at “{place}” has failed and has no follow-up. Make one for the permanent repair.} removed {The temporary fix at “{place}” was removed and has no follow-up. Make one for the permanent repair.} other {The temporary fix at “{place}” has no follow-up. Make one for the permanent repair.}}',
  'refusal.handBack.secondCheckMissing': `{tier, plural, =1 {The temporary fix at “{place}” (${system}) was not checked by another person. Have it checked, repair it for good, or let the vehicle leave on a transporter.} other {The temporary fix at “{place}” (${system}) needs a second check. Ask somebody with the skill.}}`,
  'refusal.handBack.partOpen':
    '{state, select, wanted {“{description}” is wanted and not ordered. Cancel it, or make a follow-up for it.} ordered {“{description}” is on order. Make a follow-up for it, or cancel it.} other {“{description}” is here and not fitted. Fit it, or make a follow-up for it.}}',
  'refusal.handBack.mayNotBeDriven':
    'This vehicle is recorded as not to be driven. Let it leave on a transporter, or record first that it may be driven.',
  'refusal.handBack.doesNotRoll': 'This vehicle is recorded as not rolling. Let it leave on a transporter.',
  'refusal.handBack.roadNotAllowed': `The temporary fix at “{place}” is on ${system}. Repair it for good or let the vehicle leave on a transporter; by road only owner or manager can allow it, by name and with words.`,
  'refusal.handBack.roadByLeadOnly':
    'Only owner or manager can allow the temporary fix at “{place}” by road. Ask one of them to hand the vehicle back.',
  'refusal.handBack.roadWordsMissing':
    'Say in words why the vehicle may leave by road with the temporary fix at “{place}”.',
  'refusal.handBack.receiverNotSigned':
    'Whoever receives the vehicle has to sign for the temporary fix at “{place}”, on exactly that line.',
  'refusal.handBack.receivedByTelephone':
    'The temporary fix at “{place}” is signed for here, not by telephone. Wait for the receiver, or let the vehicle leave on a transporter.',
  'refusal.handBack.roadNotNeeded':
    'The hand-back allows something by road that needs no such allowance on this vehicle. Look at the list again.',
  'refusal.release.wordsMissing': 'Say in words why the vehicle leaves unfinished.',
  'refusal.undo.notHandedBack': 'Job {number} was not handed back, so there is nothing to undo.',
  'refusal.undo.tooLate':
    'Job {number} was handed back more than {minutes, number} minutes ago. Check the vehicle in again.',
  'refusal.undo.hereAgain': 'The vehicle is here again on job {number}. Go on there.',
} as const;
