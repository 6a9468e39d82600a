/**
 * The swing after a catch and what the catch pulls: the largest force of the first half period of the athlete's mass on arms and rail, with
 * its range over what both may be (docs/decisions/0024-catch.md).
 */
import type { Body } from '../body/body.ts';
import { makeSwing } from './make-swing.ts';
import { ARMS_STIFFNESS, armsRange, type Rail, springOf } from './rail.ts';
import type { Swing } from './swing.ts';
import type { CaughtStart, SwingSpec } from './swing-spec.ts';

export interface CatchLoad {
  /** N and body weights, and s after the catch */
  readonly force: number;
  readonly weights: number;
  readonly t: number;
  /** half a period of the athlete's mass on arms and rail: what is looked at, s */
  readonly within: number;
  /** body weights, over the stiffnesses of arms and rail */
  readonly range: readonly [number, number];
}

type CaughtSpec = Omit<SwingSpec, 'start'> & { readonly start: CaughtStart };

export const makeCaughtSwing = (spec: CaughtSpec): { readonly swing: Swing; readonly load: CatchLoad } => {
  const swing = makeSwing(spec);
  const peak = peakOf(swing, halfPeriod(spec.body, swing.rail));
  const others = armsRange(spec.rail).map((rail) => {
    const start = { ...spec.start, arms: rail.arms ?? ARMS_STIFFNESS.usual };
    const within = halfPeriod(spec.body, rail);
    const { release: _, late: __, ...rest } = spec;
    return peakOf(makeSwing({ ...rest, rail, start, duration: 2 * within }), within).weights;
  });
  const all = [peak.weights, ...others];
  return { swing, load: { ...peak, range: [Math.min(...all), Math.max(...all)] } };
};

function halfPeriod({ mass }: Body, rail: Rail): number {
  const { mass: own, ky } = springOf(rail);
  return ky > 0 ? Math.PI * Math.sqrt((mass + own) / ky) : SHORTEST;
}
/** s: of a rail that does not give */
const SHORTEST = 0.05;

function peakOf({ columns: c, shown, duration }: Swing, within: number): Omit<CatchLoad, 'range'> {
  let i = 0;
  let k = 1;
  for (; k < shown && c.t[k] + duration <= within; k++) if (c.grip[k] > c.grip[i]) i = k;
  // still rising there: the peak is the next
  for (; k < shown && c.grip[k] > c.grip[i] && i === k - 1; k++) i = k;
  return {
    force: c.grip[i],
    weights: c.gripWeights[i],
    t: c.t[i] + duration,
    within,
  };
}
