/**
 * Arms and legs as tapered volumes with a swelling at deltoid, forearm, thigh and calf; tape bands on the left ones.
 * Lengths come from the body's joints, girths are those of a 1.62 m athlete. X anterior, Y towards the head, Z right.
 */
import type { Body, Vec3 } from '../../sim/index.ts';
import { type LookBuilder, mix, plus, type Sizes } from './look.ts';

/** Adds one limb to what is built; `at`: index of a segment by its name. */
type AddLimb = (build: LookBuilder, body: Body, at: (name: string) => number, side: 'L' | 'R', sizes: Sizes) => void;

export const addArm: AddLimb = (build, body, at, side, { g, k }) => {
  const upper = at(`upperArm${side}`);
  const fore = at(`forearm${side}`);
  const hand = at(`hand${side}`);
  const elbow = body.segments[fore].p_PoBo_P;
  const wrist = body.segments[hand].p_PoBo_P;
  const tip: Vec3 = [0.006 * k, -0.14 * k, 0];
  const o: Vec3 = [0, 0, 0];
  const out = side === 'R' ? 1 : -1;
  const shoulder = build.add(upper, [0, -0.004 * k, -out * 0.006 * k], 0.054 * g);
  const middle = build.add(upper, mix(o, elbow, 0.42), 0.0455 * g);
  const low = build.add(upper, elbow, 0.0355 * g);
  build.parts.push({
    name: `upperArm${side}`,
    chain: `arm${side}`,
    tone: side === 'L' ? 'left' : 'right',
    segment: upper,
    hulls: [[shoulder, middle, low]],
    probes: [0, 0.25, 0.5, 0.75, 1].map((s) => build.add(upper, mix(o, elbow, s), 0.042 * g)),
  });
  const top = build.add(fore, o, 0.0355 * g);
  const swell = build.add(fore, mix(o, wrist, 0.26), 0.039 * g);
  const thin = build.add(fore, wrist, 0.0235 * g);
  // a mitt: narrow at the wrist, broad across the palm, round at its end, the thumb away from it
  const heel = build.add(hand, o, 0.0235 * g);
  const palm = build.add(hand, [0.003 * k, -0.066 * k, 0], [0.02 * k, 0.042 * k, 0.0405 * k]);
  const end = build.add(hand, tip, [0.014 * k, 0.034 * k, 0.028 * k]);
  const root = build.add(hand, [0.006 * k, -0.045 * k, out * 0.026 * k], 0.0155 * k);
  const thumb = build.add(hand, [0.016 * k, -0.098 * k, out * 0.054 * k], 0.0125 * k);
  build.parts.push({
    name: `forearm${side}`,
    chain: `arm${side}`,
    tone: side === 'L' ? 'left' : 'right',
    segment: fore,
    hulls: [
      [top, swell, thin],
      [heel, palm],
      [palm, end],
      [root, thumb],
    ],
    probes: [
      ...[0.05, 0.3, 0.55, 0.8, 1].map((s) => build.add(fore, mix(o, wrist, s), 0.032 * g)),
      ...[0.4, 0.85].map((s) => build.add(hand, mix(o, tip, s), 0.024 * k)),
    ],
  });
  if (side === 'L') {
    for (const [share, half] of [
      [0.68, 0.034],
      [0.86, 0.031],
    ]) {
      build.bands.push({ part: `forearm${side}`, from: top, to: thin, share, half: half * g });
    }
  }
};

export const addLeg: AddLimb = (build, body, at, side, { g, k }) => {
  const thigh = at(`thigh${side}`);
  const shank = at(`shank${side}`);
  const foot = at(`foot${side}`);
  const knee = body.segments[shank].p_PoBo_P;
  const ankle = body.segments[foot].p_PoBo_P;
  const o: Vec3 = [0, 0, 0];
  const out = side === 'R' ? 1 : -1;
  const tone = side === 'L' ? 'left' : 'right';
  const hip = build.add(thigh, [0, 0, 0], 0.078 * g);
  const quad = build.add(thigh, plus(mix(o, knee, 0.32), [0.01 * k, 0, out * 0.004 * k]), 0.078 * g);
  const over = build.add(thigh, mix(o, knee, 0.7), 0.0635 * g);
  const low = build.add(thigh, knee, 0.0525 * g);
  build.parts.push({
    name: `thigh${side}`,
    chain: `leg${side}`,
    tone,
    segment: thigh,
    hulls: [[hip, quad, over, low]],
    probes: [0.12, 0.35, 0.6, 0.8, 1].map((s) => build.add(thigh, mix(o, knee, s), (0.072 - 0.02 * s) * g)),
  });
  const top = build.add(shank, o, 0.0525 * g);
  const calf = build.add(shank, plus(mix(o, ankle, 0.27), [-0.012 * k, 0, 0]), 0.056 * g);
  const taper = build.add(shank, mix(o, ankle, 0.68), 0.0415 * g);
  const thin = build.add(shank, ankle, 0.03 * g);
  // the sole lies where the feet stand flat in the neutral pose
  const sole = soleBelowAnkle(body, side) ?? 0.068 * k;
  const joint = build.add(foot, o, 0.03 * g);
  const heel = build.add(foot, [-0.04 * k, -(sole - 0.027 * k), 0], 0.027 * k);
  const ball = build.add(foot, [0.09 * k, -(sole - 0.023 * k), out * 0.004 * k], [0.026 * k, 0.023 * k, 0.039 * k]);
  const toe = build.add(foot, [0.158 * k, -(sole - 0.0145 * k), 0], [0.0145 * k, 0.0145 * k, 0.022 * k]);
  build.parts.push({
    name: `shank${side}`,
    chain: `leg${side}`,
    tone,
    segment: shank,
    hulls: [
      [top, calf, taper],
      [taper, thin],
      [joint, heel, ball],
      [ball, toe],
    ],
    probes: [
      ...[0.05, 0.3, 0.55, 0.8, 1].map((s) => build.add(shank, mix(o, ankle, s), (0.05 - 0.018 * s) * g)),
      build.add(foot, [0.03 * k, -sole * 0.6, 0], 0.03 * k),
      build.add(foot, [0.12 * k, -sole * 0.7, 0], 0.024 * k),
    ],
  });
  if (side === 'L') {
    for (const [share, half] of [
      [0.7, 0.045],
      [0.84, 0.041],
    ]) {
      build.bands.push({ part: `shank${side}`, from: top, to: thin, share, half: half * g });
    }
  }
};

/** Height of the ankle above the sole, from the standing height of the root. */
function soleBelowAnkle(body: Body, side: 'L' | 'R'): number | undefined {
  if (body.standingRootHeight === undefined) return undefined;
  let y = body.standingRootHeight;
  let k = body.segments.findIndex((segment) => segment.name === `foot${side}`);
  while (k > 0) {
    y += body.segments[k].p_PoBo_P[1];
    k = body.segments[k].parent;
  }
  return y > 0.03 ? y : undefined;
}
