/** The two laws of demand that stock is reckoned by. */

// Wichura, Algorithm AS 241 (PPND16), Applied Statistics 37 (1988): about 1 part in 10^16.
const centre = {
  top: [
    3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457,
    67265.770927008700853, 33430.575583588128105, 2509.0809287301226727,
  ],
  bottom: [
    1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061,
    28729.085735721942674, 5226.495278852854561,
  ],
};
const shoulder = {
  top: [
    1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504,
    1.27045825245236838258, 0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4,
  ],
  bottom: [
    1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459,
    0.0151986665636164571966, 5.475938084995344946e-4, 1.05075007164441684324e-9,
  ],
};
const tail = {
  top: [
    6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123,
    0.026532189526576123093, 0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
  ],
  bottom: [
    1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4,
    1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15,
  ],
};

const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, one) => sum * x + one, 0);
const ratio = (of: typeof centre, x: number): number => polynomial(of.top, x) / polynomial(of.bottom, x);

/** The standard normal quantile z of a service level, 0 < p < 1; anything else is refused with a RangeError. */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`${p} is not a share between 0 and 1.`);
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(centre, 0.180625 - q * q);
  const r = Math.sqrt(-Math.log(Math.min(p, 1 - p)));
  const z = r <= 5 ? ratio(shoulder, r - 1.6) : ratio(tail, r - 5);
  return q < 0 ? -z : z;
}

function checkedMean(mean: number): number {
  if (!(mean >= 0 && Number.isFinite(mean))) throw new RangeError(`${mean} is not a mean of 0 or more.`);
  return mean;
}

/** e^−m · m^k / k! from the logarithm of the term before it, so that a large mean does not come to nothing. */
const nextLogTerm = (logTerm: number, mean: number, k: number): number => logTerm + Math.log(mean) - Math.log(k);

/** P(demand ≤ k) for Poisson demand. */
export function poissonShare(mean: number, k: number): number {
  checkedMean(mean);
  let sum = 0;
  let logTerm = -mean;
  for (let i = 0; i <= k; i += 1) {
    if (i > 0) logTerm = nextLogTerm(logTerm, mean, i);
    sum += Math.exp(logTerm);
  }
  return Math.min(1, sum);
}

/** What is not served on average when `stock` pieces meet Poisson demand: Σ (k − stock)·P(k) over k > stock. */
export function poissonLoss(mean: number, stock: number): number {
  checkedMean(mean);
  let loss = mean;
  for (let k = 0; k < stock; k += 1) loss -= 1 - poissonShare(mean, k);
  return Math.max(0, loss);
}

/** The least whole number s with P(demand ≤ s) ≥ level; a level outside 0 to 1 (1 itself too) is refused. */
export function poissonQuantile(mean: number, level: number): number {
  checkedMean(mean);
  if (!(level > 0 && level < 1)) throw new RangeError(`${level} is not a share between 0 and 1.`);
  let sum = Math.exp(-mean);
  let logTerm = -mean;
  let s = 0;
  // Well above the mean the terms are too small to be added to the sum.
  while (sum < level && (s < mean || Math.exp(logTerm) > 1e-18)) {
    s += 1;
    logTerm = nextLogTerm(logTerm, mean, s);
    sum += Math.exp(logTerm);
  }
  return s;
}
