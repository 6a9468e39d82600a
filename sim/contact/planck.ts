/**
 * The planar engine, pinned: the only file that imports planck-js. A world without contacts, sleep or continuous
 * collision, in which links are bodies with their own mass data, pinned together; torques and forces are put on from outside.
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

Settings.linearSlop = 1e-9;
Settings.linearSleepTolerance = 0;
Settings.angularSleepTolerance = 0;

const VELOCITY_ITERATIONS = 20;
const POSITION_ITERATIONS = 8;

/** A chain in the engine. Everything read is in W, SI, radians. */
export class ChainWorld {
  readonly chain: Chain;
  readonly motion: ChainMotion;
  private readonly world: World;
  private readonly bodies: EngineBody[] = [];
  private readonly turns: Float64Array;

  /** `start`: angles, turning and places of every link, filled. */
  constructor(chain: Chain, start: ChainMotion, gravity: number) {
    this.chain = chain;
    this.world = new World({ gravity: new Vec2(0, -gravity), allowSleep: false, continuousPhysics: false });
    this.motion = makeChainMotion(chain);
    const n = chain.links.length;
    this.turns = new Float64Array(n);
    chain.links.forEach((link, i) => {
      // the engine's body has its origin at the link's mass centre
      const body = this.makeBody(start.cx[i], start.cy[i], start.theta[i], link.mass, link.inertia);
      body.setLinearVelocity(new Vec2(start.vx[i], start.vy[i]));
      body.setAngularVelocity(start.w[i]);
      this.turns[i] = start.theta[i] - body.getAngle();
      this.bodies.push(body);
    });
    chain.joints.forEach((joint) => {
      this.world.createJoint(
        new RevoluteJoint({
          bodyA: this.bodies[joint.parent],
          bodyB: this.bodies[joint.child],
          localAnchorA: this.local(joint.parent, joint.point),
          localAnchorB: this.local(joint.child, joint.point),
          referenceAngle: 0,
          enableMotor: false,
        }),
      );
    });
    this.read();
  }

  /** Force on a link at a place in W, for the next step. */
  push(link: number, fx: number, fy: number, x: number, y: number): void {
    this.bodies[link].applyForce(new Vec2(fx, fy), new Vec2(x, y), true);
  }

  /** Torque on a link for the next step. */
  twist(link: number, torque: number): void {
    this.bodies[link].applyTorque(torque, true);
  }

  step(dt: number): void {
    this.world.step(dt, VELOCITY_ITERATIONS, POSITION_ITERATIONS);
    this.world.clearForces();
    this.read();
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
