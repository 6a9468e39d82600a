/**
 * Edits of poses and of keys along time, each a pure function from one skill to the next. Times are seconds from take-off;
 * angles are degrees by name, "hipFlexion" for both sides.
 */
import type { Body, FileKey, FileTime, SkillFile } from '../../sim/index.ts';
import { getTime, limitChange, setTimes, shareAngle, sidesOf } from './key-order.ts';
import type { KeySource } from './lanes.ts';
import { getSchedule, withSchedule } from './phases.ts';
import { type AnchorSeconds, moveTime, resolveTime } from './times.ts';

/** Nearer than this, s, a key and the cursor are one instant. */
export const SAME_INSTANT = 0.005;

export type NamedDegrees = Readonly<Record<string, number>>;

interface PoseOptions {
  readonly anchors: AnchorSeconds;
  /** a limb's change is made on both sides */
  readonly mirror?: boolean;
  readonly kind?: 'stop' | 'pass';
  /** the event a new key is anchored to */
  readonly anchor?: FileTime['anchor'];
}

/** Every key and block edge at this instant. */
export function getSourcesAt(file: SkillFile, s: number, anchors: AnchorSeconds): KeySource[] {
  return getSources(file).filter((source) => near(file, source, s, anchors));
}

/** Every key and block edge from one time to another. */
export function getSourcesIn(file: SkillFile, fromS: number, toS: number, anchors: AnchorSeconds): KeySource[] {
  return getSources(file).filter((source) => {
    const time = getTime(file, source);
    const t = time ? resolveTime(time, anchors) : Number.NaN;
    return t >= fromS - 1e-9 && t <= toS + 1e-9;
  });
}

function getSources(file: SkillFile): KeySource[] {
  return [
    ...(getSchedule(file).keys ?? []).map((_, index): KeySource => ({ kind: 'key', index })),
    ...(getSchedule(file).blocks ?? []).flatMap((_, block): KeySource[] => [
      { kind: 'edge', block, side: 'from' },
      { kind: 'edge', block, side: 'to' },
    ]),
  ];
}

function near(file: SkillFile, source: KeySource, s: number, anchors: AnchorSeconds): boolean {
  const time = getTime(file, source);
  return time !== undefined && Math.abs(resolveTime(time, anchors) - s) <= SAME_INSTANT;
}

/**
 * A key at this instant for every angle named. A key of the angle that is here already takes the value; a key or block
 * edge within SAME_INSTANT lends its time, so that the pose stays one pose. Keys elsewhere stay.
 */
export function setPoseAt(file: SkillFile, s: number, changedDeg: NamedDegrees, options: PoseOptions): SkillFile {
  const { anchors, kind, anchor = 'takeoff' } = options;
  const wanted = options.mirror ? onBothSides(changedDeg) : changedDeg;
  const at = findInstant(file, s, anchors) ?? moveTime({ anchor, s: 0 }, s, anchors);
  let keys = [...(getSchedule(file).keys ?? [])];
  for (const [angle, deg] of Object.entries(wanted))
    keys = putKey(keys, { angle, at, deg, ...(kind ? { kind } : {}) }, anchors);
  return withSchedule(file, { keys });
}

/** "hipFlexionL" becomes "hipFlexion". */
function onBothSides(named: NamedDegrees): NamedDegrees {
  return Object.fromEntries(Object.entries(named).map(([name, deg]) => [sidesOf(name).stem, deg]));
}

/** The time of the nearest block edge, else key, at this instant. */
function findInstant(file: SkillFile, s: number, anchors: AnchorSeconds): FileTime | undefined {
  const times = getSourcesAt(file, s, anchors).map((source) => ({ source, time: getTime(file, source) as FileTime }));
  const off = (time: FileTime): number => Math.abs(resolveTime(time, anchors) - s);
  times.sort((a, b) => Number(a.source.kind === 'key') - Number(b.source.kind === 'key') || off(a.time) - off(b.time));
  return times[0]?.time;
}

/** The list with one more key in its place in time, or with the key that stood there changed. */
function putKey(keys: readonly FileKey[], key: FileKey, anchors: AnchorSeconds): FileKey[] {
  const t = resolveTime(key.at, anchors);
  const here = (k: FileKey): boolean =>
    shareAngle(k.angle, key.angle) && Math.abs(resolveTime(k.at, anchors) - t) <= SAME_INSTANT;
  const { stem, sides } = sidesOf(key.angle);
  const out = keys.flatMap((k): FileKey[] => {
    if (!here(k)) return [k];
    // a jump of plane belongs to the old value
    const { nextDeg: _, ...old } = k;
    const kept = sidesOf(k.angle).sides.filter((side) => !sides.includes(side));
    // one side of a key for both changes: the other side keeps what it had
    if (kept.length > 0)
      return [...kept.map((side) => ({ ...k, angle: stem + side })), { ...old, angle: key.angle, deg: key.deg }];
    return [{ ...old, deg: key.deg, ...(key.kind ? { kind: key.kind } : {}) }];
  });
  const covered = sides.filter((side) => out.some((k) => here(k) && sidesOf(k.angle).sides.includes(side)));
  if (covered.length === sides.length) return out;
  const missing =
    covered.length === 0 ? [key.angle] : sides.filter((side) => !covered.includes(side)).map((side) => stem + side);
  for (const angle of missing) {
    const after = out.findIndex((k) => shareAngle(k.angle, angle) && resolveTime(k.at, anchors) > t);
    out.splice(after < 0 ? out.length : after, 0, { ...key, angle });
  }
  return out;
}

/** Keys and block edges moved together by the same time. */
export function moveSources(
  file: SkillFile,
  sources: readonly KeySource[],
  byS: number,
  anchors: AnchorSeconds,
): SkillFile {
  return changeTimes(file, sources, (t) => t + byS, anchors);
}

/** Keys and block edges drawn apart (factor above 1) or together about a time that stays. */
export function scaleSources(
  file: SkillFile,
  sources: readonly KeySource[],
  pivotS: number,
  factor: number,
  anchors: AnchorSeconds,
): SkillFile {
  return changeTimes(file, sources, (t) => pivotS + (t - pivotS) * Math.max(factor, 0), anchors);
}

function changeTimes(
  file: SkillFile,
  sources: readonly KeySource[],
  to: (t: number) => number,
  anchors: AnchorSeconds,
): SkillFile {
  const change = (share: number): SkillFile =>
    setTimes(
      file,
      sources.flatMap((source) => {
        const time = getTime(file, source);
        if (!time) return [];
        const t = resolveTime(time, anchors);
        return [[source, moveTime(time, t + share * (to(t) - t), anchors)] as const];
      }),
    );
  return limitChange(change, anchors, file);
}

/** The body's angles at one instant, to be put elsewhere. `row`: angles in rad, in the order of Body.angles. */
export function copyPose(body: Body, row: ArrayLike<number>): NamedDegrees {
  const deg = (a: number): number => Math.round(((row[a] * 180) / Math.PI) * 1000) / 1000;
  return Object.fromEntries(body.angles.map(({ name }, a) => [name, deg(a)]));
}

/** Left becomes right, and bends and turns of the spine change their way. */
export function mirrorPose(body: Body, pose: NamedDegrees): NamedDegrees {
  return Object.fromEntries(Object.entries(pose).map(([name, deg]) => mirrorAngle(body, name, deg)));
}

function mirrorAngle(body: Body, name: string, deg: number): [string, number] {
  const angle = body.angles.find((a) => a.name === name);
  if (!angle) return [name, deg];
  return [body.angles[angle.mirror].name, deg === 0 ? 0 : deg * angle.mirrorSign];
}

/** Keys with their times counted from the first of them. */
export interface KeySpan {
  readonly keys: readonly { readonly afterS: number; readonly key: FileKey }[];
  readonly lengthS: number;
}

export function copyKeys(file: SkillFile, sources: readonly KeySource[], anchors: AnchorSeconds): KeySpan {
  const picked = sources
    .flatMap((source) => (source.kind === 'key' ? (getSchedule(file).keys?.[source.index] ?? []) : []))
    .map((key) => ({ t: resolveTime(key.at, anchors), key }))
    .sort((a, b) => a.t - b.t);
  const first = picked[0]?.t ?? 0;
  return {
    keys: picked.map(({ t, key }) => ({ afterS: t - first, key })),
    lengthS: (picked.at(-1)?.t ?? first) - first,
  };
}

export function mirrorKeys(body: Body, span: KeySpan): KeySpan {
  const keys = span.keys.map(({ afterS, key }) => {
    const [angle, deg] = mirrorAngle(body, key.angle, key.deg);
    return { afterS, key: { ...key, angle, deg } };
  });
  return { ...span, keys };
}

/** The keys again from another time on, drawn out or together by `factor`; each keeps the event it is anchored to. */
export function pasteKeys(file: SkillFile, span: KeySpan, s: number, anchors: AnchorSeconds, factor = 1): SkillFile {
  let keys = [...(getSchedule(file).keys ?? [])];
  for (const { afterS, key } of span.keys)
    keys = putKey(keys, { ...key, at: moveTime(key.at, s + afterS * factor, anchors) }, anchors);
  return withSchedule(file, { keys });
}

export function removeSources(file: SkillFile, sources: readonly KeySource[]): SkillFile {
  const gone = new Set(sources.flatMap((source) => (source.kind === 'key' ? [source.index] : [])));
  return withSchedule(file, { keys: (getSchedule(file).keys ?? []).filter((_, i) => !gone.has(i)) });
}
