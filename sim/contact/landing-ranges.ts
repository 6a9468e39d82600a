/**
 * How often a landing ends in which way, over stated ranges of what is not known of it: how the legs take it, what the mat
 * is, how soon the athlete reacts, how strong he is. Samples are points of one fixed sequence that fills the ranges evenly (additive
 * recurrence by the root of x^6 = x + 1; Roberts 2018, from memory), so that the same landing has the same count. One sample at
 * a time, so that a job can report on its way. It is a share of these ranges, not a probability.
 */
import type { EndingKind } from './ending.ts';
import { type LandingSetup, runLanding } from './landing.ts';
import type { LandingEntry } from './landing-entry.ts';
import { LEG_STIFFNESS, LEGS } from './landing-joints.ts';
import { LEAST_STIFFNESS, MOST_STIFFNESS } from './mat.ts';

export interface LandingRange {
  readonly name: 'legs' | 'bend' | 'mat' | 'reaction' | 'strength';
  /** factors on what is set; for the reaction seconds in its place */
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

export const LANDING_RANGES: readonly LandingRange[] = [
  {
    name: 'legs',
    low: 0.7,
    high: 1.4,
    source:
      'stiffness of the legs before they react, times: judgement; 15 to 30 kN/m from memory (DeVita & Skelly 1992)',
  },
  {
    name: 'bend',
    low: 0.8,
    high: 1.25,
    source: 'bend at which braking is planned to end, times: judgement; largest knees spread as much from memory',
  },
  { name: 'mat', low: 0.8, high: 1.25, source: 'stiffness of the mat, times: judgement' },
  {
    name: 'reaction',
    low: 0.05,
    high: 0.12,
    source: 'balance takes over after, s: judgement; from a stretch reflex to a first willed answer',
  },
  {
    name: 'strength',
    low: 0.8,
    high: 1.3,
    source: 'strength of the joints, times: judgement; one elite athlete has 1.0 to 1.6 times active adults',
  },
];

/** Samples that a count is made of. */
export const LANDING_SAMPLES = 20;

/** Root of x^6 = x + 1: its inverse powers fill five dimensions evenly. */
const ROOT = 1.1347241384015194;

/** The value of each range in sample i = 0, 1, ... */
export function rangeValues(i: number): readonly number[] {
  return LANDING_RANGES.map(({ low, high }, d) => {
    const x = (0.5 + (i + 1) / ROOT ** (d + 1)) % 1;
    return low + (high - low) * x;
  });
}

/** How sample i of this landing ends. */
export function landSample(entry: LandingEntry, spec: LandingSetup, i: number): EndingKind {
  const [legs, bend, mat, reaction, strength] = rangeValues(i);
  const run = runLanding(
    entry,
    {
      ...spec,
      isBatch: true,
      mat: { ...spec.mat, stiffness: Math.min(Math.max(spec.mat.stiffness * mat, LEAST_STIFFNESS), MOST_STIFFNESS) },
      action: {
        ...spec.action,
        stiffness: Math.min(Math.max(spec.action.stiffness * legs, LEG_STIFFNESS[0]), LEG_STIFFNESS[1]),
        strength: spec.action.strength * strength,
        delay: reaction,
      },
    },
    { ...LEGS, bend: [LEGS.bend[0] * bend, LEGS.bend[1] * bend] },
  );
  return run.ending.kind;
}

/**
 * In how many of ten of the ranges each ending comes, the most frequent first. They come to ten: rounded down, and what is left goes to the largest
 * remainders, of equal ones to the more frequent.
 */
export function tenthsOf(
  kinds: readonly EndingKind[],
): readonly { readonly kind: EndingKind; readonly tenths: number }[] {
  const counts = new Map<EndingKind, number>();
  for (const kind of kinds) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  const sorted = [...counts].sort((a, b) => b[1] - a[1]);
  const left = sorted.map(([, count]) => (10 * count) % kinds.length);
  const spare = left.reduce((a, b) => a + b, 0) / kinds.length;
  const first = [...left.keys()].sort((a, b) => left[b] - left[a]).slice(0, spare);
  return sorted.map(([kind, count], i) => ({
    kind,
    tenths: Math.floor((10 * count) / kinds.length) + (first.includes(i) ? 1 : 0),
  }));
}
