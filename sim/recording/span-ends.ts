/**
 * The ends of a flight to a share of a row, and what they are known to. Between start and end the mass centre is on its parabola; outside it
 * leaves it smoothly, as a force that begins at once or grows from nothing makes it: by a (s - t)^2 and b (s - t)^3 before the start s, along
 * every axis, and so behind the end. Of all starts and ends the pair that leaves least over is the one; how fast what is left grows about it says
 * what it is known to. Looked at are the rows out to where they have surely left the parabola, and no further: later a contact is of another form.
 */
import type { AirSpan } from './conditioned.ts';
import { fitLinear, fitParabola, inflation, type LinearFit } from './parabola.ts';

/** m from the parabola through the middle of the run at which a row has surely left it, at least; and in times of what its own rows are off. */
const GONE = 0.04;
const GONE_TIMES = 2.5;
/** Rows in a row that have to be gone. */
const ROWS_GONE = 3;

/** From rows that are nearly those of the flight. Undefined where too few are known. */
export function findEnds(t: Float64Array, p: Float64Array, first: number, last: number): AirSpan | undefined {
  const n = t.length;
  const step = (t[n - 1] - t[0]) / (n - 1);
  const [before, behind] = [goneAt(t, p, first, last, -1), goneAt(t, p, first, last, 1)];
  const rows: number[] = [];
  for (let i = before ?? 0; i <= (behind ?? n - 1); i++)
    if (!Number.isNaN(p[3 * i] + p[3 * i + 1] + p[3 * i + 2])) rows.push(i);
  if (rows.length < FEWEST) return undefined;
  const course = makeCourse(t, p, rows, before !== undefined, behind !== undefined);
  const found = search(course, t[rows[0]], t[rows[rows.length - 1]], step, before !== undefined, behind !== undefined);
  const from = t.findIndex((s) => s >= found.start - 1e-9);
  let to = n - 1;
  while (to > from && t[to] > found.end + 1e-9) to--;
  const path = from < 0 ? undefined : fitParabola(t, p, from, to);
  if (!path) return undefined;
  return {
    first: from,
    last: to,
    start: found.start,
    end: found.end,
    startError: found.startError,
    endError: found.endError,
    g: path.g,
    gError: path.gError,
    offParabola: path.off,
  };
}
const FEWEST = 10;

/** The row where the mass centre has surely left the parabola through the middle half of the run, going out on one side. Undefined: it is in the air to the last row. */
function goneAt(t: Float64Array, p: Float64Array, first: number, last: number, side: -1 | 1): number | undefined {
  const quarter = Math.floor((last - first) / 4);
  const core = fitParabola(t, p, first + quarter, last - quarter);
  if (!core) return undefined;
  const limit = Math.max(GONE, GONE_TIMES * core.off);
  let gone = 0;
  for (let i = side < 0 ? first + quarter : last - quarter; i >= 0 && i < t.length; i += side) {
    const s = t[i] - core.t0;
    const far = Math.hypot(
      p[3 * i] - core.p[0] - core.v[0] * s,
      p[3 * i + 1] - core.p[1] - core.v[1] * s + (core.g * s * s) / 2,
      p[3 * i + 2] - core.p[2] - core.v[2] * s,
    );
    if (far >= limit && ++gone >= ROWS_GONE) return i;
    if (far < limit) gone = 0;
  }
  return undefined;
}

interface Course {
  /** sum of squares that start and end leave over, m2 */
  left(start: number, end: number): number;
  /** spread of a value, m, widened for what repeats */
  spread(start: number, end: number): number;
}

function makeCourse(
  t: Float64Array,
  p: Float64Array,
  rows: readonly number[],
  hasStart: boolean,
  hasEnd: boolean,
): Course {
  const middle = t[rows[rows.length >> 1]];
  const time = Float64Array.from(rows, (i) => t[i] - middle);
  const one = new Float64Array(rows.length).fill(1);
  const square = time.map((x) => x * x);
  const y = [0, 1, 2].map((k) => Float64Array.from(rows, (i) => p[3 * i + k]));
  const powers = (x: (time: number) => number): Float64Array[] =>
    [2, 3]
      .map((power) => time.map((at) => Math.max(0, x(at)) ** power))
      // one row outside tells the two powers apart no more
      .filter((column) => column.filter((v) => v > 0).length > 1);
  const fits = (start: number, end: number): (LinearFit | undefined)[] => {
    const sides = [
      ...(hasStart ? [powers((x) => start - middle - x)] : []),
      ...(hasEnd ? [powers((x) => x - end + middle)] : []),
    ];
    return y.map((values, k) => {
      const inside = k === 1 ? [one, time, square] : [one, time];
      const all = fitLinear([...inside, ...sides.flat()], values);
      if (!all) return undefined;
      // a force that grows does not first push the other way: where the two powers are at odds, one has to do
      let at = inside.length;
      const kept = sides.map((columns) => {
        const [a, b] = all.coefs.subarray(at, at + columns.length);
        at += columns.length;
        return a * b < 0 ? columns.slice(0, 1) : columns;
      });
      return kept.flat().length === sides.flat().length ? all : fitLinear([...inside, ...kept.flat()], values);
    });
  };
  return {
    left: (start, end) => fits(start, end).reduce((sum, f) => sum + (f?.squares ?? Number.POSITIVE_INFINITY), 0),
    spread(start, end) {
      const all = fits(start, end);
      const squares = all.reduce((sum, f) => sum + (f?.squares ?? 0), 0);
      const wide = Math.max(...all.map((f) => (f ? inflation(f.rest) : 1)));
      return Math.sqrt(squares / Math.max(1, 3 * rows.length - 19)) * wide;
    },
  };
}

interface Found {
  readonly start: number;
  readonly end: number;
  readonly startError: number;
  readonly endError: number;
}

/** Each end over all rows between the middle and the last one that is looked at, then in ever smaller steps. */
function search(course: Course, from: number, to: number, step: number, hasStart: boolean, hasEnd: boolean): Found {
  let start = from;
  let end = to;
  let least = course.left(start, end);
  const tryEnds = (a: number, b: number): boolean => {
    const now = course.left(a, b);
    if (!(now < least)) return false;
    least = now;
    start = a;
    end = b;
    return true;
  };
  const reach = Math.min(LOOK, (to - from) / 2);
  const coarse = Math.max(step, COARSE);
  for (let round = 0; round < 2; round++) {
    if (hasStart) for (let d = 2 * step; d < reach; d += coarse) tryEnds(from + d, end);
    if (hasEnd) for (let d = 2 * step; d < reach; d += coarse) tryEnds(start, to - d);
  }
  for (let move = coarse; move > step / 100; move /= 2)
    for (const side of [-move, move]) {
      while (hasStart && start + side < end - 4 * step && start + side > from && tryEnds(start + side, end));
      while (hasEnd && end + side > start + 4 * step && end + side < to && tryEnds(start, end + side));
    }
  const spread = course.spread(start, end);
  // what is left grows by the variance of a value where an end is one standard error off; from far in, since it may do so in jumps
  const errorOf = (at: (d: number) => number): number => {
    let d = LOOK / 2;
    while (d > step / 16 && Math.min(at(d), at(-d)) - least > spread ** 2) d /= 1.2;
    return d;
  };
  return {
    start,
    end,
    startError: hasStart ? errorOf((d) => course.left(start + d, end)) : 0,
    endError: hasEnd ? errorOf((d) => course.left(start, end + d)) : 0,
  };
}
/** s inward of the last row that is looked at within which an end is sought, and the steps of the first look */
const LOOK = 0.2;
const COARSE = 0.004;
