/**
 * Which segment a joint of a recorded skeleton moves, by its name and its place in the tree. Names differ from maker to maker (a
 * "LeftShoulder" is a collar bone here and an upper arm there), the tree does not: the hand's joint hangs on the forearm's, that on the upper
 * arm's; so names find the ends of a limb, and the tree the rest.
 */
import { FieldError } from '../math/field-error.ts';
import type { BodySide } from '../math/side.ts';
import { type NameWords, readName } from './name-words.ts';
import type { RecordedJoint } from './recording.ts';
import type { MapBasis, MappedJoint } from './recording-map.ts';

type Part = 'pelvis' | 'chest' | 'head' | 'forearm' | 'hand' | 'upperArm' | 'thigh' | 'shank' | 'foot';

const PARTS: readonly (readonly [Part, RegExp])[] = [
  ['forearm', /^(forearm|lowerarm|lowarm|elbow|radius|loarm|forearm1)$/],
  ['hand', /^(hand|wrist|palm)$/],
  ['upperArm', /^(upperarm|uparm|humerus|arm|shoulderjoint|upperarm1)$/],
  ['shank', /^(leg|lowerleg|lowleg|shin|shank|calf|knee|tibia|loleg)$/],
  ['thigh', /^(upleg|upperleg|thigh|hip|femur|upperleg1)$/],
  ['foot', /^(foot|ankle)$/],
  ['head', /^head$/],
  ['pelvis', /^(hips|hip|pelvis|root)$/],
  ['chest', /^(chest|upperchest|thorax|uppertrunk|spine[2-4]|upperback|ribcage)$/],
];

const partOf = ({ whole }: NameWords, side: boolean): Part | undefined =>
  PARTS.find(([part, pattern]) => pattern.test(whole) && side === !['pelvis', 'chest', 'head'].includes(part))?.[0];

interface Limb {
  readonly side: BodySide;
  readonly first: number;
  readonly middle: number;
  readonly last?: number;
  readonly basis: MapBasis;
}

/** Joints mapped to segments. Throws where pelvis, legs or arms cannot be found. */
export function mapJoints(joints: readonly RecordedJoint[]): readonly MappedJoint[] {
  const own = mapOwnNames(joints);
  if (own) return own;
  const names = joints.map(({ name }) => readName(name));
  const legs = findLimbs(joints, names, 'shank', 'foot');
  const arms = findLimbs(joints, names, 'forearm', 'hand');
  if (legs.length < 2 || arms.length < 2)
    throw new FieldError(
      'joints',
      joints
        .map(({ name }) => name)
        .slice(0, 12)
        .join(', '),
      `a skeleton with ${legs.length < 2 ? 'two legs' : 'two arms'}: joints whose names say left and right, and knee or shin, elbow or forearm; or a map that says which joint is which`,
    );
  const pelvis = meetingOf(joints, legs[0].first, legs[1].first);
  const chest = meetingOf(joints, arms[0].first, arms[1].first);
  const out: MappedJoint[] = [];
  const put = (j: number, segment: string, basis: MapBasis): void => {
    out.push({ from: joints[j].name, segment, basis });
  };
  put(pelvis, 'pelvis', partOf(names[pelvis], false) === 'pelvis' ? 'name' : 'place');
  const between = pathDown(joints, pelvis, chest).slice(1, -1);
  if (between.length > 0) put(between[between.length >> 1], 'middleTrunk', 'place');
  if (chest !== pelvis) put(chest, 'upperTrunk', partOf(names[chest], false) === 'chest' ? 'name' : 'place');
  const head = names.findIndex((n) => partOf(n, false) === 'head');
  if (head >= 0) put(head, 'head', 'name');
  for (const { side, first, middle, last, basis } of arms) {
    put(first, `upperArm${side}`, partOf(names[first], true) === 'upperArm' ? 'name' : 'place');
    put(middle, `forearm${side}`, basis);
    if (last !== undefined) put(last, `hand${side}`, 'name');
  }
  for (const { side, first, middle, last, basis } of legs) {
    put(first, `thigh${side}`, partOf(names[first], true) === 'thigh' ? 'name' : 'place');
    put(middle, `shank${side}`, basis);
    if (last !== undefined) put(last, `foot${side}`, 'name');
  }
  return out;
}

const OWN = ['pelvis', 'middleTrunk', 'upperTrunk', 'head'].concat(
  ['L', 'R'].flatMap((s) => ['upperArm', 'forearm', 'hand', 'thigh', 'shank', 'foot'].map((n) => `${n}${s}`)),
);

/** A skeleton whose joints have the names of our segments: their axes are ours too (write-bvh.ts). */
export const hasOwnNames = (joints: readonly RecordedJoint[]): boolean =>
  OWN.every((name) => joints.some((j) => j.name === name));

function mapOwnNames(joints: readonly RecordedJoint[]): readonly MappedJoint[] | undefined {
  if (!hasOwnNames(joints)) return undefined;
  return OWN.map((name) => ({ from: name, segment: name, basis: 'name' }));
}

/** The two limbs whose middle joint (elbow, knee) the names give, or else their end. */
function findLimbs(
  joints: readonly RecordedJoint[],
  names: readonly NameWords[],
  middlePart: Part,
  endPart: Part,
): Limb[] {
  const limbs: Limb[] = [];
  for (const side of ['L', 'R'] as const) {
    const of = (part: Part): number => names.findIndex((n) => n.side === side && partOf(n, true) === part);
    const end = of(endPart);
    let middle = of(middlePart);
    let basis: MapBasis = 'name';
    if (middle < 0 && end >= 0) {
      middle = joints[end].parent;
      basis = 'place';
    }
    if (middle < 0 || joints[middle].parent < 0) continue;
    const first = joints[middle].parent;
    const below = end >= 0 ? end : joints.findIndex((j) => j.parent === middle);
    limbs.push({ side, first, middle, ...(below >= 0 ? { last: below } : {}), basis });
  }
  return limbs;
}

function pathUp(joints: readonly RecordedJoint[], from: number): number[] {
  const path: number[] = [];
  for (let j = from; j >= 0; j = joints[j].parent) path.push(j);
  return path;
}

/** The joint that both hang on. */
function meetingOf(joints: readonly RecordedJoint[], a: number, b: number): number {
  const up = new Set(pathUp(joints, joints[a].parent));
  return pathUp(joints, joints[b].parent).find((j) => up.has(j)) ?? 0;
}

/** From a joint down to one below it, both in; the joint alone where it is not below. */
function pathDown(joints: readonly RecordedJoint[], from: number, to: number): number[] {
  const up = pathUp(joints, to);
  const at = up.indexOf(from);
  return at < 0 ? [from] : up.slice(0, at + 1).reverse();
}
