/** Numbers as they are written into a file: without the last bits of a change of unit. */
import { DEG } from '../math/angles.ts';

/**
 * To nine digits behind the point: far below what is felt, and below what a search can tell apart. A late hand turns a
 * microsecond into 0.05 deg of twist, so that six would not do for seconds.
 */
export const tidy = (x: number): number => Math.round(x * 1e9) / 1e9;
export const tidyDeg = (angle: number): number => tidy(angle * DEG);
export const tidyTriple = ([x, y, z]: readonly [number, number, number]): [number, number, number] => [
  tidy(x),
  tidy(y),
  tidy(z),
];
