/**
 * Straight lines through points. Theil–Sen (the median of all slopes between two points) is used, because a single wrong
 * reading does not move it; least squares is here as the well-known other line, and to check the arithmetic.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface LeastSquares {
  readonly slope: number;
  readonly intercept: number;
  readonly slopeError: number;
  readonly interceptError: number;
  /** standard deviation of the residuals, n − 2 degrees of freedom */
  readonly residualDeviation: number;
  readonly rSquared: number;
}

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);
const mean = (values: readonly number[]): number => sum(values) / values.length;

/** The median; RangeError: of nothing. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  if (upper === undefined || lower === undefined) throw new RangeError('There is no median of nothing.');
  return (lower + upper) / 2;
}

/** The line of least squares; RangeError: fewer than three points, or all above one x. Deviations from the means: stable. */
export function leastSquares(points: readonly Point[]): LeastSquares {
  const meanX = mean(points.map(({ x }) => x));
  const meanY = mean(points.map(({ y }) => y));
  const sxx = sum(points.map(({ x }) => (x - meanX) ** 2));
  if (points.length < 3 || sxx === 0)
    throw new RangeError('A line of least squares needs three points and two places.');
  const slope = sum(points.map(({ x, y }) => (x - meanX) * (y - meanY))) / sxx;
  const intercept = meanY - slope * meanX;
  const residual = sum(points.map(({ x, y }) => (y - meanY - slope * (x - meanX)) ** 2));
  const total = sum(points.map(({ y }) => (y - meanY) ** 2));
  const residualDeviation = Math.sqrt(residual / (points.length - 2));
  return {
    slope,
    intercept,
    slopeError: residualDeviation / Math.sqrt(sxx),
    interceptError: residualDeviation * Math.sqrt(1 / points.length + (meanX * meanX) / sxx),
    residualDeviation,
    rSquared: total === 0 ? 1 : 1 - residual / total,
  };
}

/** All slopes between two points with different x, in rising order. Quadratic in the number of points. */
export function pairwiseSlopes(points: readonly Point[]): number[] {
  const slopes: number[] = [];
  points.forEach((from, at) => {
    for (const to of points.slice(at + 1)) {
      if (to.x !== from.x) slopes.push((to.y - from.y) / (to.x - from.x));
    }
  });
  return slopes.sort((a, b) => a - b);
}

export interface TheilSen {
  readonly slope: number;
  readonly intercept: number;
}

/** The robust line: median slope, and the median of what is left. null: no two points with different x. */
export function theilSen(points: readonly Point[]): TheilSen | null {
  const slopes = pairwiseSlopes(points);
  if (slopes.length === 0) return null;
  const slope = median(slopes);
  return { slope, intercept: median(points.map(({ x, y }) => y - slope * x)) };
}
