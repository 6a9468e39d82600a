/**
 * The normal distribution backwards: x with P(X <= x) = p. Wichura 1988, Algorithm AS 241, Appl Stat 37:477 (PPND16, about
 * 1 part in 1e16). The coefficients are checked against the integral of the density.
 */
const NEAR = [
  [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987, 67265.7709270087,
    33430.57558358813, 2509.0809287301227,
  ],
  [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
];
const MIDDLE = [
  [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
];
const FAR = [
  [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 0.000027115555687434876, 2.0103343992922881e-7,
  ],
  [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133, 0.000018463183175100548,
    1.421511758316446e-7, 2.0442631033899397e-15,
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
