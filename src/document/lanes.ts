/**
 * Joint lanes of a skill: which angles move, and the keys that move them. A key is one of the file's own, or an edge of
 * a body shape (dragging it along time retimes the edge, up and down changes the shape in that block).
 */

import type { Body, Frames, SkillFile } from '../../sim/index.ts';
import { DEG } from '../../sim/math/angles.ts';
import { own } from '../../sim/math/own.ts';
import { withoutSide } from '../../sim/math/side.ts';
import { getSchedule } from './phases.ts';
import type { BlockSpan } from './spans.ts';
import { type AnchorSeconds, resolveTime } from './times.ts';

type LaneSide = 'left' | 'right' | 'both' | 'centre';
export type KeySource =
  | { readonly kind: 'key'; readonly index: number }
  | { readonly kind: 'edge'; readonly block: number; readonly side: 'from' | 'to' };

export interface LaneKey {
  readonly t: number;
  readonly deg: number;
  readonly kind: 'stop' | 'pass';
  readonly source: KeySource;
}

export interface Lane {
  /** the angle's name in the file: "hipFlexion" for both sides, "hipFlexionL" for one */
  readonly id: string;
  readonly side: LaneSide;
  /** both legs together are marked as the hips are */
  readonly sign: LaneSide;
  /** column of Frames.angles that is drawn */
  readonly column: number;
  readonly keys: readonly LaneKey[];
  readonly rangeDeg: readonly [number, number];
  readonly lowDeg: number;
  readonly highDeg: number;
}

/** Under this, deg, an angle counts as still, and two sides as equal. */
const STILL_DEG = 0.5;

export function getLanes(
  file: SkillFile,
  body: Body,
  frames: Frames,
  spans: readonly BlockSpan[],
  anchors: AnchorSeconds,
): Lane[] {
  const width = body.angles.length;
  const lanes: Lane[] = [];
  const keysOf = groupKeys(file, anchors);
  body.angles.forEach((angle, column) => {
    const other = angle.mirror;
    const paired = other !== column;
    const equal = paired && isEqual(frames, width, column, other);
    if (equal && other < column) return;
    const id = equal ? withoutSide(angle.name) : angle.name;
    const [lowDeg, highDeg] = calcBounds(frames, width, column);
    const side = !paired ? 'centre' : equal ? 'both' : angle.name.endsWith('L') ? 'left' : 'right';
    const stem = withoutSide(angle.name);
    const keys = [
      ...(keysOf.get(angle.name) ?? []),
      ...(paired && stem !== angle.name ? (keysOf.get(stem) ?? []) : []),
      ...(highDeg - lowDeg > STILL_DEG ? getEdgeKeys(frames, width, column, spans) : []),
    ].sort((a, b) => a.t - b.t || indexOf(a) - indexOf(b));
    lanes.push({
      id,
      side,
      sign: side === 'both' && /^(hip|knee|ankle)/.test(id) ? 'centre' : side,
      column,
      keys,
      rangeDeg: [angle.range[0] * DEG, angle.range[1] * DEG],
      lowDeg,
      highDeg,
    });
  });
  return sortLanes(lanes);
}

/** The file's own keys by the angle that they name. */
function groupKeys(file: SkillFile, anchors: AnchorSeconds): Map<string, LaneKey[]> {
  const groups = new Map<string, LaneKey[]>();
  (getSchedule(file).keys ?? []).forEach((key, index) => {
    const group = groups.get(key.angle) ?? [];
    groups.set(key.angle, group);
    group.push({
      t: resolveTime(key.at, anchors),
      deg: key.deg,
      kind: key.kind ?? 'stop',
      source: { kind: 'key', index },
    });
  });
  return groups;
}

/** At one time: the file's own in its order, then edges. */
const indexOf = ({ source }: LaneKey): number => (source.kind === 'key' ? source.index : Number.MAX_SAFE_INTEGER);

function getEdgeKeys(frames: Frames, width: number, column: number, spans: readonly BlockSpan[]): LaneKey[] {
  const keys: LaneKey[] = [];
  for (const span of spans) {
    for (const side of ['from', 'to'] as const) {
      const t = span[side];
      if (side === 'to' && span.to - span.from < 1e-6) continue;
      const row = Math.round((t / frames.t[frames.n - 1]) * (frames.n - 1));
      const i = Math.min(Math.max(row, 0), frames.n - 1);
      const deg = frames.angles[i * width + column] * DEG;
      keys.push({ t, deg, kind: 'stop', source: { kind: 'edge', block: span.index, side } });
    }
  }
  return keys;
}

function calcBounds(frames: Frames, width: number, column: number): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < frames.n; i++) {
    const v = frames.angles[i * width + column];
    if (v < low) low = v;
    if (v > high) high = v;
  }
  return [low * DEG, high * DEG];
}

function isEqual(frames: Frames, width: number, a: number, b: number): boolean {
  for (let i = 0; i < frames.n; i++) {
    if (Math.abs(frames.angles[i * width + a] - frames.angles[i * width + b]) * DEG > STILL_DEG) return false;
  }
  return true;
}

const ORDER = [
  'shoulderElevation',
  'shoulderPlane',
  'shoulderTurn',
  'elbowFlexion',
  'forearmPronation',
  'wristFlexion',
  'neckFlexion',
  'neckSideBend',
  'neckTurn',
  'thoracicFlexion',
  'thoracicSideBend',
  'thoracicTurn',
  'lumbarFlexion',
  'lumbarSideBend',
  'lumbarTurn',
  'hipFlexion',
  'hipAbduction',
  'hipTurn',
  'kneeFlexion',
  'anklePlantarFlexion',
];

/** From the arms down, left and right beside each other; joints of another tree keep its order. */
function sortLanes(lanes: readonly Lane[]): Lane[] {
  const rank = (lane: Lane): number => {
    const at = ORDER.indexOf(withoutSide(lane.id));
    return at < 0 ? ORDER.length : at;
  };
  return [...lanes].sort((a, b) => rank(a) - rank(b) || a.column - b.column);
}

/** The lanes shown when nothing was chosen: those that move most, arms before hips, in the body's order. */
export function chooseLanes(lanes: readonly Lane[], count: number): Lane[] {
  const weight = (lane: Lane): number => {
    const moves = lane.highDeg - lane.lowDeg;
    if (moves < STILL_DEG) return -1;
    const stem = withoutSide(lane.id);
    const rank: Record<string, number> = { shoulderElevation: 4, hipFlexion: 3, elbowFlexion: 2, kneeFlexion: 2 };
    // plane, turn and forearm follow the arm and say little by themselves
    return moves * (own(rank, stem) ?? 0.3);
  };
  const best = [...lanes].sort((a, b) => weight(b) - weight(a)).slice(0, count);
  const chosen = new Set(best.filter((lane) => weight(lane) > 0).map((lane) => lane.id));
  for (const id of ['shoulderElevation', 'hipFlexion', 'kneeFlexion', 'elbowFlexion']) {
    if (chosen.size >= count) break;
    for (const lane of lanes) if (withoutSide(lane.id) === id && chosen.size < count) chosen.add(lane.id);
  }
  return lanes.filter((lane) => chosen.has(lane.id));
}
