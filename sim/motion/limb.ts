/**
 * A limb as a chain of hinges from the root to one end that can be taken hold of: where the end is, and how it moves when
 * the limb's own angles change. All places in the root frame B, SI, radians.
 */
import type { Body, ShoulderAngles, Vec3 } from '../body/body.ts';
import { FieldError } from '../math/field-error.ts';
import { applyInto, matOfVectorInto, mulInto } from '../math/rot.ts';

/** Ends of a human; of another tree any segment by its name. */
export const HUMAN_ENDS = ['handL', 'handR', 'elbowL', 'elbowR', 'footL', 'footR', 'kneeL', 'kneeR', 'head'] as const;

export interface Limb {
  readonly body: Body;
  readonly end: string;
  /** segments from the root to the one that carries the end */
  readonly path: readonly number[];
  /** place in `path` from which the segments are the limb's own */
  readonly own: number;
  /** the end, in the frame of the last segment of the path */
  readonly p_SoE_S: Vec3;
  /** own angles that move; the plane and elevation of a shoulder are moved together, as a direction */
  readonly angles: readonly number[];
  /** how readily each of `angles` moves: the share of a step it takes */
  readonly ease: readonly number[];
  readonly shoulder?: ShoulderAngles;
  /** the hinge that alone sets how far the end is from the limb's start: elbow or knee */
  readonly middle?: number;
  // filled by placeLimb
  readonly R_BS: Float64Array; // (path x 9)
  readonly p_BoSo_B: Float64Array; // (path x 3)
  readonly axis_B: Float64Array; // (hinges of the path x 3)
  readonly p_BoE_B: Float64Array; // (3)
}

interface End {
  readonly segment: string;
  readonly point: Vec3 | { readonly contact: string } | 'centre';
  readonly moves: readonly (readonly [string, number])[];
  readonly middle?: string;
}

/** Neck before chest before loins: the head leads and the back follows. */
const BACK: End['moves'] = [
  ['neckFlexion', 1],
  ['neckSideBend', 1],
  ['thoracicFlexion', 0.4],
  ['thoracicSideBend', 0.4],
  ['lumbarFlexion', 0.4],
  ['lumbarSideBend', 0.4],
];

function humanEnd(end: string): End | undefined {
  if (end === 'head') return { segment: 'head', point: 'centre', moves: BACK };
  const s = end.slice(-1);
  const of = (names: Readonly<Record<string, number>>): End['moves'] =>
    Object.entries(names).map(([n, ease]) => [n + s, ease] as const);
  const origin: Vec3 = [0, 0, 0];
  const arm = { shoulderPlane: 1, shoulderElevation: 1 };
  switch (end.slice(0, -1)) {
    case 'hand':
      return {
        segment: end,
        point: { contact: `knuckle${s}` },
        moves: of({ ...arm, shoulderTurn: 0.6, elbowFlexion: 1 }),
        middle: `elbowFlexion${s}`,
      };
    case 'elbow':
      return { segment: `forearm${s}`, point: origin, moves: of(arm) };
    case 'foot':
      return {
        segment: end,
        point: origin,
        moves: of({ hipFlexion: 1, hipAbduction: 0.7, hipTurn: 0.3, kneeFlexion: 1 }),
        middle: `kneeFlexion${s}`,
      };
    case 'knee':
      return { segment: `shank${s}`, point: origin, moves: of({ hipFlexion: 1, hipAbduction: 1 }) };
    default:
      return undefined;
  }
}

const made = new WeakMap<Body, Map<string, Limb>>();

/** The limb of an end, made once for each body. */
export function getLimb(body: Body, end: string): Limb {
  const known = made.get(body) ?? new Map<string, Limb>();
  made.set(body, known);
  const limb = known.get(end) ?? makeLimb(body, end);
  known.set(end, limb);
  return limb;
}

function makeLimb(body: Body, end: string): Limb {
  const human = body.neutralHuman ? humanEnd(end) : undefined;
  const last = body.segments.findIndex((s) => s.name === (human?.segment ?? end));
  if (last < 0) {
    const allowed = body.neutralHuman ? HUMAN_ENDS : body.segments.map((s) => s.name);
    throw new FieldError('end', end, `one of ${allowed.join(', ')}`);
  }
  const path: number[] = [];
  for (let i = last; i >= 0; i = body.segments[i].parent) path.unshift(i);
  const children = (i: number): number => body.segments.filter((s) => s.parent === i).length;
  // up to the first branching
  let own = path.length - 1;
  while (own > 1 && children(path[own - 1]) === 1) own--;
  const anglesOf = (i: number): number[] => body.segments[i].hinges.flatMap((h) => h.terms.map((t) => t.angle));
  const named = human?.moves.map(([n, ease]) => [body.angles.findIndex((a) => a.name === n), ease] as const);
  const moves = named ?? [...new Set(path.slice(Math.max(own, 0)).flatMap(anglesOf))].map((a) => [a, 1] as const);
  if (moves.length === 0)
    throw new FieldError('end', end, 'a segment that hinges let move against the place where it branches off');
  const isOwn = (a: number): boolean => moves.some(([m]) => m === a);
  own = path.findIndex((i) => anglesOf(i).some(isOwn));
  const shoulder = body.shoulders.find((s) => isOwn(s.plane));
  const free = moves.filter(([a]) => a !== shoulder?.plane && a !== shoulder?.elevation);
  const segment = body.segments[last];
  const point = human?.point ?? 'centre';
  const contact = typeof point === 'object' && 'contact' in point ? point.contact : undefined;
  const p_SoE_S =
    point === 'centre'
      ? segment.p_BoBcm_B
      : (body.contacts.find((c) => c.name === contact)?.p_BoC_B ?? (point as Vec3));
  const middle = body.angles.findIndex((a) => a.name === human?.middle);
  const hinges = path.reduce((sum, i) => sum + body.segments[i].hinges.length, 0);
  const limb: Limb = {
    body,
    end,
    path,
    own,
    p_SoE_S,
    angles: free.map(([a]) => a),
    ease: free.map(([, ease]) => ease),
    ...(shoulder ? { shoulder } : {}),
    ...(middle >= 0 ? { middle } : {}),
    R_BS: new Float64Array(9 * path.length),
    p_BoSo_B: new Float64Array(3 * path.length),
    axis_B: new Float64Array(3 * hinges),
    p_BoE_B: new Float64Array(3),
  };
  limb.R_BS[0] = limb.R_BS[4] = limb.R_BS[8] = 1;
  return limb;
}

const turn = new Float64Array(9);
const by = [0, 0, 0];

/** Fills the limb from all the body's angles; `from`: place in the path below which nothing has changed since. */
export function placeLimb(limb: Limb, angles: ArrayLike<number>, from = 1): void {
  const { body, path, R_BS: R, p_BoSo_B: p, axis_B } = limb;
  let hinge = 0;
  for (let i = 0; i < path.length; i++) {
    const segment = body.segments[path[i]];
    const { hinges } = segment;
    if (i < Math.max(from, 1)) {
      hinge += hinges.length;
      continue;
    }
    const o = 9 * i;
    applyInto(R, o - 9, segment.p_PoBo_P, 0, p, 3 * i);
    for (let k = 0; k < 3; k++) p[3 * i + k] += p[3 * i - 3 + k];
    for (let k = 0; k < 9; k++) R[o + k] = R[o - 9 + k];
    for (const { axis, terms } of hinges) {
      applyInto(R, o, axis, 0, axis_B, 3 * hinge++);
      let x = 0;
      for (const term of terms) x += term.coef * angles[term.angle];
      if (x === 0) continue;
      for (let k = 0; k < 3; k++) by[k] = x * axis[k];
      matOfVectorInto(by, turn, 0);
      mulInto(R, o, turn, 0, R, o);
    }
  }
  const last = path.length - 1;
  applyInto(R, 9 * last, limb.p_SoE_S, 0, limb.p_BoE_B, 0);
  for (let k = 0; k < 3; k++) limb.p_BoE_B[k] += p[3 * last + k];
}

/** Adds to out (3) how the end moves when hinge `h` of the path's segment `i` turns, times `coef`. */
export function addSwing(limb: Limb, i: number, axis: ArrayLike<number>, o: number, coef: number, out: number[]): void {
  const { p_BoE_B: e, p_BoSo_B: p } = limb;
  const [x, y, z] = [e[0] - p[3 * i], e[1] - p[3 * i + 1], e[2] - p[3 * i + 2]];
  out[0] += coef * (axis[o + 1] * z - axis[o + 2] * y);
  out[1] += coef * (axis[o + 2] * x - axis[o] * z);
  out[2] += coef * (axis[o] * y - axis[o + 1] * x);
}
