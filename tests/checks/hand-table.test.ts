/** Poses and flies every row of the hand table (hand-table.ts). */
import { describe, expect, it } from 'vitest';
import { makeHuman } from '../../sim/body/human.ts';
import {
  calcFrames,
  type Flight,
  type Frames,
  flySchedule,
  frameTimes,
  type SkillTarget,
  summarize,
} from '../../sim/index.ts';
import { compileSchedule } from '../../sim/schedule/compile.ts';
import type { AngleKey, Schedule } from '../../sim/schedule/schedule.ts';
import { sideView } from '../../src/scene/view.ts';
import { compose, conjugate, type Point, place, type Quaternion, turned } from '../oracles/chain.ts';
import { rad, turn } from './flown.ts';
import { FLIGHTS, type FlightRow, POSES, type Probe, type Quantity, type Way } from './hand-table.ts';

/** An invented adult. */
const body = makeHuman({ name: 'hand table', sex: 'female', mass: 58, stature: 1.64 });
const POSED = 1e-12; // cosine short of one: measured 2e-16

const WAYS: Readonly<Record<Way, Point>> = {
  forward: [1, 0, 0],
  back: [-1, 0, 0],
  up: [0, 1, 0],
  down: [0, -1, 0],
  right: [0, 0, 1],
  left: [0, 0, -1],
};

const angles = (name: string): number[] => {
  const found = body.angles.flatMap((a, i) => ([name, `${name}L`, `${name}R`].includes(a.name) ? [i] : []));
  if (found.length === 0) throw new RangeError(`no angle ${name}`);
  return found;
};

function scheduleOf(row: Pick<FlightRow, 'pose' | 'keys'>): Schedule {
  const base = body.angles.map(() => 0);
  for (const [name, deg] of Object.entries(row.pose ?? {})) for (const k of angles(name)) base[k] = deg * rad;
  const keys = Object.entries(row.keys ?? {}).flatMap(([name, list]) =>
    angles(name).flatMap((angle) =>
      list.map(([s, deg]): AngleKey => ({ angle, at: { anchor: 'takeoff', s }, value: deg * rad, kind: 'stop' })),
    ),
  );
  const spec = { base, blocks: [], keys, sampled: [], smoothing: { kind: 'gcv' } } as const;
  return compileSchedule(body, spec, { apex: 0, touchdown: 0 });
}

describe('poses by hand', () => {
  for (const row of POSES)
    it(row.say, () => {
      const schedule = scheduleOf({ pose: row.deg });
      const q = new Float64Array(schedule.hinges);
      schedule.evalInto(0, q, new Float64Array(schedule.hinges), new Float64Array(schedule.hinges));
      const placed = place(body, q, [1, 0, 0, 0], [0, 0, 0]);
      const index = (name: string): number => body.segments.findIndex((s) => s.name === name);
      const vector = (p: Probe): Point => {
        if ('axis' in p) return turned(placed[index(p.of)].e, p.axis);
        const [a, b] = p.joints.map((name) => placed[index(name)].origin);
        return [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
      };
      for (const probe of row.probes) {
        const v = turned(conjugate(placed[index(probe.from)].e), vector(probe));
        const way = WAYS[probe.goes];
        const cosine = (v[0] * way[0] + v[1] * way[1] + v[2] * way[2]) / Math.hypot(...v);
        expect(1 - cosine, `${JSON.stringify(probe)}: goes ${v} (${row.why})`).toBeLessThan(POSED);
      }
    });
});

function fly(row: FlightRow): { flight: Flight; frames: Frames } {
  const { somersault = 0, tilt = 0, twist = 0 } = row.attitudeDeg ?? {};
  const m = row.momentum;
  const flight = flySchedule(
    body,
    scheduleOf(row),
    {
      height: { of: 'massCentre', y: 3 },
      v_WScm_W: [0, 4, 0],
      somersault: somersault * rad,
      tilt: tilt * rad,
      twist: twist * rad,
      momentum:
        'straight' in m
          ? { kind: 'straight', somersaults: m.straight }
          : 'h' in m
            ? { kind: 'vector', h_Scm_W: m.h }
            : { kind: 'rates', somersault: m.rates.somersault * turn, tilt: 0, twist: 0 },
    },
    { kind: 'duration', duration: row.seconds },
    9.81,
  );
  const times = frameTimes(row.seconds, 240);
  const frames = calcFrames(flight, times);
  if (row.untilTwists === undefined) return { flight, frames };
  const done = (t: number): number => Math.abs(lastTwist(flight, t) - frames.twist[0]) / turn - (row.untilTwists ?? 0);
  const after = times.findIndex((t) => done(t) > 0);
  expect(after, 'the twist is reached').toBeGreaterThan(0);
  let [lo, hi] = [times[after - 1], times[after]];
  for (let i = 0; i < 40; i++) {
    const m = (lo + hi) / 2;
    if (done(m) > 0) hi = m;
    else lo = m;
  }
  return { flight, frames: calcFrames(flight, [...times.slice(0, after), hi]) };
}
const lastTwist = (flight: Flight, t: number): number => calcFrames(flight, [0, t]).twist[1];

function read(frames: Frames, shortDeg: number): Record<Quantity, number> {
  const last = frames.n - 1;
  const quat = (a: Float64Array, i: number): Quaternion => [a[4 * i], a[4 * i + 1], a[4 * i + 2], a[4 * i + 3]];
  const F = quat(frames.quat_WF, last);
  const nose = turned(F, [1, 0, 0]);
  const head = turned(F, [0, 1, 0]);
  const first = conjugate(quat(frames.quat_WF, 0));
  let largest = 0;
  for (let i = 0; i <= last; i++) {
    const d = compose(quat(frames.quat_WF, i), first);
    largest = Math.max(largest, 2 * Math.atan2(Math.hypot(d[1], d[2], d[3]), Math.abs(d[0])));
  }
  const pitch = (i: number): number => {
    const y = turned(quat(frames.quat_WB, i), [0, 1, 0]);
    return Math.atan2(-y[0], y[1]);
  };
  const arms = frames.groups.indexOf('arms');
  const som = frames.somersault[last] - frames.somersault[0];
  const tw = frames.twist[last] - frames.twist[0];
  return {
    somersaults: Math.abs(som) / turn,
    twists: Math.abs(tw) / turn,
    somersaultDeg: som / rad,
    twistDeg: tw / rad,
    tiltDeg: frames.tilt[last] / rad,
    tiltFromHDeg: frames.tiltFromH[last] / rad,
    headUp: head[1],
    headAlong: head[0],
    noseAlong: nose[0],
    noseUp: nose[1],
    lateralRate: frames.w_WF_F[3 * last + 2] / turn,
    pelvisPitchDeg: (pitch(last) - pitch(0)) / rad,
    largestTurnDeg: largest / rad,
    pelvisTurnDeg: frames.pelvisTurn[last] / rad,
    shoulderTurnDeg: frames.shoulderTurn[last] / rad,
    hz: frames.h_Scm_W[2],
    armsHz: frames.hGroups_W[3 * arms + 2],
    startRate: frames.somersaultRate[0] / turn,
    wholeRate: frames.w_S_W[2] / turn,
    shortDeg,
  };
}

describe('motions by hand', () => {
  for (const row of FLIGHTS)
    it(row.say, () => {
      const { flight, frames } = fly(row);
      const target: SkillTarget | undefined = row.target && {
        somersaults: row.target.somersaults,
        somersaultWord: row.target.word,
        twists: 0,
        twistWord: '',
        landingAngle: row.target.landingDeg * rad,
      };
      const summary = summarize(flight, frames, target);
      const values = read(frames, (summary.landing?.short ?? Number.NaN) / rad);
      for (const claim of row.claims) {
        const said = `${row.say}: ${claim.of} (${row.why})`;
        if (claim.of === 'defined') expect(summary.undefinedFrom === undefined, said).toBe(claim.is);
        else if ('is' in claim)
          expect(claim.of === 'landingWord' ? summary.landing?.word : summary[claim.of], said).toBe(claim.is);
        else if ('below' in claim) expect(values[claim.of], said).toBeLessThan(values[claim.below]);
        else {
          expect(values[claim.of], said).toBeGreaterThanOrEqual(claim.between[0]);
          expect(values[claim.of], said).toBeLessThanOrEqual(claim.between[1]);
        }
      }
    });

  it('travel to -X is seen from world left: a back somersault turns clockwise there, anticlockwise from world right', () => {
    // at a quarter of a back somersault the head has gone from up to -X
    const acrossScreen = (vx: number): number => -sideView(vx).right[0];
    expect(sideView(-2).right).toEqual([-1, 0, 0]);
    expect(sideView(-2).toward).toEqual([0, 0, -1]);
    expect(acrossScreen(-2)).toBe(1); // head to the right of the screen: clockwise
    expect(sideView(2).right).toEqual([1, 0, 0]);
    expect(acrossScreen(2)).toBe(-1);
    // hardly travelling: as if to +X
    expect(sideView(-0.1).right).toEqual([1, 0, 0]);
  });
});
