import type { WholeReach } from '../../pictures/whole-input.ts';
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';

/** The floor's axis while all of a skill is on it: 0 is the release or take-off, before it is to the left. */
export interface WholeAxis extends TimeAxis {
  readonly from: number;
  readonly to: number;
  /** px where it begins */
  readonly left: number;
}

const LEFT = 46;
const RIGHT = 26;
/** Between a figure and the side of the picture, px. */
const SPARE = 4;

/** `reaches`: px. As much room at both sides as the figures there need: more room makes the axis shorter, so that is looked at again. */
export function makeWholeAxis(from: number, to: number, width: number, reaches: readonly WholeReach[]): WholeAxis {
  const shown = reaches.filter(({ t }) => t >= from - 1e-9 && t <= to + 1e-9);
  const span = Math.max(0.1, to - from);
  let [left, right] = [LEFT, RIGHT];
  for (let i = 0; i < 4; i++) {
    const pxPerS = (width - left - right) / span;
    left = shown.reduce((most, one) => Math.max(most, one.left + SPARE - (one.t - from) * pxPerS), LEFT);
    right = shown.reduce((most, one) => Math.max(most, one.right + SPARE - (to - one.t) * pxPerS), RIGHT);
  }
  const pxPerS = (width - left - right) / span;
  return { from, to, left, x0: left - from * pxPerS, pxPerS, width, duration: to };
}

export const wholeX = (axis: WholeAxis, t: number): number => xOf(axis, t);
export const wholeT = (axis: WholeAxis, x: number): number =>
  Math.min(Math.max(axis.from + (x - axis.left) / axis.pxPerS, axis.from), axis.to);
