/** A computed flight as if it had been recorded without error: for tests of the whole way, and for writing it out as a recording. */
import type { Flight } from '../flight/flight.ts';
import { FieldError } from '../math/field-error.ts';
import { calcSegmentFrames } from '../measure/segment-frames.ts';
import type { PosedMotion } from './posed.ts';

/** Share of a step by which times may be off even ones. */
const EVEN = 1e-6;

/** `times`: s, ascending and even, at least two. */
export function posedOfFlight(flight: Flight, times: ArrayLike<number>): PosedMotion {
  const n = times.length;
  const step = n < 2 ? Number.NaN : (times[n - 1] - times[0]) / (n - 1);
  if (!(step > 0)) throw new FieldError('times', n, 'at least two times that ascend');
  for (let i = 0; i < n; i++)
    if (Math.abs(times[i] - times[0] - i * step) > EVEN * step)
      throw new FieldError(`times[${i}]`, times[i], `even times: ${times[0] + i * step}`);
  const { body } = flight;
  const { t, p_WBo_W, quat_WB, angles } = calcSegmentFrames(flight, times);
  const segments = body.segments.length;
  const root = (data: Float64Array, width: number): Float64Array =>
    Float64Array.from({ length: n * width }, (_, k) => data[Math.floor(k / width) * segments * width + (k % width)]);
  return {
    body,
    n,
    t,
    rateHz: 1 / step,
    p_WBo_W: root(p_WBo_W, 3),
    quat_WB: root(quat_WB, 4),
    angles,
    isSeen: body.angles.map(() => true),
  };
}
