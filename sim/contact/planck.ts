/**
 * The planar engine, pinned: the only file that imports planck-js. A world without contacts, sleep or continuous
 * collision, in which links are bodies with their own mass data and joints are motors within torque limits.
 *
 * Pinned, with why (docs/decisions/0004-planar-contact-planck.md, docs/numerics.md):
 * - linearSlop 1e-9 m: joint positions are corrected in every iteration asked for, not until 5 mm.
 * - maxTranslation and maxRotation are clamped silently at 2 m and 90 deg a step; no step of ours comes near.
 * - bodies do not sleep; forces are cleared each step; 20 velocity and 8 position iterations.
 * - a body's angle is stored modulo a turn at the start: angles are counted on here, by an offset for each link.
 * The engine is first order in its step. Forces are read from springs of our own wherever a limit has to exist.
 */
import { type Body as EngineBody, RevoluteJoint, Settings, Vec2, World } from 'planck-js';
import type { Chain } from './chain.ts';
import { type ChainMotion, makeChainMotion } from './chain-motion.ts';
import type { Planar } from './planar.ts';

Settings.linearSlop = 1e-9;
Settings.linearSleepTolerance = 0;
Settings.angularSleepTolerance = 0;

export const VELOCITY_ITERATIONS = 20;
export const POSITION_ITERATIONS = 8;
/** The first step starts from no impulses at all, the others from those of the step before. */
const FIRST_ITERATIONS = 400;

/** A chain in the engine. Everything read is in W, SI, radians. */
export class ChainWorld {
  readonly chain: Chain;
  readonly motion: ChainMotion;
  private readonly world: World;
  private readonly bodies: EngineBody[] = [];
  private readonly joints: RevoluteJoint[] = [];
  private readonly turns: Float64Array;
  private readonly bias: Float64Array; // middle of a joint's torque limits, in the engine's sense
  private readonly extra: EngineBody[] = [];

  /** `start`: angles, turning and places of every link, filled. */
  constructor(chain: Chain, start: ChainMotion, gravity: number) {
    this.chain = chain;
    this.world = new World({ gravity: new Vec2(0, -gravity), allowSleep: false, continuousPhysics: false });
    this.motion = makeChainMotion(chain);
    const n = chain.links.length;
    this.turns = new Float64Array(n);
    this.bias = new Float64Array(chain.joints.length);
    [this.before, this.ax, this.ay] = [new Float64Array(n), new Float64Array(n), new Float64Array(n)];
    chain.links.forEach((link, i) => {
      // the engine's body has its origin at the link's mass centre
      const body = this.makeBody(start.cx[i], start.cy[i], start.theta[i], link.mass, link.inertia);
      body.setLinearVelocity(new Vec2(start.vx[i], start.vy[i]));
      body.setAngularVelocity(start.w[i]);
      this.turns[i] = start.theta[i] - body.getAngle();
      this.bodies.push(body);
    });
    chain.joints.forEach((joint) => {
      const made = this.world.createJoint(
        new RevoluteJoint({
          bodyA: this.bodies[joint.parent],
          bodyB: this.bodies[joint.child],
          localAnchorA: this.local(joint.parent, joint.point),
          localAnchorB: this.local(joint.child, joint.point),
          referenceAngle: 0,
          enableMotor: false,
        }),
      );
      if (made) this.joints.push(made);
    });
    this.read();
  }

  /** A body besides the chain's (a rail), without gravity; pinned to a point of a link. Returns its number. */
  addRail(mass: number, link: number, point: readonly [number, number], vx: number, vy: number): number {
    const p = this.bodies[link].getWorldPoint(this.local(link, point));
    const body = this.makeBody(p.x, p.y, 0, mass, 0);
    body.setGravityScale(0);
    body.setLinearVelocity(new Vec2(vx, vy));
    const joint = this.world.createJoint(
      new RevoluteJoint({
        bodyA: body,
        bodyB: this.bodies[link],
        localAnchorA: new Vec2(0, 0),
        localAnchorB: this.local(link, point),
        referenceAngle: 0,
        enableMotor: false,
      }),
    );
    this.extra.push(body);
    if (joint) this.pins.push(joint);
    return this.extra.length - 1;
  }
  private readonly pins: RevoluteJoint[] = [];

  railInto(i: number, out: Float64Array): void {
    const body = this.extra[i];
    out[0] = body.getPosition().x;
    out[1] = body.getPosition().y;
    out[2] = body.getLinearVelocity().x;
    out[3] = body.getLinearVelocity().y;
  }

  pushRail(i: number, fx: number, fy: number): void {
    this.extra[i].applyForceToCenter(new Vec2(fx, fy), true);
  }

  /** Force that the rail puts on the link in the last step of length dt, into out[0..1]. */
  pinForceInto(i: number, dt: number, out: Float64Array): void {
    const f = this.pins[i].getReactionForce(1 / dt);
    out[0] = f.x;
    out[1] = f.y;
  }

  /** Force on a link at a place in W, for the next step. */
  push(link: number, fx: number, fy: number, x: number, y: number): void {
    this.bodies[link].applyForce(new Vec2(fx, fy), new Vec2(x, y), true);
  }

  /** Torque on a link for the next step. */
  twist(link: number, torque: number): void {
    this.bodies[link].applyTorque(torque, true);
  }

  /**
   * Drives joint j at the rate `qd` of its named angle with at most `limit` N m towards + and -, for the next step. The
   * engine's motor has one limit for both: it gets half the span, and the middle of the span is put on as a torque.
   */
  drive(j: number, qd: number, limit: readonly [number, number]): void {
    const joint = this.joints[j];
    const { sign, parent, child } = this.chain.joints[j];
    joint.enableMotor(true);
    joint.setMotorSpeed(sign * qd);
    const half = (limit[0] + limit[1]) / 2;
    const middle = (sign * (limit[0] - limit[1])) / 2;
    joint.setMaxMotorTorque(half);
    this.bias[j] = Number.isFinite(middle) ? middle : 0;
    if (this.bias[j] !== 0) {
      this.bodies[child].applyTorque(this.bias[j], true);
      this.bodies[parent].applyTorque(-this.bias[j], true);
    }
  }

  /** Leaves joint j free of any torque. */
  release(j: number): void {
    this.joints[j].enableMotor(false);
    this.bias[j] = 0;
  }

  step(dt: number): void {
    this.world.step(dt, VELOCITY_ITERATIONS, POSITION_ITERATIONS);
    this.world.clearForces();
    this.read();
  }

  /**
   * A step of second order for a chain that hangs on rail `i` (docs/numerics.md, "Swing"). Velocities are those of half
   * steps: the engine's own order, rates first, then places, is then the leapfrog. What it lacks are the accelerations of
   * turning; they are put on as forces, from rates drawn on to the whole step. After it the links are set where angles and
   * rail say, and their velocities are turned on with them: so joints stay shut and no speed is lost in mending them. What
   * the iterations leave unsolved stays in the velocities, for the next step to solve.
   */
  advance(i: number, dt: number, planar: Planar): void {
    const { motion: m, bodies, extra } = this;
    const n = bodies.length;
    for (let k = 0; k < n; k++) {
      planar.theta[k] = m.theta[k];
      planar.w[k] = this.hasBefore ? 1.5 * m.w[k] - 0.5 * this.before[k] : m.w[k];
      this.before[k] = m.w[k];
    }
    planar.spread();
    planar.turningAccInto(this.ax, this.ay);
    for (let k = 0; k < n; k++) {
      const mass = this.chain.links[k].mass;
      bodies[k].applyForceToCenter(new Vec2(-mass * this.ax[k], -mass * this.ay[k]), true);
    }
    const rail = extra[i];
    const x = rail.getPosition().x;
    const y = rail.getPosition().y;
    this.world.step(dt, this.hasBefore ? VELOCITY_ITERATIONS : FIRST_ITERATIONS, 1);
    this.world.clearForces();
    this.hasBefore = true;
    // the engine cannot be asked for no mending of places at all: the rail goes where its velocity says
    const to = rail.getLinearVelocity();
    rail.setTransform(new Vec2(x + dt * to.x, y + dt * to.y), 0);
    // velocities that go with the turnings, before and after the links have turned
    for (let k = 0; k < n; k++) {
      m.w[k] = bodies[k].getAngularVelocity();
      planar.w[k] = m.w[k];
    }
    planar.spread();
    this.ax.set(planar.ux);
    this.ay.set(planar.uy);
    for (let k = 0; k < n; k++) {
      m.theta[k] += dt * m.w[k];
      planar.theta[k] = m.theta[k];
    }
    planar.spread();
    const p = extra[i].getPosition();
    for (let k = 0; k < n; k++) {
      const v = bodies[k].getLinearVelocity();
      m.cx[k] = p.x + planar.rx[k];
      m.cy[k] = p.y + planar.ry[k];
      m.vx[k] = v.x + planar.ux[k] - this.ax[k];
      m.vy[k] = v.y + planar.uy[k] - this.ay[k];
      bodies[k].setTransform(new Vec2(m.cx[k], m.cy[k]), m.theta[k]);
      bodies[k].setLinearVelocity(new Vec2(m.vx[k], m.vy[k]));
    }
  }
  private readonly before: Float64Array;
  private hasBefore = false;
  private readonly ax: Float64Array;
  private readonly ay: Float64Array;

  /** Torque on joint j in the last step of length dt, in the sense of its named angle. */
  torque(j: number, dt: number): number {
    return this.chain.joints[j].sign * (this.joints[j].getMotorTorque(1 / dt) + this.bias[j]);
  }

  private read(): void {
    const m = this.motion;
    this.bodies.forEach((body, i) => {
      const p = body.getPosition();
      const v = body.getLinearVelocity();
      m.theta[i] = body.getAngle() + this.turns[i];
      m.w[i] = body.getAngularVelocity();
      m.cx[i] = p.x;
      m.cy[i] = p.y;
      m.vx[i] = v.x;
      m.vy[i] = v.y;
    });
  }

  private makeBody(x: number, y: number, angle: number, mass: number, inertia: number): EngineBody {
    const body = this.world.createBody({
      type: 'dynamic',
      position: new Vec2(x, y),
      angle,
      allowSleep: false,
      fixedRotation: inertia === 0,
      linearDamping: 0,
      angularDamping: 0,
    });
    body.setMassData({ mass, center: new Vec2(0, 0), I: inertia });
    return body;
  }

  private local(link: number, point: readonly [number, number]): Vec2 {
    const [x, y] = this.chain.links[link].centre;
    return new Vec2(point[0] - x, point[1] - y);
  }
}
