/** A page of A4 upright, as report and sheet of a class have it; lengths in units of the page (PER_MM of svg pages). */
import { PER_MM } from './page-svg.ts';

export const A4 = { width: 210, height: 297 } as const;
export const MARGIN = 86;
export const WIDTH = A4.width * PER_MM - 2 * MARGIN;
export const TOP = 84;
/** letters of the foot */
export const SMALL = 15;
