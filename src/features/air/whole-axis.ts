import type { FromTo } from '../../../sim/index.ts';
import type { WholeReach } from '../../pictures/whole-input.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';

/** The whole skill's own time axis: 0 is the release or take-off, before it is to the left. px from the left edge. */
export interface WholeAxis extends FromTo, Pick<TimeAxis, 'pxPerS' | 'width'> {
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
  return { from, to, left, pxPerS: (width - left - right) / span, width };
}

export const wholeX = (axis: WholeAxis, t: number): number => axis.left + (t - axis.from) * axis.pxPerS;
export const wholeT = (axis: WholeAxis, x: number): number =>
  Math.min(Math.max(axis.from + (x - axis.left) / axis.pxPerS, axis.from), axis.to);

/** Labelled seconds that stand apart, on whole steps from 0. */
export function wholeTicks(axis: WholeAxis): number[] {
  const step = [0.1, 0.2, 0.5, 1, 2].find((s) => s * axis.pxPerS >= 44) ?? 5;
  const ticks: number[] = [];
  for (let k = Math.ceil(axis.from / step - 1e-9); k * step <= axis.to + 1e-9; k++) ticks.push(k * step);
  return ticks;
}
