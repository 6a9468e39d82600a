/** Of tries along one number, the span that meets what is asked and lies nearest to 0, its edges found between two tries. */

interface Try {
  /** s after the plan (before: negative) */
  readonly late: number;
  readonly meets: boolean;
}

interface Span {
  readonly from: number;
  readonly to: number;
  /** an edge that is the end of what was tried: the span may be wider */
  readonly isOpen: readonly [boolean, boolean];
}

/** s: edges are found to this */
const EDGE = 1e-4;

/** `tries` ascend; undefined: none meets. */
export function spanAround(tries: readonly Try[], meetsAt: (late: number) => boolean): Span | undefined {
  const count = tries.length;
  let best: [number, number] | undefined;
  for (let i = 0; i < count; i++) {
    if (!tries[i].meets) continue;
    let k = i;
    while (k + 1 < count && tries[k + 1].meets) k++;
    const away = (a: number, b: number): number => (tries[a].late > 0 ? tries[a].late : Math.max(0, -tries[b].late));
    if (!best || away(i, k) < away(best[0], best[1])) best = [i, k];
    i = k;
  }
  if (!best) return undefined;
  const edge = (outside: number, inside: number): number => {
    let [out, within] = [outside, inside];
    while (Math.abs(out - within) > EDGE) {
      const mid = (out + within) / 2;
      if (meetsAt(mid)) within = mid;
      else out = mid;
    }
    return within;
  };
  const isOpen = [best[0] === 0, best[1] === count - 1] as const;
  return {
    from: isOpen[0] ? tries[0].late : edge(tries[best[0] - 1].late, tries[best[0]].late),
    to: isOpen[1] ? tries[count - 1].late : edge(tries[best[1] + 1].late, tries[best[1]].late),
    isOpen,
  };
}
