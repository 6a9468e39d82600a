/** Keys of one angle, merged from blocks and from the angle's own keys. */
import type { Collected, PlacedKey } from './collect.ts';
import type { Knot } from './track.ts';

/** Stop keys at both ends of every block, with the angle's own keys merged in. */
export function mergeKnots({ blocks, keys }: Collected, angle: number, base: number): Knot[] {
  const knots: Knot[] = [];
  const first = blocks[0]?.pose[angle];
  if (keys[angle].length === 0 && blocks.every((b) => b.pose[angle] === first))
    return [makeKnot(blocks[0]?.from ?? 0, first ?? base)];
  for (const b of blocks) {
    const value = b.pose[angle];
    if (knots.length === 0 || b.from > knots[knots.length - 1].t) knots.push(makeKnot(b.from, value));
    if (b.to > b.from) knots.push(makeKnot(b.to, value));
  }
  return withKeys(knots, keys[angle], base);
}

/** The knots with own keys put in by time; at the same time the own key replaces. Never empty: `base` if need be. */
export function withKeys(knots: Knot[], own: readonly PlacedKey[], base: number): Knot[] {
  if (own.length === 0 && knots.length > 0) return knots;
  const out: Knot[] = [];
  let i = 0;
  for (const k of own) {
    while (i < knots.length && knots[i].t < k.t) out.push(knots[i++]);
    if (i < knots.length && knots[i].t === k.t) i++;
    out.push({ t: k.t, arrive: k.value, depart: k.next ?? k.value, stop: k.stop });
  }
  while (i < knots.length) out.push(knots[i++]);
  if (out.length === 0) out.push(makeKnot(0, base));
  return out;
}

function makeKnot(t: number, value: number): Knot {
  return { t, arrive: value, depart: value, stop: true };
}
