/**
 * From a ScheduleSpec to blocks and keys in seconds: values checked, anchors resolved, times nearer than SAME_TIME made
 * one, order checked. Order is file order: keys of one angle, and blocks, have to follow each other in time as listed.
 */

import { resolveTime } from '../math/anchor.ts';
import { lastUpTo } from '../math/sorted.ts';
import { ScheduleOrderError, ScheduleValueError } from './errors.ts';
import type { JointedBody } from './jointed-body.ts';
import { mergeTimes, SAME_TIME } from './motion.ts';
import type { AnchoredTime, AnchorTimes, ArmPath, ScheduleSpec } from './schedule.ts';

interface PlacedBlock {
  readonly what: string;
  readonly title?: string;
  readonly from: number;
  readonly to: number;
  readonly arms: ArmPath;
  readonly pose: readonly number[];
}

export interface PlacedKey {
  /** in words, for a fault: thousands of keys are placed at every look for a touchdown */
  readonly what: () => string;
  readonly t: number;
  readonly value: number;
  readonly stop: boolean;
  readonly next: number | undefined;
}

export interface Collected {
  readonly blocks: readonly PlacedBlock[];
  /** keys of each angle, ascending */
  readonly keys: readonly (readonly PlacedKey[])[];
}

export function collectKeys(body: JointedBody, spec: ScheduleSpec, anchors: AnchorTimes): Collected {
  checkPose('base pose', body, spec.base);
  const snap = makeSnap(spec, anchors);
  return { blocks: placeBlocks(body, spec, snap, anchors), keys: placeKeys(body, spec, snap) };
}

type Snap = (at: AnchoredTime, field: () => string) => number;

/** Resolves times; those within SAME_TIME of one met before take its value, so that equal times compare equal. */
function makeSnap(spec: ScheduleSpec, anchors: AnchorTimes): Snap {
  const all: number[] = [];
  for (const b of spec.blocks) all.push(resolveTime(b.from, anchors), resolveTime(b.to, anchors));
  for (const k of spec.keys) all.push(resolveTime(k.at, anchors));
  const merged = mergeTimes(all.filter(Number.isFinite));
  return (at, field) => {
    const t = resolveTime(at, anchors);
    if (!Number.isFinite(t)) checkFinite(field(), t);
    const low = lastUpTo(merged, t);
    return low + 1 < merged.length &&
      merged[low + 1] - t <= SAME_TIME &&
      merged[low + 1] - t < Math.abs(t - merged[low])
      ? merged[low + 1]
      : merged[low];
  };
}

function placeBlocks(body: JointedBody, spec: ScheduleSpec, snap: Snap, anchors: AnchorTimes): PlacedBlock[] {
  const blocks: PlacedBlock[] = [];
  spec.blocks.forEach((b, i) => {
    const what = `block ${i + 1} (${b.shape})`;
    checkPose(what, body, b.pose);
    const { title } = b;
    const block: PlacedBlock = {
      what,
      title,
      from: snap(b.from, () => `start of ${what}`),
      to: snap(b.to, () => `end of ${what}`),
      arms: b.arms,
      pose: b.pose,
    };
    if (block.to < block.from)
      throw new ScheduleOrderError(
        { what: `the start of ${what}`, time: block.from, title },
        { what: `the end of ${what}`, time: block.to, title },
        `a block cannot end before it starts${whenLands([b.from, b.to], anchors)}`,
      );
    const former = blocks[i - 1];
    if (former && (block.from < former.to || (block.from === former.to && !samePose(body, former.pose, b.pose, spec))))
      throw new ScheduleOrderError(
        { what: `the end of ${former.what}`, time: former.to, title: former.title },
        { what: `the start of ${what}`, time: block.from, title },
        block.from < former.to
          ? `blocks have to follow each other in time as they do in the list${whenLands([spec.blocks[i - 1].to, b.from], anchors)}`
          : 'two shapes that differ need time between them to move',
      );
    blocks.push(block);
  });
  return blocks;
}

/** What makes times that count from touchdown fall where they do. */
const whenLands = (times: readonly AnchoredTime[], { touchdown }: AnchorTimes): string =>
  times.some((t) => t.anchor === 'touchdown') && times.some((t) => t.anchor !== 'touchdown')
    ? `; the flight lasts ${touchdown.toFixed(4)} s, and times before touchdown count back from its end`
    : '';

/** Whether two poses are one where blocks touch; the plane of an arm that hangs or is overhead means nothing. */
function samePose(body: JointedBody, a: readonly number[], b: readonly number[], spec: ScheduleSpec): boolean {
  const free = new Set(spec.sampled.map((s) => s.angle));
  for (const s of body.shoulders) if (nearestPole(a[s.elevation]) !== undefined) free.add(s.plane);
  return a.every((v, k) => v === b[k] || free.has(k));
}

/** Number of the pole (0 hanging, 1 overhead, ...; elevation = number x 180 deg) an elevation is at, if at one. */
export function nearestPole(elevation: number): number | undefined {
  const n = Math.round(elevation / Math.PI);
  return Math.abs(elevation - n * Math.PI) < POLE_WIDTH ? n : undefined;
}
const POLE_WIDTH = 1e-6;

function placeKeys(body: JointedBody, spec: ScheduleSpec, snap: Snap): PlacedKey[][] {
  const keys: PlacedKey[][] = body.angles.map(() => []);
  spec.keys.forEach((k, i) => {
    const angle = body.angles[k.angle];
    if (!angle)
      throw new ScheduleValueError(
        `angle of key ${i + 1}`,
        k.angle,
        `a whole number from 0 to ${body.angles.length - 1}`,
      );
    if (!Number.isFinite(k.value)) checkFinite(`value of key ${i + 1} (${angle.name})`, k.value);
    const what = (): string => `key ${i + 1} (${angle.name} ${degrees(k.value)})`;
    if (k.next !== undefined) {
      if (!Number.isFinite(k.next)) checkFinite(`next value of ${what()}`, k.next);
      if (!body.shoulders.some((s) => s.plane === k.angle))
        throw new ScheduleValueError(`next value of ${what()}`, degrees(k.next), 'only for the plane of a shoulder');
    }
    const key: PlacedKey = {
      what,
      t: snap(k.at, () => `time of ${what()}`),
      value: k.value,
      // the angle rests where it jumps
      stop: k.kind === 'stop' || k.next !== undefined,
      next: k.next,
    };
    const list = keys[k.angle];
    const former = list[list.length - 1];
    if (former && key.t <= former.t) {
      const same = key.t === former.t && key.value === former.value && key.next === former.next;
      if (!same)
        throw new ScheduleOrderError(
          { what: former.what(), time: former.t },
          { what: what(), time: key.t },
          key.t === former.t
            ? 'two keys of one angle at one time need equal values'
            : 'keys of one angle have to follow each other in time as they do in the list',
        );
      // the same key twice: a stop wins
      if (key.stop) list[list.length - 1] = key;
    } else list.push(key);
  });
  return keys;
}

export function checkFinite(field: string, value: number): void {
  if (!Number.isFinite(value)) throw new ScheduleValueError(field, value, 'a finite number');
}

function checkPose(what: string, body: JointedBody, pose: readonly number[]): void {
  if (pose.length !== body.angles.length)
    throw new ScheduleValueError(what, `${pose.length} angles`, `${body.angles.length} angles`);
  for (let k = 0; k < pose.length; k++)
    if (!Number.isFinite(pose[k])) checkFinite(`${body.angles[k].name} in ${what}`, pose[k]);
}

export function degrees(radians: number): string {
  return `${Math.round((radians * 1800) / Math.PI) / 10} deg`;
}
