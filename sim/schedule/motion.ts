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

/** A run of so many times less than there are already is put in one by one. */
const FEW = 16;

/** The times in ascending order without those within SAME_TIME of one already there. Most are repeats. */
export function mergeTimes(times: readonly number[]): number[] {
  let out: number[] = [];
  let start = 0;
  while (start < times.length) {
    let end = start + 1;
    while (end < times.length && times[end] >= times[end - 1]) end++;
    if ((end - start) * FEW < out.length) for (let i = start; i < end; i++) putTime(out, times[i]);
    else out = joinRun(out, times, start, end);
    start = end;
  }
  return out;
}

function putTime(out: number[], t: number): void {
  const i = countUpTo(out, t);
  if ((i > 0 && t - out[i - 1] <= SAME_TIME) || (i < out.length && out[i] - t <= SAME_TIME)) return;
  out.splice(i, 0, t);
}

/** The same for an ascending run, in one walk along both. */
function joinRun(known: readonly number[], times: readonly number[], start: number, end: number): number[] {
  const out: number[] = [];
  let k = 0;
  for (let i = start; i < end; i++) {
    const t = times[i];
    while (k < known.length && known[k] <= t) out.push(known[k++]);
    if ((out.length > 0 && t - out[out.length - 1] <= SAME_TIME) || (k < known.length && known[k] - t <= SAME_TIME))
      continue;
    out.push(t);
  }
  while (k < known.length) out.push(known[k++]);
  return out;
}

/** A track with the span that was found last: cells are mostly asked for one after another. */
interface Walked {
  readonly track: Track;
  last: number;
}

/** Index of the span that holds t: -1 before the first. */
function spanAt(walked: Walked, t: number): number {
  const { times } = walked.track;
  let i = walked.last;
  if (i + 1 < times.length && times[i + 1] <= t) i++;
  if ((i >= 0 && times[i] > t) || (i + 1 < times.length && times[i + 1] <= t)) i = countUpTo(times, t) - 1;
  walked.last = i;
  return i;
}

/** Adds the track to the power series at o of a cell that begins at `start`. */
function addTrack(table: Float64Array, o: number, start: number, middle: number, walked: Walked): void {
  const { track } = walked;
  const i = spanAt(walked, middle);
  if (i < 0) table[o] += track.before;
  else if (i === track.times.length - 1) table[o] += track.after;
  else addShifted(table, o, track.coefs, i * COEFS, start - track.times[i]);
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

/** Between two neighbouring span ends: made when it is first looked at, since a flight that is sought looks at few. */
interface Cell {
  /** hinge coordinates of what does not move, then the power series of each angle that ever moves */
  readonly data: Float64Array;
  /** which of these move here */
  readonly columns: readonly number[];
  readonly stirs: boolean;
}

/** What a schedule is made of: plain data, which a thread can be sent. */
export interface MotionData {
  /** of each named angle; they add up */
  readonly tracks: readonly (readonly Track[])[];
  /** ends of cells, ascending */
  readonly grid: readonly number[];
  readonly breaks: readonly number[];
}

const made = new WeakMap<Schedule, MotionData>();

/** What it was made of; undefined for one that reacts to the state. */
export const motionOf = (schedule: Schedule): MotionData | undefined => made.get(schedule);

/** Schedule from the tracks of each named angle; an angle's tracks add up. */
export function makeMotion(body: JointedBody, tracks: readonly (readonly Track[])[]): Schedule {
  // cells: every span end of a moving track; smooth inner knots cut cells but are no breaks
  const cuts: number[] = [];
  const breakTimes: number[] = [];
  for (const list of tracks)
    for (const track of list) {
      if (isConstant(track)) continue;
      for (const t of track.times) cuts.push(t);
      for (const t of track.breaks) breakTimes.push(t);
    }
  return scheduleOf(body, { tracks, grid: mergeTimes(cuts), breaks: mergeTimes(breakTimes) });
}

/** The schedule that was made of this. */
export function scheduleOf(body: JointedBody, data: MotionData): Schedule {
  const { tracks, grid, breaks } = data;
  const nA = body.angles.length;
  const uses = getUses(body);
  const nH = uses.hinges;
  const cells = grid.length + 1;

  // one column for each angle that ever moves; the rest are constants
  const rest = new Float64Array(nA);
  const movers: number[] = [];
  tracks.forEach((list, a) => {
    if (list.every(isConstant)) for (const track of list) rest[a] += track.before;
    else movers.push(a);
  });
  const nM = movers.length;
  const moved = movers.map((a) => tracks[a].map((track): Walked => ({ track, last: -1 })));

  const addConstant = (q0: Float64Array, a: number, value: number): void => {
    for (let u = uses.start[a]; u < uses.start[a + 1]; u++) q0[uses.hinge[u]] += uses.coef[u] * value;
  };
  const still = new Float64Array(nH);
  for (let a = 0; a < nA; a++) if (rest[a] !== 0) addConstant(still, a, rest[a]);

  const known: (Cell | undefined)[] = new Array(cells);
  function cellOf(c: number): Cell {
    const found = known[c];
    if (found) return found;
    const start = c === 0 ? Number.NEGATIVE_INFINITY : grid[c - 1];
    // the middle of the cell decides, so that ends merged within SAME_TIME cannot pick the wrong span
    const middle = c === 0 ? start : c === grid.length ? Number.POSITIVE_INFINITY : (start + grid[c]) / 2;
    const data = new Float64Array(nH + nM * COEFS);
    data.set(still);
    const columns: number[] = [];
    let stirs = false;
    for (let m = 0; m < nM; m++) {
      const o = nH + m * COEFS;
      for (const walked of moved[m]) addTrack(data, o, start, middle, walked);
      let k = 1;
      while (k < COEFS && data[o + k] === 0) k++;
      if (k < COEFS) columns.push(m);
      else addConstant(data, movers[m], data[o]);
      if (k < COEFS && !stirs) stirs = reachOf(data, o, grid[c] - grid[c - 1]) > STILL;
    }
    const cell = { data, columns, stirs };
    known[c] = cell;
    return cell;
  }

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

  let moving: readonly (readonly [number, number])[] | undefined;
  const schedule: Schedule = {
    hinges: nH,
    breaks,
    get moving() {
      moving ??= mergeSpans(
        grid.slice(1).flatMap((to, i): [number, number][] => (cellOf(i + 1).stirs ? [[grid[i], to]] : [])),
      );
      return moving;
    },
    movesIn(from, to) {
      // the run of cells that move one after another, as far as it has been walked
      let begun = Number.NaN;
      for (let c = Math.max(1, countUpTo(gridTimes, from, cells - 1)); c < cells - 1 && grid[c - 1] < to; c++) {
        if (!cellOf(c).stirs) begun = Number.NaN;
        else {
          if (Number.isNaN(begun)) begun = grid[c - 1];
          if (Math.min(grid[c], to) - Math.max(begun, from) > SAME_TIME) return true;
        }
      }
      return false;
    },
    evalInto(t, q, qd, qdd) {
      const c = cellAt(t);
      const { data, columns } = cellOf(c);
      for (let h = 0; h < nH; h++) {
        q[h] = data[h];
        qd[h] = 0;
        qdd[h] = 0;
      }
      if (columns.length === 0) return;
      const x = t - gridTimes[c - 1];
      for (let i = 0; i < columns.length; i++) {
        const m = columns[i];
        const a = movers[m];
        const o = nH + m * COEFS;
        const c1 = data[o + 1];
        const c2 = data[o + 2];
        const c3 = data[o + 3];
        const c4 = data[o + 4];
        const c5 = data[o + 5];
        const c6 = data[o + 6];
        const v = data[o] + x * (c1 + x * (c2 + x * (c3 + x * (c4 + x * (c5 + x * c6)))));
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
      const { data } = cellOf(c);
      const x = c === 0 ? 0 : t - gridTimes[c - 1];
      for (let a = 0; a < nA; a++) {
        angles[a] = rest[a];
        rates[a] = 0;
      }
      for (let m = 0; m < nM; m++) {
        const o = nH + m * COEFS;
        let v = data[o + COEFS - 1];
        let d = 0;
        for (let k = COEFS - 2; k >= 0; k--) {
          d = d * x + v;
          v = v * x + data[o + k];
        }
        angles[movers[m]] = v;
        rates[movers[m]] = d;
      }
    },
  };
  made.set(schedule, data);
  return schedule;
}
