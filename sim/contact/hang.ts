/**
 * A chain that hangs by its hands on a rail: the grip, the swing angle, what the moves ask at a state, and the state at the
 * start.
 */
import type { Body } from '../body/body.ts';
import { turnedTo } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { type Chain, type ChainPoint, makeChain } from './chain.ts';
import { Planar } from './planar.ts';
import { type CarriedJoints, carryMoves, compileMoves, type MoveTable } from './swing-keys.ts';
import { SwingMovesError } from './swing-moves-error.ts';
import type { CaughtStart, HangSpec } from './swing-spec.ts';

export interface Hang {
  readonly spec: HangSpec;
  readonly chain: Chain;
  /** centre of the rail in the hands */
  readonly grip: ChainPoint;
  /** vertex of the head, for felt acceleration: the head's contact sphere */
  readonly head: ChainPoint;
  readonly moves: MoveTable;
  readonly planar: Planar;
  /** factor on what the joints can give; infinite: not checked */
  readonly strength: number;
  /** +1 backward, -1 forward: swing angle u = sense x phi, phi about +Z */
  readonly sense: 1 | -1;
}

/** The bar lies across the hand at its knuckles. */
const GRIPS = 'knuckle';

export function makeHang(spec: HangSpec): Hang {
  const { start } = spec;
  const held = spec.held ?? (start.kind === 'caught' ? poseOf(spec.body, start.pose) : undefined);
  const chain = makeChain(spec.body, {
    ...(held ? { held } : {}),
    ...(spec.joints ? { joints: spec.joints } : {}),
  });
  const hands = gripOf(chain);
  const [dx, dy] = start.kind === 'caught' ? start.gap : [0, 0];
  const grip: ChainPoint = { link: hands.link, at: [hands.at[0] + dx, hands.at[1] + dy] };
  const head = meanPoint(chain, (name) => name === 'head', 'a head');
  const strength = spec.strength ?? 1;
  const moves = compileMoves(
    chain.joints.map((j) => j.name),
    spec.moves,
  );
  const planar = new Planar(chain, grip);
  const sense = spec.sense === 'backward' ? 1 : -1;
  const hang = { spec, chain, grip, head, moves, planar, strength, sense } as const;
  return start.kind === 'caught' ? { ...hang, moves: carryMoves(moves, carriedOf(hang, start)) } : hang;
}

/** Where the rail lies in the hands: the mean of the sides. */
export const gripOf = (chain: Chain): ChainPoint =>
  meanPoint(chain, (name) => name.startsWith(GRIPS), 'hands to grip with');

function poseOf(body: Body, pose: CaughtStart['pose']): number[] {
  for (const name of Object.keys(pose))
    if (!body.angles.some((a) => a.name === name))
      throw new FieldError('swing.start.pose', name, `an angle of ${body.name}`);
  return body.angles.map((a) => pose[a.name] ?? 0);
}

/** s within which the joints of a catch go over into the moves; as in a flight */
const CARRIED_WITHIN = 0.15;
/** rad/s: a swing that turns slower in its sense has no keys over angle */
const LEAST_RATE = 0.3;

function carriedOf({ planar, chain, moves, sense }: Hang, start: CaughtStart): CarriedJoints {
  const [q, qd] = jointsOf(chain, start);
  if (moves.over === 'time') return { at: 0, over: CARRIED_WITHIN, q, d: qd };
  planar.place(start.angle, start.rate, q, qd);
  planar.centreInto(centre);
  const [x, y, vx, vy] = centre;
  const rate = (sense * (x * vy - y * vx)) / (x * x + y * y);
  if (!(rate > LEAST_RATE))
    throw new SwingMovesError(
      'keys over swing angle after a catch need a swing that turns in its sense (or key over time)',
    );
  return { at: sense * Math.atan2(x, -y), over: rate * CARRIED_WITHIN, q, d: qd.map((v) => v / rate) };
}

function jointsOf(chain: Chain, { joints, jointRates }: CaughtStart): readonly [number[], number[]] {
  const read = (values: Readonly<Record<string, number>>, field: string): number[] =>
    chain.joints.map(({ name }) => {
      const value = values[name];
      if (!Number.isFinite(value)) throw new FieldError(`swing.start.${field}.${name}`, value, 'a finite number');
      return value;
    });
  return [read(joints, 'joints'), read(jointRates, 'jointRates')];
}

function meanPoint(chain: Chain, match: (name: string) => boolean, what: string): ChainPoint {
  const points = chain.body.contacts.filter((c) => match(c.name)).map((c) => chain.pointOf(c.segment, c.p_BoC_B));
  if (points.length === 0) throw new FieldError('athlete', chain.body.name, `a body with ${what}`);
  const mean = (k: 0 | 1): number => points.reduce((s, p) => s + p.at[k], 0) / points.length;
  return { link: points[0].link, at: [mean(0), mean(1)] };
}

/** Direction of the mass centre from the grip: 0 below, about +Z, nearest to `near`. From a placed Planar. */
export function directionOf({ planar }: Hang, near: number): number {
  planar.centreInto(centre);
  return turnedTo(Math.atan2(centre[0], -centre[1]), near);
}
const centre = new Float64Array(4);

/** With the grip link at 0 the mass centre lies along the arm: the trunk then counts like phi. */
const UPRIGHT = -Math.PI;

/** What the moves ask at a state, and with it joint accelerations as qdd + share x the grip link's own. */
export interface AskedJoints {
  readonly q: Float64Array;
  readonly qd: Float64Array;
  readonly qdd: Float64Array;
  readonly share: Float64Array;
}

export function makeAsked(n: number): AskedJoints {
  const f = (): Float64Array => new Float64Array(n);
  return { q: f(), qd: f(), qdd: f(), share: f() };
}

/**
 * Fills what the moves ask of exactly driven joints at time t (from the start) and grip link angle theta, turning w;
 * returns the direction phi where keys lie over it (else `near`). Over angle: with Gamma(phi) the direction in a chain whose grip link is held at 0,
 *   theta = phi - Gamma,  w = (1 - Gamma') phi',  alpha = (1 - Gamma') phi'' - Gamma'' phi'^2,
 * so phi is found by Newton's method from `near`, and q'' = f'' phi'^2 + f' phi'' is linear in alpha.
 */
export function askInto(hang: Hang, t: number, theta: number, w: number, near: number, out: AskedJoints): number {
  const { moves, sense } = hang;
  const { q, qd, qdd, share } = out;
  if (moves.over === 'time') {
    moves.at(t, q, qd, qdd);
    share.fill(0);
    return near;
  }
  let phi = near;
  const g = bend(hang, phi, out);
  // a still shape needs one look; else to rounding, the last look's derivatives being those of where it ended
  for (let i = 0; ; i++) {
    checkTurning(g[1]);
    const off = phi - g[0] - theta;
    if (Math.abs(off) < CLOSE) break;
    if (i > 30) throw turningError();
    phi -= off / (1 - g[1]);
    bend(hang, phi, out);
  }
  const g1 = g[1];
  const g2 = g[2];
  const phid = w / (1 - g1);
  const c = (g2 * phid * phid) / (1 - g1);
  for (let j = 0; j < q.length; j++) {
    const f1 = sense * qd[j];
    const f2 = qdd[j];
    qd[j] = f1 * phid;
    qdd[j] = f2 * phid * phid + f1 * c;
    share[j] = f1 / (1 - g1);
  }
  return phi;
}

/** rad */
const CLOSE = 1e-11;

/** Gamma, Gamma', Gamma'' at phi; leaves f, f', f'' (along u) in out.q, qd, qdd. */
function bend(hang: Hang, phi: number, out: AskedJoints): Float64Array {
  const { moves, planar, sense } = hang;
  moves.at(sense * phi, out.q, out.qd, out.qdd);
  if (rate.length !== out.q.length) rate = new Float64Array(out.q.length);
  let still = true;
  for (let j = 0; j < out.q.length; j++) {
    rate[j] = sense * out.qd[j];
    if (rate[j] !== 0 || out.qdd[j] !== 0) still = false;
  }
  // phi plays the part of time: the chain's shape moves, its grip link does not
  planar.place(0, 0, out.q, rate);
  planar.centreInto(centre);
  const x = centre[0];
  const y = centre[1];
  const x1 = centre[2];
  const y1 = centre[3];
  const r2 = x * x + y * y;
  gamma[0] = Math.atan2(-x, y) - Math.PI;
  gamma[1] = 0;
  gamma[2] = 0;
  if (!still) {
    planar.shapeAccInto(out.qdd, acc);
    const turn = x * y1 - y * x1;
    gamma[1] = turn / r2;
    gamma[2] = (x * acc[1] - y * acc[0]) / r2 - (2 * turn * (x * x1 + y * y1)) / (r2 * r2);
  }
  return gamma;
}
const gamma = new Float64Array(3);
const acc = new Float64Array(2);
let rate = new Float64Array(0);

/** Refuses keys over angle by which the body bends faster than the arms turn. */
export function checkTurning(g1: number): void {
  if (!(1 - g1 > LEAST_TURNING)) throw turningError();
}
/** Keys over angle may bend the body so fast that the arms would have to turn back as the mass centre goes on. */
const LEAST_TURNING = 0.05;
const turningError = (): SwingMovesError =>
  new SwingMovesError(
    'keys over swing angle must bend the body slower: the arms turn on as the mass centre does (or key over time)',
  );

export interface HangStart {
  readonly theta: number;
  readonly w: number;
  readonly phi: number;
  /** of the rail from its rest place, and its velocity */
  readonly x: number;
  readonly y: number;
  readonly vx: number;
  readonly vy: number;
}

/** The state at the start: as caught, or the rail where it is in balance with the force that the swing begins with, at rest. */
export function startOf(hang: Hang, asked: AskedJoints): HangStart {
  const { spec, moves, planar, sense } = hang;
  const { start } = spec;
  if (start.kind === 'caught') {
    const { angle: theta, rate: w, rail, railRate } = start;
    planar.place(theta, w, ...jointsOf(hang.chain, start));
    const phi = askInto(hang, 0, theta, w, directionOf(hang, 0), asked);
    return { theta, w, phi, x: rail[0], y: rail[1], vx: railRate[0], vy: railRate[1] };
  }
  const u = start.kind === 'handstand' ? -Math.PI : start.angle;
  const rateU = start.kind === 'handstand' ? start.nudge : start.kind === 'given' ? start.rate : 0;
  const phi = sense * u;
  const phid = sense * rateU;
  let [theta, w] = [0, 0];
  if (moves.over === 'angle') {
    const g = bend(hang, phi, asked);
    checkTurning(g[1]);
    theta = phi - g[0];
    w = (1 - g[1]) * phid;
    askInto(hang, 0, theta, w, phi, asked);
  } else {
    askInto(hang, 0, 0, 0, 0, asked);
    planar.place(0, 0, asked.q, asked.qd);
    theta = phi - directionOf(hang, UPRIGHT);
    planar.centreInto(centre);
    const [x, y, x1, y1] = centre;
    w = phid - (x * y1 - y * x1) / (x * x + y * y);
  }
  planar.place(theta, w, asked.q, asked.qd);
  const driven = asked.q.map(() => 1);
  planar.solve(spec.gravity, Number.POSITIVE_INFINITY, 0, 0, driven, asked.qdd, asked.share, asked.q);
  return {
    theta,
    w,
    phi,
    x: -planar.force[0] / spec.rail.stiffness[0],
    y: -planar.force[1] / spec.rail.stiffness[1],
    vx: 0,
    vy: 0,
  };
}
