/** Which instant of a flight belongs to a frame of a clip. */
import type { ClipFrames } from './clip.ts';
import type { ClipTimes } from './clip-times.ts';

export interface ShownInstant {
  /** s from take-off, in the flight */
  readonly t: number;
  /** before take-off the pose of take-off is shown, after touchdown that of touchdown */
  readonly is: 'before' | 'in' | 'after';
}

/** Undefined before the take-off is marked. */
export function instantOf(
  frames: ClipFrames,
  times: ClipTimes,
  frame: number,
  duration: number,
): ShownInstant | undefined {
  const t = frames.t[frame] - times.zero;
  if (Number.isNaN(t)) return undefined;
  if (t < 0) return { t: 0, is: 'before' };
  return t > duration ? { t: duration, is: 'after' } : { t, is: 'in' };
}
