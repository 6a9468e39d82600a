/**
 * Left and right in one picture. Reflected through the plane of the picture a body looks the same (in parallel exactly), and is again a body once its
 * sides change names: every segment S R_WS M, S the reflection in W through that plane, M the body's own through its middle (z of each
 * segment). So F goes to S R_WF M, and each joint angle to the other side's with its mirror's sign. Seen exactly from the side S is M, and tilt and twist
 * change their sign.
 */
import type { Body } from '../body/body.ts';
import { matOfAttitude, mulInto } from '../math/rot.ts';
import { otherSide } from '../math/side.ts';
import type { Triple } from '../math/vec3.ts';
import type { ClipSight, Spot } from './clip.ts';
import type { PosedFrame } from './clip-pose.ts';
import { bodyOfPosed, withAttitude } from './posed-body.ts';
import { seePlace } from './see.ts';

/** The other body that makes the same picture. */
export function swapSides(body: Body, posed: PosedFrame, sight: ClipSight): PosedFrame {
  const n = seePlace(sight, posed.p_WScm_W).toward;
  const S = new Float64Array(9);
  for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) S[3 * i + j] = (i === j ? 1 : 0) - 2 * n[i] * n[j];
  const R_WF = new Float64Array(9);
  mulInto(S, 0, matOfAttitude(posed.somersault, posed.tilt, posed.twist), 0, R_WF, 0);
  for (const o of [2, 5, 8]) R_WF[o] = -R_WF[o];
  const angles = [...posed.angles];
  body.angles.forEach(({ mirror, mirrorSign }, a) => {
    angles[mirror] = mirrorSign * posed.angles[a];
  });
  const reaches = posed.reaches.map(({ limb, ratio }) => ({ limb: otherSide(limb) ?? limb, ratio }));
  return { ...withAttitude(posed, R_WF), angles, reaches };
}

/** m in the picture by which two marks of one point differ, nineteen of twenty, each off by 1 cm (judgement, as in the filming plan). */
const SEEN_APART = 2 * Math.SQRT2 * 0.01 * 2;
/** m by which some part has to be elsewhere for two poses to differ (judgement: less is within what twist is known to). */
const DIFFER = 0.2;

/** The picture with left and right exchanged is the same to what can be marked, and yet another pose. */
export function isAmbiguous(body: Body, posed: PosedFrame, sight: ClipSight): boolean {
  const swapped = swapSides(body, posed, sight);
  const [own, other] = [posed, swapped].map((one) => placesOf(body, one));
  const moved = own.reduce((most, p, i) => Math.max(most, apart(p, other[i])), 0);
  if (moved < DIFFER) return false;
  const { pxPerM } = seePlace(sight, posed.p_WScm_W);
  const seen = (list: readonly Triple[]): Spot[] => list.map((p) => seePlace(sight, p).at);
  const [a, b] = [seen(own), seen(other)];
  const names = namesOf(body);
  return a.every((p, i) => {
    const q = b[names.indexOf(otherSide(names[i]) ?? names[i])];
    return Math.hypot(p[0] - q[0], p[1] - q[1]) < SEEN_APART * pxPerM;
  });
}

const namesOf = (body: Body): string[] => [
  ...body.segments.map((s) => s.name),
  ...body.contacts.filter((c) => otherSide(c.name) !== undefined).map((c) => c.name),
];

/** Origins of the segments and ends of hands and feet, in W, in the order of their names. */
function placesOf(body: Body, posed: PosedFrame): Triple[] {
  const { R_WS: R, p_WSo_W: p } = bodyOfPosed(body, posed).pose;
  const at = (segment: number, r: ArrayLike<number>): Triple => {
    const [o, b] = [9 * segment, 3 * segment];
    return [0, 1, 2].map(
      (k) => p[b + k] + R[o + 3 * k] * r[0] + R[o + 3 * k + 1] * r[1] + R[o + 3 * k + 2] * r[2],
    ) as Triple;
  };
  return [
    ...body.segments.map((_, s) => at(s, [0, 0, 0])),
    ...body.contacts.filter((c) => otherSide(c.name) !== undefined).map((c) => at(c.segment, c.p_BoC_B)),
  ];
}

const apart = (p: Triple, q: Triple): number => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
