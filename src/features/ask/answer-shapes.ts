/** The shapes of a search's answer on the ruler, and which of their edges are elsewhere than those of the skill as it is. Seconds from take-off. */
import type { SkillSpec } from '../../../sim/index.ts';
import { type AnchorTimes, resolveTime } from '../../../sim/math/anchor.ts';

interface HeldSpan {
  readonly from: number;
  readonly to: number;
}

/** Of two pixels on a usual ruler. */
const SEEN_S = 0.003;

/** Each shape with the events of its own flight. */
export const heldSpans = ({ blocks }: Pick<SkillSpec, 'blocks'>, events: AnchorTimes): HeldSpan[] =>
  blocks.map(({ from, to }) => ({ from: resolveTime(from, events), to: resolveTime(to, events) }));

/** Edges within the flight as they are now that the answer has elsewhere. */
export function movedEdges(now: readonly HeldSpan[], answer: readonly HeldSpan[], duration: number): number[] {
  const isInside = (s: number): boolean => s > SEEN_S && s < duration - SEEN_S;
  return now.flatMap((span, i) => {
    const other = answer[i];
    if (!other) return [];
    return (['from', 'to'] as const).flatMap((side) =>
      isInside(span[side]) && Math.abs(span[side] - other[side]) > SEEN_S ? [span[side]] : [],
    );
  });
}
