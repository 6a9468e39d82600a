/**
 * Touchdown sought near that of a flight much like this one: for studies that fly thousands. A shape come to after it was to be
 * left is left at once, where a flight on its own says that such keys are out of order.
 */
import type { Flight } from '../flight/flight.ts';
import { NoAgreementError } from './agreed-flight.ts';
import type { BlockSpec, SkillSpec } from './skill-spec.ts';

/** Closing in takes three or four flights. */
const MOST_TRIES = 16;
/** Farther than this from the known touchdown nothing is looked for, s. */
const NEAR = 0.3;

/** The skill with shapes that are come to late left at once. */
export function freeKeys(spec: SkillSpec): SkillSpec {
  const isLate = ({ from, to }: BlockSpec): boolean => to.anchor === from.anchor && to.s < from.s;
  const earlier = spec.earlier?.map(freeKeys);
  // a leg that needs nothing stays the same object: what it hands over is found again
  if (!spec.blocks.some(isLate) && !earlier?.some((leg, i) => leg !== spec.earlier?.[i])) return spec;
  const blocks = spec.blocks.map((b) => (isLate(b) ? { ...b, to: b.from } : b));
  return { ...spec, blocks, ...(earlier ? { earlier } : {}) };
}

interface Agreement {
  /** aimed at, s */
  readonly agreement: number;
  /** taken where nothing agrees better: another part of the body may come down first just there, s */
  readonly most: number;
}
export const NEARLY: Agreement = { agreement: 1e-8, most: 0.01 };

/** Secant on the touchdown that keys are anchored to. */
export function agreeNear<F extends Flight>(
  T0: number,
  { agreement, most }: Agreement,
  fly: (touchdown: number) => F,
): F {
  let T = T0;
  let flight = fly(T);
  let off = flight.duration - T;
  let best = { flight, off };
  let before: { T: number; off: number } | undefined;
  for (let i = 0; i < MOST_TRIES && Math.abs(off) > agreement; i++) {
    const step = before && off !== before.off ? (-off * (T - before.T)) / (off - before.off) : off;
    before = { T, off };
    // the touchdown itself moves little with the time the keys are anchored to: no step far beyond what is off
    const widest = 2 * Math.abs(off);
    T += Math.max(-widest, Math.min(widest, step));
    if (!(Math.abs(T - T0) < NEAR)) break;
    flight = fly(T);
    off = flight.duration - T;
    if (Math.abs(off) < Math.abs(best.off)) best = { flight, off };
  }
  if (Math.abs(best.off) <= Math.max(agreement, most)) return best.flight;
  throw new NoAgreementError('no flight near the known one touches down at the time the keys are anchored to');
}
