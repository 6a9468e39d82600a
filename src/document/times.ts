/** Times of a skill file against the events they are anchored to. Seconds from take-off, as people type them. */
import type { FileTime } from '../../sim/index.ts';
import { type AnchorTimes, eventTime } from '../../sim/math/anchor.ts';

export { resolveTime } from '../../sim/math/anchor.ts';
export type AnchorSeconds = AnchorTimes;

/** The same anchor, at another instant; to the millisecond. */
export function moveTime(time: FileTime, toS: number, anchors: AnchorSeconds): FileTime {
  return { anchor: time.anchor, s: Math.round((toS - eventTime(time.anchor, anchors)) * 1000) / 1000 };
}

export const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);
