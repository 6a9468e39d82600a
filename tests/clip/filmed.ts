// Flights as a camera takes them: frames at a random phase, read line by line, and marked from what is seen in frames alone.
import type { ClipFrames, ClipMark, MarkKind } from '../../sim/index.ts';
import { uniformsInto } from '../../sim/math/random.ts';

/** Uniform numbers of a draw; a pair of them as a normal one. */
export function drawOf(seed: number, index: number): () => number {
  const list = new Float64Array(64);
  uniformsInto(seed, index, list);
  let k = 0;
  return () => list[k++];
}
export const normal = (next: () => number): number => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());

export interface Event {
  readonly kind: MarkKind;
  readonly t: number;
  readonly quarters?: number;
  /** where in the picture it is */
  readonly row: number;
  /** said with the mark */
  readonly isRowKnown?: boolean;
}

/** Frames from 0 to `until`, the first at `phase` of a frame's time; `uneven`: share by which gaps differ. */
export function takeFrames(
  hz: number,
  until: number,
  lines: number,
  phase: number,
  uneven: (k: number) => number = () => 0,
): ClipFrames {
  const t = [phase / hz];
  while (t[t.length - 1] < until) t.push(t[t.length - 1] + (1 + uneven(t.length)) / hz);
  return { t: Float64Array.from(t), hz, width: 1920, height: 1080, lines };
}

/** The frame that shows it first, or nearest; `lines`: as it is, whatever the frames say of it. */
export function markOf({ t }: ClipFrames, { kind, t: at, quarters, row, isRowKnown }: Event, lines: number): ClipMark {
  const shown = Array.from(t, (s) => s + (row - 0.5) * lines);
  let frame = shown.findIndex((s) => s >= at);
  const isNearest = kind === 'turn' || kind === 'highest';
  if (isNearest && frame > 0 && at - shown[frame - 1] < shown[frame] - at) frame--;
  return { kind, frame, ...(quarters !== undefined && { quarters }), ...(isRowKnown && { row }) };
}
