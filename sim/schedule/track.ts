/**
 * One named angle as a piecewise polynomial of time. Span i covers [times[i], times[i + 1]] and is a power series in
 * seconds since times[i]; outside all spans the angle is constant. Values may jump at a span's end (shoulder plane and
 * turn at a pole); everything else is twice continuously differentiable.
 */

/** coefficients of one span: powers 0..6 of the time since its start */
export const COEFS = 7;

export interface Track {
  /** ascending, at least one */
  readonly times: readonly number[];
  /** (times.length - 1) x COEFS */
  readonly coefs: ArrayLike<number>;
  /** values before the first and after the last time */
  readonly before: number;
  readonly after: number;
  /** times where the angle is only C2 or jumps: where an integrator has to end a step */
  readonly breaks: readonly number[];
}

/** A key ready for interpolation: value on arrival, value on departure (the same unless it jumps), slope through it. */
export interface Knot {
  readonly t: number;
  readonly arrive: number;
  readonly depart: number;
  readonly stop: boolean;
}

/**
 * Slopes at the knots. Zero at stops, at jumps, at local extremes and at both ends; elsewhere the harmonic mean of the
 * secants weighted by span length (Fritsch & Butland 1984, SIAM J Sci Stat Comput 5:300; from memory), at most twice
 * either secant.
 *
 * Why twice: a quintic on s in [0, 1] from 0 to 1 with end slopes a, b and zero second derivatives at both ends has
 *   p'(s) = a (1 - e) + b e + c s^2 (1 - s)^2,  e = 3 s^2 - 2 s^3,
 * since e' vanishes at both ends; its integral has to be 1 = (a + b)/2 + c/30, so c = 30 (1 - (a + b)/2). p' is linear
 * in a and b, so it is enough to look at the corners of the square 0 <= a, b <= 2: 30 s^2 (1 - s)^2, then 2 (1 - e) and
 * 2 e, then 2 - 30 s^2 (1 - s)^2 >= 2 - 30/16. None is negative: inside the square a span is monotone and cannot
 * overshoot its ends. With a = b = 0 it is the minimum-jerk span 10 s^3 - 15 s^4 + 6 s^5 (Flash & Hogan 1985,
 * J Neurosci 5:1688; from memory).
 *
 * Locality: a slope knows its own key and the two beside it, a span knows its two slopes; so a key alters two spans on
 * each side of it and no more.
 */
function calcSlopes(knots: readonly Knot[]): number[] {
  const n = knots.length;
  const slopes = new Array<number>(n).fill(0);
  for (let i = 1; i < n - 1; i++) {
    const a = knots[i - 1];
    const k = knots[i];
    const b = knots[i + 1];
    if (k.stop || k.arrive !== k.depart) continue;
    const hL = k.t - a.t;
    const hR = b.t - k.t;
    const secL = (k.arrive - a.depart) / hL;
    const secR = (b.arrive - k.depart) / hR;
    if (!(secL * secR > 0)) continue;
    const wL = 2 * hR + hL;
    const wR = 2 * hL + hR;
    const mean = (wL + wR) / (wL / Math.abs(secL) + wR / Math.abs(secR));
    slopes[i] = Math.sign(secL) * Math.min(mean, 2 * Math.abs(secL), 2 * Math.abs(secR));
  }
  return slopes;
}

/** Quintic with the given end values and slopes and zero second derivatives (zero slopes: minimum jerk). */
function quinticInto(
  coefs: number[],
  o: number,
  h: number,
  y0: number,
  y1: number,
  slope0: number,
  slope1: number,
): void {
  const d = y1 - y0;
  const a = slope0 * h;
  const b = slope1 * h;
  const h3 = h * h * h;
  coefs[o] = y0;
  coefs[o + 1] = slope0;
  coefs[o + 3] = (10 * d - 6 * a - 4 * b) / h3;
  coefs[o + 4] = (-15 * d + 8 * a + 7 * b) / (h3 * h);
  coefs[o + 5] = (6 * d - 3 * a - 3 * b) / (h3 * h * h);
}

/** Adds b * 64 s^3 (1 - s)^3: C2 with zero value, slope and second derivative at both ends, b at mid-span. */
function bumpInto(coefs: number[], o: number, h: number, b: number): void {
  const k = (64 * b) / (h * h * h);
  coefs[o + 3] += k;
  coefs[o + 4] -= (3 * k) / h;
  coefs[o + 5] += (3 * k) / (h * h);
  coefs[o + 6] -= k / (h * h * h);
}

/** Track through knots (ascending times, at least one); `bumps` adds a bump of that height to the span after knot i. */
export function makeTrack(knots: readonly Knot[], bumps?: ReadonlyMap<number, number>): Track {
  const n = knots.length;
  const slopes = calcSlopes(knots);
  const times = new Array<number>(n);
  const coefs = new Array<number>((n - 1) * COEFS).fill(0);
  const breaks: number[] = [];
  let lastMoves = false;
  for (let i = 0; i < n; i++) {
    const k = knots[i];
    times[i] = k.t;
    let moves = false;
    if (i < n - 1) {
      const next = knots[i + 1];
      const o = i * COEFS;
      quinticInto(coefs, o, next.t - k.t, k.depart, next.arrive, slopes[i], slopes[i + 1]);
      const bump = bumps?.get(i) ?? 0;
      if (bump !== 0) bumpInto(coefs, o, next.t - k.t, bump);
      moves = bump !== 0 || k.depart !== next.arrive;
    }
    if (moves || lastMoves || k.arrive !== k.depart) breaks.push(k.t);
    lastMoves = moves;
  }
  return { times, coefs, before: knots[0].arrive, after: knots[n - 1].depart, breaks };
}

/** A jump by `size` at `from` that is given back by minimum jerk until `to` (for good, if there is no `to`). */
export function makeUnwinding(from: number, to: number | undefined, size: number): Track {
  const knots: Knot[] = [{ t: from, arrive: 0, depart: size, stop: true }];
  if (to !== undefined) knots.push({ t: to, arrive: 0, depart: 0, stop: true });
  return makeTrack(knots);
}

/** Value at t where the knots hold the angle at rest there; undefined where it moves. */
export function restingValue(knots: readonly Knot[], t: number): number | undefined {
  const last = knots[knots.length - 1];
  if (t < knots[0].t) return knots[0].arrive;
  if (t >= last.t) return last.depart;
  const slopes = calcSlopes(knots);
  let i = 0;
  while (knots[i + 1].t <= t) i++;
  if (slopes[i] !== 0) return undefined;
  const held = slopes[i + 1] === 0 && knots[i].depart === knots[i + 1].arrive;
  return knots[i].t === t || held ? knots[i].depart : undefined;
}

/** Whether the track neither moves nor jumps. */
export function isConstant(track: Track): boolean {
  return track.breaks.length === 0;
}
