/** From the axes and the unit of a file to W, with Y up. */
import type { Numbers } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';
import type { UpAxis } from './recording-map.ts';

/** Rows: where X, Y, Z of W point in the file, for each axis that may be up. Proper turns: left stays left. */
const TURNS: Readonly<Record<UpAxis, readonly number[]>> = {
  '+y': [1, 0, 0, 0, 1, 0, 0, 0, 1],
  '-y': [1, 0, 0, 0, -1, 0, 0, 0, -1],
  '+z': [1, 0, 0, 0, 0, 1, 0, -1, 0],
  '-z': [1, 0, 0, 0, 0, -1, 0, 1, 0],
  '+x': [0, -1, 0, 1, 0, 0, 0, 0, 1],
  '-x': [0, 1, 0, -1, 0, 0, 0, 0, 1],
};

/** (3 x 3) turns vectors of the file into W. */
export const turnOf = (up: UpAxis): readonly number[] => TURNS[up];

/** The axis nearest to a direction of the file. */
export function axisNearest(d: Triple): UpAxis {
  const k = [0, 1, 2].reduce((best, i) => (Math.abs(d[i]) > Math.abs(d[best]) ? i : best), 0);
  return `${d[k] < 0 ? '-' : '+'}${'xyz'[k]}` as UpAxis;
}

/** Points (n x 3) of a file in W, m. */
export function placesInW(p: Float64Array, up: UpAxis, unitM: number): Float64Array {
  const T = TURNS[up];
  const out = new Float64Array(p.length);
  for (let i = 0; i < p.length; i += 3) turnInto(T, p, i, out, i, unitM);
  return out;
}

function turnInto(T: readonly number[], x: ArrayLike<number>, xo: number, y: Numbers, yo: number, k: number): void {
  for (let r = 0; r < 3; r++) y[yo + r] = k * (T[3 * r] * x[xo] + T[3 * r + 1] * x[xo + 1] + T[3 * r + 2] * x[xo + 2]);
}
