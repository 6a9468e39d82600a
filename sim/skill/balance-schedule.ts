/**
 * A schedule with the reflex added, and the shape source that lets it grow: what is felt at the times k x beat decides the
 * action from one delay later on, so that the shape ahead is always known and the flight stays an ordinary one (the
 * method of steps for delay equations; Hairer, Norsett & Wanner, Solving ODEs I, II.17).
 *
 * Between two beats the action is the quintic with the values there and the slopes and second derivatives of the parabola
 * through the neighbours: twice continuously differentiable.
 */

import type { Body, Vec3 } from '../body/body.ts';
import { type ShapeSource, shapeCoefInto } from '../flight/shape-source.ts';
import { LONGEST_FLIGHT } from '../flight/touchdown.ts';
import { turnedTo } from '../math/angles.ts';
import { normalQuantile } from '../math/normal.ts';
import { uniformsInto } from '../math/random.ts';
import { applyTInto, matOfQuatInto } from '../math/rot.ts';
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import { calcAttitude, TILT_LIMIT } from '../measure/attitude.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import { makeState, type State } from '../motion/state.ts';
import { mergeTimes, SAME_TIME } from '../schedule/motion.ts';
import type { Schedule } from '../schedule/schedule.ts';
import { actionAngles, actionHinges, type BalanceSpec, calcBeat } from './balance.ts';
import { calcHold, fitGains } from './balance-gains.ts';

/** Twist and its rate as planned, rad and rad/s from take-off. */
export type TwistPlan = (t: number) => readonly [number, number];

/** An action that tilts the body by less than this per radian has no hold: the reflex fades out (G0 = this x a). */
const NO_HOLD = 0.015;
/** A time is a beat if it is within this of it, s. */
const SAME = 3e-9;

const NO_NOISE = [0, 0] as const;

/** What the reflex did. */
export interface BalanceRecord {
  /** largest action, rad, and the range of the gains used (1/s2, 1/s); undefined before anything was done */
  greatest: number;
  k1?: readonly [number, number];
  k2?: readonly [number, number];
  /** the somersault rate when the reflex first acted, rad/s: delay x rate / 2 pi is the delay in somersaults */
  somersaultRate?: number;
}

export class BalanceSource implements ShapeSource {
  readonly schedule: Schedule;
  readonly record: BalanceRecord = { greatest: 0 };
  private readonly spec: BalanceSpec;
  private readonly base: Schedule;
  private readonly h_Scm_W: Vec3;
  private readonly plan: TwistPlan;
  private readonly sm: ShapeMotion;
  private readonly probe: ShapeMotion;
  private readonly state: State;
  private readonly action: Float64Array;
  private readonly beat: number;
  private readonly perDelay: number;
  /** action at each beat, known one delay ahead */
  private readonly actions: number[] = [];
  private speed = 0;
  /** the next beat to be felt, and the attitude last met there */
  private next = 0;
  private readonly u = new Float64Array(2);
  private readonly quat = new Float64Array(4);
  private isMet = false;
  private twist = 0;
  private isLost = false;
  private readonly draw: number | undefined;

  /** `draw`: number of the sample whose sensing noise it is; left out: what is felt is felt as it is. */
  constructor(
    body: Body,
    base: Schedule,
    h_Scm_W: Vec3,
    startTwist: number,
    spec: BalanceSpec,
    plan: TwistPlan,
    draw?: number,
  ) {
    this.draw = draw;
    const { perDelay, beat } = calcBeat(spec.delay);
    this.spec = spec;
    this.base = base;
    this.h_Scm_W = h_Scm_W;
    this.plan = plan;
    this.twist = startTwist;
    this.beat = beat;
    this.perDelay = perDelay;
    this.sm = makeShapeMotion(getModel(body));
    this.probe = makeShapeMotion(getModel(body));
    this.state = makeState(body);
    const angles = actionAngles(body, spec.by);
    this.action = actionHinges(body, angles);
    for (let k = 0; k <= perDelay; k++) this.actions.push(0);
    this.schedule = this.makeSchedule(angles);
  }

  coefInto(t: number, quat_WB: Float64Array, out: Float64Array): void {
    const now = this.next * this.beat;
    if (Math.abs(t - now) < SAME) {
      // trial stages may come here too; what comes last before time goes on is the accepted step's end
      this.quat.set(quat_WB);
      this.isMet = true;
    } else if (t > now && this.isMet) this.feel(now);
    const { q, qd, qdd } = this.sm;
    this.schedule.evalInto(t, q, qd, qdd);
    shapeCoefInto(this.sm, out, 0);
  }

  /** Reads the attitude at a beat and decides the action one delay later. */
  private feel(t: number): void {
    const later = this.next + this.perDelay;
    this.next++;
    this.isMet = false;
    const before = this.actions[this.actions.length - 1];
    const speed = this.isLost ? 0 : this.wantedSpeed(t, later * this.beat);
    // trapezoid between two beats; both limits are come to softly, since a corner would be rounded by going faster
    const { limit, speedLimit } = this.spec;
    const most = speedLimit * this.beat;
    const step = (this.beat * (speed + this.speed)) / 2;
    this.speed = speed;
    const soft = most > 0 ? most * Math.tanh(step / most) : 0;
    const room = limit > 0 && soft * before > 0 ? 1 - (before / limit) ** 4 : 1;
    const wanted = Math.max(-limit, Math.min(limit, before + soft * room));
    this.actions[later] = wanted;
    this.record.greatest = Math.max(this.record.greatest, Math.abs(wanted));
  }

  private wantedSpeed(t: number, later: number): number {
    const { sm } = this.state;
    this.schedule.evalInto(t, sm.q, sm.qd, sm.qdd);
    const attitude = this.attitudeNow();
    if (!(Math.abs(attitude.tilt) < TILT_LIMIT)) {
      this.isLost = true;
      return 0;
    }
    this.twist = turnedTo(attitude.twist, this.twist);
    const [planned, plannedRate] = this.plan(t);
    const off = this.noiseAt(this.next);
    const e = this.twist - planned + off[0];
    const rate = attitude.twistRate - plannedRate + off[1];

    this.base.evalInto(later, sm.q, sm.qd, sm.qdd);
    const hold = calcHold(this.probe, sm.q, this.action, this.h_Scm_W[2], this.plan(later)[0]);
    const { k1, k2 } =
      this.spec.gains === 'fitted' ? fitGains(Math.sqrt(Math.max(0, hold.growth)), this.spec.delay) : this.spec.gains;
    this.note(k1, k2, hold.somersaultRate);
    const floor = NO_HOLD * hold.twistPerTilt;
    const G = hold.action;
    return (-(k1 * e + k2 * rate) * G) / (G * G + floor * floor);
  }

  /** Error of what is felt at a reading: of twist and of its rate. */
  private noiseAt(reading: number): readonly [number, number] {
    const { noise } = this.spec;
    if (!noise || this.draw === undefined) return NO_NOISE;
    // the draws of the samples themselves are those of reading 0
    uniformsInto(noise.seed, reading * 2 ** 32 + this.draw, this.u);
    return [noise.twist * normalQuantile(this.u[0]), noise.rate * normalQuantile(this.u[1])];
  }

  private attitudeNow(): ReturnType<typeof calcAttitude> {
    const { state, quat } = this;
    const { sm } = state;
    const n = Math.hypot(quat[0], quat[1], quat[2], quat[3]);
    for (let i = 0; i < 4; i++) quat[i] /= n;
    calcShapeMotion(sm);
    matOfQuatInto(quat, 0, state.R_WB, 0);
    applyTInto(state.R_WB, 0, this.h_Scm_W, 0, state.h_Scm_B, 0);
    for (let k = 0; k < 3; k++) state.h_Scm_B[k] -= sm.hrel_B[k];
    const inverse = new Float64Array(6);
    symInvertInto(sm.I_Scm_B, 0, inverse, 0);
    symApplyInto(inverse, 0, state.h_Scm_B, 0, state.w_WB_B, 0);
    return calcAttitude(state);
  }

  private note(k1: number, k2: number, somersaultRate: number): void {
    const wider = (known: readonly [number, number] | undefined, x: number): readonly [number, number] =>
      known ? [Math.min(known[0], x), Math.max(known[1], x)] : [x, x];
    this.record.k1 = wider(this.record.k1, k1);
    this.record.k2 = wider(this.record.k2, k2);
    this.record.somersaultRate ??= somersaultRate;
  }

  private makeSchedule(angles: Float64Array): Schedule {
    const { base, beat, action, actions } = this;
    const x = new Float64Array(3);
    const beats = Array.from({ length: Math.ceil(LONGEST_FLIGHT / beat) + 1 }, (_, k) => k * beat);
    const begins = Math.min(0, base.moving[0]?.[0] ?? 0);
    return {
      hinges: base.hinges,
      breaks: mergeTimes([...beats, ...base.breaks]),
      moving: [[begins, Number.POSITIVE_INFINITY]],
      movesIn: (from, to) => to - Math.max(from, begins) > SAME_TIME,
      evalInto(t, q, qd, qdd) {
        base.evalInto(t, q, qd, qdd);
        if (!actionInto(actions, beat, t, x)) return;
        for (let i = 0; i < action.length; i++) {
          q[i] += action[i] * x[0];
          qd[i] += action[i] * x[1];
          qdd[i] += action[i] * x[2];
        }
      },
      anglesInto(t, values, rates) {
        base.anglesInto(t, values, rates);
        if (!actionInto(actions, beat, t, x)) return;
        for (let a = 0; a < angles.length; a++) {
          values[a] += angles[a] * x[0];
          rates[a] += angles[a] * x[1];
        }
      },
    };
  }
}

/** The action, its speed and acceleration at t; false where there is none yet. */
function actionInto(actions: readonly number[], beat: number, t: number, out: Float64Array): boolean {
  const last = actions.length - 1;
  const k = Math.floor(t / beat);
  if (k < 0) return false;
  const at = (i: number): number => actions[Math.max(0, Math.min(last, i))];
  const a = at(k - 1);
  const p0 = at(k);
  const p1 = at(k + 1);
  const d = at(k + 2);
  if (p0 === 0 && p1 === 0 && a === 0 && d === 0) return false;
  const v0 = (p1 - a) / 2;
  const v1 = (d - p0) / 2;
  const c0 = p1 - 2 * p0 + a;
  const c1 = d - 2 * p1 + p0;
  // quintic on s in [0, 1] with these ends
  const s = t / beat - k;
  const D = p1 - p0 - v0 - c0 / 2;
  const V = v1 - v0 - c0;
  const C = c1 - c0;
  const e3 = 10 * D - 4 * V + C / 2;
  const e4 = -15 * D + 7 * V - C;
  const e5 = 6 * D - 3 * V + C / 2;
  out[0] = p0 + s * (v0 + s * (c0 / 2 + s * (e3 + s * (e4 + s * e5))));
  out[1] = (v0 + s * (c0 + s * (3 * e3 + s * (4 * e4 + s * 5 * e5)))) / beat;
  out[2] = (c0 + s * (6 * e3 + s * (12 * e4 + s * 20 * e5))) / (beat * beat);
  return true;
}
