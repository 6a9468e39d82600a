/**
 * Drops onto a hard plate, as the published ones were landed: from a height, at rest in the air, on both feet. Posed with knees
 * at 25 and hips at 35 degrees (15 to 30 and 20 to 40 in landings: a coach's range, from memory), toes 25 degrees down (the
 * ankle bends by 80 degrees in a landing, Wu 2019, so it is stretched at touchdown), arms forward, the mass centre over the middle
 * of the soles. The plate gives 1 mm under a kilonewton and loses nothing; what gives besides is in the legs' soles.
 */
import type { Body } from '../../sim/body/body.ts';
import { type LandingRun, runLanding } from '../../sim/contact/landing.ts';
import type { LandingEntry } from '../../sim/contact/landing-entry.ts';
import { DEFAULT_ACTION, LEGS, type Legs } from '../../sim/contact/landing-joints.ts';
import type { MatSpec } from '../../sim/contact/mat.ts';
import { DEG, RAD } from '../../sim/math/angles.ts';
import { makeDropEntry } from './drop-entry.ts';

const G = 9.81;
export const PLATE: MatSpec = { surfaceY: 0, thickness: 0.1, stiffness: 1e6, damping: 0, friction: 0.8 };

/** Heights, m; peak of both feet, body weights; largest knee, deg (from memory): docs/decisions/0020-landing-forces.md. */
export const PUBLISHED = [
  { height: 0.32, peak: [3.9, 6.3], knee: [60, 80], isFitted: true },
  { height: 0.72, peak: [6, 9], knee: [70, 95], isFitted: true },
  { height: 1.28, peak: [11, 12], knee: [85, 110], isFitted: false },
] as const;
/** deg that the joints bend by the end of the impact; hip and ankle around Wu 2019's 12 and 29, as wide as the knee's */
export const IMPACT = { knee: [20, 40], hip: [2, 22], ankle: [19, 39] } as const;
/** s, from memory */
export const STOPS = [0.15, 0.35] as const;

export interface DropResult {
  readonly run: LandingRun;
  /** body weights */
  readonly peak: number;
  /** s */
  readonly peakAt: number;
  readonly stop: number;
  /** deg */
  readonly largestKnee: number;
  /** until the force, past its peak, is half of it: s, deg */
  readonly impact: { readonly t: number; readonly knee: number; readonly hip: number; readonly ankle: number };
  /** of what the legs took up to the end of braking */
  readonly shares: { readonly hip: number; readonly knee: number; readonly ankle: number };
}

export function dropOnto(body: Body, height: number): LandingEntry {
  return makeDropEntry(body, {
    speed: Math.sqrt(2 * G * height),
    knee: 25 * RAD,
    hip: 35 * RAD,
    shoulder: 1.8,
    toesDown: 25 * RAD,
  });
}

export function drop(body: Body, height: number, legs: Legs = LEGS, duration = 0.6): DropResult {
  const entry = dropOnto(body, height);
  const run = runLanding(entry, { mat: PLATE, action: DEFAULT_ACTION, duration, isBatch: true }, legs);
  const joint = (name: string): number => entry.chain.joints.findIndex((j) => j.name === name);
  const [hip, knee, ankle] = ['hip', 'knee', 'ankle'].map(joint);
  let top = 0;
  for (let i = 1; i < run.n; i++) if (run.fy[i] > run.fy[top]) top = i;
  let half = top;
  while (half < run.n - 1 && run.fy[half] > run.fy[top] / 2) half++;
  let end = 0;
  while (end < run.n - 1 && !(run.t[end] >= run.braked)) end++;
  const bent = (j: number): number => (run.q[j][half] - run.q[j][0]) * DEG;
  const took = [hip, knee, ankle].map((j) => -run.jointWork[j][end]);
  const all = took.reduce((a, b) => a + b, 0);
  return {
    run,
    peak: run.fy[top] / (body.mass * G),
    peakAt: run.t[top],
    stop: run.braked,
    largestKnee: run.q[knee].subarray(0, end + 1).reduce((a, b) => Math.max(a, b), 0) * DEG,
    impact: { t: run.t[half], knee: bent(knee), hip: bent(hip), ankle: -bent(ankle) },
    shares: { hip: took[0] / all, knee: took[1] / all, ankle: took[2] / all },
  };
}
