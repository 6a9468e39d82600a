/**
 * How near a body comes, through its flight, to what it may meet besides the surface that it lands on. Surfaces of the drawn volumes against surfaces of the
 * solids, in W. Between two instants a distance can fall no faster than the fastest part moves, so spans that cannot hold the least one are left out (Piyavskii
 * 1972, Shubert 1972: from memory); what is left is halved until nothing can be nearer by more than EXACT.
 */
import type { Flight } from '../flight/flight.ts';
import { applyInto, mulInto } from '../math/rot.ts';
import { makeState, readState, rootMotionInto, type State } from '../motion/state.ts';
import { calcSolidDistance, pointToBlock } from './clearance-distance.ts';
import { getParts, type PartSegment, type PartVolume } from './clearance-parts.ts';
import type { Solid } from './clearance-solid.ts';
import { swayInto } from './rail-sway.ts';

export interface Clearance {
  readonly solid: Solid['solid'];
  /** what comes nearest, in words: toes, left hand */
  readonly part: string;
  /** m, surface to surface, least of the flight; 0 or less: it touches, and would pass so deep through the solid */
  readonly distance: number;
  /** s from take-off; of a touch the first, and `part` is what touches then */
  readonly t: number;
}

/** A distance that is worth naming, m: our judgement. */
export const ASKED_CLEARANCE = 0.1;
/** What held a solid or rested on it does not count for so long after it has left it, s: our judgement. */
const LEAVING = 0.15;
/** Nor does what takes a rail, for so long before it does, s: our judgement. */
const TAKING = LEAVING;
/** It may lie so deep in a table or board as the flight begins (skin, cover), m: our judgement. */
const PRESSED = 0.01;
/** m: nothing comes nearer than is said by more than this. */
const EXACT = 5e-4;
/** s: a first touch is found to this */
const TOUCH = 1e-4;
/** s, the first look */
const LOOK = 1 / 100;
/** the fastest part may gain this within half a look, m/s: 300 m/s2 */
const GAIN = (300 * LOOK) / 2;
/** Both sides come as near as this to each other: they are named together, m. */
const TOGETHER = 1e-3;

/** The nearest of all solids, touches first; undefined without a solid. `isCaught`: the hands are on a rail as the flight ends. */
export function calcNearest(flight: Flight, solids: readonly Solid[], isCaught = false): Clearance | undefined {
  let nearest: Clearance | undefined;
  const keep = (one: Clearance | undefined): void => {
    if (one && (!nearest || one.distance < nearest.distance)) nearest = one;
  };
  for (const solid of solids) {
    const look = makeLook(flight, solid);
    const leaves = Math.min(LEAVING, flight.duration);
    const leaving = ({ leavesWith }: PartSegment): boolean => leavesWith === solid.left;
    // what is gripped goes round the rail; what rests on a block may not lie in it
    if (solid.solid !== 'rail') keep(pressed(look, leaving));
    keep(search(look, 0, leaves, (part) => !leaving(part)));
    const { duration } = flight;
    const takes = isCaught && solid.solid === 'rail' ? Math.max(leaves, duration - TAKING) : duration;
    if (leaves < takes) keep(search(look, leaves, takes, () => true));
    if (takes < duration) keep(search(look, takes, duration, (part) => !leaving(part)));
  }
  return nearest;
}

interface Look {
  /** where it is at the time that was looked at */
  solid: Solid;
  readonly parts: readonly PartSegment[];
  readonly state: State;
  readonly R_WS: Float64Array;
  readonly p_WSo_W: Float64Array;
  /** index into parts of the last that was nearest */
  last: number;
  /** places segments and rail at t; gives how fast a counted part can near the solid, m/s */
  at(t: number, counts: (part: PartSegment) => boolean): number;
}

function makeLook(flight: Flight, resting: Solid): Look {
  const sway = resting.solid === 'rail' ? resting.sway : undefined;
  const swaying = [0, 0, 0, 0];
  const { body } = flight;
  const parts = getParts(body);
  const state = makeState(body);
  const R_WS = new Float64Array(9 * body.segments.length);
  const p_WSo_W = new Float64Array(3 * body.segments.length);
  const root = [0, 0, 0];
  const rootV = [0, 0, 0];
  const p = new Float64Array(3);
  const v = new Float64Array(3);
  const { sm, R_WB, w_WB_B: w } = state;
  const P = sm.p_BoSo_B;
  const look: Look = {
    solid: resting,
    parts,
    state,
    R_WS,
    p_WSo_W,
    last: 0,
    at(t, counts) {
      readState(flight, t, state);
      rootMotionInto(state, p, 0, v);
      let fastest = 0;
      for (const part of parts) {
        const { segment: i, reach } = part;
        mulInto(R_WB, 0, sm.R_BS, 9 * i, R_WS, 9 * i);
        const b = 3 * i;
        applyInto(R_WB, 0, P, b, root, 0);
        for (let k = 0; k < 3; k++) p_WSo_W[b + k] = p[k] + root[k];
        if (!counts(part)) continue;
        const V = sm.v_BSo_B;
        rootV[0] = V[b] + w[1] * P[b + 2] - w[2] * P[b + 1];
        rootV[1] = V[b + 1] + w[2] * P[b] - w[0] * P[b + 2];
        rootV[2] = V[b + 2] + w[0] * P[b + 1] - w[1] * P[b];
        applyInto(R_WB, 0, rootV, 0, rootV, 0);
        const W = sm.w_BS_B;
        const turning = length(w[0] + W[b], w[1] + W[b + 1], w[2] + W[b + 2]);
        fastest = Math.max(fastest, length(v[0] + rootV[0], v[1] + rootV[1], v[2] + rootV[2]) + turning * reach);
      }
      if (sway && resting.solid === 'rail') {
        swayInto(sway, t, swaying);
        look.solid = { ...resting, x: resting.x + swaying[0], y: resting.y + swaying[1] };
        // no faster from here on than with all its energy in motion
        const spring = [0, 1].map((k) => (sway.stiffness[k] / sway.mass) * swaying[k] ** 2);
        fastest += Math.sqrt(swaying[2] ** 2 + swaying[3] ** 2 + spring[0] + spring[1]);
      }
      return fastest;
    },
  };
  return look;
}

const length = (x: number, y: number, z: number): number => Math.sqrt(x * x + y * y + z * z);

interface Found {
  readonly distance: number;
  readonly part: string;
}

const centre = [0, 0, 0];

/** Nearest volume of the counted parts as they are placed. */
function measure(look: Look, counts: (part: PartSegment) => boolean, palmsOnly = false): Found {
  const { solid, parts, R_WS, p_WSo_W } = look;
  let distance = Number.POSITIVE_INFINITY;
  let nearest: PartVolume | undefined;
  let isBoth = false;
  let { last } = look;
  // most others are ruled out by the one that was nearest before
  for (let n = 0; n < parts.length; n++) {
    const part = parts[(look.last + n) % parts.length];
    if (!counts(part)) continue;
    const i = part.segment;
    applyInto(R_WS, 9 * i, part.centre_S, 0, centre, 0);
    const x = centre[0] + p_WSo_W[3 * i];
    const y = centre[1] + p_WSo_W[3 * i + 1];
    const bound =
      solid.solid === 'rail' ? length(x - solid.x, y - solid.y, 0) - solid.radius : pointToBlock(x, y, solid);
    if (bound - part.radius > distance + TOGETHER) continue;
    for (const volume of part.volumes) {
      if (volume.gives && palmsOnly) continue;
      const d = calcSolidDistance(volume.shape, R_WS, p_WSo_W, i, solid);
      if (d > distance + TOGETHER) continue;
      const isOtherSide = volume.word === nearest?.word && volume.sideWord !== nearest.sideWord;
      if (isOtherSide && d > distance - TOGETHER) isBoth = true;
      else if (d < distance) {
        isBoth = false;
        nearest = volume;
        last = (look.last + n) % parts.length;
      }
      distance = Math.min(distance, d);
    }
  }
  look.last = last;
  return { distance, part: nearest ? (isBoth ? nearest.word : nearest.sideWord) : '' };
}

function pressed(look: Look, leaving: (part: PartSegment) => boolean): Clearance | undefined {
  look.at(0, leaving);
  const { distance, part } = measure(look, leaving, true);
  return distance < -PRESSED ? { solid: look.solid.solid, part, distance, t: 0 } : undefined;
}

interface Span {
  readonly from: number;
  readonly to: number;
  readonly d0: number;
  readonly d1: number;
  /** m/s */
  readonly fastest: number;
}

/** Least possible inside the span: it falls from both ends at the greatest speed. */
const least = (s: Span): number => (s.d0 + s.d1 - s.fastest * (s.to - s.from)) / 2;

function search(look: Look, from: number, to: number, counts: (part: PartSegment) => boolean): Clearance | undefined {
  let best: Clearance | undefined;
  const nearestAt = (t: number): Clearance & { readonly speed: number } => {
    const speed = look.at(t, counts);
    return { solid: look.solid.solid, ...measure(look, counts), t, speed };
  };
  const touchAt = (t: number, distance: number): Clearance => {
    const { part } = nearestAt(t);
    return { solid: look.solid.solid, part, distance, t };
  };
  const see = (t: number): { d: number; speed: number } => {
    const { speed, ...one } = nearestAt(t);
    if (one.part && (!best || one.distance < best.distance)) best = one;
    return { d: one.distance, speed };
  };
  const n = Math.max(1, Math.ceil((to - from) / LOOK));
  const times = Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n);
  const seen = times.map(see);
  const spans: readonly Span[] = times.slice(1).map((t, i) => ({
    from: times[i],
    to: t,
    d0: seen[i].d,
    d1: seen[i + 1].d,
    fastest: Math.max(seen[i].speed, seen[i + 1].speed) + GAIN,
  }));
  const goal = (): number => (best ? best.distance : Number.POSITIVE_INFINITY) - EXACT;
  const halve = (s: Span): readonly [Span, Span] => {
    const t = (s.from + s.to) / 2;
    const { d } = see(t);
    return [
      { ...s, to: t, d1: d },
      { ...s, from: t, d0: d },
    ];
  };
  for (let open = spans.filter((s) => least(s) < goal()); open.length > 0; )
    open = open.flatMap((s) => (least(s) < goal() ? halve(s) : [])).filter((s) => least(s) < goal());
  if (!best || best.distance > 0) return best;
  const { distance } = best;
  // what comes after a touch is no flight any more: the first one is said
  const first = (s: Span): Clearance | undefined => {
    if (least(s) > 0) return undefined;
    if (s.to - s.from < TOUCH) return s.d0 <= 0 || s.d1 <= 0 ? touchAt(s.d0 <= 0 ? s.from : s.to, distance) : undefined;
    const [a, b] = halve(s);
    return first(a) ?? first(b);
  };
  for (const s of spans) {
    const touch = first(s);
    if (touch) return touch;
  }
  return best;
}
