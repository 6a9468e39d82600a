// The hang on the bar as a model of the witness, with its mass matrix; and a driven swing followed with it.
import type { Hang } from '../../sim/contact/hang.ts';
import { springOf } from '../../sim/contact/rail.ts';
import { loadWitness } from '../witness/mujoco.ts';
import { giantXml, hingesOf } from './giant-model.ts';

export async function openHang(hang: Hang) {
  const mj = await loadWitness();
  const model = mj.MjModel.from_xml_string(giantXml(hang));
  if (!model) throw new Error('MuJoCo refuses the model');
  const data = new mj.MjData(model);
  const nv = model.nv;
  const full = mj.DoubleBuffer.FromArray(new Float64Array(nv * nv));
  mj.mj_forward(model, data);
  return { mj, model, data, nv, full };
}

/** t, rail x, y, grip angle, their rates, force of the rail on the hands x, y, torques */
export interface WitnessRow {
  readonly t: number;
  readonly x: number[];
  readonly force: number[];
  readonly torque: number[];
}

/**
 * A swing whose joints follow their moves over time: MuJoCo's mass matrix and bias forces, the rail's two slides and the grip solved for the
 * prescribed joints, by a Runge-Kutta method of order 4 that ends its steps on the keys. `start`: rail x, y, grip angle, their rates.
 */
export async function followHang(hang: Hang, start: readonly number[], T: number, step: number): Promise<WitnessRow[]> {
  const { mj, model, data, nv, full } = await openHang(hang);
  const { qpos, qvel, qfrc_bias: bias, qfrc_passive: passive, qacc } = data;
  const M = full.GetView();
  const joints = hingesOf(hang);
  const nj = hang.chain.joints.length;
  const [q, d, dd] = [new Float64Array(nj), new Float64Array(nj), new Float64Array(nj)];
  const acc = new Float64Array(nv);
  const rows: WitnessRow[] = [];
  /** fills acc from state y = [x, y, theta, rates] at t */
  const accelerate = (t: number, y: Float64Array): void => {
    hang.moves.at(t, q, d, dd);
    for (let k = 0; k < 3; k++) {
      qpos[k] = y[k];
      qvel[k] = y[3 + k];
    }
    joints.forEach(({ sign, j }, i) => {
      qpos[3 + i] = sign * q[j];
      qvel[3 + i] = sign * d[j];
      acc[3 + i] = sign * dd[j];
    });
    mj.mj_fwdPosition(model, data);
    mj.mj_fwdVelocity(model, data);
    mj.mj_fullM(model, data, full);
    const A = [0, 1, 2].map((r) => {
      let right = passive[r] - bias[r];
      for (let k = 3; k < nv; k++) right -= M[nv * r + k] * acc[k];
      return [M[nv * r], M[nv * r + 1], M[nv * r + 2], right];
    });
    acc.set(solveThree(A));
  };
  const y = Float64Array.from(start);
  const k = Array.from({ length: 4 }, () => new Float64Array(6));
  const mid = new Float64Array(6);
  const { kx, ky, cx, cy, mass } = springOf(hang.spec.rail);
  const [stiffness, damping] = [
    [kx, ky],
    [cx, cy],
  ];
  const derive = (t: number, at: Float64Array, out: Float64Array): void => {
    accelerate(t, at);
    for (let i = 0; i < 3; i++) {
      out[i] = at[3 + i];
      out[3 + i] = acc[i];
    }
  };
  const times: number[] = [];
  for (let i = 0; i * step < T - 1e-9; i++) times.push(i * step);
  times.push(...hang.moves.breaks.filter((b) => b > 0 && b < T), T);
  times.sort((a, b) => a - b);
  let t = 0;
  for (const next of times) {
    const h = next - t;
    if (h > 1e-12) {
      for (let s = 0; s < 4; s++) {
        const share = [0, 0.5, 0.5, 1][s];
        for (let i = 0; i < 6; i++) mid[i] = y[i] + share * h * (s > 0 ? k[s - 1][i] : 0);
        derive(t + share * h, mid, k[s]);
      }
      for (let i = 0; i < 6; i++) y[i] += (h / 6) * (k[0][i] + 2 * (k[1][i] + k[2][i]) + k[3][i]);
      t = next;
    }
    accelerate(t, y);
    qacc.set(acc);
    mj.mj_inverse(model, data);
    const torque = new Array<number>(nj).fill(0);
    joints.forEach(({ sign, j }, i) => {
      torque[j] = sign * data.qfrc_inverse[3 + i];
    });
    rows.push({
      t,
      x: [...y],
      force: [0, 1].map((i) => -stiffness[i] * y[i] - damping[i] * y[3 + i] - mass * acc[i]),
      torque,
    });
  }
  full.delete();
  data.delete();
  model.delete();
  return rows;
}

/** Rows of three equations with their right sides. */
export function solveThree(rows: readonly number[][]): number[] {
  const A = rows.map((row) => [...row]);
  for (let p = 0; p < 3; p++)
    for (let r = p + 1; r < 3; r++) {
      const f = A[r][p] / A[p][p];
      for (let c = p; c < 4; c++) A[r][c] -= f * A[p][c];
    }
  const x = [0, 0, 0];
  for (let r = 2; r >= 0; r--) {
    let s = A[r][3];
    for (let k = r + 1; k < 3; k++) s -= A[r][k] * x[k];
    x[r] = s / A[r][r];
  }
  return x;
}
