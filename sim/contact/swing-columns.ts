/** The record of a swing read for pictures and tables: on an even grid that ends at the release, with its peaks. */
import { limitsInto } from './joint-limits.ts';
import { movingMass, springOf } from './rail.ts';
import type { SwingColumns, SwingJoint, SwingPeaks } from './swing.ts';
import { findPeaks } from './swing-peaks.ts';
import type { SwingReader } from './swing-reader.ts';

/** s between samples */
const SAMPLE = 2e-3;

export interface SwingTable {
  readonly columns: SwingColumns;
  readonly joints: readonly SwingJoint[];
  /** samples up to and with the release or the end */
  readonly shown: number;
  readonly driven: boolean;
  readonly peaks: SwingPeaks;
  readonly radius: number;
}

/** From the start to T s after it, and `until` beyond. */
export function readTable(reader: SwingReader, T: number, until: number): SwingTable {
  const { spec, chain, planar, sense, head } = reader.hang;
  const { rail, gravity } = spec;
  const spring = springOf(rail);
  const before = Math.max(1, Math.round(T / SAMPLE));
  const after = Math.floor(until / SAMPLE + 1e-9);
  const n = before + 1 + after;
  const f = (): Float64Array => new Float64Array(n);
  const c: SwingColumns = {
    t: f(),
    angle: f(),
    rate: f(),
    x: f(),
    y: f(),
    vx: f(),
    vy: f(),
    speed: f(),
    gripX: f(),
    gripY: f(),
    grip: f(),
    gripWeights: f(),
    railX: f(),
    railY: f(),
    armsX: f(),
    armsY: f(),
    felt: f(),
    feltHead: f(),
    hBar: f(),
    hCentre: f(),
    kinetic: f(),
    potential: f(),
    railEnergy: f(),
    energy: f(),
    work: f(),
    loss: f(),
  };
  const strength = spec.strength ?? 1;
  const force = Number.isFinite(strength) ? strength : 1;
  const joints = chain.joints.map(
    (j): SwingJoint => ({
      name: j.name,
      angles: j.angles,
      q: f(),
      qd: f(),
      torque: f(),
      needed: f(),
      most: f(),
      asked: f(),
      limited: new Uint8Array(n),
    }),
  );
  const { row, whole } = reader;
  const acc = new Float64Array(2);
  const needed = new Float64Array(joints.length);
  const limits = new Float64Array(2 * joints.length);
  const weight = chain.mass * gravity;
  for (let i = 0; i < n; i++) {
    // the first sample is the start itself, though the grid may not meet it
    const t = i === 0 ? 0 : i <= before ? T - (before - i) * SAMPLE : T + (i - before) * SAMPLE;
    reader.read(t);
    const [bx, by] = row.x;
    const [ux, uy] = row.v;
    c.t[i] = t - T;
    const rx = whole.x - bx;
    const ry = whole.y - by - rail.height;
    c.angle[i] = sense * reader.phi;
    c.rate[i] = (sense * (rx * (whole.vy - uy) - ry * (whole.vx - ux))) / (rx * rx + ry * ry);
    c.x[i] = whole.x;
    c.y[i] = whole.y;
    c.vx[i] = whole.vx;
    c.vy[i] = whole.vy;
    c.speed[i] = Math.hypot(whole.vx, whole.vy);
    c.gripX[i] = planar.force[0];
    c.gripY[i] = planar.force[1];
    c.grip[i] = Math.hypot(planar.force[0], planar.force[1]);
    c.gripWeights[i] = c.grip[i] / weight;
    c.railX[i] = reader.share[0] * bx;
    c.railY[i] = reader.share[1] * by;
    c.armsX[i] = bx - c.railX[i];
    c.armsY[i] = by - c.railY[i];
    c.felt[i] = c.grip[i] / weight;
    planar.pointAccInto(head, acc);
    c.feltHead[i] = Math.hypot(acc[0], acc[1] + gravity) / gravity;
    c.hCentre[i] = whole.h;
    c.hBar[i] = whole.h + chain.mass * (whole.x * whole.vy - (whole.y - rail.height) * whole.vx);
    c.kinetic[i] = whole.kinetic;
    c.potential[i] = whole.potential;
    c.railEnergy[i] = 0.5 * (spring.kx * bx * bx + spring.ky * by * by + movingMass(rail) * (ux * ux + uy * uy));
    c.energy[i] = whole.kinetic + whole.potential + c.railEnergy[i];
    c.work[i] = row.work;
    c.loss[i] = row.loss;
    const hasLimited = reader.limited.includes(1);
    if (hasLimited) reader.neededInto(needed);
    limitsInto(chain.joints, force, row.x.subarray(3), row.v.subarray(3), limits);
    joints.forEach((joint, j) => {
      joint.q[i] = row.x[3 + j];
      joint.qd[i] = row.v[3 + j];
      joint.torque[i] = row.torque[j];
      joint.asked[i] = reader.asked[j];
      joint.limited[i] = reader.limited[j];
      joint.needed[i] = reader.limited[j] ? needed[j] : row.torque[j];
      joint.most[i] = limits[2 * j + (joint.needed[i] >= 0 ? 0 : 1)];
    });
  }
  const shown = before + 1;
  return {
    columns: c,
    joints,
    shown,
    driven: joints.every((j) => !j.limited.subarray(0, shown).includes(1)),
    peaks: findPeaks(c, joints, shown),
    radius: Math.hypot(
      c.x[before] - c.railX[before] - c.armsX[before],
      c.y[before] - c.railY[before] - c.armsY[before] - rail.height,
    ),
  };
}
