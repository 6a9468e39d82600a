/**
 * The evaluated form of a schedule. Time is cut at every span end of every moving angle into cells; in a cell each
 * moving angle is one power series (degree <= 6) in the time since the cell's start, and the rest is a table of
 * constants. A look-up is one cell search with a remembered index and a pass over the moving angles.
 */
import { onceFor } from '../math/once-for.ts';
import { countUpTo } from '../math/sorted.ts';
import type { JointedBody } from './jointed-body.ts';
import type { Schedule } from './schedule.ts';
import { COEFS, isConstant, type Track } from './track.ts';

/** times closer than this are one time, s */
export const SAME_TIME = 1e-9;

/** The times in ascending order without those within SAME_TIME of one already there. Most are repeats. */
export function mergeTimes(times: readonly number[]): number[] {
  const out: number[] = [];
  for (const t of times) {
    const i = countUpTo(out, t);
    if ((i > 0 && t - out[i - 1] <= SAME_TIME) || (i < out.length && out[i] - t <= SAME_TIME)) continue;
    out.splice(i, 0, t);
  }
  return out;
}

/** Adds the track to one column of the (cell x column x COEFS) table. */
function addTrack(table: Float64Array, columns: number, column: number, grid: readonly number[], track: Track): void {
  const { times, coefs } = track;
  const last = times.length - 1;
  let i = -1;
  for (let cell = 0; cell <= grid.length; cell++) {
    const o = (cell * columns + column) * COEFS;
    // the middle of the cell decides, so that ends merged within SAME_TIME cannot pick the wrong span
    const start = cell === 0 ? Number.NEGATIVE_INFINITY : grid[cell - 1];
    const middle = cell === 0 ? start : cell === grid.length ? Number.POSITIVE_INFINITY : (start + grid[cell]) / 2;
    while (i < last && times[i + 1] <= middle) i++;
    if (i < 0) table[o] += track.before;
    else if (i === last) table[o] += track.after;
    else addShifted(table, o, coefs, i * COEFS, start - times[i]);
  }
}

/** table[o..] += the power series coefs[p..] re-centred by `shift` (repeated synthetic division). */
function addShifted(table: Float64Array, o: number, coefs: ArrayLike<number>, p: number, shift: number): void {
  if (shift === 0) {
    for (let k = 0; k < COEFS; k++) table[o + k] += coefs[p + k];
    return;
  }
  for (let k = 0; k < COEFS; k++) shifted[k] = coefs[p + k];
  for (let k = 0; k < COEFS - 1; k++) for (let j = COEFS - 2; j >= k; j--) shifted[j] += shift * shifted[j + 1];
  for (let k = 0; k < COEFS; k++) table[o + k] += shifted[k];
}
const shifted = new Float64Array(COEFS);

/** Where each named angle goes: hinge indices and coefficients, hinges counted segment by segment. */
interface Uses {
  readonly start: Int32Array;
  readonly hinge: Int32Array;
  readonly coef: Float64Array;
  readonly hinges: number;
}
const getUses = onceFor(tabulateUses);

function tabulateUses(body: JointedBody): Uses {
  const uses: { hinge: number; coef: number }[][] = body.angles.map(() => []);
  let hinges = 0;
  for (const segment of body.segments)
    for (const hinge of segment.hinges) {
      for (const term of hinge.terms) uses[term.angle].push({ hinge: hinges, coef: term.coef });
      hinges++;
    }
  const flat = uses.flat();
  const start = new Int32Array(uses.length + 1);
  uses.forEach((list, a) => {
    start[a + 1] = start[a] + list.length;
  });
  return { start, hinge: Int32Array.from(flat, (u) => u.hinge), coef: Float64Array.from(flat, (u) => u.coef), hinges };
}

/** Joins touching spans. */
function mergeSpans(spans: [number, number][]): [number, number][] {
  spans.sort((a, b) => a[0] - b[0]);
  const out: [number, number][] = [];
  for (const span of spans) {
    const last = out[out.length - 1];
    if (last && span[0] - last[1] <= SAME_TIME) last[1] = Math.max(last[1], span[1]);
    else out.push([span[0], span[1]]);
  }
  return out;
}

/** rad: less is no move but the rounding of one, as of a hand that holds a leg at rest */
const STILL = 1e-9;

/** A bound of how far a span's series goes from its start within h. */
function reachOf(table: Float64Array, o: number, h: number): number {
  let reach = 0;
  for (let k = COEFS - 1; k >= 1; k--) reach = (reach + Math.abs(table[o + k])) * h;
  return reach;
}

/** Schedule from the tracks of each named angle; an angle's tracks add up. */
export function makeMotion(body: JointedBody, tracks: readonly (readonly Track[])[]): Schedule {
  const nA = body.angles.length;
  const uses = getUses(body);
  const nH = uses.hinges;

  // cells: every span end of a moving track; smooth inner knots cut cells but are no breaks
  const cuts: number[] = [];
  const breakTimes: number[] = [];
  for (const list of tracks)
    for (const track of list) {
      if (isConstant(track)) continue;
      for (const t of track.times) cuts.push(t);
      for (const t of track.breaks) breakTimes.push(t);
    }
  const grid = mergeTimes(cuts);
  const cells = grid.length + 1;
  const breaks = mergeTimes(breakTimes);

  // one column for each angle that ever moves; the rest are constants
  const rest = new Float64Array(nA);
  const movers: number[] = [];
  tracks.forEach((list, a) => {
    if (list.every(isConstant)) for (const track of list) rest[a] += track.before;
    else movers.push(a);
  });
  const nM = movers.length;
  const table = new Float64Array(cells * nM * COEFS);
  movers.forEach((a, m) => {
    for (const track of tracks[a]) addTrack(table, nM, m, grid, track);
  });

  // which columns move in each cell, and the hinge constants of what does not
  const moveStart = new Int32Array(cells + 1);
  const moveColumn = new Int32Array(cells * nM);
  const q0 = new Float64Array(cells * nH);
  const addConstant = (c: number, a: number, value: number): void => {
    for (let u = uses.start[a]; u < uses.start[a + 1]; u++) q0[c * nH + uses.hinge[u]] += uses.coef[u] * value;
  };
  for (let a = 0; a < nA; a++) if (rest[a] !== 0) for (let c = 0; c < cells; c++) addConstant(c, a, rest[a]);
  const spans: [number, number][] = [];
  let count = 0;
  for (let c = 0; c < cells; c++) {
    moveStart[c] = count;
    let stirs = false;
    for (let m = 0; m < nM; m++) {
      const o = (c * nM + m) * COEFS;
      let k = 1;
      while (k < COEFS && table[o + k] === 0) k++;
      if (k < COEFS) moveColumn[count++] = m;
      else addConstant(c, movers[m], table[o]);
      if (k < COEFS && !stirs) stirs = reachOf(table, o, grid[c] - grid[c - 1]) > STILL;
    }
    if (stirs) spans.push([grid[c - 1], grid[c]]);
  }
  moveStart[cells] = count;

  const gridTimes = Float64Array.from(grid);
  let remembered = 0;
  /** cell that holds t; a cell owns its start, so a look-up at a jump sees what comes after it */
  function cellAt(t: number): number {
    let c = remembered;
    if (c > 0 && t < gridTimes[c - 1]) c = -1;
    else if (c < cells - 1 && t >= gridTimes[c]) c = c + 1 < cells - 1 && t >= gridTimes[c + 1] ? -1 : c + 1;
    if (c < 0) c = countUpTo(gridTimes, t, cells - 1);
    remembered = c;
    return c;
  }

  return {
    hinges: nH,
    breaks,
    moving: mergeSpans(spans),
    evalInto(t, q, qd, qdd) {
      const c = cellAt(t);
      const base = c * nH;
      for (let h = 0; h < nH; h++) {
        q[h] = q0[base + h];
        qd[h] = 0;
        qdd[h] = 0;
      }
      const end = moveStart[c + 1];
      if (end === moveStart[c]) return;
      const x = t - gridTimes[c - 1];
      for (let i = moveStart[c]; i < end; i++) {
        const m = moveColumn[i];
        const a = movers[m];
        const o = (c * nM + m) * COEFS;
        const c1 = table[o + 1];
        const c2 = table[o + 2];
        const c3 = table[o + 3];
        const c4 = table[o + 4];
        const c5 = table[o + 5];
        const c6 = table[o + 6];
        const v = table[o] + x * (c1 + x * (c2 + x * (c3 + x * (c4 + x * (c5 + x * c6)))));
        const d = c1 + x * (2 * c2 + x * (3 * c3 + x * (4 * c4 + x * (5 * c5 + x * 6 * c6))));
        const dd = 2 * c2 + x * (6 * c3 + x * (12 * c4 + x * (20 * c5 + x * 30 * c6)));
        const stop = uses.start[a + 1];
        for (let u = uses.start[a]; u < stop; u++) {
          const h = uses.hinge[u];
          const k = uses.coef[u];
          q[h] += k * v;
          qd[h] += k * d;
          qdd[h] += k * dd;
        }
      }
    },
    anglesInto(t, angles, rates) {
      const c = cellAt(t);
      const x = c === 0 ? 0 : t - gridTimes[c - 1];
      for (let a = 0; a < nA; a++) {
        angles[a] = rest[a];
        rates[a] = 0;
      }
      for (let m = 0; m < nM; m++) {
        const o = (c * nM + m) * COEFS;
        let v = table[o + COEFS - 1];
        let d = 0;
        for (let k = COEFS - 2; k >= 0; k--) {
          d = d * x + v;
          v = v * x + table[o + k];
        }
        angles[movers[m]] = v;
        rates[movers[m]] = d;
      }
    },
  };
}
