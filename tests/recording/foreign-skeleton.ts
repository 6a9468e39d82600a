/** A flight as the skeleton of another maker has it: other names, arms out at rest, a collar bone between, other axes and units. Truth known. */

import type { Body } from '../../sim/index.ts';
import { matOfQuatInto, mulBtInto, mulInto, mulTInto } from '../../sim/math/rot.ts';
import type { SegmentFrames } from '../../sim/measure/segment-frames.ts';
import { makeHeld } from '../../sim/motion/held.ts';
import type { RecordedJoint, Recording } from '../../sim/recording/recording.ts';

/** [name, the segment it moves, parent]; "" moves with its parent's segment at rest */
const TREE: readonly (readonly [string, string, string])[] = [
  ['Hips', 'pelvis', ''],
  ['Spine', 'middleTrunk', 'Hips'],
  ['Spine1', 'upperTrunk', 'Spine'],
  ['Neck', 'upperTrunk', 'Spine1'],
  ['Head', 'head', 'Neck'],
  ['LeftShoulder', 'upperTrunk', 'Spine1'],
  ['LeftArm', 'upperArmL', 'LeftShoulder'],
  ['LeftForeArm', 'forearmL', 'LeftArm'],
  ['LeftHand', 'handL', 'LeftForeArm'],
  ['RightShoulder', 'upperTrunk', 'Spine1'],
  ['RightArm', 'upperArmR', 'RightShoulder'],
  ['RightForeArm', 'forearmR', 'RightArm'],
  ['RightHand', 'handR', 'RightForeArm'],
  ['LHipJoint', 'pelvis', 'Hips'],
  ['LeftUpLeg', 'thighL', 'LHipJoint'],
  ['LeftLeg', 'shankL', 'LeftUpLeg'],
  ['LeftFoot', 'footL', 'LeftLeg'],
  ['RHipJoint', 'pelvis', 'Hips'],
  ['RightUpLeg', 'thighR', 'RHipJoint'],
  ['RightLeg', 'shankR', 'RightUpLeg'],
  ['RightFoot', 'footR', 'RightLeg'],
];

export interface Foreign {
  /** the file's axes in W, (3 x 3) by rows: turns W into the file */
  readonly turn: readonly number[];
  /** units of the file in a metre */
  readonly perM: number;
  /** deg at which the arms are held out at rest */
  readonly armsAtRest: number;
}

export function foreignSkeleton(
  body: Body,
  frames: SegmentFrames,
  rateHz: number,
  { turn, perM, armsAtRest }: Foreign,
): Recording {
  const at = (name: string): number => body.segments.findIndex((s) => s.name === name);
  const angle = (name: string): number => body.angles.findIndex((a) => a.name === name);
  const rest = body.angles.map(() => 0);
  for (const side of ['L', 'R']) rest[angle(`shoulderElevation${side}`)] = (armsAtRest * Math.PI) / 180;
  const held = makeHeld(body, rest);
  const ns = body.segments.length;
  const parentOf = TREE.map(([, , parent]) => TREE.findIndex(([name]) => name === parent));
  // where a joint is: the origin of its segment; a collar bone or a neck a little inside
  const placeOf = (j: number): number[] => {
    const [name, segment] = TREE[j];
    const o = 3 * at(segment);
    const p = [...held.p_BoSo_B.subarray(o, o + 3)];
    if (name === 'Hips') return [0, 0.05, 0];
    if (name === 'Neck')
      return [...held.p_BoSo_B.subarray(3 * at('head'), 3 * at('head') + 3)].map((v, k) => v - [0, 0.04, 0][k]);
    if (name.endsWith('Shoulder')) {
      const s = 3 * at(name.startsWith('L') ? 'upperArmL' : 'upperArmR');
      return [held.p_BoSo_B[s], held.p_BoSo_B[s + 1], 0.2 * held.p_BoSo_B[s + 2]];
    }
    if (name.endsWith('HipJoint')) return [0, 0.05, 0];
    return p;
  };
  const turned = (v: readonly number[]): [number, number, number] =>
    [0, 1, 2].map((r) => perM * (turn[3 * r] * v[0] + turn[3 * r + 1] * v[1] + turn[3 * r + 2] * v[2])) as [
      number,
      number,
      number,
    ];
  const alongArm = (side: string): number[] => {
    const o = 9 * at(`hand${side}`);
    return [1, 4, 7].map((k) => -0.1 * held.R_BS[o + k]);
  };
  const places = TREE.map((_, j) => placeOf(j));
  const R_WS = new Float64Array(9);
  const A = new Float64Array(9);
  const B = new Float64Array(9);
  /** attitude of joint j in the file: T R_WS R_rest^T T^T */
  const attitudeInto = (i: number, j: number, out: Float64Array): void => {
    const s = at(TREE[j][1]);
    matOfQuatInto(frames.quat_WB, 4 * (ns * i + s), R_WS, 0);
    mulBtInto(R_WS, 0, held.R_BS, 9 * s, A, 0);
    mulInto(turn, 0, A, 0, B, 0);
    mulBtInto(B, 0, turn, 0, out, 0);
  };
  const own = new Float64Array(9);
  const up = new Float64Array(9);
  const joints = TREE.map(([name], j): RecordedJoint => {
    const p = parentOf[j];
    const R = new Float64Array(9 * frames.n);
    const root = p < 0 ? new Float64Array(3 * frames.n) : undefined;
    for (let i = 0; i < frames.n; i++) {
      attitudeInto(i, j, own);
      if (p < 0) {
        R.set(own, 9 * i);
        matOfQuatInto(frames.quat_WB, 4 * ns * i, R_WS, 0);
        const where = [0, 1, 2].map(
          (k) =>
            frames.p_WBo_W[3 * ns * i + k] +
            R_WS[3 * k] * places[j][0] +
            R_WS[3 * k + 1] * places[j][1] +
            R_WS[3 * k + 2] * places[j][2],
        );
        root?.set(turned(where), 3 * i);
      } else {
        attitudeInto(i, p, up);
        mulTInto(up, 0, own, 0, R, 9 * i);
      }
    }
    const offset = turned(places[j].map((v, k) => v - (p < 0 ? 0 : places[p][k])));
    const tip = name.endsWith('Foot') ? body.contacts.find((c) => c.name === `toe${name[0]}`)?.p_BoC_B : undefined;
    const ends = tip ? [turned([tip[0], tip[1], 0])] : name.endsWith('Hand') ? [turned(alongArm(name[0]))] : [];
    return { name, parent: p, offset, ends, R, ...(root ? { p: root } : {}) };
  });
  return { kind: 'bvh', frames: frames.n, times: frames.t, rateHz, points: [], joints, columns: [], notes: [] };
}
