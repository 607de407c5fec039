/** What can be wrong with a model, in codes and facts. */

export type ModelFault =
  | { readonly code: 'sameIdTwice'; readonly id: string }
  | { readonly code: 'unknownId'; readonly id: string; readonly lineId?: string }
  | { readonly code: 'linesInACircle'; readonly jobId: string; readonly lineId: string }
  | { readonly code: 'noWholeMinutes'; readonly lineId: string }
  | { readonly code: 'badShare'; readonly freeShare: number }
  | { readonly code: 'badWeight'; readonly jobId: string }
  | { readonly code: 'horizonInThePast' }
  | { readonly code: 'noSlots'; readonly lineId: string }
  | { readonly code: 'twoVehiclesInOneSpot'; readonly spotId: string }
  | { readonly code: 'fixedPeopleMissing'; readonly lineId: string; readonly needed: number }
  | { readonly code: 'fixedSpotMissing'; readonly lineId: string }
  | { readonly code: 'fixedStartInThePast'; readonly lineId: string }
  | { readonly code: 'fixedStartBeforeOthers'; readonly lineId: string; readonly before: string }
  | { readonly code: 'fixedStartsClash'; readonly lineId: string; readonly with: string }
  | { readonly code: 'fixedSpotWhereAnotherStays'; readonly lineId: string; readonly spotId: string }
  | { readonly code: 'fixedSpotOtherThanWhereItStays'; readonly lineId: string; readonly spotId: string };

/** Where faults are put as they are found. */
export type FaultSink = (fault: ModelFault) => void;
