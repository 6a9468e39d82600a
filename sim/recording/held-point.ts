/**
 * Whether a hand or a foot stays where it is while the mass centre moves: then the body is held, by floor or bar, and not in the air, whatever
 * parabola its mass centre is on. Somebody who sinks into a squat falls with half of g for half a second.
 */
import { applyInto, matOfQuatInto, mulInto } from '../math/rot.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';
import type { PosedMotion } from './posed.ts';

const ENDS = ['handL', 'handR', 'footL', 'footR'];
/** Root mean square way of a point that is held, as a share of the mass centre's: in the air hands and feet go along (judgement) */
const HELD = 0.25;
const FEWEST = 5;

/** Rows `first` to `last`; `angles` with short gaps filled, `centre` (n x 3). */
export function hasHeldPoint(
  posed: PosedMotion,
  angles: Float64Array,
  centre: Float64Array,
  first: number,
  last: number,
): boolean {
  const { body, p_WBo_W, quat_WB } = posed;
  const na = body.angles.length;
  const sm = makeShapeMotion(getModel(body));
  const ends = ENDS.map((name) => body.segments.findIndex((s) => s.name === name)).filter((s) => s >= 0);
  const spreads = ends.flatMap(() => [makeSpread(), makeSpread()]);
  const ofCentre = makeSpread();
  const R_WB = new Float64Array(9);
  const R_WS = new Float64Array(9);
  const [d, tip] = [new Float64Array(3), new Float64Array(3)];
  for (let i = first; i <= last; i++) {
    if (Number.isNaN(centre[3 * i])) continue;
    ofCentre.add(centre.subarray(3 * i, 3 * i + 3));
    hingesInto(body, angles.subarray(na * i, na * (i + 1)), sm.q);
    calcShapeMotion(sm);
    matOfQuatInto(quat_WB, 4 * i, R_WB, 0);
    ends.forEach((s, e) => {
      applyInto(R_WB, 0, sm.p_BoSo_B, 3 * s, d, 0);
      for (let k = 0; k < 3; k++) d[k] += p_WBo_W[3 * i + k];
      spreads[2 * e].add(d);
      mulInto(R_WB, 0, sm.R_BS, 9 * s, R_WS, 0);
      // its own centre is half way to the tip
      applyInto(R_WS, 0, body.segments[s].p_BoBcm_B, 0, tip, 0);
      for (let k = 0; k < 3; k++) tip[k] = d[k] + 2 * tip[k];
      spreads[2 * e + 1].add(tip);
    });
  }
  const limit = HELD * ofCentre.size();
  return spreads.some((spread) => spread.size() < limit);
}

/** Root mean square distance of points from their mean, m. */
function makeSpread(): { add(p: ArrayLike<number>): void; size(): number } {
  const origin = [0, 0, 0];
  const sums = [0, 0, 0];
  let n = 0;
  let squares = 0;
  return {
    add(p) {
      for (let k = 0; k < 3; k++) {
        if (n === 0) origin[k] = p[k];
        const v = p[k] - origin[k];
        sums[k] += v;
        squares += v * v;
      }
      n++;
    },
    size: () =>
      n < FEWEST
        ? Number.POSITIVE_INFINITY
        : Math.sqrt(Math.max(0, squares / n - sums.reduce((all, s) => all + (s / n) ** 2, 0))),
  };
}
