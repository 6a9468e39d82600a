/** How the checks fly a body and read the flight, as an athlete's watch and a camera would: from the frames. */

import type { TreeSegmentSpec } from '../../sim/body/tree.ts';
import { makeTree } from '../../sim/body/tree.ts';
import type { Body, Flight, FlightOptions, Frames, Sym3, TakeoffSpec, Vec3 } from '../../sim/index.ts';
import { calcFrames, flySchedule } from '../../sim/index.ts';
import { compileSchedule } from '../../sim/schedule/compile.ts';
import type { AngleKey, Schedule } from '../../sim/schedule/schedule.ts';
import type { Moments } from '../oracles/free-body.ts';

export const rad = Math.PI / 180;
export const turn = 2 * Math.PI;

/** A segment with only what a check needs. */
/** 1 m up, upright, without any motion. */
export const REST: TakeoffSpec = {
  height: { of: 'massCentre', y: 1 },
  v_WScm_W: [0, 0, 0],
  somersault: 0,
  tilt: 0,
  twist: 0,
  momentum: { kind: 'vector', h_Scm_W: [0, 0, 0] },
};

export function part(
  name: string,
  mass: number,
  inertia: Sym3,
  more: Partial<Omit<TreeSegmentSpec, 'name' | 'mass' | 'inertia'>> = {},
): TreeSegmentSpec {
  return { name, mass, inertia, joint: [0, 0, 0], centre: [0, 0, 0], hinges: [], contacts: [], shapes: [], ...more };
}

/**
 * One rigid segment: A lateral (Z), B front-back (X), C long (Y). The tensor is put in after makeTree, which refuses
 * moments that no mass can have: S1 overhead as measured is such a set (174 > 159 + 12.5, 1.5 % over; the pendulum
 * method is good to +-2 to +-8 %). The equations of motion do not mind.
 */
export function rigidBody({ A, B, C }: Moments): Body {
  const body = makeTree({ name: 'rigid', segments: [part('body', 70, [1, 1, 1, 0, 0, 0])] });
  return { ...body, segments: [{ ...body.segments[0], I_BBcm_B: [B, C, A, 0, 0, 0] }] };
}

/** Minimum-jerk spans between stop keys: for each angle by name a list of [time, value in rad]. */
export function stopKeys(body: Body, keys: Readonly<Record<string, readonly (readonly [number, number])[]>>): Schedule {
  const index = (name: string): number => {
    const k = body.angles.findIndex((a) => a.name === name);
    if (k < 0) throw new RangeError(`no angle ${name}`);
    return k;
  };
  const made = Object.entries(keys).flatMap(([name, list]) =>
    list.map(([s, value]): AngleKey => ({ angle: index(name), at: { anchor: 'takeoff', s }, value, kind: 'stop' })),
  );
  const spec = {
    base: body.angles.map(() => 0),
    blocks: [],
    keys: made,
    sampled: [],
    smoothing: { kind: 'gcv' },
  } as const;
  return compileSchedule(body, spec, { apex: 0, touchdown: 0 });
}

export interface Start {
  /** [somersault, tilt, twist] of F, rad */
  readonly attitude?: Vec3;
  readonly h: Vec3;
  readonly T: number;
}

/** A flight of stated length without gravity. */
export function flyFor(body: Body, schedule: Schedule, start: Start, options: FlightOptions = {}): Flight {
  const [somersault, tilt, twist] = start.attitude ?? [0, 0, 0];
  return flySchedule(
    body,
    schedule,
    {
      height: { of: 'massCentre', y: 1 },
      v_WScm_W: [0, 0, 0],
      somersault,
      tilt,
      twist,
      momentum: { kind: 'vector', h_Scm_W: start.h },
    },
    { kind: 'duration', duration: start.T },
    0,
    options,
  );
}

export const flyRigid = (m: Moments, start: Start): Flight => {
  const body = rigidBody(m);
  return flyFor(body, stopKeys(body, {}), start);
};

export interface Reading {
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  readonly tiltRate: number;
  readonly twistRate: number;
  readonly w_WB_B: Vec3;
}

/** One frame. */
export function readAt(flight: Flight, t: number): Reading {
  return readingOf(calcFrames(flight, [t]), 0);
}

export function readingOf(f: Frames, i: number): Reading {
  return {
    somersault: f.somersault[i],
    tilt: f.tilt[i],
    twist: f.twist[i],
    tiltRate: f.tiltRate[i],
    twistRate: f.twistRate[i],
    w_WB_B: [f.w_WB_B[3 * i], f.w_WB_B[3 * i + 1], f.w_WB_B[3 * i + 2]],
  };
}

/** The time between a and b at which `value` of a frame passes `wanted`: bisection to close by, then the secant. */
export function timeWhen(flight: Flight, value: (r: Reading) => number, wanted: number, a: number, b: number): number {
  const f = (t: number): number => value(readAt(flight, t)) - wanted;
  let [lo, hi] = [a, b];
  let [flo, fhi] = [f(lo), f(hi)];
  if (flo * fhi > 0) throw new RangeError(`no passage of ${wanted} between ${a} s and ${b} s`);
  for (let i = 0; i < 6; i++) {
    const m = (lo + hi) / 2;
    const fm = f(m);
    if (fm * flo > 0) [lo, flo] = [m, fm];
    else [hi, fhi] = [m, fm];
  }
  for (let i = 0; i < 8; i++) {
    const m = lo - (flo * (hi - lo)) / (fhi - flo);
    if (Math.abs(m - hi) < 1e-13 || !Number.isFinite(m)) return hi;
    [lo, flo] = [hi, fhi];
    hi = m;
    fhi = f(m);
    if (fhi === 0) return hi;
  }
  return hi;
}
