/**
 * Where a mass centre is in the air: rows on a parabola with g free, along the floor a straight line at one speed. Where it is in contact its
 * acceleration is another and changes. First the longest runs of rows that a parabola passes within LOOSE of are sought on a coarse grid,
 * whatever g is (a film that was slowed down has another); then their ends are found to a share of a row (span-ends.ts).
 */
import { FieldError } from '../math/field-error.ts';
import type { AirSpan } from './conditioned.ts';
import { fillGaps } from './gaps.ts';
import { hasHeldPoint } from './held-point.ts';
import { massCentreOf } from './mass-centre.ts';
import { thirdDifferenceNoise } from './noise-colour.ts';
import { fitParabola } from './parabola.ts';
import type { PosedMotion } from './posed.ts';
import { findEnds } from './span-ends.ts';

/** s: a shorter flight looks like any other movement (our judgement); the flight of a handspring lasts .2 and more. */
const SHORTEST = 0.15;
/** s: longer than any flight of a person that falls at more than 2 m/s2. */
const LONGEST = 4.5;
/** m/s2: less is no fall. */
const LEAST_G = 2;
/** m, root mean square along each axis: what a body model that is not the athlete's moves its mass centre by (our judgement). */
const LOOSE = 0.01;
/** s between the starts and ends that are tried. */
const GRID = 0.01;

/** All flights, the longest first; empty where there is none. */
export function findAirSpans(posed: PosedMotion): AirSpan[] {
  const angles = filledAngles(posed);
  const p = massCentreOf(posed, angles);
  const { n, t, rateHz } = posed;
  const isTaken = new Uint8Array(n);
  const spans: AirSpan[] = [];
  const fits = listFits(t, p, rateHz, looseness(p));
  // longest first: shorter ones inside or across one that is taken are parts of it
  for (const { first, last } of fits.sort((a, b) => b.last - b.first - (a.last - a.first))) {
    let isFree = true;
    for (let i = first; i <= last && isFree; i++) isFree = isTaken[i] === 0;
    if (!isFree) continue;
    const found = findEnds(t, p, first, last);
    if (!found) continue;
    isTaken.fill(1, found.first, found.last + 1);
    isTaken.fill(1, first, last + 1);
    const isFall = found.end - found.start >= SHORTEST && found.g > LEAST_G;
    if (isFall && !hasHeldPoint(posed, angles, p, found.first, found.last)) spans.push(found);
  }
  return spans.sort((a, b) => b.end - b.start - (a.end - a.start));
}

/** A span from one time to another in the recording's own clock, chosen by hand. */
export function spanBetween(posed: PosedMotion, from: number, to: number): AirSpan {
  const { n, t } = posed;
  const within = (field: string, value: number, low: number, high: number): void => {
    if (!(value >= low - 1e-9 && value <= high + 1e-9))
      throw new FieldError(field, value, `${low.toFixed(3)} to ${high.toFixed(3)} s: inside the recording`);
  };
  within('from', from, t[0], t[n - 1]);
  within('to', to, from, t[n - 1]);
  const first = t.findIndex((s) => s >= from - 1e-9);
  let last = n - 1;
  while (last > first && t[last] > to + 1e-9) last--;
  const path = fitParabola(t, massCentreOf(posed, filledAngles(posed)), first, last);
  if (!path) throw new FieldError('to', to, `later than ${from.toFixed(3)} s by five rows with a known mass centre`);
  return {
    first,
    last,
    start: t[first],
    end: t[last],
    startError: 0,
    endError: 0,
    g: path.g,
    gError: path.gError,
    offParabola: path.off,
  };
}

/** With short gaps filled: a wrist that is lost for a moment moves the mass centre by little. */
function filledAngles(posed: PosedMotion): Float64Array {
  const angles = posed.angles.slice();
  const na = posed.body.angles.length;
  const most = Math.round(GAP_FOR_SPANS * posed.rateHz);
  for (let k = 0; k < na; k++) fillGaps(angles, na, [k], most);
  return angles;
}
/** s */
const GAP_FOR_SPANS = 0.25;

/** Distance allowed along each axis: of the body model, and of noise as third differences show it. */
function looseness(p: Float64Array): readonly [number, number, number] {
  const of = (k: number): number => Math.hypot(LOOSE, 1.3 * thirdDifferenceNoise(p, k, 3));
  return [of(0), of(1), of(2)];
}

/** Runs of rows that fit, of every start on the grid the longest. */
function listFits(
  t: Float64Array,
  p: Float64Array,
  rateHz: number,
  loose: readonly [number, number, number],
): { first: number; last: number }[] {
  const n = t.length;
  const step = Math.max(1, Math.round(GRID * rateHz));
  const shortest = Math.max(6, Math.round(SHORTEST * rateHz));
  const longest = Math.round(LONGEST * rateHz);
  const fits: { first: number; last: number }[] = [];
  for (let first = 0; first + shortest <= n; first += step) {
    const run = new Run(t[first]);
    let best = -1;
    let missed = 0;
    for (let i = first; i < n && i - first <= longest; i++) {
      run.add(t[i], p, i);
      if (i - first < shortest || (i - first) % step !== 0) continue;
      if (run.isFall(loose)) {
        best = i;
        missed = 0;
      } else if (++missed * GRID > GIVE_UP) break;
    }
    if (best >= 0) fits.push({ first, last: best });
  }
  return fits;
}
/** s without a fit after which a start is given up: noise may miss once */
const GIVE_UP = 0.1;

/** Sums of a growing run of rows, time counted from its first. */
class Run {
  private readonly t0: number;
  private readonly s = new Float64Array(5);
  /** of each axis: y, t y, t^2 y, y^2 */
  private readonly y = new Float64Array(12);
  private readonly origin = new Float64Array(3).fill(Number.NaN);

  constructor(t0: number) {
    this.t0 = t0;
  }

  add(time: number, p: Float64Array, i: number): void {
    const { s, y, origin } = this;
    if (Number.isNaN(p[3 * i] + p[3 * i + 1] + p[3 * i + 2])) return;
    const t = time - this.t0;
    s[0] += 1;
    s[1] += t;
    s[2] += t * t;
    s[3] += t * t * t;
    s[4] += t * t * t * t;
    for (let k = 0; k < 3; k++) {
      if (Number.isNaN(origin[k])) origin[k] = p[3 * i + k];
      const v = p[3 * i + k] - origin[k];
      y[4 * k] += v;
      y[4 * k + 1] += t * v;
      y[4 * k + 2] += t * t * v;
      y[4 * k + 3] += v * v;
    }
  }

  /** Straight along X and Z, a parabola that falls along Y. */
  isFall(loose: readonly [number, number, number]): boolean {
    const { s, y } = this;
    const n = s[0];
    if (n < 6) return false;
    // centred moments of time
    const m = s[1] / n;
    const tt = s[2] - n * m * m;
    const ttt = s[3] - 3 * m * s[2] + 2 * n * m ** 3;
    const t4 = s[4] - 4 * m * s[3] + 6 * m * m * s[2] - 3 * n * m ** 4;
    for (let k = 0; k < 3; k++) {
      const mean = y[4 * k] / n;
      const ty = y[4 * k + 1] - m * y[4 * k];
      let left = y[4 * k + 3] - n * mean * mean - (ty * ty) / tt;
      if (k === 1) {
        // the part of t^2 that is neither constant nor straight
        const bend = t4 - (tt * tt) / n - (ttt * ttt) / tt;
        const t2y = y[4 * k + 2] - 2 * m * y[4 * k + 1] + m * m * y[4 * k];
        const by = t2y - tt * mean - (ttt / tt) * ty;
        if (!((-2 * by) / bend > LEAST_G)) return false;
        left -= (by * by) / bend;
      }
      if (!(left <= n * loose[k] ** 2)) return false;
    }
    return true;
  }
}
