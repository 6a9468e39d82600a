/**
 * A swing in the engine: the chain pinned to a rail of mass that an explicit spring and damper hold, every joint a motor
 * within the strength of both sides. A motor is asked for the rate (q_d(t + dt) - q_d(t)) / dt + (q_d(t) - q) / CATCH_UP; over
 * swing angle q_d is read at the angle the swing has, and will have by then. Rates of the engine are those of half steps (ChainWorld.advance): a sample has the
 * place of its step, the mean of the rates before and after, and their difference for acceleration; the torque of the step
 * that starts there. Errors in docs/numerics.md.
 */
import { FieldError } from '../math/field-error.ts';
import { jointsInto, makeChainMotion, placeChain } from './chain-motion.ts';
import { type Hang, makeAsked, nearest, startOf } from './hang.ts';
import { ChainWorld } from './planck.ts';
import { isRigid, springOf } from './rail.ts';
import { makeRunRecord, RunBuilder, type SwingRun } from './swing-run.ts';
import { BEYOND_RELEASE } from './swing-spec.ts';

/** s; measured in docs/numerics.md */
export const PLANCK_STEP = 1e-3;

/**
 * s in which a joint that was too weak comes back to its moves, to 1/e (our judgement). Asked to be back within one step
 * instead, it comes back with all it has, passes by and shakes, differently at every step length.
 */
export const CATCH_UP = 0.03;

export function runPlanck(hang: Hang, step = PLANCK_STEP): SwingRun {
  const { spec, chain, grip, moves, sense, planar } = hang;
  if (isRigid(spec.rail))
    throw new FieldError('swing.rail', spec.rail.id, 'a rail that gives, where joints have limits');
  const { mass, kx, ky, cx, cy } = springOf(spec.rail);
  const nj = chain.joints.length;
  const D = 3 + nj;
  const strength = spec.strength ?? 1;
  const limits = chain.joints.map((j) => [strength * j.torqueLimit[0], strength * j.torqueLimit[1]] as const);

  const asked = makeAsked(nj);
  const start = startOf(hang, asked);
  // rates half a step before the start
  const driven = new Float64Array(nj).fill(1);
  planar.place(start.theta, start.w, asked.q, asked.qd);
  planar.solve(spec.gravity, mass, -kx * start.x, -ky * start.y, driven, asked.qdd, asked.share, asked.q);
  const half = step / 2;
  const qd0 = asked.qd.map((v, j) => v - half * planar.qdd[j]);
  const motion = makeChainMotion(chain);
  const rail0 = [-half * planar.baseAcc[0], -half * planar.baseAcc[1]] as const;
  placeChain(
    chain,
    asked.q,
    qd0,
    {
      point: grip,
      x: start.x,
      y: start.y,
      vx: rail0[0],
      vy: rail0[1],
      theta: start.theta,
      w: start.w - half * planar.rootAcc,
    },
    motion,
  );
  const world = new ChainWorld(chain, motion, spec.gravity);
  const rail = world.addRail(mass, grip.link, grip.at, rail0[0], rail0[1]);

  const record = makeRunRecord(nj);
  const { release } = spec;
  let end = spec.duration + (release ? BEYOND_RELEASE : 0);
  const builder = new RunBuilder(nj, Math.ceil(end / step) + 3);
  const bar = new Float64Array(4);
  const centre = new Float64Array(4);
  const [q, qd, d, dd, due, target] = Array.from({ length: 6 }, () => new Float64Array(nj));
  const [place, rates, former, acc, mean] = Array.from({ length: 5 }, () => new Float64Array(D));
  const readInto = (x: Float64Array, v: Float64Array): void => {
    jointsInto(chain, world.motion, q, qd);
    world.railInto(rail, bar);
    x[0] = bar[0];
    x[1] = bar[1];
    x[2] = world.motion.theta[grip.link];
    v[0] = bar[2];
    v[1] = bar[3];
    v[2] = world.motion.w[grip.link];
    x.set(q, 3);
    v.set(qd, 3);
  };
  let phi = start.phi;
  const pace = new Pace();
  readInto(place, rates);
  // rates drawn on to the whole step: exact at the start, from two half steps later
  mean.set([0, 0, start.w]);
  mean.set(asked.qd, 3);
  let isOut = false;
  let power = 0;
  let losing = 0;
  for (let i = 0; (i - 1) * step < end - 1e-12; i++) {
    const t = i * step;
    planar.place(place[2], rates[2], place.subarray(3), rates.subarray(3));
    planar.centreInto(centre);
    phi = nearest(Math.atan2(centre[0], -centre[1]), phi);
    moves.at(moves.over === 'time' ? t : sense * phi, due, d, dd);
    if (moves.over === 'time') moves.at(t + step, target, d, dd);
    else {
      const turn = (centre[0] * centre[3] - centre[1] * centre[2]) / (centre[0] ** 2 + centre[1] ** 2);
      moves.at(sense * (phi + step * pace.next(turn, step)), target, d, dd);
    }
    for (let j = 0; j < nj; j++)
      world.drive(j, (target[j] - due[j]) / step + (due[j] - place[3 + j]) / CATCH_UP, limits[j]);
    world.pushRail(rail, -kx * place[0] - cx * mean[0], -ky * place[1] - cy * mean[1]);
    record.x.set(place);
    former.set(rates);
    world.advance(rail, step, planar);
    readInto(place, rates);
    record.power = 0;
    for (let k = 0; k < D; k++) {
      acc[k] = (rates[k] - former[k]) / step;
      record.v[k] = (rates[k] + former[k]) / 2;
      mean[k] = 1.5 * rates[k] - 0.5 * former[k];
    }
    for (let j = 0; j < nj; j++) {
      record.torque[j] = world.torque(j, step);
      record.power += record.torque[j] * record.v[3 + j];
    }
    record.losing = cx * record.v[0] * record.v[0] + cy * record.v[1] * record.v[1];
    if (i === 0) {
      record.v.set([0, 0, start.w]);
      record.v.set(asked.qd, 3);
    } else {
      record.work += (step / 2) * (record.power + power);
      record.loss += (step / 2) * (record.losing + losing);
    }
    power = record.power;
    losing = record.losing;
    builder.add(t, record, acc, sense * phi);
    if (release && !isOut && (release.at === 'time' ? t >= release.s : sense * phi >= release.angle)) {
      isOut = true;
      end = t + BEYOND_RELEASE;
    }
  }
  return builder.finish('planck', step);
}

/**
 * The rate of the swing angle over the step to come, from those of the half steps before, smoothed over some
 * milliseconds. A rate drawn on from the last two alone would answer to what the joints themselves did in the last step,
 * twice over, and the swing would shake itself apart where keys over angle are steep.
 */
class Pace {
  private rate = 0;
  private change = 0;
  private isNew = true;

  next(turn: number, step: number): number {
    const share = Math.min(0.5, step / SMOOTHING);
    if (this.isNew) this.rate = turn;
    this.isNew = false;
    const off = turn - (this.rate + step * this.change);
    this.rate += step * this.change + 2 * share * off;
    this.change += (share * share * off) / step;
    return this.rate + step * this.change;
  }
}
/** s */
const SMOOTHING = 4e-3;
