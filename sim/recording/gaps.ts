/**
 * Runs of rows without a value: filled from their neighbours up to a stated length, longer ones left as they are and marked.
 * A gap is filled by the cubic that meets value and slope at its two sides, slopes by a parabola through the three rows beside
 * it, so that a turn inside a short gap is not made straight. At the ends of a series nothing is filled: there is one side only.
 */
import type { Gap } from './conditioned.ts';

/** Rows that a slope beside a gap is taken from. */
const BESIDE = 3;

/** Runs of NaN in column `k` of values with `width` columns. A row counts as missing where any of them is. */
function listRuns(
  values: ArrayLike<number>,
  width: number,
  columns: readonly number[],
): { from: number; rows: number }[] {
  const n = values.length / width;
  const runs: { from: number; rows: number }[] = [];
  for (let i = 0; i < n; i++) {
    if (!columns.some((k) => Number.isNaN(values[width * i + k]))) continue;
    const last = runs[runs.length - 1];
    if (last && last.from + last.rows === i) last.rows++;
    else runs.push({ from: i, rows: 1 });
  }
  return runs;
}

/**
 * Fills the gaps of `columns` in place, all columns of a point together: values (n x width), gaps of at most `most` rows. Gives all gaps.
 */
export function fillGaps(values: Float64Array, width: number, columns: readonly number[], most: number): Gap[] {
  const n = values.length / width;
  return listRuns(values, width, columns).map(({ from, rows }) => {
    const isFilled = rows <= most && from > 0 && from + rows < n;
    if (isFilled) for (const k of columns) bridge(values, width, k, from, rows);
    return { from, rows, isFilled };
  });
}

/** Cubic from the row before to the row after. */
function bridge(values: Float64Array, width: number, k: number, from: number, rows: number): void {
  const h = rows + 1;
  const a = values[width * (from - 1) + k];
  const b = values[width * (from + rows) + k];
  const da = slopeAt(values, width, k, from - 1, -1) * h;
  const db = slopeAt(values, width, k, from + rows, 1) * h;
  for (let i = 1; i <= rows; i++) {
    const s = i / h;
    const r = 1 - s;
    values[width * (from + i - 1) + k] =
      a * (1 + 2 * s) * r * r + da * s * r * r + b * (3 - 2 * s) * s * s - db * s * s * r;
  }
}

/** Slope a row at `row` from it and those on its side (step -1: before it). Known rows only; where there is one alone, 0 is wrong least. */
function slopeAt(values: Float64Array, width: number, k: number, row: number, step: number): number {
  const y: number[] = [];
  for (let j = 0; j < BESIDE; j++) {
    const v = values[width * (row + step * j) + k];
    if (v === undefined || Number.isNaN(v)) break;
    y.push(v);
  }
  if (y.length < 2) return 0;
  const slope = y.length === 2 ? y[1] - y[0] : (-3 * y[0] + 4 * y[1] - y[2]) / 2;
  return slope * step;
}

/** Rows of a gap of `seconds` at a rate: what is filled is at most that long. */
export const rowsOfGap = (seconds: number, rateHz: number): number => Math.floor(seconds * rateHz + 1e-9);
