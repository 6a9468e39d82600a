/**
 * A flight's state at one time brought onto a rail: what the hands join, and the start of the swing that follows, as plain numbers. The
 * plane is that of a landing (landing-entry.ts): the athlete faces +x, `facing` turns results back.
 */
import { groupsOf, momentumByGroup } from '../motion/momentum.ts';
import { makeState, readState, type StateSource } from '../motion/state.ts';
import { type CatchImpact, calcCatchImpact } from './catch-impact.ts';
import type { Chain } from './chain.ts';
import { makeChainMotion, makeChainTotals, placeChain, pointInto, totalsInto } from './chain-motion.ts';
import { gripOf } from './hang.ts';
import { type Asymmetry, makeLandingEntry, placeEntry } from './landing-entry.ts';
import { Planar } from './planar.ts';
import { type Rail, springOf, withArms } from './rail.ts';
import { type CaughtStart, MOST_GAP } from './swing-spec.ts';

interface CatchPlace {
  readonly rail: Rail;
  /** rest place of the rail in the flight's X, m */
  readonly x: number;
  /** from there as the hands come, and its velocity: x, y, x', y' */
  readonly sway: readonly [number, number, number, number];
  /** of both arms, N/m */
  readonly arms: number;
}

/** J, kinetic: of the flight, of what the plane and its held joints leave of it, of the rail; and of all together after. */
export interface CatchEnergy {
  readonly flight: number;
  readonly plane: number;
  readonly rail: number;
  readonly after: number;
  readonly work: number;
  readonly lost: number;
}

interface OnRail {
  /** +1: faces +X of the flight; -1: the plane was turned half round */
  readonly facing: 1 | -1;
  readonly tilt: number;
  readonly unfinished: number;
  /** what a planar, two-handed hang does not hold */
  readonly asymmetry: readonly Asymmetry[];
  /** of the rail from where it lies in the hands, left and right averaged, m */
  readonly gap: number;
  /** undefined: asymmetric, or averaged too far from the rail to hold it */
  readonly joined?: Joined;
}

interface Joined {
  readonly start: CaughtStart;
  readonly impact: CatchImpact;
  readonly energy: CatchEnergy;
  /** about the rail just after, kg m2/s, + backward */
  readonly momentum: number;
}

export function catchRail(source: Parameters<typeof makeLandingEntry>[0], t: number, place: CatchPlace): OnRail {
  const { rail, sway, arms } = place;
  const entry = makeLandingEntry(source, t);
  const { chain, facing, q, qd, gravity } = entry;
  const motion = placeEntry(entry);
  const hands = gripOf(chain);
  const { link } = hands;
  const at = [facing * (place.x + sway[0]), rail.height + sway[1]] as const;
  // the rail in the frame of the link that grips
  const [c, s] = [Math.cos(motion.theta[link]), Math.sin(motion.theta[link])];
  const [rx, ry] = [at[0] - motion.cx[link], at[1] - motion.cy[link]];
  const { centre } = chain.links[link];
  const grip = { link, at: [centre[0] + c * rx + s * ry, centre[1] - s * rx + c * ry] as const };
  const gap = [grip.at[0] - hands.at[0], grip.at[1] - hands.at[1]] as const;
  const { tilt, unfinished, asymmetry } = entry;
  const on = { facing, tilt, unfinished, asymmetry, gap: Math.hypot(...gap) };
  if (asymmetry.length > 0 || !(on.gap <= MOST_GAP)) return on;

  const point = new Float64Array(4);
  pointInto(chain, motion, grip, point);
  const planar = new Planar(chain, grip);
  const railSpeed = [facing * sway[2], sway[3]] as const;
  const { mass } = springOf(withArms(rail, arms));
  const [theta, w] = [motion.theta[link], motion.w[link]];
  const before = makeChainTotals();
  totalsInto(chain, motion, gravity, before);
  const impact = calcCatchImpact(planar, mass, { theta, w, q, qd, grip: [point[2], point[3]], rail: railSpeed });

  const after = makeChainTotals();
  const moving = makeChainMotion(chain);
  const [x, y] = at;
  placeChain(chain, q, qd, { point: grip, x, y, vx: impact.v[0], vy: impact.v[1], theta, w: impact.w }, moving);
  totalsInto(chain, moving, gravity, after);
  const [dx, dy] = [after.x - x, after.y - y];
  const moved = (vx: number, vy: number): number => (Number.isFinite(mass) ? (mass * (vx * vx + vy * vy)) / 2 : 0);
  const byName = (values: readonly number[]): Record<string, number> =>
    Object.fromEntries(chain.joints.map(({ name }, j) => [name, values[j]]));
  const joined: Joined = {
    start: {
      kind: 'caught',
      angle: theta,
      rate: impact.w,
      rail: [facing * sway[0], sway[1]],
      railRate: impact.v,
      joints: byName(q),
      jointRates: byName(qd),
      gap,
      pose: poseOf(chain),
      arms,
    },
    impact: {
      ...impact,
      v: [facing * impact.v[0], impact.v[1]],
      impulse: [facing * impact.impulse[0], impact.impulse[1]],
    },
    energy: {
      flight: calcKinetic(source, t),
      plane: before.kinetic,
      rail: moved(...railSpeed),
      after: after.kinetic + moved(...impact.v),
      work: impact.work,
      lost: impact.lost,
    },
    momentum: after.h + chain.mass * (dx * after.vy - dy * after.vx),
  };
  return { ...on, joined };
}

/** What the chain holds, by name; the plane of the arms and their turn are the chain's own. */
function poseOf({ body, held }: Chain): Record<string, number> {
  const own = new Set(body.shoulders.flatMap((s) => [s.plane, s.turn]));
  return Object.fromEntries(
    body.angles.flatMap((a, i) => (held[i] === 0 || own.has(i) ? [] : [[a.name, held[i]] as const])),
  );
}

/** J, in three dimensions. */
function calcKinetic(source: StateSource, t: number): number {
  const state = makeState(source.body);
  readState(source, t, state);
  const { mass } = state.sm.model;
  const [vx, vy, vz] = state.v_WScm_W;
  const turning = momentumByGroup(state, new Float64Array(3 * groupsOf(source.body).length));
  return (mass * (vx * vx + vy * vy + vz * vz)) / 2 + turning;
}
