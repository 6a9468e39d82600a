/**
 * From the state on the bar at the release to the take-off of a flight: mass centre, velocity and angular momentum as they are,
 * the attitude that of F in the shape of the release. The planar state has neither tilt nor twist; one hand that holds on longer gives
 * both, with momentum about all three axes.
 */

import type { Body } from '../body/body.ts';
import type { LateRelease } from '../contact/late-hand.ts';
import type { SwingState } from '../contact/swing.ts';
import type { TakeoffSpec } from '../flight/flight.ts';
import { REV } from '../math/angles.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';

/** Angle of F about Z in a planar state: that of the root and that of F in it. */
function planarSomersault(body: Body, theta: number, angles: ArrayLike<number>): number {
  const sm = makeShapeMotion(getModel(body));
  hingesInto(body, angles, sm.q);
  calcShapeMotion(sm);
  const { R_BF } = calcBodyFrame(sm);
  return theta + Math.atan2(R_BF[3], R_BF[0]);
}

export function releaseTakeoff(body: Body, release: SwingState): TakeoffSpec {
  const somersault = planarSomersault(body, release.theta, release.angles);
  return {
    height: { of: 'massCentre', y: release.p_WScm_W[1] },
    v_WScm_W: [release.v_WScm_W[0], release.v_WScm_W[1], 0],
    somersault: firstTurn(somersault),
    tilt: 0,
    twist: 0,
    momentum: { kind: 'vector', h_Scm_W: [0, 0, release.h] },
  };
}

/** The same where one hand held on: attitude and momentum in three dimensions. */
export function lateTakeoff(late: LateRelease): TakeoffSpec {
  return {
    height: { of: 'massCentre', y: late.p_WScm_W[1] },
    v_WScm_W: late.v_WScm_W,
    somersault: firstTurn(late.somersault),
    tilt: late.tilt,
    twist: late.twist,
    momentum: { kind: 'vector', h_Scm_W: late.h_Scm_W },
  };
}

/** Whole turns of the swing are not turns of the flight. */
const firstTurn = (angle: number): number => angle - REV * Math.round(angle / REV);
