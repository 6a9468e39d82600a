/**
 * MuJoCo (E. Todorov, T. Erez, Y. Tassa, "MuJoCo: a physics engine for model-based control", IROS 2012; package
 * @mujoco/mujoco) as a witness: it reads the exported MJCF and knows nothing else of ours. qpos is root position,
 * quaternion, hinges; qvel is root velocity in W, root angular velocity in the root's axes, hinge rates.
 */
import loadMujoco from '@mujoco/mujoco';
import { type Body, formatMjcf } from '../../sim/index.ts';

export type Mujoco = Awaited<ReturnType<typeof loadMujoco>>;
export const loadWitness = (): Promise<Mujoco> => loadMujoco();

type Model = InstanceType<Mujoco['MjModel']>;
type Data = InstanceType<Mujoco['MjData']>;

export class Witness {
  /** hinges */
  readonly nq: number;
  /** names of the hinges in its order */
  readonly hinges: readonly string[];
  readonly mass: number;
  private readonly mj: Mujoco;
  private readonly model: Model;
  private readonly data: Data;
  private readonly full: ReturnType<Mujoco['DoubleBuffer']['FromArray']>;
  // live views of its memory
  private readonly qpos: Float64Array;
  private readonly qvel: Float64Array;
  private readonly qacc: Float64Array;
  private readonly bias: Float64Array;
  private readonly M: Float64Array;
  private readonly block = new Float64Array(42); // (6 x 7) the root's equations with their right side

  constructor(mj: Mujoco, body: Body, gravity: number) {
    this.mj = mj;
    const model = mj.MjModel.from_xml_string(formatMjcf(body, gravity));
    if (!model) throw new Error('MuJoCo refuses the exported model');
    this.model = model;
    this.data = new mj.MjData(model);
    const { nv } = model;
    this.nq = nv - 6;
    this.mass = model.body_subtreemass[0];
    this.hinges = Array.from({ length: this.nq }, (_, k) => mj.mj_id2name(model, mj.mjtObj.mjOBJ_JOINT.value, k + 1));
    this.full = mj.DoubleBuffer.FromArray(new Float64Array(nv * nv));
    mj.mj_forward(model, this.data);
    this.qpos = this.data.qpos;
    this.qvel = this.data.qvel;
    this.qacc = this.data.qacc;
    this.bias = this.data.qfrc_bias;
    this.M = this.full.GetView();
  }

  delete(): void {
    this.full.delete();
    this.data.delete();
    this.model.delete();
  }

  /** qpos and qvel: root position and quaternion, root velocities, then the hinges. */
  put(qpos: ArrayLike<number>, qvel: ArrayLike<number>): void {
    this.qpos.set(qpos);
    this.qvel.set(qvel);
  }

  /** Mass centre in W and angular momentum about it, as MuJoCo has them for the state put in. */
  measure(): { centre: number[]; angularMomentum: number[] } {
    const { mj, model, data } = this;
    mj.mj_fwdPosition(model, data);
    mj.mj_fwdVelocity(model, data);
    mj.mj_subtreeVel(model, data);
    return { centre: [...data.subtree_com.slice(3, 6)], angularMomentum: [...data.subtree_angmom.slice(3, 6)] };
  }

  /** Generalised forces that the accelerations need: 3 forces and 3 moments on the root, then the hinge torques. */
  inverse(qacc: ArrayLike<number>): number[] {
    this.qacc.set(qacc);
    this.mj.mj_inverse(this.model, this.data);
    return [...this.data.qfrc_inverse];
  }

  /** Root accelerations of free fall with the hinge accelerations prescribed: M_rr a = -(bias_r + M_rj q''), into out. */
  rootAccelerationInto(hingeAcc: ArrayLike<number>, out: Float64Array): void {
    const { mj, model, data, M, bias, block, nq } = this;
    mj.mj_fwdPosition(model, data);
    mj.mj_fwdVelocity(model, data);
    mj.mj_fullM(model, data, this.full);
    const nv = nq + 6;
    for (let r = 0; r < 6; r++) {
      let right = -bias[r];
      for (let k = 0; k < nq; k++) right -= M[nv * r + 6 + k] * hingeAcc[k];
      for (let c = 0; c < 6; c++) block[7 * r + c] = M[nv * r + c];
      block[7 * r + 6] = right;
    }
    solveInto(block, out);
  }
}

/** Gauss with the diagonal as pivot: the block is positive definite. */
function solveInto(A: Float64Array, x: Float64Array): void {
  for (let p = 0; p < 6; p++)
    for (let r = p + 1; r < 6; r++) {
      const f = A[7 * r + p] / A[7 * p + p];
      for (let c = p; c < 7; c++) A[7 * r + c] -= f * A[7 * p + c];
    }
  for (let r = 5; r >= 0; r--) {
    let s = A[7 * r + 6];
    for (let c = r + 1; c < 6; c++) s -= A[7 * r + c] * x[c];
    x[r] = s / A[7 * r + r];
  }
}
