/**
 * The human's angles and hinges (docs/conventions.md, "Joint angles").
 * Axes carry the sign, so that a hinge coordinate is the clinical angle; left limbs mirror X and Y rotations.
 */
import { RAD } from '../math/angles.ts';
import type { Hinge, NamedAngle, ShoulderAngles, Vec3 } from './body.ts';
import { LIMB_LIMITS, type Limit, SPINE_LIMITS } from './human-limits.ts';
import { makeAngleStrength, type StrengthSize } from './human-strength.ts';

const X: Vec3 = [1, 0, 0];
const Y: Vec3 = [0, 1, 0];
const Z: Vec3 = [0, 0, 1];
const back = (v: Vec3): Vec3 => [0 - v[0], 0 - v[1], 0 - v[2]];

const LIMBS = LIMB_LIMITS.length;
const ORDER: readonly string[] = [
  ...SPINE_LIMITS.map(([n]) => n),
  ...['L', 'R'].flatMap((s) => LIMB_LIMITS.map(([n]) => n + s)),
];
const at = (name: string): number => ORDER.indexOf(name);

export function makeHumanAngles(size: StrengthSize): readonly NamedAngle[] {
  const make = (stem: string, side: string, limit: Limit, mirror: number, mirrorSign: 1 | -1): NamedAngle => ({
    name: `${stem}${side}`,
    mirror,
    mirrorSign,
    range: [limit.range[0] * RAD, limit.range[1] * RAD],
    limitSource: limit.source,
    strength: makeAngleStrength(stem, size),
  });
  const spine = SPINE_LIMITS.map(([name, limit], i) => make(name, '', limit, i, name.endsWith('Flexion') ? 1 : -1));
  const first = spine.length;
  const left = LIMB_LIMITS.map(([name, limit], i) => make(name, 'L', limit, first + LIMBS + i, 1));
  const right = LIMB_LIMITS.map(([name, limit], i) => make(name, 'R', limit, first + i, 1));
  return [...spine, ...left, ...right];
}

const hinge = (name: string, axis: Vec3): Hinge => ({ name, axis, terms: [{ angle: at(name), coef: 1 }] });

/** Hinges of the joint between a segment and its parent, parent to child, by the segment's name. */
export function humanHinges(segment: string): readonly Hinge[] {
  const spine = { middleTrunk: 'lumbar', upperTrunk: 'thoracic', head: 'neck' }[segment];
  if (spine) return [hinge(`${spine}Flexion`, back(Z)), hinge(`${spine}SideBend`, X), hinge(`${spine}Turn`, Y)];
  const s = segment.slice(-1);
  const mirrored = (v: Vec3): Vec3 => (s === 'L' ? back(v) : v);
  switch (segment.slice(0, -1)) {
    case 'upperArm': {
      const spin = [
        { angle: at(`shoulderTurn${s}`), coef: 1 },
        { angle: at(`shoulderPlane${s}`), coef: -1 },
      ];
      return [
        hinge(`shoulderPlane${s}`, mirrored(Y)),
        hinge(`shoulderElevation${s}`, mirrored(back(X))),
        { name: `shoulderSpin${s}`, axis: mirrored(Y), terms: spin },
      ];
    }
    case 'forearm':
      return [hinge(`elbowFlexion${s}`, Z), hinge(`forearmPronation${s}`, mirrored(Y))];
    case 'hand':
      return [hinge(`wristFlexion${s}`, Z)];
    case 'thigh':
      return [
        hinge(`hipFlexion${s}`, Z),
        hinge(`hipAbduction${s}`, mirrored(back(X))),
        hinge(`hipTurn${s}`, mirrored(Y)),
      ];
    case 'shank':
      return [hinge(`kneeFlexion${s}`, back(Z))];
    case 'foot':
      return [hinge(`anklePlantarFlexion${s}`, back(Z))];
    default:
      return [];
  }
}

export const HUMAN_SHOULDERS: readonly ShoulderAngles[] = ['L', 'R'].map((s) => ({
  plane: at(`shoulderPlane${s}`),
  elevation: at(`shoulderElevation${s}`),
  turn: at(`shoulderTurn${s}`),
}));
