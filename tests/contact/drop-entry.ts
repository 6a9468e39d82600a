/**
 * A landing without a flight before it: a human comes down upright at a stated speed, knees bent as stated, soles level, the
 * mass centre over the middle of the soles unless a lean is stated. For trying mats and legs, and for rules of the trade.
 */

import type { Body } from '../../sim/body/body.ts';
import { makeChain } from '../../sim/contact/chain.ts';
import { makeChainTotals, pointInto, totalsInto } from '../../sim/contact/chain-motion.ts';
import { footPoints } from '../../sim/contact/feet.ts';
import { type LandingEntry, placeEntry } from '../../sim/contact/landing-entry.ts';
import { DEFAULT_ACTION, type LegAction } from '../../sim/contact/landing-joints.ts';
import { MATS, type MatSpec } from '../../sim/contact/mat.ts';
import { FieldError } from '../../sim/math/field-error.ts';

interface Drop {
  /** m/s downward */
  readonly speed: number;
  /** rad */
  readonly knee: number;
  /** flexion of the hips; as much as the knees if left out */
  readonly hip?: number;
  readonly gravity?: number;
  /** forward, as the athlete faces */
  readonly vx?: number;
  /** angular momentum about the mass centre, + backward */
  readonly h?: number;
  /** lean of the line from the middle of the soles to the mass centre, rad: + forward; 0 if left out */
  readonly lean?: number;
  /** toes down, rad; soles level if left out */
  readonly toesDown?: number;
  /** arms, rad from hanging; 0.9 if left out */
  readonly shoulder?: number;
}

export function makeDropEntry(body: Body, drop: Drop): LandingEntry {
  if (!(drop.speed > 0 && drop.speed <= 20))
    throw new FieldError('drop.speedMPerS', drop.speed, 'above 0, at most 20 m/s');
  if (!(drop.knee >= 0 && drop.knee <= 2.5)) throw new FieldError('drop.kneeRad', drop.knee, 'from 0 to 2.5 rad');
  const chain = makeChain(body);
  const gravity = drop.gravity ?? 9.81;
  const make = (hip: number, theta: number): LandingEntry => {
    const pose: Readonly<Record<string, number>> = {
      shoulder: drop.shoulder ?? 0.9,
      hip,
      knee: drop.knee,
      ankle: hip - drop.knee + theta + (drop.toesDown ?? 0),
    };
    return {
      facing: 1,
      gravity,
      stature: body.stature ?? 1.7,
      chain,
      q: chain.joints.map((j) => pose[j.name] ?? 0),
      qd: chain.joints.map(() => 0),
      x: 0,
      y: 1,
      vx: drop.vx ?? 0,
      vy: -drop.speed,
      h: drop.h ?? 0,
      theta,
      tilt: 0,
      unfinished: 0,
      asymmetry: [],
    };
  };
  // soles level; the trunk leans until the mass centre is where it should be
  const points = footPoints(chain);
  const out = new Float64Array(4);
  const whole = makeChainTotals();
  const off = (theta: number): number => {
    const motion = placeEntry(make(drop.hip ?? drop.knee, theta));
    totalsInto(chain, motion, gravity, whole);
    let [low, high, sole] = [Infinity, -Infinity, Infinity];
    for (const p of points) {
      pointInto(chain, motion, p.at, out);
      low = Math.min(low, out[0]);
      high = Math.max(high, out[0]);
      sole = Math.min(sole, out[1] - p.radius);
    }
    return Math.atan2(whole.x - (low + high) / 2, whole.y - sole) - (drop.lean ?? 0);
  };
  // forward lean of the trunk (theta < 0) brings the mass centre forward
  let [a, b] = [-1.4, 0.8];
  for (let i = 0; i < 60; i++) {
    const m = (a + b) / 2;
    if (off(m) > 0) a = m;
    else b = m;
  }
  return make(drop.hip ?? drop.knee, (a + b) / 2);
}

/** A woman of 54 kg comes down fast on a competition mat: what the benchmark and the convergence use. */
export const FIRM: { readonly drop: Drop; readonly mat: MatSpec; readonly action: LegAction } = {
  drop: { speed: 5.2, knee: 0.5 },
  mat: MATS.competitionMat,
  action: DEFAULT_ACTION,
};
