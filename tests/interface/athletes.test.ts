/** Who flies: given to the open skill, or to every ready skill that is opened. */
import { createRoot } from 'solid-js';
import { expect, test } from 'vitest';
import { athletes as shelf, skills } from '../../presets/index.ts';
import { type Athlete, relaunch, type SkillFile } from '../../sim/index.ts';
import { flightOf } from '../../sim/math/phases.ts';
import { createAthletes } from '../../src/app/athletes.ts';
import { makeJumping } from '../../src/engine/jump.ts';
import { former } from '../former/index.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const MARA: Athlete = { kind: 'human', name: 'Mara Lind', sex: 'female', massKg: 46, statureM: 1.52, ageYears: 13 };
const GROWN: Athlete = { kind: 'human', name: 'Mara Lind', sex: 'female', massKg: 46, statureM: 1.52 };
/** Share; measured 4e-4 */
const ALIKE = 0.002;
/** s; measured under 1e-7 */
const SAME_TIME = 1e-4;

function ask<T>(
  run: (athletes: ReturnType<typeof createAthletes>, edited: () => SkillFile) => T,
  who = MARA,
  flying: typeof engine = engine,
): T {
  const open = { ...skills['back-straight'], athlete: who };
  let edited = open;
  return createRoot((dispose) => {
    const athletes = createAthletes({
      doc: {
        file: () => open,
        athlete: () => who,
        edit: (file) => {
          edited = file as typeof open;
        },
      },
      flight: { result: () => engine.fly(open) },
      flying,
    });
    const out = run(athletes, () => edited);
    dispose();
    return out;
  });
}

test.each(['back-straight-full', 'trampoline-barani', 'back-tuck'])(
  '%s flown by somebody else: as long in the air, enough for as many straight somersaults',
  (id) => {
    const [was, is] = ask((athletes) => {
      expect(athletes.dress(skills[id])).toBe(skills[id]);
      athletes.setEverywhere(true);
      return [engine.fly(skills[id]), engine.fly(athletes.dress(skills[id]))];
    });
    expect(is.athlete).toEqual(MARA);
    expect(Math.abs(is.jump.airTime - was.jump.airTime)).toBeLessThan(SAME_TIME);
    expect(is.jump.straight).toBeCloseTo(was.jump.straight ?? Number.NaN, 8);
  },
);

test('a spin of a straight jump takes its momentum along by the same share, and rates stay rates', () => {
  const spin = former['arms-in-spin'];
  const rates = structuredClone(skills['back-straight']);
  const takeoff = flightOf(rates).takeoff;
  if (!takeoff) throw new Error('no take-off');
  takeoff.momentum = { ratesRevPerS: { somersault: 0.9, twist: 0.2 } };
  ask((athletes) => {
    athletes.setEverywhere(true);
    const [was, is] = [engine.fly(spin), engine.fly(athletes.dress(spin))];
    expect(is.jump.straight).toBe(0);
    // grown up like the one before: as mass times stature squared
    const share = is.flight.h_Scm_W[1] / was.flight.h_Scm_W[1];
    expect(Math.abs(share / ((46 * 1.52 ** 2) / (54 * 1.62 ** 2)) - 1)).toBeLessThan(ALIKE);
    const [before, after] = [engine.fly(rates), engine.fly(athletes.dress(rates))];
    expect(flightOf(after.file).takeoff?.momentum).toHaveProperty('ratesRevPerS');
    expect(after.jump.straight).toBeCloseTo(before.jump.straight ?? Number.NaN, 6);
    expect(Math.abs(after.jump.airTime - before.jump.airTime)).toBeLessThan(SAME_TIME);
  }, GROWN);
});

test('a skill that a swing begins has the athlete, and the take-off that the swing gives them', () => {
  const id = 'giant-double-straight';
  const dressed = ask((athletes) => {
    athletes.setEverywhere(true);
    return athletes.dress(skills[id]);
  });
  expect(dressed).toEqual({ ...skills[id], athlete: MARA });
});

test('the angular momentum stays where that is chosen', () => {
  const given = ask((athletes, edited) => {
    athletes.setKept('momentum');
    athletes.give(shelf['tobias-fenn'], 'give');
    return edited();
  });
  const open = engine.fly({ ...skills['back-straight'], athlete: MARA });
  const to = engine.fly(given);
  expect(to.jump.momentum).toBeCloseTo(open.jump.momentum, 6);
  expect(Math.abs(to.jump.airTime - open.jump.airTime)).toBeLessThan(SAME_TIME);
});

test('a fault of ours is no flight that cannot be: it is not passed over', () => {
  const fault = new TypeError('ours');
  const broken = (): never => {
    throw fault;
  };
  ask(
    (athletes) => {
      athletes.setEverywhere(true);
      expect(() => athletes.dress(skills['back-tuck'])).toThrow(fault);
    },
    MARA,
    { ...engine, fly: broken },
  );
  const from = engine.fly(skills['back-tuck']);
  const { jumping } = engine;
  const launched = relaunch(from.skill, { schedule: undefined as never });
  expect(() => jumping.upFor({ ...from, skill: launched }, 0.8)).toThrow(TypeError);
  expect(() => makeJumping(() => launched).carryOver(from, from.file, 'straight')).toThrow(TypeError);
});
