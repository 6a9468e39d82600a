/** Points of a marker file, row by row, and what their gaps come to. */
import { listNames } from './file-place.ts';
import type { RecordedPoint } from './recording.ts';
import type { ReadSteps } from './steps.ts';

/** A RowStore is one. */
interface RowSource {
  readonly rows: number;
  eachRow(use: (data: Float64Array, o: number, row: number) => void): ReadSteps<void>;
}

/**
 * Of rows of 3 numbers a point, from `first` on. A point with one number missing is missing; so is one at exactly 0, 0, 0, which is what systems
 * write for a marker that they do not see.
 */
export function* pointSteps(
  names: readonly string[],
  store: RowSource,
  first: number,
  notes: string[],
): ReadSteps<RecordedPoint[]> {
  const points: RecordedPoint[] = [];
  for (const name of names) {
    points.push({ name, p: new Float64Array(3 * store.rows) });
    yield { done: 0 };
  }
  const seen = new Int32Array(names.length);
  let zeros = 0;
  yield* store.eachRow((data, o, row) => {
    for (let k = 0; k < names.length; k++) {
      const at = o + first + 3 * k;
      const [x, y, z] = [data[at], data[at + 1], data[at + 2]];
      const isZero = x === 0 && y === 0 && z === 0;
      if (isZero) zeros++;
      const isSeen = !isZero && !Number.isNaN(x + y + z);
      if (isSeen) seen[k]++;
      const { p } = points[k];
      p[3 * row] = isSeen ? x : Number.NaN;
      p[3 * row + 1] = isSeen ? y : Number.NaN;
      p[3 * row + 2] = isSeen ? z : Number.NaN;
    }
  });
  if (zeros > 0)
    notes.push(`${zeros} values of points are exactly 0, 0, 0: they are taken for missing, as systems write them so.`);
  const never = names.filter((_, k) => seen[k] === 0);
  if (never.length > 0) notes.push(`Never seen in the whole recording: ${listNames(never)}.`);
  return points;
}
