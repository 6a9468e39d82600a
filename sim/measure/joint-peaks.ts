/**
 * How near a flight's joints come to being warned of: the greatest speed, torque and angle as shares of the limit from which on a caution
 * is said (known-strength.ts), so that a limit that holds is a caution that is not there. For searches: no frames, the torques only where
 * asked for. A limit that was asked for holds at every age; shares are said only of ages that are compared.
 */
import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { calcDynamics, makeDynamics } from '../motion/inverse-dynamics.ts';
import { makeState, readState } from '../motion/state.ts';
import {
  actionSource,
  type Caution,
  type CautionKind,
  calcCautions,
  forEachJoint,
  isJudgedAt,
  type JointColumns,
  speedSource,
} from './cautions.ts';
import { listLoads } from './joint-loads.ts';
import { isCompared, knownSpeed, MOST_TIMES, strengthOfHinges, warnedSpeed, warnedTorque } from './known-strength.ts';
import type { TorqueLoad } from './torque-loads.ts';

export interface JointShare {
  readonly kind: CautionKind;
  /** index into Body.angles */
  readonly angle: number;
  readonly t: number;
  readonly value: number;
  /** speed or strength that is known */
  readonly known: number;
  /** of the limit; above 1 it is warned of */
  readonly share: number;
  readonly source: string;
  /** of a torque so many times what is known (MOST_TIMES) that a share says nothing: that it is over; or rad/s, where next to no strength is left at this speed */
  readonly beyond?: 'over' | { readonly rate: number };
}

/** Of an age that is compared with nothing there are no shares. */
interface JointPeaks {
  readonly speed?: JointShare;
  readonly torque?: JointShare;
  readonly cautions: readonly Caution[];
}

/** Rows a second; a peak between two of them is missed by under 1 % of a move of 0.1 s. */
const RATE = 120;

/** The fastest and the strongest joint of a flight against what is known of each, rad/s and N m; nothing where nobody is compared. */
export function calcJointPeaks(flight: Flight, withTorque: boolean): JointPeaks {
  const columns = calcJointColumns(flight, withTorque);
  const { body } = flight;
  const judged = isCompared(body);
  const speed = judged ? fastestShare(body, columns) : undefined;
  const torque = judged && withTorque ? strongestShare(body, columns) : undefined;
  return {
    ...(speed ? { speed } : {}),
    ...(torque ? { torque } : {}),
    cautions: calcCautions(body, columns),
  };
}

/** Greatest shares in each of BINS even parts of the flight: a search has to see every move, not the worst alone. */
export interface JointBins {
  /** (joints x BINS) share of the limit of a speed */
  readonly speed: Float64Array;
  /** (hinges x BINS) share of that of a torque; empty where it was not asked for */
  readonly torque: Float64Array;
  /** (angles x BINS) rad beyond the range */
  readonly range: Float64Array;
}

const BINS = 16;

export function calcJointBins(flight: Flight, withTorque: boolean): JointBins {
  const { body } = flight;
  const columns = calcJointColumns(flight, withTorque);
  const { n, angles } = columns;
  const bin = (row: number): number => Math.min(BINS - 1, Math.floor((row * BINS) / n));
  const raise = (list: Float64Array, at: number, value: number): void => {
    if (value > list[at]) list[at] = value;
  };
  const jointOf = body.segments.flatMap((s, segment) => s.hinges.map((h) => [h.terms[0].angle, segment] as const));
  const joint = new Map(jointOf);
  const speed = new Float64Array(body.segments.length * BINS);
  forEachJoint(body, columns, (i, value, angle, rate) => {
    raise(speed, (joint.get(angle) ?? 0) * BINS + bin(i), value / warnedSpeed(knownSpeed(body, angle, rate)));
  });
  const nq = jointOf.length;
  const torque = new Float64Array(withTorque ? nq * BINS : 0);
  if (withTorque) {
    const hinges = strengthOfHinges(body);
    for (const load of listLoads(body, columns, 0))
      raise(torque, hinges.indexOf(load.hinge) * BINS + bin(load.row), shareOf(load));
  }
  const na = body.angles.length;
  const range = new Float64Array(na * BINS);
  for (let i = 0; i < n; i++)
    for (let a = 0; a < na; a++) {
      if (!isJudgedAt(body, a, angles, na * i)) continue;
      const [low, high] = body.angles[a].range;
      const value = angles[na * i + a];
      raise(range, a * BINS + bin(i), Math.max(value - high, low - value));
    }
  return { speed, torque, range };
}

function calcJointColumns(flight: Flight, withTorque: boolean): JointColumns {
  const { body, schedule, duration } = flight;
  const last = Math.max(1, Math.ceil(duration * RATE));
  const n = last + 1;
  const state = makeState(body);
  const { sm } = state;
  const dynamics = makeDynamics(sm);
  const nq = sm.model.hinges;
  const na = body.angles.length;
  const t = Float64Array.from({ length: n }, (_, i) => (duration * i) / last);
  const out = {
    n,
    t,
    angles: new Float64Array(n * na),
    q: new Float64Array(n * nq),
    qd: new Float64Array(n * nq),
    tau: new Float64Array(n * nq),
  };
  const angles = new Float64Array(na);
  const rates = new Float64Array(na);
  for (let i = 0; i < n; i++) {
    schedule.anglesInto(t[i], angles, rates);
    out.angles.set(angles, na * i);
    if (withTorque) {
      readState(flight, t[i], state);
      calcDynamics(sm, state.w_WB_B, dynamics);
      out.tau.set(dynamics.tau, nq * i);
    } else schedule.evalInto(t[i], sm.q, sm.qd, sm.qdd);
    out.q.set(sm.q, nq * i);
    out.qd.set(sm.qd, nq * i);
  }
  return out;
}

function fastestShare(body: Body, columns: JointColumns): JointShare | undefined {
  let best: JointShare | undefined;
  forEachJoint(body, columns, (i, value, angle, rate) => {
    const known = knownSpeed(body, angle, rate);
    const share = value / warnedSpeed(known);
    if (share <= (best?.share ?? 0)) return;
    best = { kind: 'speed', angle, t: columns.t[i], value, known, share, source: speedSource(body, angle, rate) };
  });
  return best;
}

function strongestShare(body: Body, columns: JointColumns): JointShare | undefined {
  let best: JointShare | undefined;
  for (const load of listLoads(body, columns, 0)) {
    const { hinge, row, from, to, rate, torque: value, known } = load;
    const share = shareOf(load);
    if (!(share > (best?.share ?? 0))) continue;
    const { angle } = hinge;
    best = { kind: 'torque', angle, t: columns.t[row], value, known, share, source: actionSource(body, angle, value) };
    if (Math.abs(value) > MOST_TIMES * known)
      best = { ...best, beyond: from === to ? 'over' : { rate: Math.abs(rate) } };
  }
  return best;
}

/** Finite too where next to nothing is known at a high speed: what a fit leaves open is added. */
const shareOf = ({ torque, known, strength }: TorqueLoad): number => Math.abs(torque) / warnedTorque(strength, known);
