/** How large a recording may be, for all readers. Judgement: what a page holds in memory and works through in seconds. */
import { FieldError } from '../math/field-error.ts';

export const RECORDING_LIMITS = {
  bytes: 256e6,
  rows: 1e6,
  /** of a table, points of a marker file, joints of a skeleton */
  columns: 2000,
  /** numbers that are kept: 320 MB */
  values: 4e7,
  /** characters */
  line: 1e6,
  /** in a row, where a head is read */
  emptyLines: 1000,
  /** characters of a name */
  name: 200,
  /** fewest and most in a second */
  rateHz: [1, 100_000],
  /** of a place or an angle in the file's unit: beyond it nothing is measured */
  size: 1e9,
} as const;

export const LEAST_ROWS = 2;

export function checkRate(field: string, rateHz: number, value: unknown = rateHz): number {
  const [least, most] = RECORDING_LIMITS.rateHz;
  if (!(rateHz >= least && rateHz <= most))
    throw new FieldError(field, value, `${least} to ${most} values in a second`);
  return rateHz;
}

/** That rows of this many kept numbers fit; asked before anything is made room for. */
export function checkRows(field: string, rows: number, width: number): void {
  const most = Math.min(RECORDING_LIMITS.rows, Math.floor(RECORDING_LIMITS.values / Math.max(1, width)));
  if (rows > most) throw new FieldError(field, rows, `at most ${most} rows of this width`);
}

export function checkColumns(field: string, count: number, what: string): void {
  if (count > RECORDING_LIMITS.columns)
    throw new FieldError(field, count, `at most ${RECORDING_LIMITS.columns} ${what}`);
}
