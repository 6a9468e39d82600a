/** Where the segments of a studied recording are, row by row, as the page draws them. */
import {
  calcPose,
  calcShapeMotion,
  getModel,
  hingesInto,
  makeShapeMotion,
  type RecordingStudy,
} from '../../../sim/index.ts';
import { applyInto, matOfQuatInto } from '../../../sim/math/rot.ts';
import type { RecordedPoses } from './recording-data.ts';

/** More poses than this look alike on a screen. */
const MOST = 400;

export function calcRecordedPoses(
  study: RecordingStudy,
  root: RecordingStudy['measuredRoot'],
): RecordedPoses | undefined {
  const { body, t, angles } = study;
  if (!body || !root || t.length === 0) return undefined;
  const step = Math.ceil(t.length / MOST);
  const rows = Array.from(t.keys()).filter((i) => i % step === 0 || i === t.length - 1);
  const ns = body.segments.length;
  const na = body.angles.length;
  const sm = makeShapeMotion(getModel(body));
  const R_WB = new Float64Array(9);
  const d = [0, 0, 0];
  const out: RecordedPoses = {
    t: Float64Array.from(rows, (i) => t[i]),
    R_WS: new Float64Array(9 * ns * rows.length),
    p_WSo_W: new Float64Array(3 * ns * rows.length),
    p_WScm_W: new Float64Array(3 * rows.length),
  };
  for (const [k, i] of rows.entries()) {
    hingesInto(body, angles.subarray(na * i, na * (i + 1)), sm.q);
    calcShapeMotion(sm);
    const quat = root.quat_WB.subarray(4 * i, 4 * i + 4);
    matOfQuatInto(quat, 0, R_WB, 0);
    applyInto(R_WB, 0, sm.p_BoScm_B, 0, d, 0);
    const cm = d.map((v, axis) => v + root.p_WBo_W[3 * i + axis]);
    const pose = calcPose(sm, quat, cm);
    out.R_WS.set(pose.R_WS, 9 * ns * k);
    out.p_WSo_W.set(pose.p_WSo_W, 3 * ns * k);
    out.p_WScm_W.set(cm, 3 * k);
  }
  return out;
}
