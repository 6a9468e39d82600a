// Where the mass stays, no number leaves that gives it: with height, sex and shapes one moment of inertia would.
import { describe, expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { checkSkillFile } from '../../sim/index.ts';
import { makePlots, makeRows } from '../../src/app/sheet-content.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { cautionToGo, tellsMass } from '../../src/features/hand/without-mass.ts';

const engine = makeEngine({ athletes, shapes });
const { frames } = engine.fly(checkSkillFile(skills['back-straight-full']));
const instants = [{ t: 0.3, name: '' }];
const units = (hasMass: boolean): string[] => [
  ...makeRows(frames, instants, hasMass).map(({ unit }) => unit),
  ...makePlots(frames, hasMass).map(({ unit }) => unit),
];

test('table and curves have moments with the mass, and none without', () => {
  expect(units(true).filter((unit) => unit.includes('kg'))).toHaveLength(3);
  expect(units(false).filter((unit) => unit.includes('kg'))).toEqual([]);
});

describe('a number that gives the mass', () => {
  test.each(['0.31 s: 412 N·m; known 300 N·m.', '85 kg·m²/s', '66 kg', '145 lb', '1,911 N', '78 J', '12 ft·lbf'])(
    '%s',
    (text) => expect(tellsMass(text)).toBe(true),
  );
  test.each(['8.5 body weights', '12.3 J/kg', '1.4 times', '5.0 m/s', '720°', '0.31 s'])('%s is none', (text) =>
    expect(tellsMass(text)).toBe(false),
  );
});

test('a caution of a torque keeps its sentence and loses its numbers; one of momentum is said without', () => {
  const torque = {
    kind: 'torque',
    title: 'Knee bend asks for 1.4 times the strength known.',
    detail: 'At 0.31 s: 412 N·m.',
  };
  const go = (one: object, hasMass: boolean) => cautionToGo(one as Parameters<typeof cautionToGo>[0], hasMass);
  expect(go(torque, true)).toContain('412 N·m');
  expect(go(torque, false)).toBe(torque.title);
  const turn = { kind: 'torque', title: 'Leaves the floor with 85 kg·m²/s.', detail: 'up to 80 kg·m²/s' };
  expect(go(turn, false)).toBe('The take-off gives more angular momentum than is known for such a body.');
});
