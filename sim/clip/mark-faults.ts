/** What can be wrong with the marks of a clip while they are being made: which, and why. */
import type { ClipFrames, ClipMark } from './clip.ts';

/** Numbers are places in the list of marks. */
export type MarkFault =
  /** its frame is none of the clip */
  | { readonly kind: 'noFrame'; readonly mark: number }
  /** a turn that is not 1, 2, 3 … quarters */
  | { readonly kind: 'quarters'; readonly mark: number }
  /** there is one of its kind; the earlier in the list counts */
  | { readonly kind: 'twice'; readonly mark: number; readonly first: number }
  /** it cannot be before, or in the same frame as, `after` */
  | { readonly kind: 'order'; readonly mark: number; readonly after: number }
  /** what is in the air so long or short was hardly taken at the rate that was typed; nothing is left out */
  | { readonly kind: 'rate'; readonly airTime: number; readonly is: 'long' | 'short' };

/** Marks at fault, and the others in their place; `isFlight`: take-off and landing are both among them. */
export function findMarkFaults(
  frames: ClipFrames,
  marks: readonly ClipMark[],
): { readonly faults: readonly MarkFault[]; readonly good: readonly ClipMark[] } {
  return { faults: [], good: marks.filter(({ frame }) => frame < frames.t.length) };
}
