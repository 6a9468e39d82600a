import type { FromTo } from '../../../sim/index.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';

/** The whole skill's own time axis: 0 is the release or take-off, before it is to the left. px from the left edge. */
export interface WholeAxis extends FromTo, Pick<TimeAxis, 'pxPerS' | 'width'> {
  readonly left: number;
}

const LEFT = 46;
const RIGHT = 26;

export const makeWholeAxis = (from: number, to: number, width: number): WholeAxis => ({
  from,
  to,
  left: LEFT,
  pxPerS: (width - LEFT - RIGHT) / Math.max(0.1, to - from),
  width,
});

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
