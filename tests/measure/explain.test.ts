// What changed and why: laws of the numbers, and the sentence.
import { describe, expect, it } from 'vitest';
import { calcFrames, calcShapeMoments, type Flight, flySkill, frameTimes, makeJointWork } from '../../sim/index.ts';
import { calcExplanation, type Explanation } from '../../sim/measure/explain.ts';
import { EXPLAIN_WORDS, formatExplanation } from '../../sim/measure/explain-words.ts';
import { flightIn } from '../files/parts.ts';
import { fileOf, preset, presetIds, skillOf } from '../skill/load.ts';

/** Share of |h|: measured 7e-16. */
const H_KEPT = 1e-12;
const MOMENT = 1e-9;
/** SI units of each: the same sums in the same order. */
const FRAME = 1e-9;
/** Work of the joints against energy, J: measured 2.6e-9. */
const WORK = 1e-6;
/** As if the long axis were principal; measured 3.3e-6. */
const NEARLY = 2e-5;

function movesOf(id: string, flight: Flight = flySkill(preset(id))): Explanation[] {
  const out: Explanation[] = [];
  for (const [a, b] of flight.schedule.moving) {
    const t = (Math.max(0, a) + Math.min(flight.duration, b)) / 2;
    if (b <= 0 || a >= flight.duration) continue;
    const e = calcExplanation(flight, t);
    if (!e) throw new RangeError('no move');
    out.push(e);
  }
  return out;
}

describe('what just changed and why', () => {
  it('momentum is kept, and the work is that of the joint torques, in every move of every preset', () => {
    for (const id of presetIds) {
      const flight = flySkill(preset(id));
      const work = makeJointWork(flight);
      for (const e of movesOf(id, flight)) {
        expect(e.momentumDrift, id).toBeLessThan(H_KEPT);
        // quadrature of joint power against energies of the segments: two routes
        expect(Math.abs(work(e.to) - work(e.from) - e.jointWork), `${id} at ${e.from}`).toBeLessThan(WORK);
      }
    }
  });

  it('before and after are the frames of these times', () => {
    for (const id of ['former/back-straight-double', 'dive-forward-one-and-half-pike', 'cat-turn']) {
      const flight = flySkill(preset(id));
      for (const e of movesOf(id, flight)) {
        const f = calcFrames(flight, [e.from, e.to]);
        for (const [i, x] of [e.before, e.after].entries()) {
          const read = [
            x.lateralMoment,
            x.frontBackMoment,
            x.longMoment,
            x.somersaultRate,
            x.twistRate,
            x.tilt,
            x.turningEnergy,
          ];
          const rows = [
            ...f.moments.slice(3 * i, 3 * i + 3),
            f.somersaultRate[i],
            f.twistRate[i],
            f.tilt[i],
            f.eRotation[i] + f.eLimbs[i],
          ];
          read.forEach((v, k) => {
            expect(Math.abs(v - rows[k])).toBeLessThan(FRAME);
          });
        }
      }
    }
  });

  it('before and after are those of the frames and of the shapes held', () => {
    // hands that hold the shins would move the arms away from the shape
    const file = fileOf('back-tuck');
    delete flightIn(file).schedule.contacts;
    const skill = skillOf(file);
    const flight = flySkill(skill);
    const block = skill.schedule.blocks.find((b) => /tuck/i.test(b.shape));
    if (!block) throw new RangeError('no tuck');
    const e = calcExplanation(flight, block.from.s - 0.02);
    expect(e?.moves[0]).toBe('tuck');
    expect(Math.abs((e?.after.lateralMoment ?? 0) - calcShapeMoments(skill.body, block.pose).lateral)).toBeLessThan(
      MOMENT,
    );
    const frames = calcFrames(flight, [0, e?.from ?? 0]);
    expect(e?.before.somersaultRate).toBeCloseTo(frames.somersaultRate[1], 12);
  });

  it('words: tuck and open, arms apart and level, pike', () => {
    expect(movesOf('back-tuck').map((e) => e.moves[0])).toEqual(expect.arrayContaining(['tuck', 'open']));
    expect(movesOf('back-pike').map((e) => e.moves[0])).toEqual(expect.arrayContaining(['pike', 'open']));
    expect(movesOf('cat-turn').flatMap((e) => e.moves)).toContain('legsCircle');
    // arms that come together are down, up or in where they are so
    expect(movesOf('back-straight-half').flatMap((e) => e.moves)).toContain('armsDown');
    expect(movesOf('back-straight-half').flatMap((e) => e.moves)).not.toContain('armsLevel');
    expect(movesOf('giant-double-straight-two-twists').flatMap((e) => e.moves)).toContain('armsIn');
    // hips that are hardly bent do not open
    for (const id of ['back-straight', 'back-straight-full'])
      expect(movesOf(id).flatMap((e) => e.moves)).not.toContain('open');
    const full = movesOf('former/back-straight-full').flatMap((e) => e.moves);
    expect(full).toContain('armsApart');
    expect(full).toContain('armsLevel');
  });

  it('arms in on a long-axis spin: the moment falls, the rate rises, by the same factor', () => {
    const file = fileOf('back-straight');
    flightIn(file).takeoff.momentum = { vectorKgM2PerS: [0, 15, 0] };
    flightIn(file).end = { durationS: 1.2, surface: { kind: 'mat', heightM: 0 } };
    flightIn(file).schedule = {
      base: 'tShape',
      blocks: [
        { shape: 'tShape', from: { anchor: 'takeoff', s: 0 }, to: { anchor: 'takeoff', s: 0.4 } },
        { shape: 'straight', from: { anchor: 'takeoff', s: 0.7 }, to: { anchor: 'takeoff', s: 1.2 }, arms: 'side' },
      ],
    };
    const e = calcExplanation(flySkill(skillOf(file)), 1);
    if (!e) throw new RangeError('no move');
    expect(e.isGoingOn).toBe(false);
    expect(e.moves[0]).toBe('armsIn');
    // h is long-axis moment x rate, but for the feet and head before the axis: the long axis is principal only nearly
    for (const i of [e.before, e.after]) expect(Math.abs((i.longMoment * i.twistRate) / 15 - 1)).toBeLessThan(NEARLY);
    const said = formatExplanation(e);
    const f = (x: number, places = 1): string => x.toFixed(places);
    const rev = 2 * Math.PI;
    expect(said.startsWith('arms in: ')).toBe(true);
    expect(said).toContain(`long-axis spread ${f(e.before.longMoment)} -> ${f(e.after.longMoment)} kg·m²`);
    expect(said).toContain(`twist rate ${f(e.before.twistRate / rev)} -> ${f(e.after.twistRate / rev)} rev/s`);
    expect(said).toContain('angular momentum unchanged');
    expect(said).toMatch(/; joints put in \d+ J$/);
    // pulled in against the turning: energy h^2 / 2 C rises as C falls
    const rise = (15 * 15) / 2 / e.after.longMoment - (15 * 15) / 2 / e.before.longMoment;
    expect(Math.abs(e.jointWork / rise - 1)).toBeLessThan(NEARLY);
    expect(rise).toBeGreaterThan(5);
  });

  it('before anything moves there is nothing to explain, after it the last move stays', () => {
    const file = fileOf('back-straight');
    flightIn(file).schedule = { base: 'straight' };
    const still = flySkill(skillOf(file));
    expect(calcExplanation(still, 0.4)).toBeUndefined();
    expect(formatExplanation(undefined)).toBe(EXPLAIN_WORDS.nothingYet);
  });

  /** measured 225 at most: a giant to which a late hand has given tilt and twist, since a mass is "spread" from an axis (219 before) */
  const LENGTH = 226;
  it('every preset is put into words without a gap at any time, in 226 characters', () => {
    for (const id of presetIds) {
      const flight = flySkill(preset(id));
      for (const t of frameTimes(flight.duration, 10)) {
        const said = formatExplanation(calcExplanation(flight, t));
        expect(said).not.toMatch(/undefined|NaN|null|^:/);
        expect(said.length).toBeLessThan(LENGTH);
      }
    }
  });
});
