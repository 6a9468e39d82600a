/**
 * The place on a leg that a hand holds: on the shin as near as may be to where the hand is when it takes hold, or behind the
 * knee. In the frame of the leg's segment; surfaces are those that are drawn. SI.
 */
import type { Body, Vec3 } from '../body/body.ts';
import { applyInto, applyTInto } from '../math/rot.ts';
import { getLimb, placeLimb } from '../motion/limb.ts';

export type HoldKind = 'shin' | 'behindKnee';

interface HandPlace {
  readonly segment: number;
  readonly p_SoE_S: Vec3;
}

/** Where along the shin a hand can hold it, shares of its length from the knee (judgement). */
const ALONG_SHIN = [0.1, 0.75] as const;
/** How far round from the front of the shin, rad (judgement). */
const ROUND_SHIN = 1.4;
/** Behind the knee: this far down the thigh, share of its length (judgement). */
const ALONG_THIGH = 0.93;
/** and this far round from the back to the outside, where the forearm has room beside the thigh, rad (judgement). */
const ROUND_KNEE = 1.05;

/** `angles`: the body at the instant the hand takes hold. */
export function findPlace(body: Body, angles: ArrayLike<number>, side: 'L' | 'R', on: HoldKind): HandPlace {
  const hand = getLimb(body, `hand${side}`);
  const leg = getLimb(body, `foot${side}`);
  placeLimb(leg, angles);
  const palm = radiusAt(body, hand.path[hand.path.length - 1], hand.p_SoE_S[1]);
  const [thigh, shank] = leg.path.slice(leg.own);
  const length = (segment: number): number => -body.segments[segment].p_PoBo_P[1];
  if (on === 'behindKnee') {
    const y = -ALONG_THIGH * length(shank);
    const r = radiusAt(body, thigh, y) + palm;
    const outward = side === 'L' ? -1 : 1;
    return { segment: thigh, p_SoE_S: [-r * Math.cos(ROUND_KNEE), y, outward * r * Math.sin(ROUND_KNEE)] };
  }
  placeLimb(hand, angles);
  const o = leg.own + 1;
  const d = [0, 1, 2].map((k) => hand.p_BoE_B[k] - leg.p_BoSo_B[3 * o + k]);
  applyTInto(leg.R_BS, 9 * o, d, 0, d, 0);
  const L = length(leg.path[leg.own + 2]);
  const y = -Math.max(ALONG_SHIN[0] * L, Math.min(ALONG_SHIN[1] * L, -d[1]));
  const round = Math.max(-ROUND_SHIN, Math.min(ROUND_SHIN, Math.atan2(d[2], d[0])));
  const r = radiusAt(body, shank, y) + palm;
  return { segment: shank, p_SoE_S: [r * Math.cos(round), y, r * Math.sin(round)] };
}

const place_B = [0, 0, 0];

/** The place in the root frame, the body in this pose. */
export function placeInRoot(body: Body, angles: ArrayLike<number>, side: 'L' | 'R', place: HandPlace): Vec3 {
  const leg = getLimb(body, `foot${side}`);
  placeLimb(leg, angles);
  const o = leg.path.indexOf(place.segment);
  applyInto(leg.R_BS, 9 * o, place.p_SoE_S, 0, place_B, 0);
  return [0, 1, 2].map((k) => place_B[k] + leg.p_BoSo_B[3 * o + k]) as unknown as Vec3;
}

/** Radius of a limb at a height of its long axis, from its drawn capsules. */
function radiusAt(body: Body, segment: number, y: number): number {
  let found = 0;
  for (const shape of body.segments[segment].shapes) {
    if (shape.kind !== 'capsule') continue;
    const [a, b] = [shape.a_B[1], shape.b_B[1]];
    const f = a === b ? 0 : (y - a) / (b - a);
    if (f >= -0.05 && f <= 1.05)
      found = Math.max(found, shape.radiusA + (shape.radiusB - shape.radiusA) * Math.max(0, Math.min(1, f)));
  }
  return found;
}
