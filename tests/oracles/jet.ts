/**
 * Numbers that carry their first and second derivative with respect to one parameter, so that a loop in shape space
 * written as geometry gives q, q', q'' without differencing.
 */
export type Jet = readonly [value: number, d: number, dd: number];

export const variable = (x: number): Jet => [x, 1, 0];
export const plus = (...all: Jet[]): Jet =>
  all.reduce<Jet>((a, b) => [a[0] + b[0], a[1] + b[1], a[2] + b[2]], [0, 0, 0]);
export const times = (a: Jet, b: Jet): Jet => [
  a[0] * b[0],
  a[1] * b[0] + a[0] * b[1],
  a[2] * b[0] + 2 * a[1] * b[1] + a[0] * b[2],
];
export const scaled = (a: Jet, k: number): Jet => [k * a[0], k * a[1], k * a[2]];
export const minus = (a: Jet, b: Jet): Jet => plus(a, scaled(b, -1));

/** g(a), from the value and two derivatives of g at a. */
const chain = (a: Jet, g: number, g1: number, g2: number): Jet => [g, g1 * a[1], g1 * a[2] + g2 * a[1] * a[1]];
export const sine = (a: Jet): Jet => chain(a, Math.sin(a[0]), Math.cos(a[0]), -Math.sin(a[0]));
export const cosine = (a: Jet): Jet => chain(a, Math.cos(a[0]), -Math.sin(a[0]), -Math.cos(a[0]));
export const squareRoot = (a: Jet): Jet =>
  chain(a, Math.sqrt(a[0]), 0.5 / Math.sqrt(a[0]), -0.25 / (a[0] * Math.sqrt(a[0])));

/** Angle of the vector (x, y): its derivative is (x y' - y x') / r^2. */
export function angleOf(x: Jet, y: Jet): Jet {
  const rr = x[0] * x[0] + y[0] * y[0];
  const turn = x[0] * y[1] - y[0] * x[1];
  const growth = 2 * (x[0] * x[1] + y[0] * y[1]);
  return [Math.atan2(y[0], x[0]), turn / rr, (x[0] * y[2] - y[0] * x[2]) / rr - (turn * growth) / (rr * rr)];
}

/** The jet of a function of s where s is itself a jet in another parameter. */
export const through = (g: Jet, s: Jet): Jet => [g[0], g[1] * s[1], g[1] * s[2] + g[2] * s[1] * s[1]];

/** 10 s^3 - 15 s^4 + 6 s^5 (minimum jerk; Flash & Hogan 1985, J Neurosci 5:1688), at rest outside [0, 1]. */
export function minimumJerk(s: number): Jet {
  if (s <= 0) return [0, 0, 0];
  if (s >= 1) return [1, 0, 0];
  const r = 1 - s;
  return [s * s * s * (10 + s * (-15 + 6 * s)), 30 * s * s * r * r, 60 * s * r * (1 - 2 * s)];
}
