/** Which axis of a file is up: away from where a body in the air falls to; without a flight, the way from feet to head. */
import { norm, scale, sub, type Triple } from '../math/vec3.ts';
import type { UpAxis } from './recording-map.ts';
import { axisNearest } from './turned-axes.ts';

/** s: windows that a parabola is laid through */
const WINDOW = 0.3;
/** m/s2: less is no fall, more is no motion of a body, even of a recording with a wrong rate */
const LEAST = 3;
const MOST = 80;
/** m: the middle of all points strays so far from the mass centre's parabola as limbs move (judgement) */
const STRAYS = 0.03;

/** `path`: (n x 3) the middle of a body, m, in the file's axes. Undefined where nothing falls. */
export function upByFall(path: Float64Array, rateHz: number): UpAxis | undefined {
  const n = path.length / 3;
  const width = Math.min(n, Math.max(6, Math.round(WINDOW * rateHz)));
  const step = Math.max(1, width >> 2);
  const sum: Triple = [0, 0, 0];
  for (let from = 0; from + width <= n; from += step) {
    const { a, off } = fitParabola(path, from, width, rateHz);
    const size = norm(a);
    if (!(size > LEAST && size < MOST && off < STRAYS)) continue;
    // by how well it is a parabola
    const weight = 1 / (off + 0.002) ** 2;
    for (let k = 0; k < 3; k++) sum[k] -= weight * a[k];
  }
  return norm(sum) > 0 ? axisNearest(sum) : undefined;
}

/** Acceleration of the parabola through rows from..from + width - 1, and how far they lie from it, root mean square. */
function fitParabola(
  path: Float64Array,
  from: number,
  width: number,
  rateHz: number,
): { readonly a: Triple; readonly off: number } {
  // in x = (i - middle), orthogonal: 1, x, x^2 - mean of x^2
  const middle = (width - 1) / 2;
  let xx = 0;
  for (let i = 0; i < width; i++) xx += (i - middle) ** 2;
  const mean2 = xx / width;
  let qq = 0;
  for (let i = 0; i < width; i++) qq += ((i - middle) ** 2 - mean2) ** 2;
  const a: Triple = [0, 0, 0];
  let left = 0;
  for (let k = 0; k < 3; k++) {
    let s0 = 0;
    let s1 = 0;
    let s2 = 0;
    let squares = 0;
    for (let i = 0; i < width; i++) {
      const v = path[3 * (from + i) + k];
      const x = i - middle;
      s0 += v;
      s1 += v * x;
      s2 += v * (x * x - mean2);
      squares += v * v;
    }
    a[k] = (2 * s2 * rateHz * rateHz) / qq;
    left += Math.max(0, squares - (s0 * s0) / width - (s1 * s1) / xx - (s2 * s2) / qq);
  }
  return { a, off: Math.sqrt(left / width) };
}

/** Mean of unit vectors longer than this: the body stands for most of the recording (judgement; of somersaults alone it is under .5). */
const STANDS = 0.7;

/** From what the file states, feet and chest in some rows (`low`, `high`), and the middle of the body in all of them (n x 3, m), in the file's axes. */
export function upOf(
  stated: UpAxis | undefined,
  low: readonly Triple[],
  high: readonly Triple[],
  path: Float64Array,
  rateHz: number,
): UpAxis {
  const way: Triple = [0, 0, 0];
  let rows = 0;
  low.forEach((p, i) => {
    const d = sub(high[i], p);
    const unit = scale(d, 1 / norm(d));
    if (!Number.isFinite(unit[0])) return;
    rows++;
    for (let k = 0; k < 3; k++) way[k] += unit[k];
  });
  if (norm(way) > STANDS * rows) return axisNearest(way);
  return stated ?? upByFall(path, rateHz) ?? axisNearest(way);
}
