/** A study of a recording, made from two flights of the engine: one stands for what was measured, with noise of a stated seed. For tests of the page. */

import type { ModelTest } from '../../sim/fit/recording-study.ts';
import {
  calcFrames,
  calcSegmentFrames,
  type FileTakeoff,
  type Flight,
  flySkill,
  type RecordingStudy,
} from '../../sim/index.ts';
import { uniformsInto } from '../../sim/math/random.ts';
import { fileOf, skillOf } from '../skill/load.ts';

const RATE = 120;
const GAP = { row: 40, rows: 7 };

const flown = (id: string, more: number): Flight => {
  const file = fileOf(id);
  const phase = file.phases.find(({ kind }) => kind === 'flight') as { takeoff?: FileTakeoff };
  const momentum = phase.takeoff?.momentum;
  if (momentum && 'straightSomersaults' in momentum) momentum.straightSomersaults *= more;
  return flySkill(skillOf(file));
};

const root = (data: Float64Array, width: number, n: number, segments: number): Float64Array =>
  Float64Array.from({ length: n * width }, (_, k) => data[Math.floor(k / width) * segments * width + (k % width)]);

const courseOf = (flight: Flight, t: Float64Array) => {
  const { somersault, tilt, twist } = calcFrames(flight, t);
  return { somersault, tilt, twist };
};

export function makeStudy(id = 'back-straight-full', change: Partial<RecordingStudy> = {}): RecordingStudy {
  const flight = flown(id, 1);
  const other = flown(id, 1.004);
  const { body, duration } = flight;
  const n = Math.floor(duration * RATE) + 1;
  const t = Float64Array.from({ length: n }, (_, i) => i / RATE);
  const f = calcSegmentFrames(flight, t);
  const g = calcSegmentFrames(other, t);
  const frames = calcFrames(flight, t);
  const na = body.angles.length;
  const ns = body.segments.length;
  const noise = new Float64Array(n * (na + 2));
  uniformsInto(7, 0, noise);
  const off = (k: number): number => 2 * noise[k] - 1;
  const rawAngles = f.angles.map((a, k) => a + 0.03 * off(k));
  for (let i = GAP.row; i < GAP.row + GAP.rows; i++) rawAngles[na * i + 5] = Number.NaN;
  const measured = courseOf(flight, t);
  const computed = courseOf(other, t);
  const ends = (['somersault', 'tilt', 'twist'] as const).map((k) => {
    const apart = computed[k].map((v, i) => v - measured[k][i]);
    return [apart.reduce((most, v) => Math.max(most, Math.abs(v)), 0), apart[n - 1]] as const;
  });
  const test: ModelTest = {
    measured,
    computed,
    worst: [ends[0][0], ends[1][0], ends[2][0]],
    atEnd: [ends[0][1], ends[1][1], ends[2][1]],
  };
  const report = {
    by: { kind: 'gcv' },
    weight: 3,
    cutoffHz: 9,
    residual: 0.02,
    noise: 0.02,
    correlation: 0.01,
    isCorrelated: false,
  } as const;
  const span = {
    first: 12,
    last: 11 + n,
    start: 0.1,
    end: 0.1 + t[n - 1],
    startError: 0.003,
    endError: 0.004,
    g: 9.79,
    gError: 0.03,
    offParabola: 0.0029,
  };
  const h = [frames.h_Scm_W[0], frames.h_Scm_W[1], frames.h_Scm_W[2]] as const;
  return {
    name: 'heron-full-3.bvh',
    kind: 'bvh',
    frames: n + 40,
    rateHz: RATE,
    seconds: (n + 39) / RATE,
    points: 0,
    joints: 19,
    missingRows: GAP.rows,
    map: {
      unitM: 0.01,
      up: '+y',
      joints: body.segments.slice(0, 14).map(({ name }, i) => ({
        from: `Joint${name}`,
        segment: name,
        basis: i === 3 ? ('place' as const) : ('name' as const),
      })),
      points: [],
      columns: [],
    },
    unused: ['Toe'],
    notes: [],
    spans: [span],
    span,
    body,
    athlete: undefined,
    start: {
      attitude: [measured.somersault[0], measured.tilt[0], measured.twist[0]],
      h_Scm_W: h,
      v_WScm_W: [(f.p_WScm_W[3] - f.p_WScm_W[0]) * RATE, (f.p_WScm_W[4] - f.p_WScm_W[1]) * RATE + 9.81 / (2 * RATE), 0],
      height: f.p_WScm_W[1],
    },
    t,
    parabola: f.p_WScm_W,
    heightOff: Float64Array.from({ length: n }, (_, i) => 0.004 * off(n * na + i)),
    momentum: Float64Array.from({ length: n }, (_, i) => Math.hypot(...h) * (1 + 0.012 * off(n * na + n + i))),
    angleNames: body.angles.map(({ name }) => name),
    rawAngles,
    angles: f.angles,
    smoothing: body.angles.map(() => report),
    gaps: body.angles.map((_, k) => (k === 5 ? [{ from: GAP.row, rows: GAP.rows, isFilled: true }] : [])),
    isSeen: body.angles.map(() => true),
    quality: {
      g: 9.79,
      gError: 0.03,
      offParabola: 0.0029,
      h_Scm_W: h,
      momentumSpread: 0.007,
      momentumWorst: 0.012,
      refusals: [],
    },
    test,
    measuredRoot: { p_WBo_W: root(f.p_WBo_W, 3, n, ns), quat_WB: root(f.quat_WB, 4, n, ns) },
    computedRoot: { p_WBo_W: root(g.p_WBo_W, 3, n, ns), quat_WB: root(g.quat_WB, 4, n, ns) },
    ...change,
  };
}
