/**
 * Whether the noise of a series repeats from sample to sample. Cross-validation takes such noise for movement and leaves it in, so its own
 * residual shows nothing; what is faster than a body moves does. Test: of the spectrum above SLOWEST the mean of the cosine of the
 * frequency, weighted by power. Noise of single samples has the same power everywhere: the mean is then that of the frequencies alone, with a
 * known spread (powers are exponentially distributed); noise that repeats has more at the slow end, and a larger mean. A quick movement in
 * a quiet recording has too, so cross-validation must also have taken the cut-off that it takes for such noise: about a sixth of the rate,
 * whatever the rate is. Hits and false alarms: docs/recording-accuracy.md. Below some 100 Hz there is too little above the movement to say.
 */
import { findGcvWeight, makeSmoother, type Smoother } from '../schedule/smooth-spline.ts';
import { cutoffOfWeight, weightOfCutoff } from '../schedule/smoothing.ts';

/** Hz: joints move slower (contacts.md: a cut-off of 6 to 12 Hz for segments; our judgement with room above it). */
const SLOWEST = 18;
/** Standard deviations beyond which noise is slow. */
const FAR = 2;
/** Share of the rate that cross-validation's cut-off is above where it follows noise that repeats: measured .125 to .29, without it below .1. */
const FOLLOWS = 0.11;
/** Noise below this is left in without harm: rad of an angle (0.06 deg), m of a place. */
const LEAST = 1e-3;
/** Frequencies that a word needs. */
const FEWEST = 8;

/** Standard deviations by which the noise is slower than that of single samples; 0 where there is too little of it, or too few samples to say. */
function slownessOf(smoother: Smoother, n: number, rateHz: number): number {
  const first = Math.ceil((SLOWEST * n) / rateHz);
  const last = Math.floor((n - 1) / 2);
  if (last - first + 1 < FEWEST) return 0;
  const rest = smoother.calcResidual(weightOfCutoff(SLOWEST / 2, rateHz));
  let power = 0;
  let weighted = 0;
  let cosines = 0;
  let squares = 0;
  const count = last - first + 1;
  for (let k = first; k <= last; k++) {
    const w = (2 * Math.PI * k) / n;
    const p = powerAt(rest, w);
    const c = Math.cos(w);
    power += p;
    weighted += p * c;
    cosines += c;
    squares += c * c;
  }
  // power of all n frequencies, were the noise the same everywhere
  if (Math.sqrt((power * (n / count)) / (n * n)) < LEAST) return 0;
  const spread = Math.sqrt(squares / count - (cosines / count) ** 2) / Math.sqrt(count);
  return (weighted / power - cosines / count) / spread;
}

/** |sum of r_i e^(-i w)|^2 (Goertzel) */
function powerAt(r: Float64Array, w: number): number {
  const c = 2 * Math.cos(w);
  let before = 0;
  let now = 0;
  for (let i = 0; i < r.length; i++) {
    const next = r[i] + c * now - before;
    before = now;
    now = next;
  }
  return now * now + before * before - c * now * before;
}

/** `gcv`: the weight that cross-validation takes, where it is known. */
export function isNoiseCorrelated(y: Float64Array, rateHz: number, gcv?: number): boolean {
  const smoother = makeSmoother(y, new Map());
  if (!(slownessOf(smoother, y.length, rateHz) > FAR)) return false;
  return cutoffOfWeight(gcv ?? findGcvWeight(smoother), rateHz) > FOLLOWS * rateHz;
}

/**
 * Noise of single samples, as third differences show it, in which a movement hardly does: the middle of their sizes, so that single jumps do not
 * count. Every `stride`th value from `from` on.
 */
export function thirdDifferenceNoise(y: Float64Array, from = 0, stride = 1): number {
  const sizes: number[] = [];
  for (let i = from + 3 * stride; i < y.length; i += stride) {
    const third = y[i] - 3 * y[i - stride] + 3 * y[i - 2 * stride] - y[i - 3 * stride];
    if (!Number.isNaN(third)) sizes.push(Math.abs(third));
  }
  if (sizes.length === 0) return 0;
  sizes.sort((a, b) => a - b);
  // the middle of |x| of a normal spread is .6745 of it; squares of 1, 3, 3, 1 add up to 20
  return sizes[sizes.length >> 1] / 0.6745 / Math.sqrt(20);
}
