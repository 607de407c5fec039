/** Little's law as a cross-check of the figures of a flow. */

export interface LittleCheck {
  /** L: mean number here, over the whole window; null for an empty window */
  readonly meanHere: number | null;
  /** lambda: arrivals by the length of the window, per millisecond; null for an empty window */
  readonly arrivalsPerMs: number | null;
  /** W: mean time here of those that left inside the window, their time before it included (ms); null if none left */
  readonly meanTimeHereMs: number | null;
  /** L less lambda times W; null where one of the three is */
  readonly difference: number | null;
  readonly startsEmpty: boolean;
  readonly endsEmpty: boolean;
  /**
   * Whether the law must hold here: the window starts and ends empty, so everybody counted in L is counted in lambda
   * and in W. Where it does not, the difference says nothing about the figures and is given for looking only.
   */
  readonly mustHold: boolean;
  /** with `mustHold`: whether it does, checked in whole milliseconds, without rounding; else null */
  readonly holds: boolean | null;
}

export interface LittleFigures {
  readonly windowMs: number;
  /** time here inside the window, of all, added up (ms): the area under the number here */
  readonly hereMs: number;
  readonly arrived: number;
  readonly left: number;
  /** time here of those that left inside the window, added up, from their arrival (ms) */
  readonly leftHereMs: number;
  readonly startsEmpty: boolean;
  readonly endsEmpty: boolean;
}

/**
 * L = lambda W (Little, 1961; for a window that starts and ends empty it is an identity and needs no assumption: Little
 * and Graves, "Little's Law", 2008). On any other window it is not asked for.
 */
export function littleCheck(figures: LittleFigures): LittleCheck {
  const { windowMs, hereMs, arrived, left, leftHereMs, startsEmpty, endsEmpty } = figures;
  const meanHere = windowMs === 0 ? null : hereMs / windowMs;
  const arrivalsPerMs = windowMs === 0 ? null : arrived / windowMs;
  const meanTimeHereMs = left === 0 ? null : leftHereMs / left;
  const mustHold = startsEmpty && endsEmpty;
  return {
    meanHere,
    arrivalsPerMs,
    meanTimeHereMs,
    difference:
      meanHere === null || arrivalsPerMs === null || meanTimeHereMs === null
        ? null
        : meanHere - arrivalsPerMs * meanTimeHereMs,
    startsEmpty,
    endsEmpty,
    mustHold,
    holds: mustHold ? hereMs === leftHereMs && arrived === left : null,
  };
}
