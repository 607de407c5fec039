/** A plan as it is shown, stored and checked. Instants are epoch milliseconds. */

export interface PlannedLine {
  readonly jobId: string;
  readonly lineId: string;
  /** null: the vehicle is with another firm */
  readonly spotId: string | null;
  readonly personIds: readonly string[];
  /** between the two the work rests whenever the bay or somebody on the line is not there */
  readonly from: number;
  readonly to: number;
}

/** Why a line has no place in the plan. */
export type UnplacedReason = 'noSpotSuits' | 'nobodySuits' | 'afterUnplaced' | 'beyondHorizon';

export interface UnplacedLine {
  readonly jobId: string;
  readonly lineId: string;
  readonly reason: UnplacedReason;
}

/** What a plan is worth, in the order in which it counts; less is better in each. */
export interface PlanValue {
  /** Σ weight × minutes finished after the promised time, over the jobs that have one */
  readonly weightedTardinessMinutes: number;
  /** only in a plan made again: lines whose bay, people or time differ from the plan before */
  readonly disturbedLines: number;
  /** how often a vehicle is brought into a bay */
  readonly moves: number;
  /** how often a line's people are not those of the line before on the same vehicle */
  readonly technicianChanges: number;
  /** lines done by somebody away from their home bay */
  readonly awayFromHome: number;
  /** minutes from `now` to the end of the last line; counts alone where no job has a promised time */
  readonly finishMinutes: number;
  /** lines that are not placed; more never beats fewer */
  readonly unplaced: number;
}

export interface Plan {
  /** by start, then by line id */
  readonly lines: readonly PlannedLine[];
  readonly unplaced: readonly UnplacedLine[];
  readonly value: PlanValue;
}

/** How two values compare: below 0 if the first is better. */
export interface ValueOrder {
  /** whether any job has a promised time */
  readonly promised: boolean;
  /** weighted minutes late that one disturbed line is worth */
  readonly disturbanceMinutes: number;
}

export function compareValues(a: PlanValue, b: PlanValue, order: ValueOrder): number {
  if (a.unplaced !== b.unplaced) return a.unplaced - b.unplaced;
  const late = (value: PlanValue) => value.weightedTardinessMinutes + order.disturbanceMinutes * value.disturbedLines;
  const finish = a.finishMinutes - b.finishMinutes;
  if (!order.promised) return finish + order.disturbanceMinutes * (a.disturbedLines - b.disturbedLines);
  return (
    late(a) - late(b) ||
    a.moves - b.moves ||
    a.technicianChanges + a.awayFromHome - b.technicianChanges - b.awayFromHome ||
    finish
  );
}
