/** The body shapes of a skill as spans on the ruler, and how far each edge may move. Seconds from take-off. */
import type { ShapeData, SkillFile } from '../../sim/index.ts';
import { getSchedule } from './phases.ts';
import { titleOf } from './shape-title.ts';
import { type AnchorSeconds, clamp, resolveTime } from './times.ts';

export interface BlockSpan {
  /** index of the block in the schedule */
  readonly index: number;
  readonly shape: string;
  readonly title: string;
  readonly word: string;
  readonly from: number;
  readonly to: number;
  /** this block differs from its shape */
  readonly changed: boolean;
}

/** Shortest move into a shape, s: a move takes time. */
export const SHORTEST_MOVE = 0.03;

export function getSpans(
  file: SkillFile,
  shapes: Readonly<Record<string, ShapeData>>,
  anchors: AnchorSeconds,
): BlockSpan[] {
  return (getSchedule(file).blocks ?? []).map((block, index) => {
    const data = file.shapes?.[block.shape] ?? shapes[block.shape];
    return {
      index,
      shape: block.shape,
      title: data ? titleOf(data, block.adjustDeg ?? {}) : block.shape,
      word: data?.word ?? block.shape,
      from: resolveTime(block.from, anchors),
      to: resolveTime(block.to, anchors),
      changed: Object.keys(block.adjustDeg ?? {}).length > 0,
    };
  });
}

/** Where an edge may stand: after the shape before it and a move, before its own other edge. */
export function limitEdge(spans: readonly BlockSpan[], index: number, side: 'from' | 'to', s: number): number {
  const span = spans[index];
  if (side === 'from') return clamp(s, (spans[index - 1]?.to ?? -5) + SHORTEST_MOVE, span.to);
  return clamp(s, span.from, (spans[index + 1]?.from ?? 30) - SHORTEST_MOVE);
}

/** The span held at t, or the one the body is moving into. */
export function findSpan(spans: readonly BlockSpan[], t: number): { span: BlockSpan; held: boolean } | undefined {
  let last: BlockSpan | undefined;
  for (const span of spans) {
    if (t < span.from) return { span, held: false };
    if (t <= span.to) return { span, held: true };
    last = span;
  }
  return last && { span: last, held: true };
}
