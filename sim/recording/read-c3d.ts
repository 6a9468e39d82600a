/**
 * C3D: points over time in binary form (c3d.org). Read are the points, as whole numbers or floats, in any of the three byte orders; a point whose
 * residual is below 0 is missing. Analog values, events and camera masks are passed over.
 */
import { FieldError } from '../math/field-error.ts';
import { C3dBytes } from './c3d-bytes.ts';
import { type C3dLayout, readC3dLayout } from './c3d-layout.ts';
import { checkName, makeUnique, shownName } from './file-place.ts';
import { metresOf } from './length-units.ts';
import { pointSteps } from './point-store.ts';
import type { Recording } from './recording.ts';
import { RECORDING_LIMITS } from './recording-limits.ts';
import type { UpAxis } from './recording-map.ts';
import { evenTimes } from './row-times.ts';
import type { ReadSteps } from './steps.ts';

/** Values between two pauses. */
const PIECE = 1 << 16;

export function* readC3dSteps(file: string, data: Uint8Array, notes: string[]): ReadSteps<Recording> {
  const bytes = new C3dBytes(file, data);
  const layout = readC3dLayout(bytes, notes);
  const names = makeUnique(labelsOf(file, layout), 'point', notes);
  const unit = layout.parameters.texts('POINT:UNITS')[0] ?? '';
  const unitM = metresOf(unit);
  if (unitM === undefined)
    notes.push(unit === '' ? 'The file states no unit of length.' : `The unit "${shownName(unit)}" is not known.`);
  const up = upOf(layout.parameters.texts('POINT:Y_SCREEN')[0] ?? '');
  const rows = evenTimes(file, layout.frames, layout.rateHz);
  if (layout.first > 1) notes.push(`The first row is frame ${layout.first} of its trial; times count from there.`);
  const source = { rows: layout.frames, eachRow: (use: UseRow) => eachFrame(bytes, layout, names, use) };
  const points = yield* pointSteps(names, source, 0, notes);
  return {
    kind: 'c3d',
    frames: layout.frames,
    ...rows,
    ...(unitM === undefined ? {} : { unitM }),
    ...(up ? { up } : {}),
    points,
    joints: [],
    columns: [],
    notes,
  };
}

type UseRow = (row: Float64Array, o: number, i: number) => void;

/** Three numbers a point; NaN where the residual says that it is not seen. */
function* eachFrame(bytes: C3dBytes, layout: C3dLayout, names: readonly string[], use: UseRow): ReadSteps<void> {
  const { start, stride, isFloat, scale, points, frames } = layout;
  const row = new Float64Array(3 * points);
  const size = isFloat ? 4 : 2;
  const read = (at: number): number => (isFloat ? bytes.float(at) : scale * bytes.signedWord(at));
  const every = Math.max(1, Math.floor(PIECE / row.length));
  for (let i = 0; i < frames; i++) {
    for (let k = 0; k < points; k++) {
      const at = start + i * stride + 4 * size * k;
      const residual = isFloat ? bytes.float(at + 3 * size) : bytes.signedWord(at + 3 * size);
      for (let axis = 0; axis < 3; axis++) {
        const x = residual < 0 ? Number.NaN : read(at + size * axis);
        if (Math.abs(x) > RECORDING_LIMITS.size)
          throw new FieldError(
            `${bytes.file} frame ${i + 1} point "${shownName(names[k])}"`,
            x,
            `numbers within ±${RECORDING_LIMITS.size}`,
          );
        row[3 * k + axis] = x;
      }
    }
    use(row, 0, i);
    if (i % every === every - 1) yield { done: i / frames };
  }
}

/** LABELS has room for 255; LABELS2, LABELS3 ... go on. */
function labelsOf(file: string, { parameters, points }: C3dLayout): string[] {
  const labels = parameters.texts('POINT:LABELS');
  for (let k = 2; labels.length < points; k++) {
    const more = parameters.texts(`POINT:LABELS${k}`);
    if (more.length === 0) break;
    labels.push(...more);
  }
  return Array.from(
    { length: points },
    (_, k) => checkName(`${file} POINT:LABELS ${k + 1}`, labels[k] ?? '') || `point ${k + 1}`,
  );
}

/** What the trade takes for up: the axis that the screen shows upward. */
function upOf(screen: string): UpAxis | undefined {
  const found = /^([+-]?)([XYZ])$/.exec(screen.toUpperCase());
  return found ? (`${found[1] || '+'}${found[2].toLowerCase()}` as UpAxis) : undefined;
}
