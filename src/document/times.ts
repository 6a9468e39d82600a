/** Times of a skill file against the events they hang on. Seconds from take-off, as people type them. */
import type { FileTime } from '../../sim/index.ts';

export interface AnchorSeconds {
  readonly apex: number;
  readonly touchdown: number;
}

const eventOf = (time: FileTime, anchors: AnchorSeconds): number =>
  time.anchor === 'apex' ? anchors.apex : time.anchor === 'touchdown' ? anchors.touchdown : 0;

/** When it happens, s from take-off. */
export function resolveTime(time: FileTime, anchors: AnchorSeconds): number {
  return eventOf(time, anchors) + time.s;
}

/** The same anchor, at another instant; to the millisecond. */
export function moveTime(time: FileTime, toS: number, anchors: AnchorSeconds): FileTime {
  return { anchor: time.anchor, s: Math.round((toS - eventOf(time, anchors)) * 1000) / 1000 };
}

export const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);
