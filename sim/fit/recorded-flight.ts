/**
 * A recording as a skill: its joint angles, as they were recorded, with the smoothing that they were given; its take-off stated. It is
 * flown like any other. t = 0 is the first row of the span.
 */
import type { Flight, TakeoffSpec } from '../flight/flight.ts';
import { attitudeOfMat } from '../math/rot.ts';
import { makeState, readState, rootMotionInto } from '../motion/state.ts';
import type { ConditionedMotion } from '../recording/conditioned.ts';
import { fitParabola } from '../recording/parabola.ts';
import type { RecordedMomentum } from '../recording/recorded-momentum.ts';
import type { SampledAngle, ScheduleSpec } from '../schedule/schedule.ts';
import { type LaunchedSkill, launch } from '../skill/launch.ts';
import type { Skill } from '../skill/skill.ts';
import { bodyFramesOf } from './attitude-course.ts';
import type { RecordedStart } from './recording-study.ts';

/** m/s2, with which recordings are flown; what their own parabola has is for their quality to say. */
export const GRAVITY = 9.81;

/** The start as measured: attitude of F in the first row, momentum as the mean over the span, place and speed by the parabola of 9.81 m/s2 through it. */
export function measuredStart(motion: ConditionedMotion, momentum: RecordedMomentum): RecordedStart {
  const { n, t, p_WScm_W, quat_WB, angles, posed } = motion;
  const R_WF = bodyFramesOf(posed.body, quat_WB.subarray(0, 4), angles.subarray(0, posed.body.angles.length));
  const path = fitParabola(t, p_WScm_W, 0, n - 1, GRAVITY);
  return {
    attitude: attitudeOfMat(R_WF),
    h_Scm_W: momentum.mean,
    v_WScm_W: path ? path.v : [Number.NaN, Number.NaN, Number.NaN],
    height: path ? path.p[1] : Number.NaN,
  };
}

export const takeoffOf = ({ attitude, h_Scm_W, v_WScm_W, height }: RecordedStart): TakeoffSpec => ({
  height: { of: 'massCentre', y: height },
  v_WScm_W,
  somersault: attitude[0],
  tilt: attitude[1],
  twist: attitude[2],
  momentum: { kind: 'vector', h_Scm_W },
});

/** Angles that move as samples, the rest as the pose beneath. */
export function scheduleOf({ posed, series, before, reports }: ConditionedMotion): ScheduleSpec {
  const na = posed.body.angles.length;
  const rows = series.length / na;
  const base = posed.body.angles.map((_, k) => series[k]);
  const sampled: SampledAngle[] = [];
  for (let k = 0; k < na; k++) {
    const values = Float64Array.from({ length: rows }, (_, i) => series[na * i + k]);
    if (values.every((v) => v === values[0])) continue;
    sampled.push({ angle: k, start: -before / posed.rateHz, rate: posed.rateHz, values, smoothing: reports[k].by });
  }
  return { base, blocks: [], keys: [], sampled, smoothing: { kind: 'gcv' } };
}

export const durationOf = ({ n, posed }: ConditionedMotion): number => (n - 1) / posed.rateHz;

export function launchRecorded(motion: ConditionedMotion, start: RecordedStart): LaunchedSkill {
  const skill: Skill = {
    title: 'Recording',
    body: motion.posed.body,
    gravity: GRAVITY,
    start: { kind: 'stated', takeoff: takeoffOf(start) },
    schedule: scheduleOf(motion),
    end: { kind: 'duration', duration: durationOf(motion) },
  };
  return launch(skill);
}

/** What a flight has at the rows of a recording: the root, and the joint angles. */
interface FlownRows {
  readonly quat_WB: Float64Array; // (n x 4)
  /** the mass centre over X = Z = 0 at the start, as flights have it */
  readonly p_WBo_W: Float64Array; // (n x 3)
  readonly angles: Float64Array; // (n x Body.angles)
}

export function readRows(flight: Flight, { n, posed }: ConditionedMotion): FlownRows {
  const na = posed.body.angles.length;
  const state = makeState(posed.body);
  const out = { quat_WB: new Float64Array(4 * n), p_WBo_W: new Float64Array(3 * n), angles: new Float64Array(na * n) };
  const velocity = new Float64Array(3);
  const rates = new Float64Array(na);
  for (let i = 0; i < n; i++) {
    const time = Math.min(flight.duration, i / posed.rateHz);
    readState(flight, time, state);
    rootMotionInto(state, out.p_WBo_W, 3 * i, velocity);
    out.quat_WB.set(state.quat_WB, 4 * i);
    flight.schedule.anglesInto(time, out.angles.subarray(na * i, na * (i + 1)), rates);
  }
  return out;
}
