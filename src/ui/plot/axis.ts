/** The one axis of the page: time along the floor, 0 at take-off. px are those of the time column. */
export interface TimeAxis {
  readonly x0: number;
  readonly pxPerS: number;
  readonly width: number;
  /** where it ends, s */
  readonly duration: number;
  /** where it begins, s; left out: at take-off */
  readonly from?: number;
}

/** Ends between these shares of the room keep their scale: the ruler must not stretch under a hand that drags. */
const STEADY = { least: 0.8, most: 1.045 };

/** The axis for a flight that changed a little: the scale before, while the landing stays in sight. */
export function keepAxis(before: TimeAxis | undefined, next: TimeAxis): TimeAxis {
  if (!before || before.width !== next.width || before.x0 !== next.x0) return next;
  const share = before.pxPerS / next.pxPerS;
  return share > STEADY.least && share < STEADY.most ? { ...next, pxPerS: before.pxPerS } : next;
}

/** Room left of take-off for tick labels, and right of the landing. */
export function makeAxis(width: number, duration: number, left: number, right: number): TimeAxis {
  const pxPerS = Math.max(40, (width - left - right) / Math.max(duration, 0.05));
  return { x0: left, pxPerS, width, duration };
}

export const xOf = (axis: TimeAxis, t: number): number => axis.x0 + t * axis.pxPerS;
export const tOf = (axis: TimeAxis, x: number): number => (x - axis.x0) / axis.pxPerS;

/** Step between labelled ticks, s: the finest of 0.1, 0.2, 0.5, 1 whose labels do not touch. */
export function labelStep(axis: TimeAxis, labelPx: number): number {
  return [0.1, 0.2, 0.5, 1, 2].find((step) => step * axis.pxPerS >= labelPx) ?? 5;
}
