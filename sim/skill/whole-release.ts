/**
 * From the state on the bar at the release to the take-off of a flight: mass centre, velocity and angular momentum as they are,
 * the attitude that of F in the shape of the release. The planar state has neither tilt nor twist; a hand that lets go later adds
 * momentum about the long and front-back axes.
 */
import type { Body, Vec3 } from '../body/body.ts';
import type { SwingState } from '../contact/swing.ts';
import type { TakeoffSpec } from '../flight/flight.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';

const TURN = 2 * Math.PI;

/** Angle of F about Z in a planar state: that of the root and that of F in it. */
export function planarSomersault(body: Body, theta: number, angles: ArrayLike<number>): number {
  const sm = makeShapeMotion(getModel(body));
  let h = 0;
  for (const s of body.segments)
    for (const hinge of s.hinges) {
      sm.q[h] = hinge.terms.reduce((sum, t) => sum + t.coef * angles[t.angle], 0);
      h++;
    }
  calcShapeMotion(sm);
  const { R_BF } = calcBodyFrame(sm);
  return theta + Math.atan2(R_BF[3], R_BF[0]);
}

export interface Handed {
  readonly takeoff: TakeoffSpec;
  /** whole turns that the swing's count lies above the flight's, rad */
  readonly turns: number;
}

export function releaseTakeoff(body: Body, release: SwingState, added?: Vec3): Handed {
  const counted = planarSomersault(body, release.theta, release.angles);
  const somersault = counted - TURN * Math.round(counted / TURN);
  const h = added ?? [0, 0, 0];
  return {
    takeoff: {
      height: { of: 'massCentre', y: release.p_WScm_W[1] },
      v_WScm_W: [release.v_WScm_W[0], release.v_WScm_W[1], 0],
      somersault,
      tilt: 0,
      twist: 0,
      momentum: { kind: 'vector', h_Scm_W: [h[0], h[1], h[2] + release.h] },
    },
    turns: counted - somersault,
  };
}
