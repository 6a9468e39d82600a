/**
 * A swing in the engine: the chain pinned to a rail of mass that an explicit spring and damper hold, every joint a motor
 * within the strength of both sides. A motor is asked for the rate (q_d(t + dt) - q) / dt; over swing angle q_d is read at
 * the angle the swing will have by then. First order in the step: errors in docs/numerics.md.
 */
import { jointsInto, makeChainMotion, makeWhole, placeChain, wholeInto } from './chain-motion.ts';
import { type Hang, makeAsked, nearest, startOf } from './hang.ts';
import { ChainWorld } from './planck.ts';
import { makeRunRecord, RunBuilder, type SwingRun } from './swing-run.ts';
import { BEYOND_RELEASE } from './swing-spec.ts';

/** s; measured in docs/numerics.md */
export const PLANCK_STEP = 5e-4;

export function runPlanck(hang: Hang, step = PLANCK_STEP): SwingRun {
  const { spec, chain, grip, moves, sense } = hang;
  const { stiffness: k, damping: c, mass } = spec.rail;
  const nj = chain.joints.length;
  const strength = spec.strength ?? 1;
  const limits = chain.joints.map((j) => [strength * j.torqueLimit[0], strength * j.torqueLimit[1]] as const);

  const asked = makeAsked(nj);
  const start = startOf(hang, asked);
  const motion = makeChainMotion(chain);
  const placed = { point: grip, x: start.x, y: start.y, vx: 0, vy: 0, theta: start.theta, w: start.w };
  placeChain(chain, asked.q, asked.qd, placed, motion);
  const world = new ChainWorld(chain, motion, spec.gravity);
  const rail = world.addRail(mass, grip.link, grip.at, 0, 0);

  const record = makeRunRecord(nj);
  const builder = new RunBuilder(nj, Math.ceil((spec.duration + BEYOND_RELEASE) / step) + 8);
  const whole = makeWhole();
  const bar = new Float64Array(4);
  const [q, qd, d, dd, target] = Array.from({ length: 5 }, () => new Float64Array(nj));
  let phi = start.phi;
  let phid = 0;
  const read = (): void => {
    jointsInto(chain, world.motion, q, qd);
    world.railInto(rail, bar);
    wholeInto(chain, world.motion, spec.gravity, whole);
    const [rx, ry] = [whole.x - bar[0], whole.y - bar[1]];
    phi = nearest(Math.atan2(rx, -ry), phi);
    phid = (rx * (whole.vy - bar[3]) - ry * (whole.vx - bar[2])) / (rx * rx + ry * ry);
    record.x.set([bar[0], bar[1], world.motion.theta[grip.link]]);
    record.v.set([bar[2], bar[3], world.motion.w[grip.link]]);
    record.x.set(q, 3);
    record.v.set(qd, 3);
  };

  const { release } = spec;
  let end = spec.duration;
  let at = release?.at === 'time' ? release.s : undefined;
  let released: number | undefined;
  read();
  builder.add(0, record, undefined, sense * phi);
  let t = 0;
  while (t < end - 1e-9) {
    let h = Math.min(step, end - t);
    if (at === undefined && release?.at === 'angle' && released === undefined) {
      // the step that would pass the release angle ends there (to first order, as the engine does)
      const away = release.angle - sense * phi;
      if (away > 0 && sense * phid * h >= away) h = away / (sense * phid);
      else if (away <= 0 && builder.count > 1) h = 0;
      if (h < step) at = t + h;
    } else if (at !== undefined && released === undefined && t + h > at) h = at - t;
    if (h > 1e-9) {
      const x = moves.over === 'time' ? t + h : sense * (phi + phid * h);
      moves.at(x, target, d, dd);
      for (let j = 0; j < nj; j++) world.drive(j, (target[j] - q[j]) / h, limits[j]);
      world.pushRail(rail, -k[0] * bar[0] - c[0] * bar[2], -k[1] * bar[1] - c[1] * bar[3]);
      const [v0x, v0y] = [bar[2], bar[3]];
      for (let j = 0; j < nj; j++) d[j] = qd[j];
      world.step(h);
      t += h;
      read();
      for (let j = 0; j < nj; j++) {
        record.torque[j] = world.torque(j, h);
        record.work += record.torque[j] * h * ((qd[j] + d[j]) / 2);
      }
      // the damper's force of this step along its mean velocity
      record.loss += h * (c[0] * v0x * ((v0x + bar[2]) / 2) + c[1] * v0y * ((v0y + bar[3]) / 2));
      builder.add(t, record, undefined, sense * phi);
    }
    if (at !== undefined && released === undefined && t >= at - 1e-9) {
      released = builder.count - 1;
      end = t + BEYOND_RELEASE;
      at = undefined;
    }
  }
  builder.smooth();
  return builder.finish('planck', step, released);
}
