/**
 * The normal distribution backwards: x with P(X <= x) = p. Wichura 1988, Algorithm AS 241, Appl Stat 37:477 (PPND16, about
 * 1 part in 1e16). The coefficients are checked against the integral of the density.
 */
const NEAR = [
  [
    3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457,
    67265.770927008700853, 33430.575583588128105, 2509.0809287301226727,
  ],
  [
    1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061,
    28729.085735721942674, 5226.495278852854561,
  ],
];
const MIDDLE = [
  [
    1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504,
    1.27045825245236838258, 0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4,
  ],
  [
    1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459,
    0.0151986665636164571966, 5.475938084995344946e-4, 1.05075007164441684324e-9,
  ],
];
const FAR = [
  [
    6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123,
    0.026532189526576123093, 0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
  ],
  [
    1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4,
    1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15,
  ],
];

function ratio([above, below]: readonly (readonly number[])[], x: number): number {
  let a = 0;
  let b = 0;
  for (let k = above.length - 1; k >= 0; k--) {
    a = a * x + above[k];
    b = b * x + below[k];
  }
  return a / b;
}

export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(NEAR, 0.180625 - q * q);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const x = r <= 5 ? ratio(MIDDLE, r - 1.6) : ratio(FAR, r - 5);
  return q < 0 ? -x : x;
}

/**
 * P(X <= x): the series of Marsaglia 2004 (J Stat Softw 11(4), Evaluating the normal distribution), to about 1e-15; beyond 8
 * standard deviations 0 or 1.
 */
export function normalCdf(x: number): number {
  if (x > 8) return 1;
  if (x < -8) return 0;
  let sum = x;
  let before = 0;
  let term = x;
  for (let i = 3; sum !== before; i += 2) {
    before = sum;
    term *= (x * x) / i;
    sum += term;
  }
  return 0.5 + sum * Math.exp(-0.5 * x * x - 0.9189385332046728);
}
