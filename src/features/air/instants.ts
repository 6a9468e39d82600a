/** Named instants of a whole skill on its ruler: bottom of the swing, release or take-off, nearest to what it leaves, touch. */
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';

export type InstantName = 'bottom' | 'release' | 'nearest' | 'touch';

export function instantsOf(
  { legs, columns: c, phases }: WholeResult,
  k: number,
): Readonly<Partial<Record<InstantName, number>>> {
  const leg = legs[Math.min(k, legs.length - 1)];
  const rows = Array.from(c.t.keys()).filter(
    (i) => phases[c.phase[i]].leg === k && phases[c.phase[i]].kind === 'swing',
  );
  // the last time that the mass centre is lowest on the bar
  let bottom: number | undefined;
  for (let n = 1; n < rows.length - 1; n++) {
    const [a, b, d] = [rows[n - 1], rows[n], rows[n + 1]];
    if (c.height[b] <= c.height[a] && c.height[b] < c.height[d]) bottom = c.t[b];
  }
  return {
    ...(bottom === undefined ? {} : { bottom }),
    release: leg.takeoff,
    ...(leg.nearest ? { nearest: leg.takeoff + leg.nearest.t } : {}),
    touch: leg.touchdown,
  };
}

/** Edges of the phases, ascending. */
const edgesOf = ({ phases }: Pick<WholeResult, 'phases'>): readonly number[] =>
  [...new Set(phases.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);

/** A press of a key as a time of the ruler; undefined: no key of the ruler. */
export function timeOfKey(
  { key, shiftKey }: Pick<KeyboardEvent, 'key' | 'shiftKey'>,
  whole: WholeResult,
  leg: number,
  at: number,
): number | undefined {
  const step = shiftKey ? 0.1 : 0.01;
  const edges = edgesOf(whole);
  const instants = instantsOf(whole, leg);
  switch (key) {
    case 'ArrowLeft':
      return at - step;
    case 'ArrowRight':
      return at + step;
    case 'Home':
      return whole.from;
    case 'End':
      return whole.to;
    case 'PageDown':
      return edges.find((s) => s > at + 1e-6);
    case 'PageUp':
      return [...edges].reverse().find((s) => s < at - 1e-6);
    case 'b':
      return instants.bottom;
    case 'r':
      return instants.release;
    case 'n':
      return instants.nearest;
    case 't':
      return instants.touch;
    default:
      return undefined;
  }
}
