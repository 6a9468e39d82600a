/**
 * What a landing athlete does once he can react: the ground force that would brake, balance and straighten him is worked out, and
 * each joint of the legs gives the torque that this force, put on the soles, would ask of it at rest (the moment of the force
 * about the joint, with the weight of what lies beneath). Strength and ground then let him have of it what they can. x forward,
 * y up; + turns backward.
 *
 * Along:  the mass centre is led by where the force passes it. With c the point on the ground that the force would have to aim
 *         through the mass centre from, x'' = (x - c) Fy / (m y); c = XcoM + GAIN (XcoM - middle) brings XcoM to the middle of
 *         the soles (Hof 2008, Hum Mov Sci 27:112: the centre of pressure leads XcoM). Under the soles c is had by the ankles;
 *         what lies outside is had by turning trunk and arms, as far as they go.
 * Up:     braked with the deceleration that ends at the planned bend, v^2 / (2 d), then led up to standing.
 * Turning: trunk to the lean that balance has at that bend (stance.ts), what turning is left taken out over SETTLE.
 */
import type { Chain } from './chain.ts';
import type { FootPoint } from './feet.ts';
import type { PlacedChain } from './placed-chain.ts';
import { MIDDLE, StanceTable } from './stance.ts';

/** All judgement. Of XcoM's distance from the middle; 1/s of the trunk, and time in which turning is taken out, s. */
const GAIN = 0.8;
const TRUNK = 6;
export const SETTLE = 0.12;
/** From its lean the trunk swings so far to balance, rad. */
const SWING_ROOM = 1;
/** The centre of pressure stays this far from heel and toe, share of the sole. */
const RIM = 0.06;
/** Most moment about the mass centre that is asked for, N m for each kg. */
const MOST_TURN = 3;
/** Along the ground no more than this share of the vertical force is asked for. */
const SLANT = 0.5;
/** Vertical force asked for, body weights: least while braking or rising, and most. */
const LEAST_FORCE = 0.3;
const MOST_FORCE = 14;
/** Held at the bottom, s; time to rise, s; 1/s of the leg's length. */
const PAUSE = 0.15;
const RISE = 0.7;
const LEG = 9;
/** Arms while balancing, rad from hanging in W, and what the shoulder does for it at most; */
const ARMS = 1.3;
const [LEAST_ARMS, MOST_ARMS] = [-0.8, 2.8];
/** their share of the turning asked for; spring and damper, N m/rad and N m s/rad for each kg. */
const ARM_SHARE = 0.3;
const ARM_SPRING = 0.35;
const ARM_DAMPING = 0.12;
/** XcoM so far outside, m, they begin to reach for the ground and do, rad. */
const REACH_AT = [0.15, 0.45] as const;
const REACH_AHEAD = 0.7;
const REACH_BEHIND = -0.7;
/** Knees of who stands after a landing, rad. */
const STANDING_KNEE = 0.2;
/** N m/rad for each kg that keep knees from being stretched further. */
const UNLOCK = 2;

export interface Ground {
  /** velocity of the base point, W */
  readonly vx: number;
  readonly vy: number;
}

export class BalanceAction {
  private readonly chain: Chain;
  private readonly placed: PlacedChain;
  private readonly feet: readonly FootPoint[];
  private readonly gravity: number;
  private readonly stance: StanceTable;
  /** link that hangs on the hips as seen from the feet: the trunk */
  private readonly trunk: number;
  private readonly legs: readonly number[];
  private readonly arm: number;
  /** links beneath each joint of the legs */
  private readonly below: readonly (readonly number[])[];
  private readonly stand: number;
  private readonly low: number;
  /** a step has begun: he keeps himself up on his way */
  isStepping = false;
  private bottomAt = Number.POSITIVE_INFINITY;
  private bottom = 0;
  /** height of the hips to which they are led */
  private led = 0;
  private readonly sums = new Float64Array(4);
  // of the state read last; places relative to the base point
  /** mass centre, and its velocity in W */
  x = 0;
  vx = 0;
  vy = 0;
  /** about the mass centre */
  h = 0;
  heel = 0;
  toe = 0;
  sole = 0;
  /** of the mass centre over the soles, of the hips over the soles */
  height = 0;
  hipHeight = 0;
  /** with what the turning that is left makes of it */
  xcom = 0;

  /** `bend`: of the knees, at which braking is planned to end. */
  constructor(placed: PlacedChain, feet: readonly FootPoint[], gravity: number, q: ArrayLike<number>, bend: number) {
    const { chain } = placed;
    this.chain = chain;
    this.placed = placed;
    this.feet = feet;
    this.gravity = gravity;
    const index = (name: string): number => chain.joints.findIndex((j) => j.name === name);
    this.legs = ['hip', 'knee', 'ankle'].map(index);
    this.arm = index('shoulder');
    this.trunk = chain.joints[this.legs[0]].parent;
    const links = this.legs.map((j) => chain.joints[j].child);
    this.below = links.map((_, i) => links.slice(i));
    const pose = Float64Array.from(q);
    if (this.arm >= 0) pose[this.arm] = ARMS;
    this.stance = new StanceTable(chain, feet, pose);
    this.stand = this.stance.hipAt(STANDING_KNEE);
    this.low = this.stance.hipAt(bend);
  }

  get hasRisen(): boolean {
    return this.hipHeight > this.stand - 0.02;
  }

  /** The mass centre has stopped sinking: from here on up. */
  turnUp(t: number): void {
    this.bottomAt = t;
    this.bottom = this.hipHeight;
  }

  /** Reads the placed state; `base`: how the base point moves. */
  read(base: Ground): void {
    const { placed, chain, sums, feet } = this;
    placed.centreInto(sums);
    const x = sums[0] / chain.mass;
    const y = sums[1] / chain.mass;
    const ux = sums[2] / chain.mass;
    const uy = sums[3] / chain.mass;
    let h = 0;
    for (let k = 0; k < chain.links.length; k++)
      h +=
        chain.links[k].inertia * placed.w[k] +
        placed.m[k] * ((placed.rx[k] - x) * (placed.uy[k] - uy) - (placed.ry[k] - y) * (placed.ux[k] - ux));
    const f = placed.base.link;
    const c = placed.cos[f];
    const s = placed.sin[f];
    let heel = Number.POSITIVE_INFINITY;
    let toe = Number.NEGATIVE_INFINITY;
    let sole = 0;
    for (const { at, radius } of feet) {
      const px = at.at[0] - placed.base.at[0];
      const py = at.at[1] - placed.base.at[1];
      heel = Math.min(heel, c * px - s * py - radius);
      toe = Math.max(toe, c * px - s * py + radius);
      sole += (s * px + c * py - radius) / feet.length;
    }
    this.x = x;
    this.vx = ux + base.vx;
    this.vy = uy + base.vy;
    this.h = h;
    this.heel = heel;
    this.toe = toe;
    this.sole = sole;
    this.height = Math.max(0.1, y - sole);
    this.hipHeight = placed.ey[this.trunk] - sole;
    const w0 = Math.sqrt(this.gravity / this.height);
    this.xcom = x + this.vx / w0 - h / (chain.mass * this.height * w0 * (1 + w0 * SETTLE));
  }

  /** Torques that the wanted ground force asks, into `out`. */
  torquesInto(t: number, base: Ground, q: ArrayLike<number>, qd: ArrayLike<number>, out: Float64Array): void {
    const { placed, chain, gravity, trunk } = this;
    const m = chain.mass;
    this.read(base);
    const { x, height, heel, toe, xcom } = this;
    // up
    const rate = placed.fy[trunk] + base.vy;
    const fy =
      m *
      Math.min(
        Math.max(gravity + this.liftAt(t, t < this.bottomAt ? this.vy : rate), LEAST_FORCE * gravity),
        MOST_FORCE * gravity,
      );
    // along
    const middle = heel + MIDDLE * (toe - heel);
    const rim = RIM * (toe - heel);
    const c = xcom + GAIN * (xcom - middle);
    const p = Math.min(Math.max(c, heel + rim), toe - rim);
    // turning
    const most = MOST_TURN * m;
    const theta = this.stance.leanAt(t < this.bottomAt ? this.hipHeight : this.led);
    const own = TRUNK_INERTIA * m * TRUNK * TRUNK * (theta - placed.theta[trunk]) - this.h / SETTLE;
    // the trunk has only so far to go
    const room = Math.max(0, 1 - Math.abs(theta - placed.theta[trunk]) / SWING_ROOM);
    const swing = (p - c) * fy * room;
    const turn = Math.min(Math.max(own + swing, -most), most);
    const slip = SLANT * fy;
    const fx = Math.min(Math.max((turn - (p - x) * fy) / height, -slip), slip);
    // where no balance is left, and no step begins, the arms reach for the ground, ahead or behind
    const reach = this.isStepping ? 0 : shareOf(xcom - toe) - shareOf(heel - xcom);
    for (let i = 0; i < this.legs.length; i++) {
      const j = this.legs[i];
      const { sign, parent } = chain.joints[j];
      const ax = placed.ex[parent];
      const ay = placed.ey[parent];
      let moment = (p - ax) * fy - (this.sole - ay) * fx;
      for (const k of this.below[i]) moment -= (placed.rx[k] - ax) * placed.m[k] * gravity;
      // falling back, the legs give way: the athlete sits down
      out[j] = -sign * moment * (1 - Math.max(0, -reach));
    }
    const knee = this.legs[1];
    out[knee] += UNLOCK * m * Math.max(0, STANDING_KNEE - q[knee]);
    if (this.arm < 0) return;
    const { sign, child } = chain.joints[this.arm];
    const weight = (placed.rx[child] - placed.ex[child]) * placed.m[child] * gravity;
    const ask = Math.min(Math.max(ARM_SHARE * swing, -most), most);
    const along = ARMS + (reach > 0 ? reach * (REACH_AHEAD - ARMS) : reach * (ARMS - REACH_BEHIND));
    const arms = Math.min(Math.max(along - placed.theta[trunk], LEAST_ARMS), MOST_ARMS);
    out[this.arm] =
      sign * (weight + ask * (1 - Math.abs(reach))) +
      m * (ARM_SPRING * (arms - q[this.arm]) - ARM_DAMPING * qd[this.arm]);
  }

  /** Acceleration upward that is wanted at t, the hips rising at `rate`. */
  private liftAt(t: number, rate: number): number {
    if (t < this.bottomAt) {
      const room = Math.max(this.hipHeight - this.low, LEAST_ROOM);
      return rate < 0 ? (rate * rate) / (2 * room) - rate / LINGER : 0;
    }
    const s = Math.min(Math.max((t - this.bottomAt - PAUSE) / RISE, 0), 1);
    const way = this.stand - this.bottom;
    const along = this.bottom + way * s * s * s * (10 + s * (6 * s - 15));
    this.led = along;
    const pace = (30 * way * s * s * (1 - s) * (1 - s)) / RISE;
    return LEG * LEG * (along - this.hipHeight) + 2 * LEG * (pace - rate);
  }
}
const shareOf = (outside: number): number =>
  Math.min(Math.max((outside - REACH_AT[0]) / (REACH_AT[1] - REACH_AT[0]), 0), 1);
/** of trunk, head and arms, kg m^2 for each kg of the body; m left to brake in */
const TRUNK_INERTIA = 0.06;
const LEAST_ROOM = 0.03;
/** s: what is left of sinking is stopped in about this */
const LINGER = 0.15;
