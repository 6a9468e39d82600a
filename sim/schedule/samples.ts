/**
 * Densely sampled angles -> tracks: a quintic smoothing spline (smooth-spline.ts) between the first and the last sample,
 * at rest before and after, with a short quartic from the rest into the spline and out of it, so that q'' is continuous.
 */

import { checkFinite } from './collect.ts';
import { ScheduleValueError } from './errors.ts';
import type { JointedBody } from './jointed-body.ts';
import type { SampledAngle, ScheduleSpec } from './schedule.ts';
import { type FactorMemo, makeSmoother, splineStateAt } from './smooth-spline.ts';
import { checkCutoff, type SmoothingCriterion, sameCriterion, weightOf } from './smoothing.ts';
import { COEFS, type Track } from './track.ts';

/** time outside the samples in which an angle comes to rest, s */
const RUN_OUT = 0.05;
const FEWEST_SAMPLES = 6;

/** Tracks of the sampled angles, by angle. */
export function makeSampledTracks(body: JointedBody, spec: ScheduleSpec): Map<number, Track> {
  const tracks = new Map<number, Track>();
  if (spec.sampled.length === 0) return tracks;
  const memo: FactorMemo = new Map();
  for (const s of spec.sampled) {
    const name = body.angles[s.angle]?.name;
    if (name === undefined)
      throw new ScheduleValueError('angle of samples', s.angle, `a whole number from 0 to ${body.angles.length - 1}`);
    checkSamples(name, s);
    if (tracks.has(s.angle)) throw new ScheduleValueError(`samples of ${name}`, 'two lists', 'one list for one angle');
    const key = spec.keys.findIndex((k) => k.angle === s.angle);
    if (key >= 0)
      throw new ScheduleValueError(
        `samples of ${name}`,
        `samples and key ${key + 1}`,
        'samples or keys for one angle, not both',
      );
    const criterion = s.smoothing ?? spec.smoothing;
    checkCriterion(criterion, name, s.rate);
    tracks.set(s.angle, getSampledTrack(s, criterion, memo));
  }
  return tracks;
}

function checkCriterion(criterion: SmoothingCriterion, name: string, rate: number): void {
  if (criterion.kind === 'cutoff') checkCutoff(`cut-off of the samples of ${name}`, criterion.hz, rate);
  if (criterion.kind !== 'noise') return;
  if (!(criterion.rms >= 0 && Number.isFinite(criterion.rms)))
    throw new ScheduleValueError('noise of the samples', criterion.rms, 'a finite root mean square, 0 or more');
}

function checkSamples(name: string, s: SampledAngle): void {
  checkFinite(`start of the samples of ${name}`, s.start);
  if (!(s.rate > 0 && Number.isFinite(s.rate)))
    throw new ScheduleValueError(`rate of the samples of ${name}`, s.rate, 'a finite number above 0, per second');
  if (s.values.length < FEWEST_SAMPLES)
    throw new ScheduleValueError(`samples of ${name}`, s.values.length, `at least ${FEWEST_SAMPLES} values`);
  for (let i = 0; i < s.values.length; i++)
    if (!Number.isFinite(s.values[i])) checkFinite(`sample ${i + 1} of ${name}`, s.values[i]);
}

/** Samples are not anchored to events, so a search for the touchdown, or a drag of some key, finds them smoothed already. */
const smoothed = new WeakMap<SampledAngle, { readonly criterion: SmoothingCriterion; readonly track: Track }>();

function getSampledTrack(s: SampledAngle, criterion: SmoothingCriterion, memo: FactorMemo): Track {
  const known = smoothed.get(s);
  if (known && sameCriterion(known.criterion, criterion)) return known.track;
  const track = makeSampledTrack(s, criterion, memo);
  smoothed.set(s, { criterion, track });
  return track;
}

function isLevel(values: ArrayLike<number>): boolean {
  for (let i = 1; i < values.length; i++) if (values[i] !== values[0]) return false;
  return true;
}

function makeSampledTrack(s: SampledAngle, criterion: SmoothingCriterion, memo: FactorMemo): Track {
  const n = s.values.length;
  const value = s.values[0];
  if (isLevel(s.values))
    return { times: [s.start], coefs: new Float64Array(0), before: value, after: value, breaks: [] };
  const smoother = makeSmoother(Float64Array.from(s.values), memo);
  const c = smoother.calcCoefs(weightOf(criterion, smoother, s.rate));
  const h = 1 / s.rate;
  const end = s.start + (n - 1) * h;
  const times = [s.start - RUN_OUT];
  for (let i = 0; i < n - 1; i++) times.push(s.start + i * h);
  times.push(end, end + RUN_OUT);
  const coefs = new Float64Array((n + 1) * COEFS);
  for (let i = 0; i < n - 1; i++) spanInto(coefs, (i + 1) * COEFS, c, i, h);
  const first = splineStateAt(c, 0, h);
  const last = splineStateAt(c, n - 1, h);
  // in: f' = m (3 s^2 - 2 s^3) + a T (s^3 - s^2) over time T, from rest to slope m with second derivative a
  const T = RUN_OUT;
  const before = first.f - (first.d * T) / 2 + (first.dd * T * T) / 12;
  coefs[0] = before;
  coefs[3] = (first.d - (first.dd * T) / 3) / (T * T);
  coefs[4] = (-first.d / 2 + (first.dd * T) / 4) / (T * T * T);
  // out: f' = m (1 - 3 s^2 + 2 s^3) + a T (s - 2 s^2 + s^3)
  const o = n * COEFS;
  coefs[o] = last.f;
  coefs[o + 1] = last.d;
  coefs[o + 2] = last.dd / 2;
  coefs[o + 3] = (-last.d - (2 / 3) * last.dd * T) / (T * T);
  coefs[o + 4] = (last.d / 2 + (last.dd * T) / 4) / (T * T * T);
  const after = last.f + (last.d * T) / 2 + (last.dd * T * T) / 12;
  return { times, coefs, before, after, breaks: [s.start - RUN_OUT, s.start, end, end + RUN_OUT] };
}

/** Power series of the span from sample i to i + 1. */
function spanInto(coefs: Float64Array, o: number, c: Float64Array, i: number, h: number): void {
  const { f, d, dd } = splineStateAt(c, i, h);
  const u = (k: number): number => c[i + k + 3] - 3 * c[i + k + 2] + 3 * c[i + k + 1] - c[i + k];
  const [u0, u1, u2] = [u(0), u(1), u(2)];
  const h3 = h * h * h;
  // f''' h^3 = u0 (1 - s)^2 / 2 + u1 (1 + 2 s - 2 s^2) / 2 + u2 s^2 / 2
  coefs[o] = f;
  coefs[o + 1] = d;
  coefs[o + 2] = dd / 2;
  coefs[o + 3] = (u0 + u1) / (12 * h3);
  coefs[o + 4] = (u1 - u0) / (24 * h3 * h);
  coefs[o + 5] = (u0 - 2 * u1 + u2) / (120 * h3 * h * h);
}
