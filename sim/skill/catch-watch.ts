/**
 * Hands and rail through a flight, in its W: how far each hand is from the rail (where a rail lies in the hand from the middle of the rail, square to the rail), what reach the arm has left, how
 * fast the hand moves along and across the line from shoulder to rail, and whether the mass centre moves towards the rail, which is the published difference between caught and missed ("What governs...
 * Kovacs", J Biomech: from a secondary copy). Velocities are relative to the rail. SI.
 */
import type { Flight } from '../flight/flight.ts';
import { FieldError } from '../math/field-error.ts';
import { applyInto } from '../math/rot.ts';
import { type RailSway, swayInto } from '../measure/rail-sway.ts';
import { findSeen, makeGlance } from '../measure/sight.ts';
import { makeState, readState, rootMotionInto, type State } from '../motion/state.ts';

/** A rail that hands may meet. */
interface WatchedRail {
  /** rest place in the flight's X and Y, m */
  readonly x: number;
  readonly y: number;
  /** the one that was let go: it still swings, and hands that leave it do not count */
  readonly left?: { readonly sway?: RailSway };
}

export interface HandAt {
  /** m */
  readonly distance: number;
  /** from the rail, W, m; z from the middle of the rail */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** length of the arm less the way from shoulder to rail: under 0 the rail is out of reach, m */
  readonly reach: number;
  /** m/s, on the line from shoulder to rail: + towards the rail */
  readonly along: number;
  /** m/s, square to it */
  readonly across: number;
}

export type Hand = 'left' | 'right';
export interface HandsAt {
  readonly t: number;
  readonly left: HandAt;
  readonly right: HandAt;
  /** of the mass centre towards the rail, m/s */
  readonly toward: number;
  /** of the mass centre along X, m/s, and from the rail, m */
  readonly travel: number;
  readonly beyond: number;
}

/** One number a time for each hand. */
type HandColumns = Readonly<Record<keyof HandAt, Float64Array>>;

/** What a catch is sought in. */
export interface HandWatch {
  /** s from which hands are looked at, and the end of the flight */
  readonly from: number;
  readonly to: number;
  at(t: number): HandsAt;
}

export interface CatchWatch extends HandWatch {
  readonly t: Float64Array;
  readonly left: HandColumns;
  readonly right: HandColumns;
  readonly toward: Float64Array;
  /** [from, to], s, in which the rail can be seen (measure/sight.ts); undefined: a body without a head */
  readonly seen?: readonly (readonly [number, number])[];
}

/** Hands that let go of the same rail do not count for so long, s: our judgement, as for what comes near it. */
const LEAVING = 0.15;
/** s between two rows of the columns */
const ROW = 2e-3;

/** Without columns and sight: for the many flights of a study. */
export function makeHandWatch(flight: Flight, rail: WatchedRail): HandWatch {
  const at = makeHandsLook(flight, rail);
  const isLeaving = rail.left !== undefined || isHeldAt(at(0));
  return { from: isLeaving ? Math.min(LEAVING, flight.duration) : 0, to: flight.duration, at };
}

/** A hand that begins this near to a rail has held it, m: the most that a catch may be off. */
const HELD = 0.1;
const isHeldAt = ({ left, right }: HandsAt): boolean => Math.min(left.distance, right.distance) < HELD;

export function calcCatchWatch(flight: Flight, rail: WatchedRail): CatchWatch {
  const watch = makeHandWatch(flight, rail);
  const n = Math.max(2, Math.ceil(flight.duration / ROW) + 1);
  const t = Float64Array.from({ length: n }, (_, i) => (flight.duration * i) / (n - 1));
  const rows = Array.from(t, watch.at);
  const column = (pick: (row: HandsAt) => number): Float64Array => Float64Array.from(rows, pick);
  const hand = (side: Hand): HandColumns => ({
    distance: column((r) => r[side].distance),
    x: column((r) => r[side].x),
    y: column((r) => r[side].y),
    z: column((r) => r[side].z),
    reach: column((r) => r[side].reach),
    along: column((r) => r[side].along),
    across: column((r) => r[side].across),
  });
  const glance = makeGlance(flight);
  return {
    ...watch,
    t,
    left: hand('left'),
    right: hand('right'),
    toward: column((r) => r.toward),
    ...(glance ? { seen: findSeen(t, (s) => glance(s, [rail.x, rail.y, 0]).isSeen) } : {}),
  };
}

/** Reads hands and rail at any time of the flight. */
export function makeHandsLook(flight: Flight, rail: WatchedRail): (t: number) => HandsAt {
  const { body } = flight;
  const arms = { left: armOf(flight, 'L'), right: armOf(flight, 'R') };
  const state = makeState(body);
  const root = [new Float64Array(3), new Float64Array(3)] as const;
  const sway = [0, 0, 0, 0];
  const [p, v, shoulder] = [
    [0, 0, 0],
    [0, 0, 0],
    [0, 0, 0],
  ];
  return (t) => {
    readState(flight, t, state);
    rootMotionInto(state, root[0], 0, root[1]);
    sway.fill(0);
    if (rail.left?.sway) swayInto(rail.left.sway, t, sway);
    const [x, y, vx, vy] = [rail.x + sway[0], rail.y + sway[1], sway[2], sway[3]];
    const handAt = ({ hand, upper, point, length }: Arm): HandAt => {
      pointInto(state, root, hand, point, p, v);
      pointInto(state, root, upper, ORIGIN, shoulder);
      const [sx, sy] = [x - shoulder[0], y - shoulder[1]];
      const way = Math.hypot(sx, sy);
      const [ex, ey] = way > 0 ? [sx / way, sy / way] : [1, 0];
      const [hx, hy] = [p[0] - x, p[1] - y];
      const [ux, uy] = [v[0] - vx, v[1] - vy];
      return {
        distance: Math.hypot(hx, hy),
        x: hx,
        y: hy,
        z: p[2],
        reach: length - way,
        along: ux * ex + uy * ey,
        across: Math.abs(ux * ey - uy * ex),
      };
    };
    const [cx, cy] = [x - state.p_WScm_W[0], y - state.p_WScm_W[1]];
    const [wx, wy] = [state.v_WScm_W[0] - vx, state.v_WScm_W[1] - vy];
    const far = Math.hypot(cx, cy);
    return {
      t,
      left: handAt(arms.left),
      right: handAt(arms.right),
      toward: far > 0 ? (wx * cx + wy * cy) / far : 0,
      travel: state.v_WScm_W[0],
      beyond: -cx,
    };
  };
}

interface Arm {
  /** segments, and where a rail lies in the hand, in its frame */
  readonly hand: number;
  readonly upper: number;
  readonly point: readonly [number, number, number];
  /** straight, from the shoulder to there, m */
  readonly length: number;
}

function armOf({ body }: Flight, side: 'L' | 'R'): Arm {
  const index = (name: string): number => body.segments.findIndex((s) => s.name === name + side);
  const [hand, forearm, upper] = [index('hand'), index('forearm'), index('upperArm')];
  const point = body.contacts.find((c) => c.name === `knuckle${side}`)?.p_BoC_B;
  if (!point || hand < 0 || forearm < 0 || upper < 0)
    throw new FieldError('athlete', body.name, 'a body with arms and hands that can grip');
  const links = [body.segments[forearm].p_PoBo_P, body.segments[hand].p_PoBo_P, point];
  return { hand, upper, point, length: links.reduce((sum, p) => sum + Math.hypot(...p), 0) };
}

const ORIGIN = [0, 0, 0] as const;
const arm = [0, 0, 0];
const speed = [0, 0, 0];

/** Place of a point of a segment, and its velocity where it is asked for, W. */
function pointInto(
  { sm, R_WB, w_WB_B: w }: State,
  [p_WBo_W, v_WBo_W]: readonly [Float64Array, Float64Array],
  segment: number,
  p_SoP_S: readonly number[],
  p: number[],
  v?: number[],
): void {
  const { R_BS, p_BoSo_B: P, v_BSo_B: V, w_BS_B: W } = sm;
  applyInto(R_BS, 9 * segment, p_SoP_S, 0, arm, 0);
  const o = 3 * segment;
  if (v) {
    const [x, y, z] = [P[o] + arm[0], P[o + 1] + arm[1], P[o + 2] + arm[2]];
    speed[0] = V[o] + W[o + 1] * arm[2] - W[o + 2] * arm[1] + w[1] * z - w[2] * y;
    speed[1] = V[o + 1] + W[o + 2] * arm[0] - W[o] * arm[2] + w[2] * x - w[0] * z;
    speed[2] = V[o + 2] + W[o] * arm[1] - W[o + 1] * arm[0] + w[0] * y - w[1] * x;
    applyInto(R_WB, 0, speed, 0, v, 0);
    for (let k = 0; k < 3; k++) v[k] += v_WBo_W[k];
  }
  for (let k = 0; k < 3; k++) arm[k] += P[o + k];
  applyInto(R_WB, 0, arm, 0, p, 0);
  for (let k = 0; k < 3; k++) p[k] += p_WBo_W[k];
}
