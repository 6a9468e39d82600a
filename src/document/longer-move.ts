/**
 * A move given more time: what comes after it moves along, or the shape held after it or before it gives up the time. Times that
 * are counted from touchdown stay. Seconds from take-off.
 */
import type { SkillFile } from '../../sim/index.ts';
import { getTime, isInOrder, setTimes } from './key-order.ts';
import type { KeySource } from './lanes.ts';
import { getSchedule } from './phases.ts';
import { type AnchorSeconds, moveTime, resolveTime } from './times.ts';

interface Edge {
  readonly source: KeySource;
  readonly t: number;
  readonly anchor: string;
}

/** The move that the body is in at t, or the nearest one; from and to. Undefined: there is none. */
export function findMove(file: SkillFile, t: number, anchors: AnchorSeconds): readonly [number, number] | undefined {
  const times = listEdges(file, anchors);
  // a key inside of what is held is a way there and back
  const isHeld = (i: number): boolean =>
    [times[i - 1], times[i]].every(({ source }) => source.kind === 'edge') &&
    (getSchedule(file).blocks ?? []).some(
      (b) => resolveTime(b.from, anchors) <= times[i - 1].t + SAME && resolveTime(b.to, anchors) >= times[i].t - SAME,
    );
  let best: readonly [number, number] | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < times.length; i++) {
    const [from, to] = [times[i - 1].t, times[i].t];
    if (to - from < SAME || isHeld(i)) continue;
    const off = Math.max(from - t, t - to, 0);
    if (off < least) [best, least] = [[from, to], off];
  }
  return best;
}

/** Where the time of a longer move comes from, in the order in which it is asked for. */
export const GIVERS = ['later', 'after', 'before'] as const;
type Giver = (typeof GIVERS)[number];

/** The file with the move at t longer by `byS`; undefined where times from touchdown or the order of edges do not allow it. */
export function lengthenMove(
  file: SkillFile,
  t: number,
  byS: number,
  anchors: AnchorSeconds,
  giver: Giver = 'later',
): SkillFile | undefined {
  const move = findMove(file, t, anchors);
  if (!move) return undefined;
  const [from, to] = move;
  const isAt = (edge: Edge, time: number): boolean => Math.abs(edge.t - time) < SAME;
  const edges = listEdges(file, anchors);
  const moved =
    giver === 'later'
      ? edges.filter((edge) => edge.t >= to - SAME && (edge.anchor !== 'touchdown' || isAt(edge, to)))
      : edges.filter((edge) => isAt(edge, giver === 'after' ? to : from));
  if (moved.length === 0 || moved.some(({ anchor }) => anchor === 'touchdown')) return undefined;
  const by = giver === 'before' ? -byS : byS;
  const next = setTimes(
    file,
    moved.map(({ source, t: at }) => [source, moveTime(timeOf(file, source), at + by, anchors)] as const),
  );
  return isInOrder(next, anchors) ? next : undefined;
}

/** s */
const SAME = 1e-6;

const timeOf = (file: SkillFile, source: KeySource) => {
  const time = getTime(file, source);
  if (!time) throw new Error('an edge without a time');
  return time;
};

/** Keys and edges of shapes, as they follow each other. */
function listEdges(file: SkillFile, anchors: AnchorSeconds): Edge[] {
  const { keys = [], blocks = [] } = getSchedule(file);
  const sources: KeySource[] = [
    ...keys.map((_, index): KeySource => ({ kind: 'key', index })),
    ...blocks.flatMap((_, block): KeySource[] => [
      { kind: 'edge', block, side: 'from' },
      { kind: 'edge', block, side: 'to' },
    ]),
  ];
  return sources
    .map((source) => {
      const time = timeOf(file, source);
      return { source, t: resolveTime(time, anchors), anchor: time.anchor };
    })
    .sort((a, b) => a.t - b.t);
}
