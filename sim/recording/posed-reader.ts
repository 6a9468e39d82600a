/** Where the segments of a posed motion are at one of its instants. The reader is filled again at each call. */
import { applyInto, matOfQuatInto, mulInto } from '../math/rot.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import type { PosedMotion } from './posed.ts';

interface PosedReader {
  /** of the shape alone, rates zero */
  readonly sm: ShapeMotion;
  readonly R_WS: Float64Array; // (segments x 9)
  readonly p_WSo_W: Float64Array; // (segments x 3)
  /** NaN where an angle on the way to a segment is */
  read(row: number): void;
}

export function makePosedReader(posed: PosedMotion): PosedReader {
  const { body } = posed;
  const sm = makeShapeMotion(getModel(body));
  const n = body.segments.length;
  const R_WS = new Float64Array(9 * n);
  const p_WSo_W = new Float64Array(3 * n);
  const R_WB = new Float64Array(9);
  const d = [0, 0, 0];
  const read = (row: number): void => {
    const na = body.angles.length;
    hingesInto(body, posed.angles.subarray(na * row, na * (row + 1)), sm.q);
    calcShapeMotion(sm);
    matOfQuatInto(posed.quat_WB, 4 * row, R_WB, 0);
    for (let s = 0; s < n; s++) {
      mulInto(R_WB, 0, sm.R_BS, 9 * s, R_WS, 9 * s);
      applyInto(R_WB, 0, sm.p_BoSo_B, 3 * s, d, 0);
      for (let k = 0; k < 3; k++) p_WSo_W[3 * s + k] = posed.p_WBo_W[3 * row + k] + d[k];
    }
  };
  return { sm, R_WS, p_WSo_W, read };
}
