/**
 * What touches and what is drawn of a human: contact spheres and plain volumes in the segment frames. Girths are a
 * judgement at a stature of 1.62 m and scale with stature; lengths are the segments' own. No inertia is taken from them.
 */
import type { ContactPoint, DrawShape, Vec3 } from './body.ts';
import type { SegmentKind } from './deleva.ts';
import type { Side } from './human-values.ts';

export interface HumanSize {
  readonly stature: number;
  readonly ankleHeight: number;
  readonly shoulderHalfWidth: number;
  readonly hipHalfWidth: number;
  readonly length: (kind: SegmentKind, side: Side) => number;
}

/** Ankle joint from the heel, share of the foot's length (judgement; the malleoli lie about a quarter along). */
export const ANKLE_ALONG_FOOT = 0.25;
/** Ball of the foot from the heel, share of its length (judgement). */
const BALL_ALONG_FOOT = 0.72;
/** Knuckle from the wrist, share of the hand: printed 3rd metacarpale / 3rd dactylion, de Leva 1996 (86.2 / 187.9, 78.0 / 170.1). */
const KNUCKLE_ALONG_HAND = 0.46;

/** Spheres by segment name; soles and vertex are touched exactly by them in the neutral pose. */
export function humanContacts(size: HumanSize, index: (segment: string) => number): readonly ContactPoint[] {
  const k = size.stature / 1.62;
  const out: ContactPoint[] = [];
  const put = (name: string, part: string, segment: string, p_BoC_B: Vec3, radius: number): void => {
    out.push({ name, part, segment: index(segment), p_BoC_B, radius });
  };
  for (const s of ['L', 'R'] as const) {
    const foot = size.length('foot', s);
    const sole = -size.ankleHeight;
    const heel = -ANKLE_ALONG_FOOT * foot;
    put(`heel${s}`, 'feet', `foot${s}`, [heel + 0.026 * k, sole + 0.026 * k, 0], 0.026 * k);
    put(`ball${s}`, 'feet', `foot${s}`, [heel + BALL_ALONG_FOOT * foot, sole + 0.016 * k, 0], 0.016 * k);
    put(`toe${s}`, 'feet', `foot${s}`, [heel + foot - 0.01 * k, sole + 0.01 * k, 0], 0.01 * k);
    const hand = size.length('hand', s);
    put(`fingertip${s}`, 'hands', `hand${s}`, [0, -hand + 0.008 * k, 0], 0.008 * k);
    put(`knuckle${s}`, 'hands', `hand${s}`, [0, -KNUCKLE_ALONG_HAND * hand, 0], 0.016 * k);
    put(`knee${s}`, 'knees', `thigh${s}`, [0.004 * k, -size.length('thigh', s), 0], 0.05 * k);
    put(`seat${s}`, 'seat', 'pelvis', [-0.04 * k, -0.03 * k, 0.8 * size.hipHalfWidth * (s === 'L' ? -1 : 1)], 0.08 * k);
  }
  const chest = size.length('upperTrunk', '');
  put('back', 'back', 'upperTrunk', [-0.01 * k, 0.6 * chest, 0], 0.085 * k);
  put('head', 'head', 'head', [0.014 * k, size.length('head', '') - 0.09 * k, 0], 0.09 * k);
  return out;
}

/** Volumes of one segment. */
export function humanShapes(kind: SegmentKind, side: Side, size: HumanSize): readonly DrawShape[] {
  const k = size.stature / 1.62;
  const L = size.length(kind, side);
  const outward = side === 'L' ? -1 : side === 'R' ? 1 : 0;
  const limb = (
    from: number,
    to: number,
    radiusA: number,
    radiusB: number,
    x: readonly [number, number] = [0, 0],
  ): DrawShape => ({
    kind: 'capsule',
    a_B: [x[0] * k, -from * L, 0],
    b_B: [x[1] * k, -to * L, 0],
    radiusA: radiusA * k,
    radiusB: radiusB * k,
  });
  const oval = (centre_B: Vec3, radii: Vec3): DrawShape => ({ kind: 'ellipsoid', centre_B, radii });
  const shoulder = size.shoulderHalfWidth / 0.163;
  const hip = size.hipHalfWidth / 0.082;
  switch (kind) {
    case 'lowerTrunk':
      return [
        oval([-0.004 * k, 0.15 * L, 0], [0.094 * k, 0.62 * L, 0.14 * hip]),
        ...[-1, 1].map((z) => oval([-0.036 * k, -0.18 * L, 0.066 * hip * z], [0.078 * k, 0.52 * L, 0.072 * hip])),
      ];
    case 'middleTrunk':
      return [
        oval([0.002 * k, 0.1 * L, 0], [0.078 * k, 0.55 * L, 0.108 * k]),
        oval([0.01 * k, 0.7 * L, 0], [0.09 * k, 0.5 * L, 0.122 * k]),
      ];
    case 'upperTrunk':
      return [
        oval([0.012 * k, 0.3 * L, 0], [0.098 * k, 0.52 * L, 0.14 * shoulder]),
        oval([-0.006 * k, 0.66 * L, 0], [0.066 * k, 0.22 * L, 0.158 * shoulder]),
        oval([-0.012 * k, 0.88 * L, 0], [0.045 * k, 0.14 * L, 0.068 * k]),
      ];
    case 'head':
      return [
        {
          kind: 'capsule',
          a_B: [-0.01 * k, -0.05 * L, 0],
          b_B: [0.012 * k, 0.4 * L, 0],
          radiusA: 0.05 * k,
          radiusB: 0.047 * k,
        },
        oval([0.018 * k, L - 0.112 * k, 0], [0.092 * k, 0.112 * k, 0.075 * k]),
      ];
    case 'upperArm':
      return [limb(0, 0.42, 0.055, 0.0455), limb(0.42, 1, 0.0455, 0.0355)];
    case 'forearm':
      return [limb(0, 0.26, 0.0355, 0.0385), limb(0.26, 1, 0.0385, 0.0255)];
    case 'hand':
      return [limb(0, 0.45, 0.0255, 0.0285), limb(0.45, 0.94, 0.0285, 0.0125)];
    case 'thigh':
      return [
        {
          kind: 'capsule',
          a_B: [0, 0, 0],
          b_B: [0.01 * k, -0.32 * L, 0.004 * k * outward],
          radiusA: 0.079 * k,
          radiusB: 0.079 * k,
        },
        limb(0.32, 1, 0.079, 0.0525, [0.01, 0]),
      ];
    case 'shank':
      return [
        limb(0, 0.27, 0.0525, 0.0565, [0, -0.012]),
        limb(0.27, 0.68, 0.0565, 0.041, [-0.012, -0.002]),
        limb(0.68, 1, 0.041, 0.0325),
      ];
    case 'foot': {
      const heel: Vec3 = [-ANKLE_ALONG_FOOT * L + 0.028 * k, -size.ankleHeight + 0.028 * k, 0];
      const ball: Vec3 = [(BALL_ALONG_FOOT - ANKLE_ALONG_FOOT) * L, -size.ankleHeight + 0.024 * k, 0];
      const toe: Vec3 = [(1 - ANKLE_ALONG_FOOT) * L - 0.014 * k, -size.ankleHeight + 0.014 * k, 0];
      return [
        { kind: 'capsule', a_B: [0, 0, 0], b_B: heel, radiusA: 0.0325 * k, radiusB: 0.028 * k },
        { kind: 'capsule', a_B: [0, 0, 0], b_B: ball, radiusA: 0.0325 * k, radiusB: 0.024 * k },
        { kind: 'capsule', a_B: ball, b_B: toe, radiusA: 0.024 * k, radiusB: 0.014 * k },
      ];
    }
  }
}
