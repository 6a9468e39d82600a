/**
 * Where a flight goes beyond what joints are known to do: ranges, speeds (of the joint as a whole, from its relative
 * angular velocity) and torques (about each hinge, against the strength at its angle and speed). Judged at the frames given; a
 * caution never stops anything. Of ages without measured strengths ranges alone are judged.
 */
import { isBeyondMeasured, strengthSetAt, strengthSource } from '../body/action-strength.ts';
import type { Body } from '../body/body.ts';
import type { StrengthSet } from '../body/strength-sets.ts';
import { applyInto, matOfVectorInto } from '../math/rot.ts';
import type { Frames } from './frames.ts';
import { listLoads } from './joint-loads.ts';
import { isCompared, knownSpeed, TORQUE_WARNED, warnedSpeed, warnedTorque } from './known-strength.ts';

export type CautionKind = 'range' | 'speed' | 'torque';

/** The worst instant of one angle. SI: rad, rad/s, N m. */
export interface Caution {
  readonly kind: CautionKind;
  /** index into Body.angles */
  readonly angle: number;
  readonly t: number;
  readonly value: number;
  /** end of the range; speed or strength that is known (warned of from 1.2 and 1.3 times it on) */
  readonly limit: number;
  readonly source: string;
  /** of a torque: whose strength it is, at that angle and speed (of a drive where most is asked for) */
  readonly set?: StrengthSet;
  /** of a torque at an angle beyond those that were measured */
  readonly isExtrapolated?: true;
  /** of a bending hip or knee while both are deep in a tuck */
  readonly inTuck?: true;
  /** of a torque: s of the drive that it and the limit are means of; left out: one instant */
  readonly over?: readonly [number, number];
}

/** Values within this of a limit are at it, not beyond it (rad, rad/s, N m). */
const SLACK = 1e-6;
/** The plane of a shoulder means nothing near elevation 0 and 180 deg: judged only where sin(elevation) is above this. */
const OFF_POLE = Math.sin((20 * Math.PI) / 180);

/** What the joints do, frame by frame. */
export type JointColumns = Pick<Frames, 'n' | 't' | 'angles' | 'q' | 'qd' | 'tau'>;

/** Cautions in the order of Body.angles, range before speed before torque. */
export function calcCautions(body: Body, frames: JointColumns): Caution[] {
  if (!isCompared(body)) return ranges(body, frames);
  return [...ranges(body, frames), ...speeds(body, frames), ...torques(body, frames)];
}

/** The cautions of one row alone: of a torque those too whose drive it lies in. */
export function calcCautionsAt(body: Body, frames: JointColumns, row: number): Caution[] {
  const one = (column: Float64Array): Float64Array => {
    const width = column.length / frames.n;
    return column.subarray(width * row, width * (row + 1));
  };
  const { t, angles, q, qd, tau } = frames;
  const own = { n: 1, t: one(t), angles: one(angles), q: one(q), qd: one(qd), tau: one(tau) };
  if (!isCompared(body)) return ranges(body, own);
  return [...ranges(body, own), ...speeds(body, own), ...torques(body, frames, row)];
}

/** Keeps the worst of each angle by how far it is beyond its limit. */
class Worst {
  private readonly found = new Map<number, { readonly caution: Omit<Caution, 'source'>; readonly by: number }>();

  judge(caution: Omit<Caution, 'source'>, by: number): void {
    if (by > SLACK && by > (this.found.get(caution.angle)?.by ?? 0)) this.found.set(caution.angle, { caution, by });
  }

  list(sourceOf: (caution: Omit<Caution, 'source'>) => string): Caution[] {
    return [...this.found.values()]
      .sort((a, b) => a.caution.angle - b.caution.angle)
      .map(({ caution }) => ({ ...caution, source: sourceOf(caution) }));
  }
}

/** Where what is known of an action comes from: of an angle that turns or is pulled towards + or -. */
export function actionSource(body: Body, angle: number, towards: number): string {
  const s = body.angles[angle].strength?.[towards >= 0 ? 0 : 1];
  return s ? strengthSource(s) : body.angles[angle].limitSource;
}

/** Where the fastest known move of an angle towards + or - comes from. */
export function speedSource(body: Body, angle: number, rate: number): string {
  return body.angles[angle].strength?.[rate >= 0 ? 0 : 1].speedSource ?? body.angles[angle].limitSource;
}

/** Whether an angle means something where the angles of a row start at `o`. */
export function isJudgedAt(body: Body, angle: number, angles: Float64Array, o: number): boolean {
  const shoulder = body.shoulders.find((s) => s.plane === angle);
  return shoulder === undefined || isOffPole(angles[o + shoulder.elevation]);
}

const isOffPole = (elevation: number): boolean => Math.abs(Math.sin(elevation)) >= OFF_POLE;

function ranges(body: Body, frames: JointColumns): Caution[] {
  const worst = new Worst();
  const na = body.angles.length;
  const elevationOf = new Int32Array(na).fill(-1);
  for (const { plane, elevation } of body.shoulders) elevationOf[plane] = elevation;
  for (let a = 0; a < na; a++) {
    const [low, high] = body.angles[a].range;
    const elevation = elevationOf[a];
    for (let i = 0; i < frames.n; i++) {
      const value = frames.angles[na * i + a];
      if (value <= high && value >= low) continue;
      if (elevation >= 0 && !isOffPole(frames.angles[na * i + elevation])) continue;
      const limit = value > high ? high : low;
      worst.judge({ kind: 'range', angle: a, t: frames.t[i], value, limit }, Math.abs(value - limit));
    }
  }
  return worst.list(({ angle }) => body.angles[angle].limitSource);
}

function speeds(body: Body, frames: JointColumns): Caution[] {
  const worst = new Worst();
  const towards = new Map<number, number>();
  forEachJoint(body, frames, (i, value, angle, rate) => {
    const limit = knownSpeed(body, angle, rate);
    const beyond = value - warnedSpeed(limit);
    if (beyond <= 0) return;
    worst.judge({ kind: 'speed', angle, t: frames.t[i], value, limit }, beyond);
    towards.set(angle, rate);
  });
  return worst.list(({ angle }) => speedSource(body, angle, towards.get(angle) ?? 1));
}

function torques(body: Body, frames: JointColumns, row?: number): Caution[] {
  const worst = new Worst();
  for (const load of listLoads(body, frames, TORQUE_WARNED, row)) {
    const { hinge, strength, from, to, rate, torque, known } = load;
    const { angle } = hinge;
    const size = Math.abs(torque);
    if (!(size > warnedTorque(strength, known))) continue;
    const at = frames.angles[body.angles.length * load.row + angle];
    const set = strengthSetAt(strength, at, rate);
    const beyond = isBeyondMeasured(strength, at, rate) ? ({ isExtrapolated: true } as const) : {};
    const inTuck = torque > 0 && isInTuck(body, frames, load.row, angle) ? ({ inTuck: true } as const) : {};
    const over = from === to ? {} : { over: [frames.t[from], frames.t[to]] as const };
    worst.judge(
      { kind: 'torque', angle, t: frames.t[load.row], value: torque, limit: known, set, ...beyond, ...inTuck, ...over },
      size - known,
    );
  }
  return worst.list(({ angle, value }) => actionSource(body, angle, value));
}

/** rad: hip and knee bent by more than a right angle make a tuck (our judgement) */
const TUCK = Math.PI / 2;

function isInTuck(body: Body, frames: JointColumns, row: number, angle: number): boolean {
  const [, side] = /^(?:hip|knee)Flexion(.?)$/.exec(body.angles[angle].name) ?? [];
  if (side === undefined) return false;
  return ['hipFlexion', 'kneeFlexion'].every((name) => {
    const k = body.angles.findIndex((a) => a.name === name + side);
    return k >= 0 && frames.angles[body.angles.length * row + k] > TUCK;
  });
}

/** Relative angular speed of every joint in every frame, with the angle whose hinge turns fastest, and that hinge's rate. */
export function forEachJoint(
  body: Body,
  frames: JointColumns,
  see: (row: number, speed: number, fastest: number, rate: number) => void,
): void {
  const nq = body.segments.reduce((sum, s) => sum + s.hinges.length, 0);
  let first = 0;
  for (const { hinges } of body.segments) {
    if (hinges.length > 0) {
      const angles = hinges.map((h) => h.terms[0].angle);
      for (let i = 0; i < frames.n; i++) {
        const o = nq * i + first;
        let fastest = 0;
        for (let k = 1; k < hinges.length; k++)
          if (Math.abs(frames.qd[o + k]) > Math.abs(frames.qd[o + fastest])) fastest = k;
        see(i, jointSpeed(hinges, frames.q, frames.qd, o), angles[fastest], frames.qd[o + fastest]);
      }
    }
    first += hinges.length;
  }
}

const R = new Float64Array(9);
const w = new Float64Array(3);
const turn = new Float64Array(3);

/** |w| of the child in the parent: w = a1 q1' + R1 (a2 q2' + R2 (a3 q3' + ...)). */
function jointSpeed(hinges: Body['segments'][number]['hinges'], q: Float64Array, qd: Float64Array, o: number): number {
  let isStill = true;
  for (let k = 0; k < hinges.length; k++) if (qd[o + k] !== 0) isStill = false;
  if (isStill) return 0;
  w.fill(0);
  for (let k = hinges.length - 1; k >= 0; k--) {
    const { axis } = hinges[k];
    if (k < hinges.length - 1) {
      for (let j = 0; j < 3; j++) turn[j] = axis[j] * q[o + k];
      matOfVectorInto(turn, R, 0);
      applyInto(R, 0, w, 0, w, 0);
    }
    for (let j = 0; j < 3; j++) w[j] += axis[j] * qd[o + k];
  }
  return Math.hypot(w[0], w[1], w[2]);
}
