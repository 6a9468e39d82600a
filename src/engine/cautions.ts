/** Where the flight asks more than the athlete's limits: joint range, joint speed, joint torque. Warnings, never errors. */
import type { Body, Frames } from '../../sim/index.ts';
import type { Caution } from './result.ts';

const DEG = 180 / Math.PI;
/** Beyond the limit by this share before it is said; ranges by degrees. */
const SPARE = 1.005;
const SPARE_DEG = 0.5;
/** Near its poles, sin(elevation) below this, the shoulder's plane says nothing. */
const POLE = 0.2;

type Worst = Map<string, Caution & { readonly excess: number }>;

function note(
  worst: Worst,
  kind: Caution['kind'],
  angle: string,
  t: number,
  value: number,
  limit: number,
  excess: number,
): void {
  const key = kind + angle;
  const known = worst.get(key);
  if (!known || excess > known.excess) worst.set(key, { kind, angle, t, value, limit, excess });
}

/** The worst instant of each kind and joint, most serious first. */
export function findCautions(body: Body, frames: Frames): Caution[] {
  const worst: Worst = new Map();
  const width = body.angles.length;
  const shoulderOf = new Map(body.shoulders.flatMap((s) => [s.plane, s.elevation, s.turn].map((k) => [k, s] as const)));
  for (let i = 0; i < frames.n; i++) {
    const t = frames.t[i];
    for (let k = 0; k < width; k++) {
      const angle = body.angles[k];
      const shoulder = shoulderOf.get(k);
      const v = frames.angles[i * width + k];
      const [low, high] = angle.range;
      const beyond = Math.max(v - high, low - v) * DEG;
      const atPole =
        shoulder &&
        k !== shoulder.elevation &&
        Math.abs(Math.sin(frames.angles[i * width + shoulder.elevation])) < POLE;
      if (beyond > SPARE_DEG && !atPole) {
        note(worst, 'range', angle.name, t, v * DEG, (v > high ? high : low) * DEG, beyond / 30);
      }
      if (shoulder && k !== shoulder.elevation) continue;
      const speed = shoulder ? shoulderSpeed(frames, i, width, shoulder) : Math.abs(frames.angleRates[i * width + k]);
      if (speed > angle.speedLimit * SPARE) {
        note(worst, 'speed', angle.name, t, speed * DEG, angle.speedLimit * DEG, speed / angle.speedLimit);
      }
    }
  }
  findTorques(body, frames, worst);
  return joinSides([...worst.values()].sort((a, b) => b.excess - a.excess));
}

/** Relative angular velocity of the arm: Ry(plane) Rx(elevation) Ry(turn - plane). */
function shoulderSpeed(frames: Frames, i: number, width: number, s: Body['shoulders'][number]): number {
  const o = i * width;
  const plane = frames.angleRates[o + s.plane];
  const raise = frames.angleRates[o + s.elevation];
  const spin = frames.angleRates[o + s.turn] - plane;
  return Math.sqrt(
    plane * plane + raise * raise + spin * spin + 2 * plane * spin * Math.cos(frames.angles[o + s.elevation]),
  );
}

function findTorques(body: Body, frames: Frames, worst: Worst): void {
  const hinges = body.segments.flatMap((s) => s.hinges);
  hinges.forEach((hinge, h) => {
    if (hinge.terms.length !== 1) return;
    const angle = body.angles[hinge.terms[0].angle];
    const sign = hinge.terms[0].coef;
    for (let i = 0; i < frames.n; i++) {
      const tau = frames.tau[i * hinges.length + h] * sign;
      const limit = angle.torqueLimit[tau >= 0 ? 0 : 1];
      if (Math.abs(tau) > limit * SPARE) {
        note(worst, 'torque', angle.name, frames.t[i], Math.abs(tau), limit, Math.abs(tau) / limit);
      }
    }
  });
}

/** The same caution on both sides at one instant is one caution. */
function joinSides(list: readonly (Caution & { excess: number })[]): Caution[] {
  const out: Caution[] = [];
  for (const { excess: _, ...one } of list) {
    const stem = one.angle.replace(/[LR]$/, '');
    const twin = out.findIndex(
      (o) =>
        o.kind === one.kind &&
        o.angle.replace(/[LR]$/, '') === stem &&
        o.angle !== one.angle &&
        Math.abs(o.t - one.t) < 0.02,
    );
    if (twin < 0) out.push(one);
    else if (Math.abs(out[twin].value - one.value) < 0.02 * Math.abs(one.value))
      out[twin] = { ...out[twin], angle: stem };
    else out.push(one);
  }
  return out;
}
