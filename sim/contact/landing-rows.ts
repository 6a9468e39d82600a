/** The record of a landing: columns over time, one row a step, of states whose derivative has just been taken. */
import type { LandingEntry } from './landing-entry.ts';
import type { LandingEquations } from './landing-equations.ts';
import type { SoledMat } from './soles.ts';

/** Forces on the athlete, N. Rows are as far apart as the steps. */
export interface LandingColumns {
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
  /** hindmost and foremost point of the soles; XcoM with the turning that is left (balance-action.ts) */
  readonly heel: Float64Array;
  readonly toe: Float64Array;
  readonly xcom: Float64Array;
  /** angle of the root link */
  readonly theta: Float64Array;
  /** by joint of the chain */
  readonly q: readonly Float64Array[];
  readonly torque: readonly Float64Array[];
  readonly limited: readonly Uint8Array[];
  /** a joint of the legs is against its stop */
  readonly stopped: Uint8Array;
  /** energies up to each row, J: by joint + put in; lost in mat and soles; held by them; kinetic and height of the body */
  readonly jointWork: readonly Float64Array[];
  readonly matLoss: Float64Array;
  readonly matHeld: Float64Array;
  readonly solesLoss: Float64Array;
  readonly solesHeld: Float64Array;
  readonly kinetic: Float64Array;
  readonly potential: Float64Array;
}

const NAMES = [
  't', 'fx', 'fy', 'x', 'y', 'vx', 'vy', 'h', 'sink', 'heel', 'toe', 'xcom', 'theta', 'matLoss', 'matHeld', 'solesLoss', 'solesHeld', 'kinetic',
  'potential',
] as const; // biome-ignore format: a table of columns
type Column = (typeof NAMES)[number];

/** Rows that there is room for at first; doubled when they are used up. */
const ROOM = 1024;

export class LandingRows {
  private readonly equations: LandingEquations;
  private readonly gravity: number;
  private readonly mat: SoledMat;
  private plain: Record<Column, Float64Array>;
  private q: Float64Array[];
  private torque: Float64Array[];
  private jointWork: Float64Array[];
  private limited: Uint8Array[];
  private stopped = new Uint8Array(ROOM);
  private readonly sums = new Float64Array(4);
  private n = 0;

  constructor(equations: LandingEquations, { gravity }: LandingEntry, mat: SoledMat) {
    this.mat = mat;
    this.equations = equations;
    this.gravity = gravity;
    this.plain = columnsOf(() => new Float64Array(ROOM));
    const perJoint = <T>(make: () => T): T[] => equations.joints.map(() => make());
    this.q = perJoint(() => new Float64Array(ROOM));
    this.torque = perJoint(() => new Float64Array(ROOM));
    this.jointWork = perJoint(() => new Float64Array(ROOM));
    this.limited = perJoint(() => new Uint8Array(ROOM));
  }

  private grow(): void {
    const size = 2 * this.n;
    const longer = (from: Float64Array): Float64Array => {
      const to = new Float64Array(size);
      to.set(from);
      return to;
    };
    const flags = (from: Uint8Array): Uint8Array<ArrayBuffer> => {
      const to = new Uint8Array(size);
      to.set(from);
      return to;
    };
    const { plain } = this;
    this.plain = columnsOf((name) => longer(plain[name]));
    this.q = this.q.map(longer);
    this.torque = this.torque.map(longer);
    this.jointWork = this.jointWork.map(longer);
    this.limited = this.limited.map(flags);
    this.stopped = flags(this.stopped);
  }

  keep(t: number): void {
    if (this.n === this.stopped.length) this.grow();
    const { equations: e, plain: c, sums, gravity } = this;
    const { planar, state: y, feet, D } = e;
    const { chain } = planar;
    const k = this.n++;
    planar.centreInto(sums);
    const m = chain.mass;
    const x = sums[0] / m;
    const up = sums[1] / m;
    const ux = sums[2] / m;
    const uy = sums[3] / m;
    let h = 0;
    let kinetic = 0;
    for (let i = 0; i < chain.links.length; i++) {
      const { mass, inertia } = chain.links[i];
      const w = planar.w[i];
      h += inertia * w + mass * ((planar.rx[i] - x) * (planar.uy[i] - uy) - (planar.ry[i] - up) * (planar.ux[i] - ux));
      kinetic += (mass * ((planar.ux[i] + y[D]) ** 2 + (planar.uy[i] + y[D + 1]) ** 2) + inertia * w * w) / 2;
    }
    let heel = Number.POSITIVE_INFINITY;
    let toe = Number.NEGATIVE_INFINITY;
    let sink = 0;
    let held = 0;
    const f = planar.base.link;
    for (const { point, depth, stored } of feet) {
      const px =
        planar.cos[f] * (point.at.at[0] - planar.base.at[0]) - planar.sin[f] * (point.at.at[1] - planar.base.at[1]);
      heel = Math.min(heel, px - point.radius);
      toe = Math.max(toe, px + point.radius);
      sink = Math.max(sink, depth);
      held += stored;
    }
    c.t[k] = t;
    c.fx[k] = e.fx;
    c.fy[k] = e.fy;
    c.x[k] = y[0] + x;
    c.y[k] = y[1] + up;
    c.vx[k] = y[D] + ux;
    c.vy[k] = y[D + 1] + uy;
    c.h[k] = h;
    c.sink[k] = sink * this.mat.matShare;
    c.heel[k] = y[0] + heel;
    c.toe[k] = y[0] + toe;
    c.theta[k] = planar.theta[0];
    const lost = -y[e.works + e.joints.length] - held;
    c.matHeld[k] = held * this.mat.matShare;
    c.solesHeld[k] = held - c.matHeld[k];
    c.matLoss[k] = lost * this.mat.matLossShare;
    c.solesLoss[k] = lost - c.matLoss[k];
    c.kinetic[k] = kinetic;
    c.potential[k] = m * gravity * c.y[k];
    e.read();
    c.xcom[k] = e.balance ? y[0] + e.balance.xcom : Number.NaN;
    for (let j = 0; j < e.joints.length; j++) {
      this.q[j][k] = y[3 + j];
      this.torque[j][k] = e.torque[j];
      this.limited[j][k] = e.joints[j].limited ? 1 : 0;
      if (e.joints[j].stopped) this.stopped[k] = 1;
      this.jointWork[j][k] = y[e.works + j];
    }
  }

  columns(): LandingColumns {
    const { n } = this;
    const cut = <T extends Float64Array | Uint8Array>(a: T): T => a.subarray(0, n) as T;
    return {
      n,
      ...columnsOf((name) => cut(this.plain[name])),
      q: this.q.map(cut),
      torque: this.torque.map(cut),
      limited: this.limited.map(cut),
      stopped: cut(this.stopped),
      jointWork: this.jointWork.map(cut),
    };
  }
}

const columnsOf = (make: (name: Column) => Float64Array): Record<Column, Float64Array> =>
  Object.fromEntries(NAMES.map((name) => [name, make(name)])) as Record<Column, Float64Array>;
