/** The path of the mass centre of a posed recording: what a parabola is looked for in. */
import { applyInto, matOfQuatInto } from '../math/rot.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';
import type { PosedMotion } from './posed.ts';

/** p_WScm_W (n x 3), m; NaN where the root or an angle is not known. `angles` in place of the recording's own, as filled. */
export function massCentreOf(posed: PosedMotion, angles: Float64Array = posed.angles): Float64Array {
  const { body, n, p_WBo_W, quat_WB } = posed;
  const na = body.angles.length;
  const sm = makeShapeMotion(getModel(body));
  const out = new Float64Array(3 * n);
  const R_WB = new Float64Array(9);
  const d = new Float64Array(3);
  for (let i = 0; i < n; i++) {
    hingesInto(body, angles.subarray(na * i, na * (i + 1)), sm.q);
    calcShapeMotion(sm);
    matOfQuatInto(quat_WB, 4 * i, R_WB, 0);
    applyInto(R_WB, 0, sm.p_BoScm_B, 0, d, 0);
    for (let k = 0; k < 3; k++) out[3 * i + k] = p_WBo_W[3 * i + k] + d[k];
  }
  return out;
}
