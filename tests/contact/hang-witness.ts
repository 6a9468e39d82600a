// The hang on the bar as a model of the witness, with its mass matrix.
import type { Hang } from '../../sim/contact/hang.ts';
import { loadWitness } from '../witness/mujoco.ts';
import { giantXml } from './giant-model.ts';

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
