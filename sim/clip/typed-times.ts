/** Frames and marks of times that were read off a player and typed: each the first frame in which it is so, or the nearest. */
import { FieldError } from '../math/field-error.ts';
import type { ClipFrames, ClipMark } from './clip.ts';

export interface TypedTime {
  readonly kind: ClipMark['kind'];
  readonly quarters?: number;
  /** s, as the player shows them */
  readonly s: number;
  /** what it was typed as, for a message */
  readonly field: string;
}

/** A typed time may be rounded: so far from a frame's own, in frames, it is still that frame. */
const NEAR = 0.3;
const MOST_FRAMES = 200_000;

/** Frames as many a second as really were taken, through the first typed time; `fileHz`: of the player. */
export function framesOfTyped(
  typed: readonly TypedTime[],
  fileHz: number,
  trueHz: number,
  lines = Number.NaN,
): { readonly frames: ClipFrames; readonly marks: readonly ClipMark[] } {
  for (const { field, s } of typed) if (!Number.isFinite(s)) throw new FieldError(field, s, 'seconds');
  const first = typed.reduce((least, { s }) => Math.min(least, s), Number.POSITIVE_INFINITY);
  const marks = typed.map(({ kind, quarters, s, field }): ClipMark => {
    const frames = (s - first) * fileHz;
    if (!(frames < MOST_FRAMES)) throw new FieldError(field, s, `at most ${MOST_FRAMES} frames after the first`);
    if (Math.abs(frames - Math.round(frames)) > NEAR)
      throw new FieldError(field, s, `the time of a frame: ${first} s and whole frames of 1/${fileHz} s more`);
    // what is so in a frame was not so in one before it
    return { kind, frame: Math.round(frames) + 1, ...(quarters !== undefined && { quarters }) };
  });
  const n = marks.reduce((most, { frame }) => Math.max(most, frame), 0) + 2;
  const t = Float64Array.from({ length: n }, (_, k) => k / trueHz);
  return { frames: { t, hz: trueHz, width: 1, height: 1, lines }, marks };
}
