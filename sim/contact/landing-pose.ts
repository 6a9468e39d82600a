/** Where the athlete of a landing is at a time, turned back into W: named angles, attitude of the root, mass centre. */
import { placeIn } from '../math/sorted.ts';
import { bodyAnglesInto } from './chain.ts';
import type { LandingRun } from './landing.ts';

interface LandingPose {
  /** one value for each Body angle */
  readonly angles: Float64Array;
  readonly quat_WB: Float64Array;
  readonly p_WScm_W: Float64Array;
}

export function makeLandingPose(run: LandingRun): LandingPose {
  const { body } = run.entry.chain;
  return {
    angles: new Float64Array(body.angles.length),
    quat_WB: new Float64Array(4),
    p_WScm_W: new Float64Array(3),
  };
}

const q = new Float64Array(16);

/** At t s after touchdown; held at the ends of the run. `z`: where across the landing takes place. */
export function landingPoseInto(run: LandingRun, t: number, out: LandingPose, z = 0): void {
  const { facing, chain } = run.entry;
  const { i: k, share } = placeIn(run.t, t, run.n);
  const between = (values: Float64Array): number =>
    run.n > 1 ? values[k] + share * (values[k + 1] - values[k]) : values[k];
  chain.joints.forEach((_, j) => {
    q[j] = between(run.q[j]);
  });
  bodyAnglesInto(chain, q, out.angles);
  const half = between(run.theta) / 2;
  // Rz(theta), or Ry(pi) Rz(theta) = (0, 0, 1, 0) (c, 0, 0, s)
  if (facing > 0) out.quat_WB.set([Math.cos(half), 0, 0, Math.sin(half)]);
  else out.quat_WB.set([0, Math.sin(half), Math.cos(half), 0]);
  out.p_WScm_W.set([facing * between(run.x), between(run.y), z]);
}
