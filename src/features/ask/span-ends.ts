/** Ends of what may change at which an answer lies, and the span that gives it room there. SI. */
import type { Chosen } from './ask-start.ts';

export interface AtEnd {
  readonly id: string;
  readonly side: 'from' | 'to';
  /** where the end would be; undefined where nothing lies beyond it */
  readonly wider?: number;
}

/** So near to its end, as a share of the span, the search was stopped by it (judgement). */
const NEAR = 0.005;
/** A press adds so much of the span (judgement). */
const MORE = 0.5;

/** In the order of what may change. */
export function listAtEnds(
  chosen: readonly Chosen[],
  values: readonly number[],
  rangeOf: (id: string) => readonly [number, number] | undefined,
): AtEnd[] {
  return chosen.flatMap(({ id, from, to }, i): AtEnd[] => {
    const wide = to - from;
    const value = values[i];
    if (!(wide > 0) || value === undefined) return [];
    const side = value - from < NEAR * wide ? 'from' : to - value < NEAR * wide ? 'to' : undefined;
    if (!side) return [];
    const [low, high] = rangeOf(id) ?? [from, to];
    const wider = side === 'from' ? Math.max(low, from - MORE * wide) : Math.min(high, to + MORE * wide);
    const isMore = side === 'from' ? wider < from : wider > to;
    return [{ id, side, ...(isMore ? { wider } : {}) }];
  });
}
