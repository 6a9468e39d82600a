/** The arms of a tuck or a pike brought to the shins of this body, so that a drafted bend is held by the hands. */
import type { Body } from '../body/body.ts';
import { reachTo } from '../motion/inverse-kinematics.ts';
import { poseOf } from './build-skill.ts';
import type { Grip } from './draft-bend.ts';
import { findPlace, placeInRoot } from './hand-place.ts';
import type { NamedPose } from './skill-spec.ts';

/** One for each step by which the bend can be looser; none without a bend. */
export const gripsOf = (body: Body, bends: readonly Grip[]): readonly Grip[] =>
  bends.map(({ closed, closing }) => ({ closed: armsOf(body, closed), closing: armsOf(body, closing) }));

/** What the arms' angles become, by name. */
function armsOf(body: Body, bent: NamedPose): NamedPose {
  const angles = poseOf(body, bent, 'shapes', true);
  const place = findPlace(body, angles, 'L', 'shin');
  const found = reachTo(body, angles, { end: 'handL', p_BoE_B: placeInRoot(body, angles, 'L', place), mirror: true });
  return Object.fromEntries(
    body.angles.flatMap(({ name }, a) =>
      /^(shoulder|elbow).*L$/.test(name) ? [[name.slice(0, -1), found.angles[a]]] : [],
    ),
  );
}
