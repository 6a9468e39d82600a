// The start of a flight is found again from a recording of it with noise, and how well is said; shares of mass from two recordings of one body.
import { expect, it } from 'vitest';
import { sharesOf, withShares } from '../../sim/fit/body-shares.ts';
import { fitTakeoffSteps } from '../../sim/fit/fit-takeoff.ts';
import { testModel } from '../../sim/fit/model-test.ts';
import type { Sym3 } from '../../sim/index.ts';
import { calcRecordedMomentum } from '../../sim/recording/recorded-momentum.ts';
import { isWhole } from '../corpus.ts';
import { recorded } from './recorded.ts';

function finish<T>(steps: Generator<unknown, T>): { result: T; count: number } {
  let count = 0;
  for (;;) {
    const step = steps.next();
    if (step.done) return { result: step.value, count };
    count++;
  }
}

it('a flight with 1 deg and 3 mm of noise: momentum, attitude and speed within one and a half of their half intervals', () => {
  const { motion, start, flight } = recorded(
    'double-back-tuck',
    100,
    { kind: 'gcv' },
    { seed: 2, angle: 0.0175, place: 0.003 },
  );
  const { result, count } = finish(fitTakeoffSteps([{ motion, start }], { draws: 12 }));
  const [fit] = result;
  const value = (name: string) => {
    const found = fit.values.find((v) => v.name === name);
    if (!found) throw new Error(`no ${name}`);
    return found;
  };
  const truth = {
    momentumX: flight.h_Scm_W[0],
    momentumZ: flight.h_Scm_W[2],
    up: flight.v_WScm_W0[1],
    along: flight.v_WScm_W0[0],
  };
  for (const [name, v] of Object.entries(truth)) {
    const { to, plusMinus } = value(name);
    expect(plusMinus, name).toBeGreaterThan(0);
    expect(Math.abs(to - v), name).toBeLessThan(1.5 * plusMinus + 1e-3);
  }
  expect(value('momentumZ').plusMinus).toBeLessThan(1.5);
  // steps that can be stopped between: of the search, and one for each recording drawn again
  expect(count).toBeGreaterThan(12);
  // what is left of an attitude is its noise, 1 deg about each of three axes
  expect(fit.leftAttitude).toBeGreaterThan(0.02);
  expect(fit.leftAttitude).toBeLessThan(0.04);
  expect(Math.abs(fit.test.worst[0])).toBeLessThan(0.05);
});

it('where the noise repeats no interval is given', () => {
  const { motion, start } = recorded('double-back-tuck', 120, { kind: 'gcv' }, { seed: 2, angle: 0.0175, repeat: 0.9 });
  const [fit] = finish(fitTakeoffSteps([{ motion, start }], { draws: 1 })).result;
  expect(fit.values.find((v) => v.name === 'momentumZ')?.plusMinus).toBeNaN();
});

// 13 s on a busy machine: of `npm run test:all`
it.runIf(isWhole)('a wrong share of mass is put right by two recordings of one athlete', () => {
  const noise = { angle: 0.003, place: 0.001 };
  const flights = ['double-back-tuck', 'back-straight-full'].map((id, seed) => {
    // the flights of the ready athlete, read with legs that are too light
    const { motion, start } = recorded(id, 60, { kind: 'gcv' }, { seed, ...noise }, (body) => {
      const { arms, legs } = sharesOf(body);
      return withShares(body, { arms, legs: 0.94 * legs });
    });
    return { motion, start };
  });
  const right = sharesOf(recorded('double-back-tuck', 60, { kind: 'gcv' }).motion.posed.body);
  const { result } = finish(fitTakeoffSteps(flights, { isShared: true, draws: 2 }));
  const legs = result[0].values.find((v) => v.name === 'legs');
  expect(legs?.from).toBeCloseTo(0.94 * right.legs, 6);
  // both say the same, and are nearer to the truth than the body that was read with
  expect(result[1].values.find((v) => v.name === 'legs')?.to).toBe(legs?.to);
  expect(Math.abs((legs?.to ?? 0) - right.legs)).toBeLessThan(0.03 * right.legs);
});

it('another total mass is no other flight: it cannot be found', () => {
  const { motion, start } = recorded('double-back-tuck', 60, { kind: 'gcv' });
  const { body } = motion.posed;
  const heavy = {
    ...body,
    mass: 1.2 * body.mass,
    segments: body.segments.map((s) => ({
      ...s,
      mass: 1.2 * s.mass,
      I_BBcm_B: s.I_BBcm_B.map((v) => 1.2 * v) as unknown as Sym3,
    })),
  };
  const { h_Scm_W } = calcRecordedMomentum({ ...motion, posed: { ...motion.posed, body: heavy } });
  const { h_Scm_W: h } = calcRecordedMomentum(motion);
  h.forEach((v, i) => {
    expect(h_Scm_W[i]).toBeCloseTo(1.2 * v, 9);
  });
  const off = testModel(
    { ...motion, posed: { ...motion.posed, body: heavy } },
    { ...start, h_Scm_W: [0, 0, 1.2 * start.h_Scm_W[2]] },
  );
  const own = testModel(motion, { ...start, h_Scm_W: [0, 0, start.h_Scm_W[2]] });
  expect(off.test.atEnd[0]).toBeCloseTo(own.test.atEnd[0], 7);
});
