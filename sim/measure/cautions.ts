/**
 * Where a flight goes beyond what its joints are known to do: ranges, speeds (of the joint as a whole, from its relative
 * angular velocity) and torques (about each hinge). Judged at the frames given; a caution never stops anything.
 */
import type { Body } from '../body/body.ts';
import { applyInto, matOfVectorInto } from '../math/rot.ts';
import type { Frames } from './frames.ts';
import { wordLimitSource } from './limit-source.ts';

export type CautionKind = 'range' | 'speed' | 'torque';

/** The worst instant of one angle. SI: rad, rad/s, N m. */
export interface Caution {
  readonly kind: CautionKind;
  /** index into Body.angles */
  readonly angle: number;
  readonly t: number;
  readonly value: number;
  readonly limit: number;
  readonly source: string;
}

/** Values within this of a limit are at it, not beyond it (rad, rad/s, N m). */
const SLACK = 1e-6;
/** The plane of a shoulder means nothing near elevation 0 and 180 deg: judged only where sin(elevation) is above this. */
const OFF_POLE = Math.sin((20 * Math.PI) / 180);

/** What the joints do, frame by frame. */
export type JointColumns = Pick<Frames, 'n' | 't' | 'angles' | 'q' | 'qd' | 'tau'>;

/** Cautions in the order of Body.angles, range before speed before torque. */
export function calcCautions(body: Body, frames: JointColumns): Caution[] {
  return [...ranges(body, frames), ...speeds(body, frames), ...torques(body, frames)];
}

/** The cautions of one row alone. */
export function calcCautionsAt(body: Body, frames: JointColumns, row: number): Caution[] {
  const one = (column: Float64Array): Float64Array => {
    const width = column.length / frames.n;
    return column.subarray(width * row, width * (row + 1));
  };
  const { t, angles, q, qd, tau } = frames;
  return calcCautions(body, { n: 1, t: one(t), angles: one(angles), q: one(q), qd: one(qd), tau: one(tau) });
}

/** Keeps the worst of each angle by how far it is beyond its limit. */
class Worst {
  private readonly found = new Map<number, Caution & { readonly by: number }>();
  private readonly kind: CautionKind;
  private readonly body: Body;

  constructor(kind: CautionKind, body: Body) {
    this.kind = kind;
    this.body = body;
  }

  judge(angle: number, t: number, value: number, limit: number, by: number): void {
    if (!(by > SLACK) || by <= (this.found.get(angle)?.by ?? 0)) return;
    const source = wordLimitSource(this.body.angles[angle].limitSource, this.kind);
    this.found.set(angle, { kind: this.kind, angle, t, value, limit, source, by });
  }

  list(): Caution[] {
    return [...this.found.values()].sort((a, b) => a.angle - b.angle).map(({ by: _, ...caution }) => caution);
  }
}

/** Whether an angle means something where the angles of a row start at `o`. */
export function isJudgedAt(body: Body, angle: number, angles: Float64Array, o: number): boolean {
  const shoulder = body.shoulders.find((s) => s.plane === angle);
  return shoulder === undefined || isOffPole(angles[o + shoulder.elevation]);
}

const isOffPole = (elevation: number): boolean => Math.abs(Math.sin(elevation)) >= OFF_POLE;

function ranges(body: Body, frames: JointColumns): Caution[] {
  const worst = new Worst('range', body);
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
      worst.judge(a, frames.t[i], value, high, value - high);
      worst.judge(a, frames.t[i], value, low, low - value);
    }
  }
  return worst.list();
}

function speeds(body: Body, frames: JointColumns): Caution[] {
  const worst = new Worst('speed', body);
  forEachJoint(body, frames, (i, speed, fastest, angles) => {
    const limit = Math.max(...angles.map((a) => body.angles[a].speedLimit));
    worst.judge(fastest, frames.t[i], speed, limit, speed - limit);
  });
  return worst.list();
}

function torques(body: Body, frames: JointColumns): Caution[] {
  const worst = new Worst('torque', body);
  const angleOf = body.segments.flatMap((s) => s.hinges.map((h) => h.terms[0].angle));
  const nq = angleOf.length;
  for (let k = 0; k < nq; k++) {
    const [positive, negative] = body.angles[angleOf[k]].torqueLimit;
    for (let i = 0; i < frames.n; i++) {
      const value = frames.tau[nq * i + k];
      const limit = value >= 0 ? positive : negative;
      if (Math.abs(value) > limit) worst.judge(angleOf[k], frames.t[i], value, limit, Math.abs(value) - limit);
    }
  }
  return worst.list();
}

/** Relative angular speed of every joint in every frame, with the angle whose hinge turns fastest and all its angles. */
export function forEachJoint(
  body: Body,
  frames: JointColumns,
  see: (row: number, speed: number, fastest: number, angles: readonly number[]) => void,
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
        see(i, jointSpeed(hinges, frames.q, frames.qd, o), angles[fastest], angles);
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
