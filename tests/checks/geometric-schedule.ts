/**
 * A schedule given by geometry instead of keys: q, q', q'' of time as jets, smooth between the breaks. For loops in shape
 * space that keyed spans cannot follow exactly.
 */
import type { Schedule } from '../../sim/schedule/schedule.ts';
import { type Jet, minimumJerk, through } from '../oracles/jet.ts';

/** `legs[i]` gives all hinges at share s of leg i; each leg lasts one second and starts and ends at rest. */
export function followLegs(legs: readonly ((s: number) => readonly Jet[])[]): Schedule {
  const hinges = legs[0](0).length;
  const at = (t: number): Jet[] => {
    const i = Math.max(0, Math.min(legs.length - 1, Math.floor(t)));
    const s = minimumJerk(t - i);
    return legs[i](s[0]).map((q) => through(q, s));
  };
  const write = (t: number, ...out: Float64Array[]): void => {
    at(t).forEach((jet, k) => {
      out.forEach((array, d) => {
        array[k] = jet[d];
      });
    });
  };
  return {
    hinges,
    breaks: Array.from({ length: legs.length + 1 }, (_, i) => i),
    moving: [[0, legs.length]],
    movesIn: (from, to) => Math.min(to, legs.length) > Math.max(from, 0),
    evalInto: write,
    anglesInto: write,
  };
}
