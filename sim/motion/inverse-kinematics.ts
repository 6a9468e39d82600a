/**
 * Posing by hand: the angles that bring one end of a limb to a place, by damped least squares over the limb's own angles
 * within their ranges (Wampler 1986, IEEE Trans SMC 16:93; Nakamura & Hanafusa 1986, J Dyn Syst Meas Control 108:163; both from
 * memory). Small changes are preferred; the answer depends on the pose it starts from and on nothing else. Places in the
 * root frame B.
 */
import type { Body, Vec3 } from '../body/body.ts';
import { dot, type Triple } from '../math/vec3.ts';
import { type ArmRange, armRange, swingArm } from './arm-direction.ts';
import { addSwing, getLimb, type Limb, placeLimb } from './limb.ts';
import { withinLength } from './limb-length.ts';

interface ReachTarget {
  /** handL, handR, elbowL, elbowR, footL, footR, kneeL, kneeR, head; of another tree a segment's name */
  readonly end: string;
  readonly p_BoE_B: Vec3;
  /** the view looks along this (unit vector): the end keeps its depth, and leaves it only to reach the place seen */
  readonly view_B?: Vec3;
  /** the other side does the same */
  readonly mirror?: boolean;
}

interface Reach {
  /** all angles of the body; those of other limbs as they were */
  readonly angles: number[];
  readonly reached: boolean;
  /** from the end to the place asked for, m; with a view, as seen in it */
  readonly distance: number;
}

/** Nearer than this, m, the place is reached. */
const REACHED = 1e-3;
const CLOSE = 1e-8;
const MOST_STEPS = 40;
/** What a miss in depth counts against a miss that is seen, once both cannot be had. */
const DEPTH_WEIGHT = 0.02;

/** The angles (rad) that bring the end of a limb to a place in the root frame (m), and how far it stays from it; within the ranges of the joints. */
export function reachTo(body: Body, angles: ArrayLike<number>, target: ReachTarget): Reach {
  const limb = getLimb(body, target.end);
  placeLimb(limb, angles);
  const wanted: Triple = [...target.p_BoE_B];
  const view = target.view_B;
  if (view) {
    const [x, y, z] = limb.p_BoE_B;
    const depth = dot([x - wanted[0], y - wanted[1], z - wanted[2]], view);
    for (let k = 0; k < 3; k++) wanted[k] += depth * view[k];
  }
  let best = solve(limb, angles, wanted);
  if (best.miss > REACHED)
    for (const start of otherStarts(limb, angles)) {
      const found = solve(limb, start, wanted, angles);
      if (found.miss < best.miss - REACHED) best = found;
    }
  if (view && best.miss > REACHED) best = solve(limb, best.angles, wanted, angles, view);
  const distance = missOf(limb, best.angles, wanted, view);
  if (target.mirror) mirrorInto(limb, best.angles);
  return { angles: best.angles, reached: distance <= REACHED, distance };
}

/** For many calls in a row from a pose near the answer, as along a contact: no other starts, no view. */
export function follow(limb: Limb, angles: ArrayLike<number>, wanted: Vec3): Reach {
  placeLimb(limb, angles);
  const { angles: found, miss } = solve(limb, angles, [...wanted]);
  return { angles: found, reached: miss <= REACHED, distance: miss };
}

/** Copies the limb's angles to the other side. */
function mirrorInto(limb: Limb, angles: number[]): void {
  const { body, shoulder } = limb;
  for (const a of [...limb.angles, ...(shoulder ? [shoulder.plane, shoulder.elevation] : [])]) {
    const { mirror, mirrorSign } = body.angles[a];
    if (mirror !== a) angles[mirror] = mirrorSign * angles[a];
  }
}

function missOf(limb: Limb, angles: ArrayLike<number>, wanted: Triple, view?: Vec3): number {
  placeLimb(limb, angles, limb.own);
  const [x, y, z] = limb.p_BoE_B;
  const r: Triple = [wanted[0] - x, wanted[1] - y, wanted[2] - z];
  const depth = view ? dot(r, view) : 0;
  return Math.sqrt(Math.max(0, dot(r, r) - depth * depth));
}

/** Poses to try from when the first try ends away from the place: straight behind a limb there is no way to fall. */
function otherStarts(limb: Limb, angles: ArrayLike<number>): number[][] {
  const starts: number[][] = [];
  if (limb.shoulder)
    for (const [plane, elevation] of [
      [Math.PI / 2, Math.PI / 2],
      [0, 2],
      [-0.7, 2.4],
    ]) {
      const start = Array.from(angles);
      start[limb.shoulder.plane] = plane;
      start[limb.shoulder.elevation] = elevation;
      start[limb.shoulder.turn] = 0;
      starts.push(start);
    }
  else {
    const middle = Array.from(angles);
    for (const a of limb.angles) {
      const [low, high] = limb.body.angles[a].range;
      middle[a] = Number.isFinite(low + high) ? (2 * low + 3 * high) / 5 : angles[a] + 0.5;
    }
    starts.push(middle);
  }
  return starts;
}

interface Solved {
  readonly angles: number[];
  readonly miss: number;
}

/** `ranged`: the pose whose values stretch the ranges (the start, if it is the body's own). */
function solve(limb: Limb, start: ArrayLike<number>, wanted: Triple, ranged = start, view?: Vec3): Solved {
  const { body } = limb;
  const stretched = (a: number): [number, number] => {
    const [low, high] = body.angles[a].range;
    return [Math.min(low, ranged[a]), Math.max(high, ranged[a])];
  };
  const range = limb.angles.map(stretched);
  const arm = limb.shoulder ? armRange(body, limb.shoulder, ranged) : undefined;
  const first = limb.shoulder ? 2 : 0;
  const n = first + limb.angles.length;
  let x = Array.from(start);
  // a place beyond the limb is as good as the nearest one at its length, and converges at once
  const goal = withinLength(limb, x, wanted, stretched, view);

  const r: Triple = [0, 0, 0];
  const J = Array.from({ length: n }, () => [0, 0, 0]);
  const residual = (at: number[]): number => {
    placeLimb(limb, at, limb.own);
    for (let k = 0; k < 3; k++) r[k] = goal[k] - limb.p_BoE_B[k];
    if (view) flatten(r, view);
    return dot(r, r);
  };
  let cost = residual(x);
  let damping = 1e-6;
  const step = new Array<number>(n).fill(0);
  for (let i = 0; i < MOST_STEPS && cost > CLOSE * CLOSE; i++) {
    columns(limb, x, J, first);
    if (view) for (const c of J) flatten(c as Triple, view);
    const kept: Triple = [...r];
    let gain = 0;
    for (let tries = 0; tries < 6; tries++) {
      dampedStep(J, kept, limb, x, range, first, damping, step);
      const next = moved(limb, x, step, range, arm, first);
      const tried = residual(next);
      if (tried < cost) {
        gain = cost - tried;
        cost = tried;
        x = next;
        damping = Math.max(damping / 8, 1e-9);
        break;
      }
      damping = damping * 8;
      for (let k = 0; k < 3; k++) r[k] = kept[k];
    }
    // nothing left to gain: the nearest place
    if (gain <= 1e-9 * cost + 1e-15) break;
  }
  return { angles: x, miss: goal === wanted && !view ? Math.sqrt(cost) : missOf(limb, x, wanted) };
}

/** r less what lies along the view, but for a little of it. */
function flatten(r: Triple, view: Vec3): void {
  const depth = (1 - DEPTH_WEIGHT) * dot(r, view);
  for (let k = 0; k < 3; k++) r[k] -= depth * view[k];
}

/** How much an arm that swings near the pole overhead turns back, so that a bent elbow keeps its side. */
function turnShare(limb: Limb, x: ArrayLike<number>): number {
  if (!limb.shoulder || limb.middle === undefined) return 0;
  const smooth = (v: number): number => {
    const s = Math.max(0, Math.min(1, v));
    return s * s * (3 - 2 * s);
  };
  return (
    smooth((Math.abs(x[limb.shoulder.elevation]) - 2.1) / (Math.PI - 2.1)) * smooth((x[limb.middle] - 0.17) / 0.53)
  );
}

/** J: how the end moves with each step, (n x 3): swing in elevation, swing across, then the limb's other angles. */
function columns(limb: Limb, x: ArrayLike<number>, J: number[][], first: number): void {
  const { body, path, axis_B, shoulder } = limb;
  for (const c of J) c[0] = c[1] = c[2] = 0;
  let hinge = 0;
  path.forEach((segment, i) => {
    const { hinges } = body.segments[segment];
    hinges.forEach(({ terms }, k) => {
      if (i < limb.own) return;
      for (const { angle, coef } of terms) {
        const column = limb.angles.indexOf(angle);
        if (column >= 0) addSwing(limb, i, axis_B, 3 * (hinge + k), coef, J[first + column]);
      }
    });
    if (shoulder && hinges.some((h) => h.terms.some((t) => t.angle === shoulder.plane))) {
      const e = 3 * (hinge + 1);
      const s = 3 * (hinge + 2);
      addSwing(limb, i, axis_B, e, 1, J[0]);
      // across: about spin axis x elevation axis; keeping turn while the plane changes spins the arm as well
      const across = [
        axis_B[s + 1] * axis_B[e + 2] - axis_B[s + 2] * axis_B[e + 1],
        axis_B[s + 2] * axis_B[e] - axis_B[s] * axis_B[e + 2],
        axis_B[s] * axis_B[e + 1] - axis_B[s + 1] * axis_B[e],
      ];
      addSwing(limb, i, across, 0, 1, J[1]);
      const elevation = x[shoulder.elevation];
      const sine = Math.sin(elevation);
      if (Math.abs(sine) > 1e-4)
        addSwing(limb, i, axis_B, s, (Math.cos(elevation) - 1 + 2 * turnShare(limb, x)) / sine, J[1]);
    }
    hinge += hinges.length;
  });
}

/** step = W J (J W J + damping)^-1 r, those that would leave their range held at its end and the rest solved again. */
function dampedStep(
  J: readonly (readonly number[])[],
  r: Triple,
  limb: Limb,
  x: readonly number[],
  range: readonly (readonly [number, number])[],
  first: number,
  damping: number,
  step: number[],
): void {
  const n = J.length;
  const held = new Array<boolean>(n).fill(false);
  const rest: Triple = [...r];
  for (let round = 0; round < n; round++) {
    let [xx, yy, zz, xy, xz, yz] = [damping, damping, damping, 0, 0, 0];
    for (let i = 0; i < n; i++) {
      if (held[i]) continue;
      const w = i < first ? 1 : limb.ease[i - first];
      const [a, b, c] = J[i];
      xx += w * a * a;
      yy += w * b * b;
      zz += w * c * c;
      xy += w * a * b;
      xz += w * a * c;
      yz += w * b * c;
    }
    const det = xx * (yy * zz - yz * yz) - xy * (xy * zz - yz * xz) + xz * (xy * yz - yy * xz);
    const y: Triple = [
      ((yy * zz - yz * yz) * rest[0] + (xz * yz - xy * zz) * rest[1] + (xy * yz - xz * yy) * rest[2]) / det,
      ((xz * yz - xy * zz) * rest[0] + (xx * zz - xz * xz) * rest[1] + (xy * xz - xx * yz) * rest[2]) / det,
      ((xy * yz - xz * yy) * rest[0] + (xy * xz - xx * yz) * rest[1] + (xx * yy - xy * xy) * rest[2]) / det,
    ];
    let more = false;
    for (let i = 0; i < n; i++) {
      if (held[i]) continue;
      const [a, b, c] = J[i];
      step[i] = (i < first ? 1 : limb.ease[i - first]) * (a * y[0] + b * y[1] + c * y[2]);
      if (i < first) continue;
      const at = x[limb.angles[i - first]];
      const [low, high] = range[i - first];
      const to = Math.max(low, Math.min(high, at + step[i]));
      if (to === at + step[i]) continue;
      step[i] = to - at;
      held[i] = more = true;
      for (let k = 0; k < 3; k++) rest[k] -= J[i][k] * step[i];
    }
    if (!more) return;
  }
}

function moved(
  limb: Limb,
  x: readonly number[],
  step: readonly number[],
  range: readonly (readonly [number, number])[],
  arm: ArmRange | undefined,
  first: number,
): number[] {
  const next = [...x];
  // a step of the straight model is good for a while only
  const size = Math.hypot(...step);
  const f = size > 0.8 ? 0.8 / size : 1;
  limb.angles.forEach((a, i) => {
    next[a] += f * step[first + i];
  });
  const { shoulder } = limb;
  if (shoulder && arm) {
    const [p, e] = [x[shoulder.plane], x[shoulder.elevation]];
    const [P, E] = swingArm(p, e, f * step[0], f * step[1], arm);
    next[shoulder.plane] = P;
    next[shoulder.elevation] = E;
    const across = P - p - Math.PI * Math.round((P - p) / Math.PI);
    if (limb.angles.includes(shoulder.turn)) next[shoulder.turn] += 2 * turnShare(limb, x) * across;
  }
  limb.angles.forEach((a, i) => {
    next[a] = Math.max(range[i][0], Math.min(range[i][1], next[a]));
  });
  return next;
}
