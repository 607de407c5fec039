/** Refusals of the family "job": facts, not orders. Each has its sentence in the catalogues of the contract. */
export const jobRefusals = [
  /** The image of a photo was not uploaded to this shop, or its upload did not end. */
  'photo.notUploaded',
  /** A vehicle with this id is there already. Facts: vehicleId. */
  'vehicle.alreadyThere',
  /** A job with this id is there already. Facts: jobId. */
  'job.alreadyThere',
  /** The vehicle is here on an open job. Facts: number, jobId. */
  'job.alreadyHere',
  /** The job has ended: the vehicle is back with its owner. Facts: number. */
  'job.ended',
  /** A comeback names the line it comes back for. */
  'job.comebackLineMissing',
  /** The line that it comes back for is of another vehicle. Facts: lineId. */
  'job.comebackOfOtherVehicle',
  /** The promised time lies before now. Facts: promisedAt, now (ISO). */
  'job.promisedInPast',
  /** The day it is expected on is over. Facts: expectedAt (ISO). */
  'job.expectedInPast',
  /** The booked visit was called off. Facts: number. */
  'job.calledOff',
  /** A visit begins with something reported. */
  'job.concernMissing',
  /** It was worked on: it is handed back or released, not called off. Facts: number. */
  'job.workedOn',
  /** Only a vehicle in the yard can go without anything done. Facts: number. */
  'job.notInYard',
  /** A part is on order or here, and no follow-up waits for it. Facts: description. */
  'job.partOrdered',
  /** A mass is corrected by manager or owner. */
  'vehicle.massByLead',
  /** A mass comes with where it was read. */
  'vehicle.massSourceMissing',
  /** The correction says what stands there already. */
  'vehicle.nothingChanged',
  /** It is that customer's vehicle already. Facts: customerId. */
  'vehicle.ownerAlready',
  /** A reading has a value, or is not readable. */
  'odometer.valueMissing',
  /** Only an internal job may be without a customer. */
  'job.customerMissing',
  /** A known and a new customer in one check-in. */
  'customer.twice',
  /** A customer with this id is there already. Facts: customerId. */
  'customer.alreadyThere',
  /** A known and a new contact in one check-in. */
  'contact.twice',
  /** A contact with this id is there already. Facts: contactId. */
  'contact.alreadyThere',
  /** The contact belongs to another customer, or the job has none. Facts: contactId. */
  'contact.ofOtherCustomer',
  /** A concern with this id is there already, or twice in this check-in. Facts: concernId. */
  'concern.alreadyThere',
  /** "Gone" without the conditions under which it had appeared. Facts: concernId. */
  'concern.conditionsMissing',
  /** "Still there" without conditions or words, or "not tried" without saying why. Facts: concernId, outcome. */
  'concern.wordsMissing',
  /** A caution with this id is there already. Facts: cautionId. */
  'caution.alreadyThere',
  /** The code "other" needs words. */
  'caution.saySomething',
  /** A working caution belongs to a visit, and the vehicle is not here. Facts: vehicleId. */
  'caution.noVisit',
  /** The job named with the caution is of another vehicle. Facts: jobId. */
  'caution.jobOfOtherVehicle',
  /** It has ended already. Facts: cautionId. */
  'caution.ended',
  /** A working caution is ended by who opened it, the person named with it, or owner or manager. Facts: cautionId, code. */
  'caution.notYours',
  /** A standing caution is ended by owner or manager, or with the line that mended it. Facts: cautionId, code. */
  'caution.standing',
  /** Owner or manager ends a standing caution with words, or with the line that mended it. Facts: cautionId. */
  'caution.wordsMissing',
  /** The line that is said to have mended it is of another vehicle. Facts: lineId. */
  'caution.lineOfOtherVehicle',
  /** The line that is said to have mended it is not done. Facts: lineId, title. */
  'caution.lineNotDone',
  /** A finding with this id is there already. Facts: findingId. */
  'finding.alreadyThere',
  /** The concern named with it is of another job. Facts: concernId. */
  'finding.concernOfOtherJob',
  /** A measurement without its unit. */
  'finding.unitMissing',
  /** A photo with this id is there already. Facts: photoId. */
  'photo.alreadyThere',
  /** The finding or the temporary fix it is to show is of another job or vehicle. Facts: table, id. */
  'photo.ofOtherVehicle',

  // Rule 9: what stands in the way of a hand-back. Each comes with the row where the way out is.
  /** Somebody's clock is running. Facts: clockId, title (of the line). */
  'handBack.clockRuns',
  /** A line was started and is neither done nor carried over. Facts: lineId, title. */
  'handBack.lineUnfinished',
  /** A line with a go-ahead or still with the customer has no end and no follow-up. Facts: lineId, title, goAhead. */
  'handBack.lineOpen',
  /** A caution that stands forbids this door. Facts: cautionId, code, act. */
  'handBack.cautionOpen',
  /** By road, and tightening the wheels again is not put down for later. Facts: jobId. */
  'handBack.retorqueUntold',
  /** Another firm's work is under way. Facts: subletId, form. */
  'handBack.subletUnderWay',
  /** It is only expected, it has not come yet. Facts: number. */
  'handBack.notArrived',
  /** A concern has no outcome. Facts: concernId, position. */
  'handBack.concernOpen',
  /** A temporary fix that has not ended has no open follow-up. Facts: temporaryFixId, place, state. */
  'handBack.fixWithoutFollowUp',
  /** A second check is missing. Facts: temporaryFixId, place, system, tier. */
  'handBack.secondCheckMissing',
  /** A part is neither fitted nor cancelled and has no open follow-up. Facts: partLineId, description, state. */
  'handBack.partOpen',
  /** By road, but the vehicle may not be driven. Facts: vehicleId. */
  'handBack.mayNotBeDriven',
  /** By road, but the vehicle does not roll. Facts: vehicleId. */
  'handBack.doesNotRoll',
  /** By road with a tier-1 fix that nobody allowed by name. Facts: temporaryFixId, place, system. */
  'handBack.roadNotAllowed',
  /** Only owner or manager allows a tier-1 fix by road. Facts: temporaryFixId, place. */
  'handBack.roadByLeadOnly',
  /** Allowing a tier-1 fix by road needs words. Facts: temporaryFixId, place. */
  'handBack.roadWordsMissing',
  /** The receiver has not signed for exactly that fix. Facts: temporaryFixId, place. */
  'handBack.receiverNotSigned',
  /** A tier-1 fix by road is signed for there, not by telephone. Facts: temporaryFixId, place. */
  'handBack.receivedByTelephone',
  /** An allowance for what is no open tier-1 fix of this vehicle. Facts: temporaryFixId. */
  'handBack.roadNotNeeded',
  /** A release needs words. Facts: none. */
  'release.wordsMissing',
  /** There is no hand-back to undo: the visit goes on, or was called off. Facts: number. */
  'undo.notHandedBack',
  /** The hand-back is too long ago. Facts: number, minutes. */
  'undo.tooLate',
  /** The vehicle is here again on another visit. Facts: number (of that one). */
  'undo.hereAgain',
] as const;
