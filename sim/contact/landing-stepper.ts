/**
 * Takes the equations of a landing forward. Two ways, by one interface: on the planar engine, as landings are shown; and by
 * Runge-Kutta in reduced coordinates, which is cheaper, is what batches use, and is a witness of the other (docs/numerics.md).
 */
import { type ChainMotion, jointsInto, pointInto } from './chain-motion.ts';
import type { LandingEquations } from './landing-equations.ts';
import { ChainWorld } from './planck.ts';
import { RungeKutta } from './runge-kutta.ts';

export interface LandingStepper {
  /** Length of the step from t, s. */
  stepAt(t: number): number;
  /** Leaves forces and the placed state as a row at t shows them. */
  show(t: number): void;
  /** To t + stepAt(t), from what was shown. */
  advance(t: number): void;
}

/** Rows and steps are `step` apart until the impact is over, then so many times as much. */
const AFTER_IMPACT = { until: 0.15, times: 2 };
/** Later, with this load on the feet, N: so many times. */
const CALM = { from: 0.4, load: 150, times: 4 };

export class RungeKuttaLanding implements LandingStepper {
  private readonly equations: LandingEquations;
  private readonly step: number;
  private readonly solver: RungeKutta;
  private readonly derive: (t: number, y: Float64Array, dy: Float64Array) => void;

  constructor(equations: LandingEquations, step: number) {
    this.equations = equations;
    this.step = step;
    this.solver = new RungeKutta(equations.state.length);
    this.derive = equations.derive.bind(equations);
  }

  stepAt(t: number): number {
    if (t < AFTER_IMPACT.until - this.step / 2) return this.step;
    // joints that hold their shape off the ground are too stiff for more
    const isCalm = t > CALM.from && this.equations.fy > CALM.load;
    return (isCalm ? CALM.times : AFTER_IMPACT.times) * this.step;
  }

  show(t: number): void {
    this.derive(t, this.equations.state, this.solver.k1);
  }

  advance(t: number): void {
    const { state } = this.equations;
    this.solver.step(this.derive, t, this.stepAt(t), state);
    holdStretches(this.equations);
  }
}

/** Each step is cut into so many until then, s: peaks at first contact converge slowest. */
const FINE = { until: 0.1, cuts: 4 };

/**
 * The engine adds dt F / m to a velocity and then dt v to a place. Read as velocities of half steps (start: half a step before
 * touchdown) that is the leapfrog scheme, of second order where forces depend on places alone (Hairer, Lubich & Wanner
 * 2003, Acta Numerica 12:399); velocities shown are means of the two around.
 */
export class PlanckLanding implements LandingStepper {
  private readonly equations: LandingEquations;
  private readonly step: number;
  private readonly world: ChainWorld;
  private readonly next: Float64Array;
  private readonly work: Float64Array;
  private readonly point = new Float64Array(4);
  private readonly q: Float64Array;
  private readonly qd: Float64Array;

  /** `start`: the chain at touchdown, its lowest foot point on the surface as in `equations`. */
  constructor(equations: LandingEquations, start: ChainMotion, gravity: number, step: number) {
    const { planar, joints, D } = equations;
    this.equations = equations;
    this.step = step;
    this.next = new Float64Array(2 * D);
    this.work = new Float64Array(joints.length + 1);
    this.q = new Float64Array(joints.length);
    this.qd = new Float64Array(joints.length);
    pointInto(planar.chain, start, planar.base, this.point);
    const up = equations.state[1] - this.point[1];
    const early = (gravity * this.stepAt(0)) / 2;
    for (let i = 0; i < start.cy.length; i++) {
      start.cy[i] += up;
      start.vy[i] += early;
    }
    this.world = new ChainWorld(planar.chain, start, gravity);
    this.readInto(equations.state);
  }

  stepAt(t: number): number {
    return t < FINE.until - this.step / 8 ? this.step / FINE.cuts : this.step;
  }

  show(t: number): void {
    const { equations: e, world, next, work } = this;
    const { state, D, feet, planar, armX, armY, torque, works } = e;
    const h = this.stepAt(t);
    e.forces(t, state);
    holdStretches(e);
    const { link } = planar.base;
    feet.forEach(({ fx, fy }, i) => {
      if (fy > 0) world.push(link, fx, fy, state[0] + armX[i], state[1] + armY[i]);
    });
    planar.chain.joints.forEach(({ sign, parent, child }, j) => {
      world.twist(child, sign * torque[j]);
      world.twist(parent, -sign * torque[j]);
    });
    world.step(h);
    this.readInto(next);
    for (let d = 0; d < D; d++) state[D + d] = (state[D + d] + next[D + d]) / 2;
    // works over this step, by the mean of the velocities around it; half of them belong to the row
    let power = 0;
    feet.forEach(({ fx, fy }, i) => {
      power += fx * (state[D] - state[D + 2] * armY[i]) + fy * (state[D + 1] + state[D + 2] * armX[i]);
    });
    torque.forEach((tau, j) => {
      work[j] = (tau * state[D + 3 + j] * h) / 2;
    });
    work[torque.length] = (power * h) / 2;
    work.forEach((w, j) => {
      state[works + j] += w;
    });
    e.place(state);
  }

  advance(t: number): void {
    const { equations: e, next, work } = this;
    const { state, D, works, stretches, feet, armY } = e;
    const h = this.stepAt(t);
    state.set(next);
    work.forEach((w, j) => {
      state[works + j] += w;
    });
    feet.forEach((foot, i) => {
      if (foot.depth > 0) state[stretches + i] += h * (state[D] - state[D + 2] * armY[i]);
    });
  }

  /** Coordinates and rates of the chain in the engine. */
  private readInto(out: Float64Array): void {
    const { world, point, q, qd } = this;
    const { planar, D } = this.equations;
    const m = world.motion;
    pointInto(planar.chain, m, planar.base, point);
    jointsInto(planar.chain, m, q, qd);
    out[0] = point[0];
    out[1] = point[1];
    out[2] = m.theta[planar.base.link];
    out.set(q, 3);
    out[D] = point[2];
    out[D + 1] = point[3];
    out[D + 2] = m.w[planar.base.link];
    out.set(qd, D + 3);
  }
}

/** Friction gives way: the sideways springs keep what it can hold. */
function holdStretches({ state, stretches, feet }: LandingEquations): void {
  feet.forEach((foot, i) => {
    state[stretches + i] = foot.held(state[stretches + i]);
  });
}
