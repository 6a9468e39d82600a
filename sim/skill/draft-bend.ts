/** Tuck and pike as they are drafted: bends that muscles get into and out of, and hold, in the usual time. rad */
import { RAD } from '../math/angles.ts';
import type { DraftStyle } from './draft-style.ts';
import { poseIn } from './draft-writer.ts';
import type { NamedPose } from './skill-spec.ts';

const BENDS: Readonly<Record<'tuck' | 'pike', NamedPose>> = {
  tuck: { lumbarFlexion: 12 * RAD, thoracicFlexion: 8 * RAD },
  pike: { hipFlexion: 102 * RAD, lumbarFlexion: 10 * RAD, thoracicFlexion: 6 * RAD },
};

/** The arms' angles with the hands on the shins, in the bend and a little before it. */
export interface Grip {
  readonly closed: NamedPose;
  readonly closing: NamedPose;
}
export const gripFor = (grips: readonly Grip[], { loose = 0 }: DraftStyle): Grip =>
  grips[loose] ?? grips[grips.length - 1];
/** How much looser a bend can be, in steps, and by how much hips and knees are. */
export const LOOSEST = 3;
const LOOSER: Readonly<Record<'tuck' | 'pike', NamedPose>> = {
  tuck: { hipFlexion: -4 * RAD, kneeFlexion: -13 * RAD },
  pike: { hipFlexion: -4 * RAD },
};
/** How much less the hips are bent then, and for what share of the move. */
const CLOSING = -7 * RAD;
export const CLOSES = 0.2;

export function bentPoses(shapes: Readonly<Record<string, NamedPose>>, bend: 'tuck' | 'pike', loose: number): Grip {
  const closed = { ...poseIn(shapes, bend), ...bentLegs(shapes, bend, loose) };
  return { closed, closing: { ...closed, hipFlexion: (closed.hipFlexion ?? 0) + CLOSING } };
}

export function bentLegs(shapes: Readonly<Record<string, NamedPose>>, bend: 'tuck' | 'pike', loose = 0): NamedPose {
  const tight = { ...poseIn(shapes, bend), ...BENDS[bend] };
  const looser = Object.entries(LOOSER[bend]).map(([name, by]) => [name, (tight[name] ?? 0) + loose * by]);
  return { ...BENDS[bend], ...Object.fromEntries(looser) };
}
