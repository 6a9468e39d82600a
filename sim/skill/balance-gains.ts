/**
 * What the reflex knows of its own body: near a straight somersault that does not twist,
 *     twist'' = lambda^2 twist + G x',   lambda^2 = a b,
 * a = d twist' / d tilt, b = d tilt' / d twist, G = d twist' / d x + a d tilt' / d x'. For a rigid body lambda is the
 * growth rate sqrt((B - A)(A - C) / (B C)) of Landau & Lifshitz, Mechanics, sec. 37, times the somersault rate.
 *
 * With x' = -(k1 twist + k2 twist') / G of a time d ago the roots solve s^2 - lambda^2 + (k1 + k2 s) exp(-s d) = 0. The
 * fastest decay is where three of them meet at s = -sigma,
 *     sigma = (2 - sqrt(2 + lambda^2 d^2)) / d,
 * which is positive only for lambda d < sqrt 2: no gains hold a longer delay (the delayed inverted pendulum; Stepan
 * 1989, Retarded Dynamical Systems, from memory; derived in docs/balance.md).
 */
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { calcShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';

interface Hold {
  /** rate of the somersault, rad/s */
  readonly somersaultRate: number;
  /** lambda^2, 1/s2: negative where the shape is steady by itself */
  readonly growth: number;
  /** d twist' / d tilt and G, 1/s and per radian of action */
  readonly twistPerTilt: number;
  readonly action: number;
}

/** Gains k1 (1/s2) and k2 (1/s) with the fastest decay for a growth rate lambda (1/s) and a delay (s). */
export function fitGains(lambda: number, delay: number): { k1: number; k2: number; sigma: number } {
  const x = lambda * delay;
  const sigma = (2 - Math.sqrt(2 + x * x)) / delay;
  const s = -sigma;
  const e = Math.exp(s * delay);
  const k2 = -e * (2 * s + (s * s - lambda * lambda) * delay);
  return { k1: -e * (s * s - lambda * lambda) - k2 * s, k2, sigma };
}

/** Steps of the differences: rad, and rad/s of action. */
const STEP = 1e-4;

const inverse = new Float64Array(6);
const b_B = new Float64Array(3);
const w_B = new Float64Array(3);
const u_B = new Float64Array(3);

/** Tilt and twist rate of F at the given tilt and twist, h along the lateral axis of the world; from sm.q and sm.qd. */
function turning(
  sm: ShapeMotion,
  h: number,
  tilt: number,
  twist: number,
): { rate: number; tilt: number; twist: number } {
  calcShapeMotion(sm);
  const { R_BF: R, w_BF_B } = calcBodyFrame(sm);
  // Z of the world in F (somersault does not matter), then in B
  const c = Math.cos(tilt);
  const z = [-c * Math.sin(twist), Math.sin(tilt), c * Math.cos(twist)];
  for (let i = 0; i < 3; i++) b_B[i] = h * (R[3 * i] * z[0] + R[3 * i + 1] * z[1] + R[3 * i + 2] * z[2]);
  symInvertInto(sm.I_Scm_B, 0, inverse, 0);
  for (let i = 0; i < 3; i++) b_B[i] -= sm.hrel_B[i];
  symApplyInto(inverse, 0, b_B, 0, w_B, 0);
  for (let i = 0; i < 3; i++) u_B[i] = w_B[i] + w_BF_B[i];
  const w = [0, 1, 2].map((k) => R[k] * u_B[0] + R[3 + k] * u_B[1] + R[6 + k] * u_B[2]);
  // w_F = som' z + tilt' (cos twist, 0, sin twist) + twist' y
  const tiltRate = w[0] * Math.cos(twist) + w[2] * Math.sin(twist);
  const rate = (w[2] * Math.cos(twist) - w[0] * Math.sin(twist)) / c;
  return { rate, tilt: tiltRate, twist: w[1] - rate * z[1] };
}

/**
 * The hold of an action on the shape q (hinges, at rest) under the momentum h. `twist`: the planned one, which decides
 * how much of a sideways action is left.
 */
export function calcHold(sm: ShapeMotion, q: Float64Array, action: Float64Array, h: number, twist: number): Hold {
  const at = (x: number, rate: number, tilt: number, off: number): ReturnType<typeof turning> => {
    for (let i = 0; i < q.length; i++) {
      sm.q[i] = q[i] + x * action[i];
      sm.qd[i] = rate * action[i];
    }
    return turning(sm, h, tilt, off);
  };
  const half = 1 / (2 * STEP);
  const a = (at(0, 0, STEP, 0).twist - at(0, 0, -STEP, 0).twist) * half;
  const b = (at(0, 0, 0, STEP).tilt - at(0, 0, 0, -STEP).tilt) * half;
  const byPlace = (at(STEP, 0, 0, 0).twist - at(-STEP, 0, 0, 0).twist) * half;
  const bySpeed = (at(0, STEP, 0, 0).tilt - at(0, -STEP, 0, 0).tilt) * half;
  return {
    somersaultRate: at(0, 0, 0, 0).rate,
    growth: a * b,
    twistPerTilt: a,
    action: (byPlace + a * bySpeed) * Math.cos(twist),
  };
}
