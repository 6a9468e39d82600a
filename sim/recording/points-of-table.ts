/** Columns of a table that are axes of points, put together as points. */
import { FieldError } from '../math/field-error.ts';
import { shownName } from './file-place.ts';
import type { RecordedPoint, Recording } from './recording.ts';
import { RECORDING_LIMITS } from './recording-limits.ts';
import type { MappedColumn } from './recording-map.ts';
import type { ReadSteps } from './steps.ts';

/** In a unit of `unitM` metres, with a pause after each point. A point with an axis missing in a row is missing there; one without all three columns is left out. */
export function* pointsOfTable(
  recording: Recording,
  columns: readonly MappedColumn[],
  unitM: number,
): ReadSteps<RecordedPoint[]> {
  const points: RecordedPoint[] = [];
  const axes = axesOf(recording, columns, unitM);
  for (const [name, own] of axes) {
    const [x, y, z] = own;
    if (!x || !y || !z) continue;
    points.push({ name, p: join(name, recording.frames, [x, y, z]) });
    yield { done: points.length / axes.size };
  }
  return points;
}

interface Axis {
  readonly values: Float64Array;
  readonly scale: number;
}

function axesOf(
  recording: Recording,
  columns: readonly MappedColumn[],
  unitM: number,
): Map<string, (Axis | undefined)[]> {
  const byName = new Map(recording.columns.map((column) => [column.name, column.values]));
  const axes = new Map<string, (Axis | undefined)[]>();
  for (const { from, means } of columns) {
    const values = byName.get(from);
    if (means.kind !== 'point' || !values) continue;
    const own = axes.get(means.point) ?? [];
    own[means.axis] ??= { values, scale: means.unitM / unitM };
    axes.set(means.point, own);
  }
  return axes;
}

function join(name: string, frames: number, axes: readonly [Axis, Axis, Axis]): Float64Array {
  const p = new Float64Array(3 * frames);
  axes.forEach(({ values, scale }, k) => {
    for (let i = 0; i < frames; i++) {
      const x = values[i] * scale;
      if (Math.abs(x) > RECORDING_LIMITS.size)
        throw new FieldError(
          `point "${shownName(name)}" row ${i + 1}`,
          x,
          `numbers within ±${RECORDING_LIMITS.size} of its unit`,
        );
      p[3 * i + k] = x;
    }
  });
  for (let o = 0; o < p.length; o += 3) if (Number.isNaN(p[o] + p[o + 1] + p[o + 2])) p.fill(Number.NaN, o, o + 3);
  return p;
}
