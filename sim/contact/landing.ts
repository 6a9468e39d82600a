/**
 * A landing in the plane: the chain on the springs of a mat, joints as springs with limited strength, stepped by the planar
 * engine. x forward as the athlete faces, y up, t = 0 at touchdown. Forces come from our own springs (feet.ts).
 *
 * The engine adds dt F / m to a velocity and then dt v to a place. Read as velocities of half steps (start: half a step
 * before touchdown) that is the leapfrog scheme, of second order where forces depend on places alone (Hairer, Lubich & Wanner
 * 2003, Acta Numerica 12:399); velocities at whole steps are means of the two around. Measured errors: docs/numerics.md.
 */
import type { ChainJoint, ChainPoint } from './chain.ts';
import { jointsInto, makeChainTotals, pointInto, totalsInto } from './chain-motion.ts';
import { FootSpring, footPoints } from './feet.ts';
import { type LandingEntry, placeEntry } from './landing-entry.ts';
import { checkAction, JointAction, type LegAction } from './landing-joints.ts';
import { checkMat, type MatSpec } from './mat.ts';
import { ChainWorld } from './planck.ts';

export interface LandingSetup {
  readonly mat: MatSpec;
  readonly action: LegAction;
  /** s; 1 if left out */
  readonly duration?: number;
  /** s; STEP if left out */
  readonly step?: number;
}

/** Chosen from the measured convergence in docs/numerics.md, s. */
export const STEP = 0.00025;
/** Until then, s, each step is cut into so many: peaks at first contact converge slowest. Rows stay STEP apart. */
const FINE = { until: 0.1, cuts: 4 };
const DURATION = 1;

/** Columns over time, one row a step; forces on the athlete, N. Row k is at k dt. */
export interface LandingRun {
  readonly entry: LandingEntry;
  readonly spec: LandingSetup;
  readonly dt: number;
  readonly n: number;
  readonly t: Float64Array;
  readonly fx: Float64Array;
  readonly fy: Float64Array;
  /** mass centre and its velocity, angular momentum about it */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly vx: Float64Array;
  readonly vy: Float64Array;
  readonly h: Float64Array;
  /** deepest foot point */
  readonly sink: Float64Array;
  /** hindmost and foremost point of the soles */
  readonly heel: Float64Array;
  readonly toe: Float64Array;
  /** angle of the root link */
  readonly theta: Float64Array;
  /** by joint of the chain */
  readonly q: readonly Float64Array[];
  readonly torque: readonly Float64Array[];
  readonly limited: readonly Uint8Array[];
  /** energies up to each row, J: by joint + put in; lost in the mat; held by it; kinetic and height of the body */
  readonly jointWork: readonly Float64Array[];
  readonly matLoss: Float64Array;
  readonly matHeld: Float64Array;
  readonly energy: Float64Array;
  /** what else came down on the mat, which ends the run */
  readonly touched?: { readonly part: string; readonly t: number };
}

export function runLanding(entry: LandingEntry, spec: LandingSetup): LandingRun {
  const mat = checkMat(spec.mat);
  const action = checkAction(spec.action);
  const { chain, gravity } = entry;
  const dt = spec.step ?? STEP;
  const most = Math.round((spec.duration ?? DURATION) / dt) + 1;
  const f = (): Float64Array => new Float64Array(most);
  const perJoint = <T>(make: () => T): T[] => chain.joints.map(() => make());
  const run = {
    t: f(), fx: f(), fy: f(), x: f(), y: f(), vx: f(), vy: f(), h: f(), sink: f(), heel: f(), toe: f(), theta: f(),
    q: perJoint(f), torque: perJoint(f), limited: perJoint(() => new Uint8Array(most)), jointWork: perJoint(f),
    matLoss: f(), matHeld: f(), energy: f(),
  }; // biome-ignore format: a table of columns

  // feet set on the surface exactly: what left and right or tilt made different is taken up as height
  const start = placeEntry(entry);
  const feet = footPoints(chain).map((p) => new FootSpring(p, mat));
  const out = new Float64Array(4);
  const lowest = Math.min(
    ...feet.map(({ point }) => {
      pointInto(chain, start, point.at, out);
      return out[1] - point.radius;
    }),
  );
  const joints = chain.joints.map((j, i) => new JointAction(j, action, chain.body, entry.q[i]));
  for (let i = 0; i < chain.links.length; i++) {
    start.cy[i] += mat.surfaceY - lowest;
    // half a step before touchdown
    start.vy[i] += (gravity * dt) / (2 * FINE.cuts);
  }
  const world = new ChainWorld(chain, start, gravity);
  const others = otherParts(entry);
  const q = new Float64Array(chain.joints.length);
  const qd = new Float64Array(chain.joints.length);
  const qdAfter = new Float64Array(chain.joints.length);
  const torques = new Float64Array(chain.joints.length);
  /** of each foot point at a row: arm from its link's mass centre, velocity before the step */
  const arms = feet.map(() => new Float64Array(4));
  const before = makeChainTotals();
  const after = makeChainTotals();
  totalsInto(chain, world.motion, gravity, before);
  jointsInto(chain, world.motion, q, qd);
  let touched: { part: string; t: number } | undefined;
  let n = 0;
  /** work of the mat on the feet so far, J */
  let matWork = 0;
  const works = new Float64Array(chain.joints.length);

  const fine = dt / FINE.cuts;
  let slidFor = 0;
  let t = 0;
  for (let k = 0; k < most && !touched; ) {
    const isRow = t >= k * dt - fine / 2;
    const step = t < FINE.until - fine / 2 ? fine : dt;
    if (isRow) {
      n = k + 1;
      run.t[k] = k * dt;
      run.x[k] = before.x;
      run.y[k] = before.y;
      run.theta[k] = world.motion.theta[0];
    }
    // forces at the places of this row
    let [heel, toe, held, sunk] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 0, 0];
    feet.forEach((foot, i) => {
      const { at, radius } = foot.point;
      pointInto(chain, world.motion, at, out);
      // the lowest point of the sphere, moved by the link's turning
      const vx = out[2] + world.motion.w[at.link] * radius;
      arms[i].set([out[0] - world.motion.cx[at.link], out[1] - radius - world.motion.cy[at.link], vx, out[3]]);
      foot.push(out[1] - radius, slidFor * vx, vx, out[3]);
      if (foot.fy > 0) world.push(at.link, foot.fx, foot.fy, out[0], out[1] - radius);
      if (isRow) {
        run.fx[k] += foot.fx;
        run.fy[k] += foot.fy;
        run.sink[k] = Math.max(run.sink[k], foot.depth);
      }
      heel = Math.min(heel, out[0] - radius);
      toe = Math.max(toe, out[0] + radius);
      held += foot.stored;
      sunk = Math.max(sunk, foot.depth);
    });
    joints.forEach((joint, j) => {
      torques[j] = joint.torque(t, q[j], qd[j]);
      twistJoint(world, joint.joint, torques[j]);
      if (!isRow) return;
      run.q[j][k] = q[j];
      run.torque[j][k] = torques[j];
      run.limited[j][k] = joint.limited ? 1 : 0;
    });
    world.step(step);
    totalsInto(chain, world.motion, gravity, after);
    jointsInto(chain, world.motion, q, qdAfter);
    // works over this step, by the mean of the velocities around it; half of them belong to the row
    let work = 0;
    feet.forEach((foot, i) => {
      const [rx, ry, vx, vy] = arms[i];
      const { link } = foot.point.at;
      const { motion } = world;
      const ux = (vx + motion.vx[link] - motion.w[link] * ry) / 2;
      const uy = (vy + motion.vy[link] + motion.w[link] * rx) / 2;
      work += (foot.fx * ux + foot.fy * uy) * step;
    });
    for (let j = 0; j < works.length; j++) {
      const own = (torques[j] * (qd[j] + qdAfter[j]) * step) / 2;
      if (isRow) run.jointWork[j][k] = works[j] + own / 2;
      works[j] += own;
      qd[j] = qdAfter[j];
    }
    if (isRow) {
      run.vx[k] = (before.vx + after.vx) / 2;
      run.vy[k] = (before.vy + after.vy) / 2;
      run.h[k] = (before.h + after.h) / 2;
      run.energy[k] = (before.kinetic + after.kinetic) / 2 + before.potential;
      run.heel[k] = heel;
      run.toe[k] = toe;
      run.matHeld[k] = held;
      run.matLoss[k] = -matWork - work / 2 - held;
      k++;
    }
    matWork += work;
    Object.assign(before, after);
    slidFor = step;
    t += step;
    // the surface around goes down with the feet
    touched = firstTouch(world, others, mat.surfaceY - sunk, t, out);
  }
  return { entry, spec, dt, n, ...run, ...(touched ? { touched } : {}) };
}

function twistJoint(world: ChainWorld, { sign, parent, child }: ChainJoint, torque: number): void {
  world.twist(child, sign * torque);
  world.twist(parent, -sign * torque);
}

interface Part {
  readonly part: string;
  readonly at: ChainPoint;
  readonly radius: number;
}

function otherParts({ chain }: LandingEntry): readonly Part[] {
  return chain.body.contacts.flatMap((c) =>
    c.part === 'feet' || c.name.endsWith('R')
      ? []
      : [{ part: c.part, at: chain.pointOf(c.segment, c.p_BoC_B), radius: c.radius }],
  );
}

function firstTouch(
  world: ChainWorld,
  parts: readonly Part[],
  surface: number,
  t: number,
  out: Float64Array,
): { part: string; t: number } | undefined {
  for (const { part, at, radius } of parts) {
    pointInto(world.chain, world.motion, at, out);
    if (out[1] - radius < surface) return { part, t };
  }
  return undefined;
}

/** For who reads a Whole at a row. */
