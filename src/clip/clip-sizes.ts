/** How large pictures are that are kept, and that are read at all. */

export interface PxSize {
  readonly width: number;
  readonly height: number;
}

/** px of the longer side of a picture that is kept. */
export const MOST_KEPT_PX = 1920;
/** px of a picture that is read at all: twice 8K. */
const MOST_READ_PX = 66e6;

/** Of the same shape, with no more px along the longer side. */
export function fitWithin({ width, height }: PxSize, most: number): PxSize {
  const k = Math.min(1, most / Math.max(width, height));
  return { width: Math.max(1, Math.round(width * k)), height: Math.max(1, Math.round(height * k)) };
}

export const isTooLarge = ({ width, height }: PxSize): boolean => width * height > MOST_READ_PX;

export const saySize = ({ width, height }: PxSize): string => `${width} × ${height}`;
