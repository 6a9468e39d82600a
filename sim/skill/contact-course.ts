/**
 * A contact as a course in time (docs/decisions/0025-contact-course.md). The mass centre is led by the force alone,
 *     v = v0 + J P / m - g t,   p = p0 + v0 t + J T Q / m - g t^2 / 2       (P, Q: contact-pulse.ts; J = m (v1 - v0) + m g T, so that both speeds agree),
 * pose and attitude from entry to exit by contact-motion.ts. Whether hands or feet can stay where they are, whether arms or legs are long enough, and where the force
 * must act for h to change as the movement has it (h' = (place - cm) x F + (0, N, 0)) is then read off in rows. In W of the flight after.
 */
import type { Vec3 } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { makeState, type State } from '../motion/state.ts';
import { type ContactAccount, calcContactAccount } from './contact-account.ts';
import { type BedSpring, calcBedSpring } from './contact-bed.ts';
import { type ContactEnd, endBefore, endOfEntry, endOfFlight, type StatedEntry } from './contact-ends.ts';
import { type CourseFault, type CourseUnknown, findFaults, findUnknowns } from './contact-faults.ts';
import { limbPlacesInto, makeLimbPlaces } from './contact-limbs.ts';
import { type ContactMotion, makeContactMotion, momentumInto } from './contact-motion.ts';
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
  /** m, size of the gap: what hands or feet slide on their place, the joints doing all they can */
  readonly slide: number;
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
  /** 0 to the time of the contact; the way of the mass centre joins entry and exit here, what the force leaves open (`gap_W`) led in evenly */
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
    stretch,
    swing,
    ...(mean ? { place: mean } : {}),
  };
  return {
    spec,
    pulses,
    rows,
    stateAt: makeReader(path, motion, gap, makeState(body)),
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

function makeReader(path: CoursePath, motion: ContactMotion, gap: Vec3, state: State): ContactCourse['stateAt'] {
  return (asked) => {
    const t = Math.min(Math.max(asked, 0), path.T);
    const s = t / path.T;
    const angles = new Float64Array(state.sm.model.body.angles.length);
    motion.into(s, angles, state);
    const [p, v, f, h] = [0, 1, 2, 3].map(() => [0, 0, 0]);
    pathInto(path, s, p, v, f);
    momentumInto(state, h);
    const led = s * s * (3 - 2 * s);
    return {
      t,
      angles,
      quat_WB: state.quat_WB.slice(),
      p_WScm_W: [p[0] + led * gap[0], p[1] + led * gap[1], p[2] + led * gap[2]],
      v_WScm_W: [v[0], v[1], v[2]],
      h_Scm_W: [h[0], h[1], h[2]],
      force_W: [f[0], f[1], f[2]],
    };
  };
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
