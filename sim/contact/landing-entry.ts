/**
 * The touchdown state of a flight, brought into the plane of the landing: the athlete's sagittal plane, x forward as the
 * athlete faces, y up. For cos(twist) < 0 the world is turned half round about Y on entry (x, z and h_z change sign), so that
 * the planar athlete always faces +x; `facing` turns results back. Left and right are averaged; tilt, unfinished twist and
 * what spreads or turns the legs out of the plane are left out, which is honest only within stated limits: beyond them the
 * landing is called asymmetric and not computed. Exact for a symmetric pose with its legs in the plane: mass centre, its
 * velocity, h_z, joint angles and rates are those of the flight.
 */

import { RAD } from '../math/angles.ts';
import { matOfQuatInto, mulInto } from '../math/rot.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { makeState, readState, type StateSource } from '../motion/state.ts';
import { type Chain, makeChain } from './chain.ts';
import type { PlanarPoint } from './chain-motion.ts';
import { type ChainMotion, makeChainMotion, makeChainTotals, placeChain, totalsInto } from './chain-motion.ts';

interface TouchdownSource extends StateSource {
  readonly gravity: number;
  readonly schedule: StateSource['schedule'] & {
    anglesInto(t: number, angles: Float64Array, rates: Float64Array): void;
  };
}

/**
 * Beyond these the planar model is not asked (our judgement). rad; m/s for the speed across. `sides` is what left and right
 * legs differ by, also by pointing apart: twice what both are spread or turned out.
 */
export const ASYMMETRY_LIMITS = {
  tilt: 10 * RAD,
  twist: 30 * RAD,
  sides: 20 * RAD,
  across: 1,
} as const;

export type Asymmetry = {
  readonly kind: keyof typeof ASYMMETRY_LIMITS;
  readonly value: number;
  readonly limit: number;
};

/** The athlete at touchdown; x to vy are those of the mass centre in the plane of the landing, h is the momentum about it. */
export interface LandingEntry extends PlanarPoint {
  /** +1: faces +X; -1: the world was turned half round */
  readonly facing: 1 | -1;
  readonly gravity: number;
  readonly stature: number;
  readonly chain: Chain;
  /** of the chain's joints, in the sense of the named angles */
  readonly q: readonly number[];
  readonly qd: readonly number[];
  readonly h: number;
  /** angle of the root segment, + leaning back */
  readonly theta: number;
  /** rad: of F, + head to world right; twist left to the nearest half turn */
  readonly tilt: number;
  readonly unfinished: number;
  /** what makes it asymmetric; empty: it can be passed through the plane */
  readonly asymmetry: readonly Asymmetry[];
}

const OUT_OF_PLANE = /^hip(Abduction|Turn)/;

/** Reads the state of `source` at time t. */
export function makeLandingEntry(source: TouchdownSource, t: number): LandingEntry {
  const { body } = source;
  const state = makeState(body);
  readState(source, t, state);
  const frame = calcBodyFrame(state.sm);
  const R_WB = new Float64Array(9);
  const R_WF = new Float64Array(9);
  matOfQuatInto(state.quat_WB, 0, R_WB, 0);
  mulInto(R_WB, 0, frame.R_BF, 0, R_WF, 0);
  // third row of Rz(s) Rx(k) Ry(p): -cos k sin p, sin k, cos k cos p
  const facing = R_WF[8] < 0 ? -1 : 1;
  const tilt = Math.asin(Math.min(Math.max(R_WF[7], -1), 1));
  const unfinished = Math.atan2(-R_WF[6] * facing, R_WF[8] * facing);
  // second column: (-sin s, cos s, ...) cos k
  const somersault = facing * Math.atan2(-R_WF[1], R_WF[4]);
  const theta = somersault - Math.atan2(frame.R_BF[3], frame.R_BF[0]);

  const angles = new Float64Array(body.angles.length);
  const rates = new Float64Array(body.angles.length);
  source.schedule.anglesInto(t, angles, rates);
  let apart = 0;
  body.angles.forEach((a, i) => {
    if (/^(hipFlexion|kneeFlexion)/.test(a.name)) apart = Math.max(apart, Math.abs(angles[i] - angles[a.mirror]));
    // both are counted outward
    if (OUT_OF_PLANE.test(a.name)) apart = Math.max(apart, Math.abs(angles[i]) + Math.abs(angles[a.mirror]));
  });
  const mean = (values: Float64Array): number[] =>
    body.angles.map((a, i) => (OUT_OF_PLANE.test(a.name) ? 0 : (values[i] + a.mirrorSign * values[a.mirror]) / 2));
  const held = mean(angles);
  const rate = mean(rates);
  const chain = makeChain(body, { held });
  // the arm's direction in the plane, and how fast it turns there
  const arm = body.shoulders.map((s) => {
    const [p, e] = [angles[s.plane], angles[s.elevation]];
    const x = Math.sin(p) * Math.sin(e);
    const y = -Math.cos(e);
    const xd = Math.cos(p) * Math.sin(e) * rates[s.plane] + Math.sin(p) * Math.cos(e) * rates[s.elevation];
    const yd = Math.sin(e) * rates[s.elevation];
    const flat = x * x + y * y;
    // an arm straight out to the side has no direction in the plane: it hangs
    return flat > FLAT ? [Math.atan2(x, -y), (x * yd - y * xd) / flat] : [0, 0];
  });
  const q = chain.joints.map((j) => (j.name === 'shoulder' ? (arm[0][0] + arm[1][0]) / 2 : held[j.angles[0]]));
  const qd = chain.joints.map((j) => (j.name === 'shoulder' ? (arm[0][1] + arm[1][1]) / 2 : rate[j.angles[0]]));
  const across = Math.abs(state.v_WScm_W[2]);
  const L = ASYMMETRY_LIMITS;
  const found: Asymmetry[] = (
    [
      ['tilt', Math.abs(tilt)],
      ['twist', Math.abs(unfinished)],
      ['sides', apart],
      ['across', across],
    ] as const
  ).flatMap(([kind, value]) => (value > L[kind] ? [{ kind, value, limit: L[kind] }] : []));
  return {
    facing,
    gravity: source.gravity,
    stature: body.stature ?? 1.7,
    chain,
    q,
    qd,
    x: facing * state.p_WScm_W[0],
    y: state.p_WScm_W[1],
    vx: facing * state.v_WScm_W[0],
    vy: state.v_WScm_W[1],
    h: facing * source.h_Scm_W[2],
    theta,
    tilt,
    unfinished,
    asymmetry: found,
  };
}
/** Square of the sine under which an arm counts as straight out to the side. */
const FLAT = 0.04;

/**
 * The chain in motion at touchdown: the root link's turning is what the angular momentum asks, the mass centre where and as
 * fast as stated.
 */
export function placeEntry(entry: LandingEntry): ChainMotion {
  const { chain, q, qd } = entry;
  const out = makeChainMotion(chain);
  const whole = makeChainTotals();
  const point = { link: 0, at: [0, 0] as const };
  const place = (x: number, y: number, vx: number, vy: number, w: number): void => {
    placeChain(chain, q, qd, { point, x, y, vx, vy, theta: entry.theta, w }, out);
    totalsInto(chain, out, entry.gravity, whole);
  };
  place(0, 0, 0, 0, 0);
  const still = whole.h;
  place(0, 0, 0, 0, 1);
  const w = (entry.h - still) / (whole.h - still);
  place(0, 0, 0, 0, w);
  place(entry.x - whole.x, entry.y - whole.y, entry.vx - whole.vx, entry.vy - whole.vy, w);
  return out;
}

/** The same landing with the knees bent to `knee`: thighs and shanks share the change, trunk and soles keep their attitude. */
export function withKnee(entry: LandingEntry, knee: number): LandingEntry {
  const index = (name: string): number => entry.chain.joints.findIndex((j) => j.name === name);
  const q = [...entry.q];
  const change = knee - q[index('knee')];
  q[index('knee')] = knee;
  q[index('hip')] += change / 2;
  q[index('ankle')] -= change / 2;
  return { ...entry, q };
}
