/**
 * A contact as a course in time (docs/decisions/0025-contact-course.md). The mass centre is led by the force alone,
 *     v = v0 + J P / m - g t,   p = p0 + v0 t + J T Q / m - g t^2 / 2       (P, Q: contact-pulse.ts; J = m (v1 - v0) + m g T, so that both speeds agree),
 * pose and attitude from entry to exit by contact-motion.ts; as drawn, arms or legs are led so that hands or feet stay (contact-lead.ts). Whether hands or feet can stay where they are, whether arms or legs are long enough, and where the force
 * must act for h to change as the movement has it (h' = (place - cm) x F + (0, N, 0)) is then read off in rows. In W of the flight after.
 */
import type { Vec3 } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { makeState, type State } from '../motion/state.ts';
import { type ContactAccount, calcContactAccount } from './contact-account.ts';
import { type BedSpring, calcBedSpring } from './contact-bed.ts';
import { type ContactEnd, endBefore, endOfEntry, endOfFlight, type StatedEntry } from './contact-ends.ts';
import { type CourseFault, type CourseUnknown, findFaults, findUnknowns } from './contact-faults.ts';
import { type ContactLead, makeContactLead } from './contact-lead.ts';
import { type LimbPlaces, limbPlacesInto, makeLimbPlaces } from './contact-limbs.ts';
import { makeContactMotion, momentumInto } from './contact-motion.ts';
import { BOARD_PULSES, PULSES, type Pulse, springPulse } from './contact-pulse.ts';
import type { RangedPlace } from './contact-ranges.ts';
import {
  type AtTime,
  type CoursePath,
  type CoursePulses,
  type CourseRows,
  type CourseSpec,
  fillRows,
  type MeanPlace,
  meanPlace,
  mostOf,
  pathInto,
} from './contact-rows.ts';

export type CourseEntry =
  | { readonly kind: 'flight'; readonly flight: Flight /** s; left out: its end */; readonly at?: number }
  | { readonly kind: 'stated'; readonly entry: StatedEntry }
  /** pose and attitude not stated: led back from the take-off */
  | { readonly kind: 'assumed'; readonly v_WScm_W: Vec3; readonly h_Scm_W: Vec3 };

interface CourseState {
  readonly t: number;
  /** one value for each Body angle */
  readonly angles: Float64Array;
  readonly quat_WB: Float64Array;
  readonly p_WScm_W: Vec3;
  readonly v_WScm_W: Vec3;
  readonly h_Scm_W: Vec3;
  readonly force_W: Vec3;
}

/** Plain numbers: what a course comes to. */
export interface CourseFacts {
  readonly entry: CourseEntry['kind'];
  readonly J_W: Vec3;
  readonly K_Scm_W: Vec3;
  /** m: way of the mass centre, by the force */
  readonly moved_W: Vec3;
  /** m: where the exit has the mass centre, less where the force brings it; 0 where the entry is assumed */
  readonly gap_W: Vec3;
  /** m: add it to a place in W of the flight after for W of the flight before; 0 without one */
  readonly offset: { readonly x: number; readonly z: number };
  /** of the force as assumed, body weights */
  readonly peak: { readonly up: number; readonly along: number };
  /** m, size of the gap */
  readonly slide: number;
  /** m, most over the contact: hand or foot off its place as drawn, arms or legs led there */
  readonly stays: AtTime;
  /** m and rad, most over the contact */
  readonly stretch: AtTime;
  readonly swing: AtTime;
  /** mean place of the force over the contact */
  readonly place?: MeanPlace;
  /** m, of the mass centre over the surface, the mean by the force */
  readonly meanHeight: number;
  /** rad: turn about the lateral axis over the contact, + backward for an athlete who faces +X; of the hands or feet on the surface */
  readonly turned: number;
  readonly turnedOnPlace: number;
  /** the spring of a surface that gives way */
  readonly bed?: BedSpring;
  readonly account: ContactAccount;
  readonly faults: readonly CourseFault[];
  readonly unknowns: readonly CourseUnknown[];
}

export interface ContactCourse {
  readonly spec: CourseSpec;
  readonly facts: CourseFacts;
  readonly pulses: CoursePulses;
  readonly rows: CourseRows;
  /** 0 to the time of the contact, as drawn; momentum is that of the motion unled. The way of the mass centre joins entry and exit here, what the force leaves open (`gap_W`) led in evenly */
  stateAt(t: number): CourseState;
}

const GIVES_WAY: readonly RangedPlace[] = ['trampoline', 'divingBoard'];

interface CourseAsked {
  readonly spec: CourseSpec;
  readonly before: CourseEntry;
  readonly after: Flight;
}

/** Undefined where the body has no such hands or feet. */
export function calcContactCourse({ spec, before, after }: CourseAsked): ContactCourse | undefined {
  const { body, gravity: g } = after;
  const { time: T, by } = spec;
  const limbs = makeLimbPlaces(body, by);
  if (!limbs) return undefined;
  const m = body.mass;
  const exit = endOfFlight(after, 'start');
  const v1 = exit.v_WScm_W;
  const [v0, h0] =
    before.kind === 'flight'
      ? arrivalOf(before)
      : before.kind === 'stated'
        ? [before.entry.v_WScm_W, before.entry.h_Scm_W]
        : [before.v_WScm_W, before.h_Scm_W];
  const J: Vec3 = [m * (v1[0] - v0[0]), m * (v1[1] - v0[1]) + m * g * T, m * (v1[2] - v0[2])];
  const bed = GIVES_WAY.includes(spec.place) ? calcBedSpring(m, g, (v1[1] - v0[1]) / 2, T) : undefined;
  const pulses = pulsesOf(spec, bed && (T / 2) * Math.sqrt(bed.stiffness / m));
  const entry = entryOf(before, after, T, v0, h0, pulses.up.given);
  const motion = makeContactMotion(body, entry, exit, T);

  // where hands or feet are as it ends and as it begins
  const state = makeState(body);
  const angles = new Float64Array(body.angles.length);
  motion.into(1, angles, state);
  limbPlacesInto(state, by, limbs);
  const p1 = exit.p_WScm_W;
  const last = movedBy(limbs.spots, p1);
  const place = { x: p1[0] + limbs.x, z: p1[2] + limbs.z };
  const lastLow = p1[1] + limbs.low;
  const lastHeading = limbs.heading;
  motion.into(0, angles, state);
  limbPlacesInto(state, by, limbs);
  const met = before.kind === 'flight' ? before.flight.end.surface?.y : undefined;
  const surfaceY = spec.surfaceY ?? met ?? lastLow;
  const moved = [0, 1, 2].map(
    (k) => v0[k] * T + (J[k] * T * pulses[k === 1 ? 'up' : 'along'].moved(1)) / m - (k === 1 ? (g * T * T) / 2 : 0),
  ) as unknown as Vec3;
  const offset =
    before.kind === 'flight'
      ? { x: entry.p_WScm_W[0] + limbs.x - place.x, z: entry.p_WScm_W[2] + limbs.z - place.z }
      : { x: 0, z: 0 };
  const p0: Vec3 =
    before.kind === 'assumed'
      ? [p1[0] - moved[0], p1[1] - moved[1], p1[2] - moved[2]]
      : [place.x - limbs.x, before.kind === 'flight' ? entry.p_WScm_W[1] : surfaceY - limbs.low, place.z - limbs.z];
  const gap = [0, 1, 2].map((k) => p1[k] - p0[k] - moved[k]) as unknown as Vec3;
  const headings = turnBetween(limbs.heading, lastHeading);

  const path: CoursePath = { T, m, g, J, v0, p0, pulses };
  const first = movedBy(limbs.spots, p0);
  const lead = makeContactLead(body, by, { first, last, isAssumed: before.kind === 'assumed' }, motion, limbs);
  const read = makeReader(path, lead, gap, depthOf(path, bed?.stiffness), makeState(body));
  const stays = calcStays(read, limbs, T, before.kind === 'assumed' ? undefined : surfaceY);
  const rows = fillRows(path, motion, spec, { place, surfaceY, stiffness: bed?.stiffness }, limbs, state, angles);
  const stretch = mostOf(rows, (i) => rows.stretch[i]);
  const swing = mostOf(rows, (i) => rows.swing[i]);
  const account = calcContactAccount({ body, gravity: g, rows, J, v0, v1, h0, h1: after.h_Scm_W, motion, moved, gap });
  const K = [0, 1, 2].map((k) => after.h_Scm_W[k] - h0[k]) as unknown as Vec3;
  const mean = meanPlace(rows, K, by, place.x, place.z);
  const weight = m * g;
  const found = {
    J_W: J,
    slide: Math.hypot(...gap),
    stays,
    stretch,
    swing,
    ...(mean ? { place: mean } : {}),
  };
  return {
    spec,
    pulses,
    rows,
    stateAt: (t) => read(t).state,
    facts: {
      ...found,
      entry: before.kind,
      K_Scm_W: K,
      moved_W: moved,
      gap_W: gap,
      offset,
      peak: {
        up: (J[1] / T / weight) * pulses.up.peak,
        along: (Math.hypot(J[0], J[2]) / T / weight) * pulses.along.peak,
      },
      meanHeight: meanHeightOf(rows, surfaceY),
      turned: motion.turned,
      turnedOnPlace: headings,
      ...(bed ? { bed } : {}),
      account,
      faults: findFaults(spec, rows, found),
      unknowns: findUnknowns(spec, before.kind, K),
    },
  };
}

/** v and h as a flight brings them. */
function arrivalOf({ flight, at = flight.duration }: Extract<CourseEntry, { kind: 'flight' }>): [Vec3, Vec3] {
  const p = new Float64Array(3);
  const v = new Float64Array(3);
  flight.massCentreInto(at, p, v);
  return [[v[0], v[1], v[2]], flight.h_Scm_W];
}

function entryOf(
  before: CourseEntry,
  after: Flight,
  time: number,
  v: Vec3,
  h: Vec3,
  given: (s: number) => number,
): ContactEnd {
  if (before.kind === 'flight') return endOfFlight(before.flight, 'end', before.at);
  if (before.kind === 'stated') return endOfEntry(after.body, before.entry);
  return endBefore(after, time, v, h, given);
}

function pulsesOf({ pulse, place }: CourseSpec, half: number | undefined): CoursePulses {
  const one = (p: Pulse): CoursePulses => ({ up: p, along: p });
  if (pulse) return one(PULSES[pulse]);
  if (half !== undefined) return one(springPulse(half));
  return place === 'springboard' ? BOARD_PULSES : one(PULSES.halfSine);
}

/** As drawn. */
interface Drawn {
  readonly state: CourseState;
  /** of the hand or foot farthest from its place, m */
  readonly off: number;
  /** how far the surface has given way, m */
  readonly depth: number;
}

function makeReader(
  path: CoursePath,
  lead: ContactLead,
  gap: Vec3,
  depthAt: (s: number) => number,
  state: State,
): (t: number) => Drawn {
  const ends = [depthAt(0), depthAt(1)];
  return (asked) => {
    const t = Math.min(Math.max(asked, 0), path.T);
    const s = t / path.T;
    const angles = new Float64Array(state.sm.model.body.angles.length);
    const [p, v, f, h] = [0, 1, 2, 3].map(() => [0, 0, 0]);
    pathInto(path, s, p, v, f);
    const share = s * s * (3 - 2 * s);
    for (let k = 0; k < 3; k++) p[k] += share * gap[k];
    const depth = depthAt(s);
    const off = lead.into(s, p, depth - ends[0] - s * (ends[1] - ends[0]), angles, state);
    momentumInto(state, h);
    return {
      off,
      depth,
      state: {
        t,
        angles,
        quat_WB: state.quat_WB.slice(),
        p_WScm_W: [p[0], p[1], p[2]],
        v_WScm_W: [v[0], v[1], v[2]],
        h_Scm_W: [h[0], h[1], h[2]],
        force_W: [f[0], f[1], f[2]],
      },
    };
  };
}

function depthOf(path: CoursePath, stiffness: number | undefined): (s: number) => number {
  if (!stiffness) return () => 0;
  const [p, v, f] = [0, 1, 2].map(() => [0, 0, 0]);
  return (s) => {
    pathInto(path, s, p, v, f);
    return Math.max(0, f[1]) / stiffness;
  };
}

/** Instants at which staying is looked at; 0.007 from the ends it is least there, as leading sets in. */
const LOOKS = [0, 0.007, 0.3, 0.6, 0.993, 1];

/** How far hands or feet come off their place, and the lowest of them off the surface (of an assumed entry hands or feet are put where they leave, whatever the surface). */
function calcStays(read: (t: number) => Drawn, limbs: LimbPlaces, T: number, surfaceY: number | undefined): AtTime {
  let most = { value: 0, t: 0 };
  for (const s of LOOKS) {
    const { off, depth, state } = read(s * T);
    const over = surfaceY === undefined ? 0 : state.p_WScm_W[1] + limbs.low - surfaceY + depth;
    const value = Math.max(off, Math.abs(over));
    if (value > most.value) most = { value, t: s * T };
  }
  return most;
}

function movedBy(places: Float64Array, p: Vec3): Float64Array {
  return places.map((x, i) => x + p[i % 3]);
}

function meanHeightOf({ n, p_WScm_W: p, force_W: f }: CourseRows, surfaceY: number): number {
  let [sum, weight] = [0, 0];
  for (let i = 0; i < n; i++) {
    const size = Math.hypot(f[3 * i], f[3 * i + 1], f[3 * i + 2]);
    sum += size * (p[3 * i + 1] - surfaceY);
    weight += size;
  }
  return sum / weight;
}

const turnBetween = (from: number, to: number): number =>
  Number.isNaN(from + to) ? 0 : Math.atan2(Math.sin(to - from), Math.cos(to - from));
