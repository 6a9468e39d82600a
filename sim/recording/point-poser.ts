/**
 * The pose of the whole body that lies nearest to its markers, in one instant: least squares over all joints at once (global optimisation, Lu &
 * O'Connor 1999, J Biomech 32:129), by damped Gauss-Newton. Joints with three hinges turn by rotation vectors, so that no pose is singular;
 * elbows, wrists, knees and ankles by their hinges; two joints of the spine with no marker between them turn alike. What no marker holds stays
 * where it was.
 */
import type { Body } from '../body/body.ts';
import { solveInPlace } from '../math/linear-solve.ts';
import { applyInto, matOfVectorInto, mulInto } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';

export interface PlacedPoint {
  readonly segment: number;
  readonly at_B: Triple;
}

/** m per rad: pull of a joint to where it was, against a miss of a marker. Far under what a marker's millimetre does. */
const HOLD = 1e-5;
const MOST_STEPS = 30;
/** rad and m: a step under this is the last; the error after it is that times how far the residuals bend, some hundredths */
const CLOSE = 1e-5;

interface Freedom {
  readonly segment: number;
  readonly kind: 'ball' | 'hinge';
  /** first unknown of it; two joints that turn alike share theirs */
  readonly at: number;
  /** first of its axes */
  readonly slot: number;
  /** which hinge of the joint */
  readonly axis: number;
}

export interface PointPoser {
  readonly R_WS: Float64Array; // (nseg x 9)
  readonly p_WSo_W: Float64Array; // (nseg x 3)
  /** root mean square distance of the points given, m, in the pose that the body has now */
  fit(points: Float64Array): number;
  /** neutral pose with this root, and with some joints turned: rotation vectors by segment */
  reset(R_WB: ArrayLike<number>, p_WBo_W: ArrayLike<number>, turned?: ReadonlyMap<number, Triple>): void;
  /** other places of the points on their segments */
  move(points: readonly PlacedPoint[]): void;
  /** a copy of the joints, to come back to */
  save(): Float64Array;
  load(saved: Float64Array): void;
  readonly seen: readonly boolean[]; // (nseg)
}

/** `points`: fixed to segments, in the order of what `fit` is given (NaN: missing there). */
export function makePointPoser(body: Body, points: readonly PlacedPoint[]): PointPoser {
  const n = body.segments.length;
  const parents = body.segments.map((s) => s.parent);
  let placed = points;
  const direct = body.segments.map((_, s) => points.some((p) => p.segment === s));
  const below = direct.slice();
  for (let s = n - 1; s > 0; s--) if (below[s]) below[parents[s]] = true;
  const mid = body.segments.findIndex((s) => s.name === 'middleTrunk');
  const upper = body.segments.findIndex((s) => s.name === 'upperTrunk');
  const isTied = !direct[mid] && below[upper];

  const freedoms: Freedom[] = [];
  let size = 6;
  let slots = 0;
  body.segments.forEach(({ hinges }, s) => {
    if (s === 0 || !below[s]) return;
    const tiedTo = isTied && s === upper ? freedoms.find((f) => f.segment === mid) : undefined;
    if (hinges.length >= 3) {
      freedoms.push({ segment: s, kind: 'ball', at: tiedTo?.at ?? size, slot: slots, axis: 0 });
      if (!tiedTo) size += 3;
      slots += 3;
      return;
    }
    hinges.forEach((_, k) => {
      freedoms.push({ segment: s, kind: 'hinge', at: size, slot: slots, axis: k });
      size++;
      slots++;
    });
  });
  const ownOf = body.segments.map((_, s) => freedoms.filter((f) => f.segment === s));

  const R_WS = new Float64Array(9 * n);
  const p_WSo_W = new Float64Array(3 * n);
  const R_PS = new Float64Array(9 * n);
  /** hinge coordinates of joints with fewer than three, (nseg x 2) */
  const turns = new Float64Array(2 * n);
  /** axes in W of the joints, (slots x 3) */
  const axes = new Float64Array(3 * slots);
  const d = new Float64Array(3);
  const M = new Float64Array(9);
  const N = new Float64Array(9);
  const L = new Float64Array(9);

  const pose = (): void => {
    for (let s = 1; s < n; s++) {
      const p = parents[s];
      const { hinges, p_PoBo_P } = body.segments[s];
      if (hinges.length < 3) {
        R_PS.set([1, 0, 0, 0, 1, 0, 0, 0, 1], 9 * s);
        mulInto(R_WS, 9 * p, R_PS, 9 * s, M, 0);
        hinges.forEach(({ axis }, k) => {
          const f = ownOf[s][k];
          if (f) applyInto(M, 0, axis, 0, axes, 3 * f.slot);
          matOfVectorInto([axis[0] * turns[2 * s + k], axis[1] * turns[2 * s + k], axis[2] * turns[2 * s + k]], N, 0);
          L.set(R_PS.subarray(9 * s, 9 * s + 9));
          mulInto(L, 0, N, 0, R_PS, 9 * s);
          mulInto(R_WS, 9 * p, R_PS, 9 * s, M, 0);
        });
      } else {
        const f = ownOf[s][0];
        // left-multiplied in the parent's frame: its axes are the parent's
        if (f)
          for (let k = 0; k < 3; k++) for (let r = 0; r < 3; r++) axes[3 * (f.slot + k) + r] = R_WS[9 * p + 3 * r + k];
      }
      mulInto(R_WS, 9 * p, R_PS, 9 * s, R_WS, 9 * s);
      applyInto(R_WS, 9 * p, p_PoBo_P, 0, d, 0);
      for (let k = 0; k < 3; k++) p_WSo_W[3 * s + k] = p_WSo_W[3 * p + k] + d[k];
    }
  };

  // for every segment: the freedoms between it and the root, and the joint each turns about
  const chain = body.segments.map((_, s) => {
    const list: { readonly at: number; readonly slot: number; readonly joint: number }[] = [];
    for (let k = s; k > 0; k = parents[k])
      for (const f of ownOf[k]) {
        const columns = f.kind === 'ball' ? 3 : 1;
        for (let c = 0; c < columns; c++) list.push({ at: f.at + c, slot: f.slot + c, joint: k });
      }
    return list;
  });

  const A = new Float64Array(size * size);
  const g = new Float64Array(size);
  const J = new Float64Array(3 * (6 + slots));

  /** what is made least, m2 */
  let cost = 0;
  const accumulate = (target: Float64Array): number => {
    let sum = 0;
    let count = 0;
    A.fill(0);
    g.fill(0);
    for (let k = 0; k < placed.length; k++) {
      const x = target[3 * k];
      if (!Number.isFinite(x)) continue;
      const { segment: s, at_B } = placed[k];
      applyInto(R_WS, 9 * s, at_B, 0, d, 0);
      const px = p_WSo_W[3 * s] + d[0];
      const py = p_WSo_W[3 * s + 1] + d[1];
      const pz = p_WSo_W[3 * s + 2] + d[2];
      const r0 = x - px;
      const r1 = target[3 * k + 1] - py;
      const r2 = target[3 * k + 2] - pz;
      sum += r0 * r0 + r1 * r1 + r2 * r2;
      count++;
      const list = chain[s];
      const width = 6 + list.length;
      // columns: root place, root turn (about its origin, in W), joints
      for (let c = 0; c < 3; c++) {
        J[3 * c] = c === 0 ? 1 : 0;
        J[3 * c + 1] = c === 1 ? 1 : 0;
        J[3 * c + 2] = c === 2 ? 1 : 0;
      }
      const qx = px - p_WSo_W[0];
      const qy = py - p_WSo_W[1];
      const qz = pz - p_WSo_W[2];
      J.set([0, -qz, qy, qz, 0, -qx, -qy, qx, 0], 9);
      for (let c = 0; c < list.length; c++) {
        const { slot, joint } = list[c];
        const ax = axes[3 * slot];
        const ay = axes[3 * slot + 1];
        const az = axes[3 * slot + 2];
        const ex = px - p_WSo_W[3 * joint];
        const ey = py - p_WSo_W[3 * joint + 1];
        const ez = pz - p_WSo_W[3 * joint + 2];
        const o = 3 * (6 + c);
        J[o] = ay * ez - az * ey;
        J[o + 1] = az * ex - ax * ez;
        J[o + 2] = ax * ey - ay * ex;
      }
      for (let a = 0; a < width; a++) {
        const ia = a < 6 ? a : list[a - 6].at;
        const j0 = J[3 * a];
        const j1 = J[3 * a + 1];
        const j2 = J[3 * a + 2];
        g[ia] += j0 * r0 + j1 * r1 + j2 * r2;
        for (let b = a; b < width; b++) {
          const ib = b < 6 ? b : list[b - 6].at;
          const v = j0 * J[3 * b] + j1 * J[3 * b + 1] + j2 * J[3 * b + 2];
          // the upper half alone: columns of one marker come in no order
          if (ia < ib || a === b) A[ia * size + ib] += v;
          else if (ia === ib) A[ia * size + ib] += 2 * v;
          else A[ib * size + ia] += v;
        }
      }
    }
    cost = sum;
    for (let r = 1; r < size; r++) for (let c = 0; c < r; c++) A[r * size + c] = A[c * size + r];
    return count > 0 ? Math.sqrt(sum / count) : Number.NaN;
  };

  const step = (x: Float64Array): void => {
    for (let k = 0; k < 3; k++) p_WSo_W[k] += x[k];
    matOfVectorInto([x[3], x[4], x[5]], M, 0);
    L.set(R_WS.subarray(0, 9));
    mulInto(M, 0, L, 0, R_WS, 0);
    for (const f of freedoms) {
      if (f.kind === 'hinge') {
        turns[2 * f.segment + f.axis] += x[f.at];
        continue;
      }
      matOfVectorInto([x[f.at], x[f.at + 1], x[f.at + 2]], M, 0);
      L.set(R_PS.subarray(9 * f.segment, 9 * f.segment + 9));
      mulInto(M, 0, L, 0, R_PS, 9 * f.segment);
    }
    pose();
  };

  const saveInto = (out: Float64Array): Float64Array => {
    out.set(R_WS.subarray(0, 9));
    out.set(p_WSo_W.subarray(0, 3), 9);
    out.set(R_PS, 12);
    out.set(turns, 12 + 9 * n);
    return out;
  };
  const state = (): Float64Array => saveInto(new Float64Array(12 + 11 * n));
  const load = (saved: Float64Array): void => {
    R_WS.set(saved.subarray(0, 9));
    p_WSo_W.set(saved.subarray(9, 12));
    R_PS.set(saved.subarray(12, 12 + 9 * n));
    turns.set(saved.subarray(12 + 9 * n));
    pose();
  };

  const B = new Float64Array(size * size);
  const before = state();
  const x = new Float64Array(size);
  const fit = (target: Float64Array): number => {
    let damping = 0;
    let miss = accumulate(target);
    for (let k = 0; k < MOST_STEPS; k++) {
      B.set(A);
      x.set(g);
      for (let i = 0; i < size; i++) B[i * size + i] += HOLD * HOLD + damping * (A[i * size + i] + 1e-6);
      if (!solveInPlace(B, x, size)) break;
      let longest = 0;
      for (let i = 0; i < size; i++) longest = Math.max(longest, Math.abs(x[i]));
      // half a radian at a time: further off the straight line says little
      if (longest > 0.5) for (let i = 0; i < size; i++) x[i] *= 0.5 / longest;
      saveInto(before);
      const was = cost;
      step(x);
      const next = accumulate(target);
      if (cost > was * (1 + 1e-12) && longest > 1e-6) {
        load(before);
        miss = accumulate(target);
        damping = damping > 0 ? 8 * damping : 1e-3;
        if (damping > 1e4) break;
        continue;
      }
      miss = next;
      damping = damping > 1e-6 ? damping / 9 : 0;
      if (longest < CLOSE) break;
    }
    return miss;
  };

  const reset = (R: ArrayLike<number>, p: ArrayLike<number>, turned?: ReadonlyMap<number, Triple>): void => {
    R_PS.fill(0);
    for (let s = 0; s < n; s++) for (let k = 0; k < 9; k += 4) R_PS[9 * s + k] = 1;
    for (const [s, vector] of turned ?? []) matOfVectorInto(vector, R_PS, 9 * s);
    turns.fill(0);
    for (let k = 0; k < 9; k++) R_WS[k] = R[k];
    for (let k = 0; k < 3; k++) p_WSo_W[k] = p[k];
    pose();
  };
  reset([1, 0, 0, 0, 1, 0, 0, 0, 1], [0, 0, 0]);
  return {
    R_WS,
    p_WSo_W,
    fit,
    reset,
    move: (points) => {
      placed = points;
    },
    save: state,
    load,
    seen: body.segments.map((_, s) => direct[s] || (s === mid && isTied) || (s === 0 && below[0])),
  };
}
