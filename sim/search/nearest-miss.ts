/** What prevents a target that is not met: wishes that stay open, limits that break, bounds that hold. */
import type { Clearance } from '../measure/clearance.ts';
import { touchedOf } from '../skill/verdict-held.ts';
import type { Broken, Solution, Term } from './solution.ts';
import type { Unknown } from './unknown.ts';

export type Obstacle =
  | { readonly kind: 'wish'; readonly term: Term; readonly off: number }
  | { readonly kind: 'limit'; readonly limit: Broken }
  /** the landing is not held */
  | { readonly kind: 'ending' }
  /** it would touch this in the air */
  | { readonly kind: 'touch'; readonly solid: Clearance['solid'] }
  | {
      readonly kind: 'bound';
      readonly unknown: Unknown;
      readonly side: 'low' | 'high';
      readonly value: number;
      readonly source: string;
      /** how much of the squared miss would go, at first, with one more small change (Input.scale) past the bound */
      readonly gain: number;
    };

/** An unknown within this share of its span from an end counts as at it. */
const AT_END = 1e-6;

/** Wishes by how far they are off, then limits, then the bounds that hold most. */
export function findObstacles(
  miss: Pick<Solution, 'terms' | 'broken' | 'verdict' | 'held'>,
  x: readonly number[],
  gradient: readonly number[],
  unknowns: readonly Unknown[],
): Obstacle[] {
  const open = miss.terms
    .filter((t) => !t.met && !(t.wish.result === 'reach' && miss.held === false))
    .map((term): Obstacle & { kind: 'wish' } => ({
      kind: 'wish',
      term,
      off: Math.abs(term.value - term.wish.value) / term.wish.tolerance,
    }))
    .sort((a, b) => b.off - a.off);
  const bounds = unknowns.flatMap((unknown, j): (Obstacle & { kind: 'bound' })[] => {
    const side = x[j] <= AT_END ? 'low' : x[j] >= 1 - AT_END ? 'high' : undefined;
    if (!side) return [];
    const slope = side === 'low' ? gradient[j] : -gradient[j];
    const gain = (slope * unknown.input.scale) / (unknown.to - unknown.from);
    if (!(gain > 0)) return [];
    const value = side === 'low' ? unknown.from : unknown.to;
    return [
      { kind: 'bound', unknown, side, value, source: side === 'low' ? unknown.fromSource : unknown.toSource, gain },
    ];
  });
  bounds.sort((a, b) => b.gain - a.gain);
  const touched = touchedOf(miss.verdict);
  return [
    ...(touched ? [{ kind: 'touch', solid: touched } as const] : []),
    ...open,
    ...(miss.held === false ? [{ kind: 'ending' } as const] : []),
    ...miss.broken.map((limit): Obstacle => ({ kind: 'limit', limit })),
    ...bounds,
  ];
}
