/** SwingSpec -> Swing: runs it, reads the record on an even grid that ends at the release, finds the peaks. */
import { bodyAnglesInto } from './chain.ts';
import { makeChainMotion, makeWhole, placeChain, pointInto, wholeInto } from './chain-motion.ts';
import { askInto, directionOf, type Hang, makeAsked, makeHang } from './hang.ts';
import { springOf } from './rail.ts';
import { runEquations } from './run-equations.ts';
import { runPlanck } from './run-planck.ts';
import type { Swing, SwingColumns, SwingError, SwingJoint, SwingState } from './swing.ts';
import { findPeaks } from './swing-peaks.ts';
import { makeRunRecord, readRun, type SwingRun } from './swing-run.ts';
import { checkSwing, NoReleaseError, type SwingEngine, type SwingSpec } from './swing-spec.ts';

/** s between samples */
export const SAMPLE = 2e-3;
/** a motor that gives this share of its limit or more gives all it has */
const FULL = 0.999;
/** Known errors at the default steps: above what was measured on two giants (docs/numerics.md, "Swing"). */
export const SWING_ERRORS: Readonly<Record<SwingEngine, SwingError>> = {
  equations: { angle: 1e-6, force: 1e-6, speed: 1e-6, energy: 1e-6 },
  planck: { angle: 0.005, force: 0.005, speed: 0.003, energy: 0.002 },
};

export function makeSwing(spec: SwingSpec): Swing {
  checkSwing(spec);
  const hang = makeHang(spec);
  const run = runSwing(hang);
  const released = releaseTime(hang, run);
  if (spec.release && released === undefined) throw notReleased(spec, run);
  return readSwing(hang, run, released);
}

/** The equations where strength suffices all the way to the release, else the engine. */
function runSwing(hang: Hang): SwingRun {
  const { spec } = hang;
  if (spec.engine === 'planck') return runPlanck(hang, spec.step);
  const strength = spec.strength ?? 1;
  if (spec.engine === 'equations' || strength === Number.POSITIVE_INFINITY) return runEquations(hang, spec.step);
  const driven = runEquations(hang);
  return isWithin(hang, driven, strength) ? driven : runPlanck(hang, spec.step);
}

function isWithin(hang: Hang, run: SwingRun, strength: number): boolean {
  const until = releaseTime(hang, run) ?? run.times[run.count - 1];
  return hang.chain.joints.every(({ torqueLimit: [plus, minus] }, j) => {
    for (let i = 0; i < run.count && run.times[i] <= until; i++) {
      const torque = run.torque[i * run.joints + j];
      if (torque > strength * plus || torque < -strength * minus) return false;
    }
    return true;
  });
}

function readSwing(hang: Hang, run: SwingRun, released: number | undefined): Swing {
  const { spec, chain, planar, sense, head } = hang;
  const { rail, gravity } = spec;
  const spring = springOf(rail);
  const nj = chain.joints.length;
  const T = released ?? hang.spec.duration;
  const beyond = run.times[run.count - 1] - T;
  const before = Math.max(1, Math.round(T / SAMPLE));
  const after = Math.floor(beyond / SAMPLE + 1e-9);
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
  const hasLimits = run.engine === 'planck' && Number.isFinite(strength);
  const joints = chain.joints.map(
    (j): SwingJoint => ({
      name: j.name,
      limit: [force * j.torqueLimit[0], force * j.torqueLimit[1]],
      limitSource: j.limitSource,
      q: f(),
      qd: f(),
      torque: f(),
      needed: f(),
      asked: f(),
      limited: new Uint8Array(n),
    }),
  );
  const reader = makeReader(hang, run);
  const asked = makeAsked(nj);
  const acc = new Float64Array(2);
  const driven = new Uint8Array(nj).fill(1);
  const zero = new Float64Array(nj);
  const weight = chain.mass * gravity;
  let phi = sense * run.angle[0];
  for (let i = 0; i < n; i++) {
    // the first sample is the start itself, though the grid may not meet it
    const t = i === 0 ? 0 : i <= before ? T - (before - i) * SAMPLE : T + (i - before) * SAMPLE;
    const { record, whole } = reader(t);
    const bx = record.x[0];
    const by = record.x[1];
    const ux = record.v[0];
    const uy = record.v[1];
    const w = record.v[2];
    const q = record.x.subarray(3);
    const qd = record.v.subarray(3);
    c.t[i] = t - T;
    const rx = whole.x - bx;
    const ry = whole.y - by - rail.height;
    phi = directionOf(hang, phi);
    c.angle[i] = sense * phi;
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
    c.railX[i] = bx;
    c.railY[i] = by;
    c.felt[i] = c.grip[i] / weight;
    planar.pointAccInto(head, acc);
    c.feltHead[i] = Math.hypot(acc[0], acc[1] + gravity) / gravity;
    c.hCentre[i] = whole.h;
    c.hBar[i] = whole.h + chain.mass * (whole.x * whole.vy - (whole.y - rail.height) * whole.vx);
    c.kinetic[i] = whole.kinetic;
    c.potential[i] = whole.potential;
    c.railEnergy[i] = 0.5 * (spring.kx * bx * bx + spring.ky * by * by + rail.mass * (ux * ux + uy * uy));
    c.energy[i] = whole.kinetic + whole.potential + c.railEnergy[i];
    c.work[i] = record.work;
    c.loss[i] = record.loss;
    // driven joints are where they are asked to be
    if (run.engine === 'planck') askInto(hang, t, record.x[2], w, phi, asked);
    else asked.q.set(q);
    joints.forEach((joint, j) => {
      joint.q[i] = q[j];
      joint.qd[i] = qd[j];
      joint.torque[i] = record.torque[j];
      joint.asked[i] = asked.q[j];
      joint.needed[i] = record.torque[j];
      const limit = joint.limit[record.torque[j] >= 0 ? 0 : 1];
      joint.limited[i] = hasLimits && Math.abs(record.torque[j]) >= FULL * limit ? 1 : 0;
    });
    if (run.engine === 'planck' && joints.some((joint) => joint.limited[i])) {
      // what the moves' accelerations would need in this very state
      planar.place(record.x[2], w, q, qd);
      planar.solve(
        gravity,
        spring.mass,
        -spring.kx * bx - spring.cx * ux,
        -spring.ky * by - spring.cy * uy,
        driven,
        asked.qdd,
        asked.share,
        zero,
      );
      joints.forEach((joint, j) => {
        if (joint.limited[i]) joint.needed[i] = planar.torque[j];
      });
    }
  }
  const shown = before + 1;
  const isDriven = joints.every((j) => !j.limited.subarray(0, shown).includes(1));
  return {
    spec,
    body: spec.body,
    rail,
    engine: run.engine,
    step: run.step,
    driven: isDriven,
    error: SWING_ERRORS[run.engine],
    duration: T,
    released: released !== undefined,
    columns: c,
    joints,
    shown,
    peaks: findPeaks(c, joints, shown),
    radius: Math.hypot(c.x[before] - c.railX[before], c.y[before] - c.railY[before] - rail.height),
    until: beyond,
    stateAt(t) {
      return stateAt(hang, reader, T, Math.min(Math.max(t, -T), beyond));
    },
  };
}

/** s from the start at which the hands let go, if they do: the first time the angle asked for is reached. */
function releaseTime(hang: Hang, run: SwingRun): number | undefined {
  const { release, duration } = hang.spec;
  if (!release) return undefined;
  if (release.at === 'time') return release.s;
  let i = 1;
  while (i < run.count && !(run.angle[i - 1] < release.angle && run.angle[i] >= release.angle)) i++;
  if (i >= run.count) return undefined;
  const record = makeRunRecord(run.joints);
  const off = (t: number): number => {
    readRun(run, t, record);
    hang.planar.place(record.x[2], record.v[2], record.x.subarray(3), record.v.subarray(3));
    return hang.sense * directionOf(hang, hang.sense * release.angle) - release.angle;
  };
  let [lo, hi] = [run.times[i - 1], run.times[i]];
  let [fl, fh] = [off(lo), off(hi)];
  let t = hi;
  for (let k = 0; k < 40 && fh - fl > 0; k++) {
    t = lo - (fl * (hi - lo)) / (fh - fl);
    const f = off(t);
    if (Math.abs(f) < 1e-13) break;
    if (f < 0) [lo, fl] = [t, f];
    else [hi, fh] = [t, f];
  }
  return t <= duration ? t : undefined;
}

/** Reads the record at a time from the start and leaves the planar equations solved there, with the recorded torques. */
function makeReader(
  hang: Hang,
  run: SwingRun,
): (t: number) => {
  record: ReturnType<typeof makeRunRecord>;
  whole: ReturnType<typeof makeWhole>;
  motion: ReturnType<typeof makeChainMotion>;
} {
  const { chain, planar, grip, spec } = hang;
  const { rail, gravity } = spec;
  const spring = springOf(rail);
  const nj = chain.joints.length;
  const record = makeRunRecord(nj);
  const motion = makeChainMotion(chain);
  const whole = makeWhole();
  const free = new Uint8Array(nj);
  const zero = new Float64Array(nj);
  const asked = makeAsked(nj);
  const driven = new Uint8Array(nj).fill(1);
  const isDriven = run.engine === 'equations';
  let phi = hang.sense * run.angle[0];
  return (t) => {
    readRun(run, t, record);
    const q = record.x.subarray(3);
    const qd = record.v.subarray(3);
    const x = record.x[0];
    const y = record.x[1];
    const theta = record.x[2];
    const vx = record.v[0];
    const vy = record.v[1];
    const w = record.v[2];
    placeChain(chain, q, qd, { point: grip, x, y: y + rail.height, vx, vy, theta, w }, motion);
    wholeInto(chain, motion, gravity, whole);
    // driven joints: the torques are what the moves need here; else those that the engine put on
    if (isDriven) {
      planar.place(theta, w, q, qd);
      phi = directionOf(hang, phi);
      askInto(hang, t, theta, w, phi, asked);
    }
    planar.place(theta, w, q, qd);
    planar.solve(
      gravity,
      spring.mass,
      -spring.kx * x - spring.cx * vx,
      -spring.ky * y - spring.cy * vy,
      isDriven ? driven : free,
      isDriven ? asked.qdd : zero,
      isDriven ? asked.share : zero,
      record.torque,
    );
    if (isDriven) record.torque.set(planar.torque);
    return { record, whole, motion };
  };
}

function stateAt(hang: Hang, reader: ReturnType<typeof makeReader>, T: number, t: number): SwingState {
  const { chain, planar } = hang;
  const { record, whole, motion } = reader(T + t);
  const angles = new Float64Array(chain.held.length);
  const rates = new Float64Array(chain.held.length);
  bodyAnglesInto(chain, record.x.subarray(3), angles);
  chain.joints.forEach((joint, j) => {
    for (const a of joint.angles) rates[a] = record.v[3 + j];
  });
  const root = new Float64Array(4);
  pointInto(chain, motion, { link: 0, at: [0, 0] }, root);
  return {
    t,
    theta: motion.theta[0],
    w: motion.w[0],
    p_WBo_W: [root[0], root[1]],
    v_WBo_W: [root[2], root[3]],
    p_WScm_W: [whole.x, whole.y],
    v_WScm_W: [whole.vx, whole.vy],
    h: whole.h,
    angles,
    rates,
    grip: [planar.force[0], planar.force[1]],
    rail: [record.x[0], record.x[1], record.v[0], record.v[1]],
  };
}

function notReleased(spec: SwingSpec, run: SwingRun): NoReleaseError {
  let far = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < run.count; i++) far = Math.max(far, run.angle[i]);
  const deg = (x: number): string => ((x * 180) / Math.PI).toFixed(0);
  return new NoReleaseError(
    spec.release?.at === 'angle'
      ? `the swing does not get to ${deg(spec.release.angle)} deg within ${spec.duration} s; it gets as far as ${deg(far)} deg`
      : `the swing lasts ${spec.duration} s, less than the time of the release`,
  );
}
