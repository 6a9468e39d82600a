/**
 * The hands join a rail over no time (docs/decisions/0024-catch.md): joint rates are kept; linear momentum of chain and rail and angular
 * momentum of the chain about the grip are conserved. With b the grip, J the impulse on it, D changes of velocity:
 *   sum m_k Dc_k = J = -m0 (Db + b' - u),   sum (c_k - b) x m_k Dc_k + I_k Dw_k = 0 about b,
 * u the rail's velocity before. These are the planar equations without rates and weight, velocities in place of accelerations.
 */
import type { PlanarJointName } from './chain.ts';
import type { Planar } from './planar.ts';

interface ChainAtGrip {
  /** angle of the link that grips, its turning before */
  readonly theta: number;
  readonly w: number;
  readonly q: ArrayLike<number>;
  readonly qd: ArrayLike<number>;
  /** velocity of the grip and of the rail before */
  readonly grip: readonly [number, number];
  readonly rail: readonly [number, number];
}

export interface CatchImpact {
  /** velocity of grip and rail after, and turning of the link that grips */
  readonly v: readonly [number, number];
  readonly w: number;
  /** of the rail on the hands, N s */
  readonly impulse: readonly [number, number];
  /** what each joint gives to keep its rate, N m s, in the sense of its angle */
  readonly joints: readonly { readonly joint: PlanarJointName; readonly impulse: number }[];
  /** J: done by the joints, and lost as hands and rail join */
  readonly work: number;
  readonly lost: number;
}

/** `mass`: what of the rail moves with the hands, kg; Infinity: a rail that does not give. */
export function calcCatchImpact(planar: Planar, mass: number, at: ChainAtGrip): CatchImpact {
  const n = planar.qdd.length;
  const zero = new Float64Array(n);
  const driven = new Uint8Array(n).fill(1);
  const [dx, dy] = [at.rail[0] - at.grip[0], at.rail[1] - at.grip[1]];
  const inertia = Number.isFinite(mass) ? mass : 1;
  planar.place(at.theta, 0, at.q, zero);
  planar.solve(0, mass, inertia * dx, inertia * dy, driven, zero, zero, zero);
  const { baseAcc, force, torque } = planar;
  const joints = planar.chain.joints.map(({ name }, j) => ({ joint: name, impulse: torque[j] }));
  return {
    v: [at.grip[0] + baseAcc[0], at.grip[1] + baseAcc[1]],
    w: at.w + planar.rootAcc,
    impulse: [force[0], force[1]],
    joints,
    work: joints.reduce((sum, { impulse }, j) => sum + impulse * at.qd[j], 0),
    lost: (force[0] * dx + force[1] * dy) / 2,
  };
}
