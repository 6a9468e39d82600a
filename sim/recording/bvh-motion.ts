/** Channels of a BVH file as matrices and places of its joints. */
import { RAD } from '../math/angles.ts';
import { mulInto, type Numbers } from '../math/rot.ts';
import type { BvhJoint } from './bvh-hierarchy.ts';
import { listNames } from './file-place.ts';
import type { RecordedJoint } from './recording.ts';
import type { RowStore } from './row-store.ts';
import type { ReadSteps } from './steps.ts';

interface Mover {
  readonly joint: BvhJoint;
  /** first of its channels in a row */
  readonly from: number;
  readonly R: Float64Array;
  readonly p?: Float64Array;
}

export function* bvhMotion(
  joints: readonly BvhJoint[],
  names: readonly string[],
  store: RowStore,
  notes: string[],
): ReadSteps<RecordedJoint[]> {
  let from = 0;
  const movers: Mover[] = [];
  for (const joint of joints) {
    const isMoved = joint.channels.some((c) => c.isPlace);
    movers.push({
      joint,
      from,
      R: new Float64Array(9 * store.rows),
      ...(isMoved ? { p: new Float64Array(3 * store.rows) } : {}),
    });
    from += joint.channels.length;
    yield { done: 0 };
  }
  yield* store.eachRow((data, o, row) => {
    for (const { joint, from: first, R, p } of movers) {
      turnInto(joint, data, o + first, R, 9 * row);
      if (p) for (let k = 0; k < joint.channels.length; k++) putPlace(joint, k, data[o + first + k], p, 3 * row);
    }
  });
  const added: string[] = [];
  for (const [i, { joint, p }] of movers.entries()) {
    if (!p) continue;
    const isAdded = joint.parent < 0 || !isFromOffset(joint, p);
    if (isAdded && joint.parent >= 0) added.push(names[i]);
    for (const axis of [0, 1, 2] as const)
      if (isAdded || !joint.channels.some((c) => c.isPlace && c.axis === axis))
        for (let o = axis; o < p.length; o += 3) p[o] += joint.offset[axis];
    yield { done: i / movers.length };
  }
  if (movers.some(({ joint, p }) => p && joint.parent >= 0))
    notes.push(
      added.length > 0
        ? `Position channels of ${listNames(added)} lie nearer to 0 than to the joint's OFFSET: they are added to it. Others are places from the parent.`
        : 'Position channels of joints below the root are taken for places from the parent, in place of OFFSET.',
    );
  return movers.map(({ joint, R, p }, i) => ({
    name: names[i],
    parent: joint.parent,
    offset: joint.offset,
    ends: joint.ends,
    R,
    ...(p ? { p } : {}),
  }));
}

function putPlace(joint: BvhJoint, k: number, value: number, p: Float64Array, o: number): void {
  const { isPlace, axis } = joint.channels[k];
  if (isPlace) p[o + axis] = value;
}

const one = new Float64Array(9);
const before = new Float64Array(9);

/** R = R1 R2 R3 of the rotation channels as listed. */
function turnInto(joint: BvhJoint, data: Float64Array, from: number, R: Float64Array, o: number): void {
  R.fill(0, o, o + 9);
  R[o] = R[o + 4] = R[o + 8] = 1;
  joint.channels.forEach(({ isPlace, axis }, k) => {
    if (isPlace) return;
    axisTurnInto(axis, data[from + k] * RAD, one);
    for (let i = 0; i < 9; i++) before[i] = R[o + i];
    mulInto(before, 0, one, 0, R, o);
  });
}

function axisTurnInto(axis: 0 | 1 | 2, angle: number, R: Numbers): void {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const i = (axis + 1) % 3;
  const j = (axis + 2) % 3;
  for (let k = 0; k < 9; k++) R[k] = 0;
  R[4 * axis] = 1;
  R[4 * i] = R[4 * j] = c;
  R[3 * i + j] = -s;
  R[3 * j + i] = s;
}

/** A joint's place hardly changes: values about its OFFSET are places from the parent, values about 0 come on top of it. */
function isFromOffset({ offset, channels }: BvhJoint, p: Float64Array): boolean {
  const axes = channels.filter((c) => c.isPlace).map((c) => c.axis);
  let nearer = 0;
  const rows = p.length / 3;
  for (let i = 0; i < rows; i++) {
    let toOffset = 0;
    let toZero = 0;
    for (const k of axes) {
      toOffset += (p[3 * i + k] - offset[k]) ** 2;
      toZero += p[3 * i + k] ** 2;
    }
    nearer += Math.sign(toZero - toOffset);
  }
  return nearer >= 0;
}
