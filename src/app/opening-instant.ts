/**
 * The instant that a skill is first seen at: in the shape in which it turns fastest, where its face is seen best. Seen from the
 * side; a flight that neither travels nor somersaults is seen from in front as well.
 */
import type { BlockSpan } from '../document/spans.ts';
import type { FlightResult } from '../engine/result.ts';

/** Shares of the flight that it is looked for between: not at the floor, where the shape is not yet and no more. */
const BETWEEN = [0.2, 0.75] as const;
/** The face is best seen half from the side, in profile the nose, never the back of the head; of the cosine to the eye. */
const BEST = 0.6;
/** Where a shape is held counts as much as this much of the face. */
const HELD = 0.5;

export function findOpening(result: FlightResult, spans: readonly BlockSpan[]): number {
  const { frames: f, flight } = result;
  const fastest = Math.max(...f.twistRate.map(Math.abs), 1e-9);
  const turning = Math.max(...f.somersaultRate.map(Math.abs), 1e-9);
  // who travels backward is seen from the other side, so that the way is always to the right (scene/view.ts)
  const eye = f.v_WScm_W[0] <= -0.2 ? -1 : 1;
  const isStill = Math.abs(f.v_WScm_W[0]) < 0.2 && Math.abs(f.somersault[f.n - 1] - f.somersault[0]) < 0.5;
  // from in front or from behind, from where the face is (scene/flight-view.ts)
  const faceAt = (i: number): number => (isStill ? Math.abs(faceForward(f.quat_WF, i)) : eye * faceToEye(f.quat_WF, i));
  let best = { t: 0.45 * flight.duration, score: Number.NEGATIVE_INFINITY };
  for (let i = 0; i < f.n; i++) {
    const t = f.t[i];
    if (t < BETWEEN[0] * flight.duration || t > BETWEEN[1] * flight.duration) continue;
    const isHeld = spans.some(({ from, to }) => t >= from && t <= to);
    const rate = fastest > turning / 2 ? Math.abs(f.twistRate[i]) / fastest : Math.abs(f.somersaultRate[i]) / turning;
    const score = rate + (isHeld ? HELD : 0) - Math.abs(faceAt(i) - BEST);
    if (score > best.score) best = { t, score };
  }
  return Math.round(best.t * 100) / 100;
}

/** Cosine between where the body faces and the eye of the side view, which is on +Z. */
function faceToEye(quat_WF: Float64Array, i: number): number {
  const [w, x, y, z] = quat_WF.subarray(4 * i, 4 * i + 4);
  return 2 * (x * z - w * y);
}

/** The same to an eye in front, on +X. */
function faceForward(quat_WF: Float64Array, i: number): number {
  const [, , y, z] = quat_WF.subarray(4 * i, 4 * i + 4);
  return 1 - 2 * (y * y + z * z);
}
