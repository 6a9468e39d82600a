/** A recording with uneven time stamps, laid on even rows: each value from the cubic through its four nearest rows; a gap stays a gap. */
import type { Recording } from './recording.ts';

/** Rows are even that lie within this many steps of where an even one would; stamps are often rounded to a millisecond. */
const EVEN = 0.3;

function isEven({ times, rateHz }: Recording): boolean {
  for (let i = 1; i < times.length; i++) if (Math.abs((times[i] - times[0]) * rateHz - i) > EVEN) return false;
  return true;
}

export function withEvenRows(recording: Recording): Recording {
  if (isEven(recording)) return recording;
  const { times, rateHz, columns, points } = recording;
  const [from, to] = [times[0], times[times.length - 1]];
  const frames = Math.floor((to - from) * rateHz + 1e-9) + 1;
  const t = Float64Array.from({ length: frames }, (_, i) => from + i / rateHz);
  const before = new Int32Array(frames);
  for (let i = 0, r = 0; i < frames; i++) {
    while (r + 2 < times.length && times[r + 1] <= t[i]) r++;
    before[i] = r;
  }
  const laid = (values: Float64Array, width: number): Float64Array => {
    const out = new Float64Array(frames * width);
    for (let i = 0; i < frames; i++)
      for (let k = 0; k < width; k++) out[width * i + k] = between(times, values, width, k, before[i], t[i], rateHz);
    return out;
  };
  return {
    ...recording,
    frames,
    times: t,
    columns: columns.map((c) => ({ ...c, values: laid(c.values, 1) })),
    points: points.map((p) => ({ ...p, p: laid(p.p, 3) })),
    notes: [
      ...recording.notes,
      `The time stamps are uneven: values are laid on ${Number(rateHz.toPrecision(4))} rows a second between them.`,
    ],
  };
}

/** Steps longer than this many rows are gaps. */
const GAP = 2.5;

/** At time t between rows r and r + 1: the cubic through r - 1 .. r + 2 where they are there, else the straight line. */
function between(
  times: Float64Array,
  values: Float64Array,
  width: number,
  k: number,
  r: number,
  t: number,
  rateHz: number,
): number {
  const at = (i: number): number => values[width * i + k];
  if ((times[r + 1] - times[r]) * rateHz > GAP) {
    if (t === times[r]) return at(r);
    return Number.NaN;
  }
  const rows = r > 0 && r + 2 < times.length ? [r - 1, r, r + 1, r + 2] : [r, r + 1];
  let usable = rows;
  if (rows.some((i) => !Number.isFinite(at(i))) || (times[rows[rows.length - 1]] - times[rows[0]]) * rateHz > 2 * GAP)
    usable = [r, r + 1];
  let sum = 0;
  for (const i of usable) {
    let w = 1;
    for (const j of usable) if (j !== i) w *= (t - times[j]) / (times[i] - times[j]);
    sum += w * at(i);
  }
  return sum;
}
