/**
 * Where a limb passes through the body: how deep arms and legs lie in trunk, head and other limbs, from the volumes that are
 * drawn. Skin gives way and drawn volumes are rough, so a pair is judged by how much deeper it lies than in the neutral pose,
 * and only beyond a threshold. A caution, never an error; no physics is taken from it.
 */

import type { Body, DrawShape } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import type { FromTo } from '../math/from-to.ts';
import { onceFor } from '../math/once-for.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import type { Frames } from './frames.ts';
import { boundOf, calcRodDepth, isNear, ROD, type Rod, rodInto } from './rod-depth.ts';

/** Two segments, one in the other, without a pause. */
export interface Overlap extends FromTo {
  /** the limb, and what it passes through: indices into Body.segments */
  readonly segmentA: number;
  readonly segmentB: number;
  /** m, beyond what they have in the neutral pose */
  readonly deepest: number;
  /** when it is deepest */
  readonly t: number;
}

/** Less than this is skin and clothing, m (judgement). */
const OVERLAP_THRESHOLD = 0.015;
/** Thighs and belly press each other flat in every tuck and pike: this much more, m (judgement). */
const SOFT = 0.05;
/** Looks a second: a limb that crosses another takes longer than a few of these. */
const LOOK_RATE = 60;

interface Pair {
  readonly a: number;
  readonly b: number;
  /** depth at which it is reported, m */
  readonly limit: number;
}

interface Outline {
  readonly pairs: readonly Pair[];
  /** by segment: the rods of a limb, (rods x 8) */
  readonly rods: readonly Float64Array[];
  readonly volumes: readonly (readonly DrawShape[])[];
  /** by segment: (volumes x 4) sphere round each */
  readonly bounds: readonly Float64Array[];
  /** (nseg x 4) sphere round all of a segment's volumes */
  readonly bound: Float64Array;
}

/** Pairs deeper than the threshold, in the order of time. At most LOOK_RATE frames a second are looked at. */
export function calcOverlaps(
  flight: Pick<Flight, 'body'>,
  frames: Pick<Frames, 'n' | 't' | 'q'>,
  threshold = OVERLAP_THRESHOLD,
): Overlap[] {
  const { body } = flight;
  const outline = getOutline(body);
  const sm = makeShapeMotion(getModel(body));
  const nq = sm.q.length;
  const open = new Map<Pair, { from: number; to: number; deepest: number; t: number }>();
  const found: Overlap[] = [];
  const close = (pair: Pair): void => {
    const one = open.get(pair);
    if (one) found.push({ segmentA: pair.a, segmentB: pair.b, ...one });
    open.delete(pair);
  };
  const centres = new Float64Array(3 * body.segments.length);
  let next = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < frames.n; i++) {
    const t = frames.t[i];
    if (t < next && i < frames.n - 1) continue;
    next = t + 1 / LOOK_RATE - 1e-6;
    for (let k = 0; k < nq; k++) sm.q[k] = frames.q[i * nq + k];
    calcShapeMotion(sm);
    boundsInto(sm, outline.bound, centres);
    for (const pair of outline.pairs) {
      const limit = pair.limit + threshold;
      const depth = areNear(outline.bound, centres, pair.a, pair.b, limit)
        ? calcDepth(outline, sm, pair.a, pair.b, limit)
        : 0;
      if (depth <= limit) {
        if (open.size > 0) close(pair);
        continue;
      }
      const beyond = depth - pair.limit;
      const one = open.get(pair);
      if (!one) open.set(pair, { from: t, to: t, deepest: beyond, t });
      else {
        one.to = t;
        if (beyond > one.deepest) [one.deepest, one.t] = [beyond, t];
      }
    }
  }
  for (const pair of [...open.keys()]) close(pair);
  return found.sort((a, b) => a.from - b.from || b.deepest - a.deepest);
}

const getOutline = onceFor(makeOutline);

function makeOutline(body: Body): Outline {
  const { segments } = body;
  // fingers bend round what they hold: of a hand only the palm, its first volume, counts
  const volumes = segments.map((s) =>
    body.neutralHuman && s.name.startsWith('hand') ? s.shapes.slice(0, 1) : s.shapes,
  );
  const isLimb = segments.map((s) => s.group !== 'upper');
  const rods = volumes.map((list, i) => (isLimb[i] ? rodsOf(list) : new Float64Array(0)));
  const bound = Float64Array.from(volumes.flatMap(boundAll));
  const sm = makeShapeMotion(getModel(body));
  calcShapeMotion(sm);
  const bounds = volumes.map((list) => Float64Array.from(list.flatMap(boundOf)));
  const rough = { pairs: [], rods, volumes, bounds, bound };
  const pairs: Pair[] = [];
  segments.forEach((A, a) => {
    if (!isLimb[a] || volumes[a].length === 0) return;
    segments.forEach((B, b) => {
      if (a === b || volumes[b].length === 0 || A.parent === b || B.parent === a) return;
      // of two limbs an arm is said to pass through a leg, else the later segment through the earlier
      const order = (i: number): number => i + (segments[i].group === 'arms' ? segments.length : 0);
      if (isLimb[b] && order(b) > order(a)) return;
      const neutral = Math.max(0, calcDepth(rough, sm, a, b, Number.NEGATIVE_INFINITY));
      const soft = A.group === 'legs' && B.group === 'upper' ? SOFT : 0;
      pairs.push({ a, b, limit: neutral + soft });
    });
  });
  return { ...rough, pairs };
}

/** The rods of a limb: axis and radii of its capsules; an ellipsoid of a limb counts as a rod along its longest axis. */
function rodsOf(list: readonly DrawShape[]): Float64Array {
  return Float64Array.from(
    list.flatMap((s) => {
      if (s.kind === 'capsule') return [...s.a_B, ...s.b_B, s.radiusA, s.radiusB];
      const long = s.radii.indexOf(Math.max(...s.radii));
      const r = Math.min(...s.radii);
      const end = (sign: number): number[] => s.centre_B.map((c, k) => c + (k === long ? sign * (s.radii[k] - r) : 0));
      return [...end(-1), ...end(1), r, r];
    }),
  );
}

/** [x, y, z, r] of a sphere round all the volumes of a segment. */
function boundAll(list: readonly DrawShape[]): number[] {
  if (list.length === 0) return [0, 0, 0, 0];
  const each = list.map(boundOf);
  const c = [0, 1, 2].map((k) => {
    const low = Math.min(...each.map((b) => b[k] - b[3]));
    const high = Math.max(...each.map((b) => b[k] + b[3]));
    return (low + high) / 2;
  });
  return [...c, Math.max(...each.map((b) => Math.hypot(b[0] - c[0], b[1] - c[1], b[2] - c[2]) + b[3]))];
}

function boundsInto(sm: ShapeMotion, bound: Float64Array, centres: Float64Array): void {
  const { R_BS: R, p_BoSo_B: p } = sm;
  for (let i = 0; 3 * i < centres.length; i++) {
    const [x, y, z] = [bound[4 * i], bound[4 * i + 1], bound[4 * i + 2]];
    for (let k = 0; k < 3; k++) {
      const o = 9 * i + 3 * k;
      centres[3 * i + k] = p[3 * i + k] + R[o] * x + R[o + 1] * y + R[o + 2] * z;
    }
  }
}

function areNear(bound: Float64Array, c: Float64Array, a: number, b: number, limit: number): boolean {
  const reach = bound[4 * a + 3] + bound[4 * b + 3] - limit;
  if (reach <= 0) return false;
  const x = c[3 * a] - c[3 * b];
  const y = c[3 * a + 1] - c[3 * b + 1];
  const z = c[3 * a + 2] - c[3 * b + 2];
  return x * x + y * y + z * z < reach * reach;
}

const rod: Rod = new Float64Array(ROD);

/** Deepest overlap of the rods of a in the volumes of b, m; what is not deeper than `least` may be passed over. */
function calcDepth(outline: Outline, sm: ShapeMotion, a: number, b: number, least: number): number {
  const rods = outline.rods[a];
  const volumes = outline.volumes[b];
  const bounds = outline.bounds[b];
  let deepest = least;
  for (let i = 0; i < rods.length; i += ROD) {
    rodInto(sm, a, rods, i, b, rod);
    for (let k = 0; k < volumes.length; k++)
      if (isNear(rod, bounds, 4 * k, deepest)) deepest = Math.max(deepest, calcRodDepth(rod, volumes[k]));
  }
  return deepest;
}
