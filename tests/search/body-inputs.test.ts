/** Numbers of the athlete's body that margins and searches may vary: each side, mass centres, radii of gyration. */
import { describe, expect, test } from 'vitest';
import { findInput, listInputs, OUT_UNITS, openStudy, parseSkill, StudyRunner, updateSkill } from '../../sim/index.ts';
import { makeBody } from '../../sim/skill/build-skill.ts';
import type { SkillSpec } from '../../sim/skill/skill-spec.ts';
import { fileOf, shelf } from '../skill/load.ts';

const spec = parseSkill(fileOf('double-back-tuck'), shelf);
const child = parseSkill(fileOf('back-tuck'), shelf);
const segmentOf = (s: SkillSpec, name: string) => {
  const found = makeBody(s.athlete).segments.find((one) => one.name === name);
  if (!found?.values) throw new Error(name);
  return { ...found, values: found.values };
};
const put = (s: SkillSpec, id: string, by: number): SkillSpec => {
  const input = findInput(s, id);
  return input.put(s, by * input.value);
};
const massOf = (s: SkillSpec): number => makeBody(s.athlete).segments.reduce((sum, one) => sum + one.mass, 0);
const EXACT = 1e-12;

test('each segment has mass, length, mass centre and three radii; limbs for both sides and for each', () => {
  const ids = new Set(listInputs(spec).map((i) => i.id));
  const paired = ['upperArm', 'forearm', 'hand', 'thigh', 'shank', 'foot'];
  const names = ['head', 'upperTrunk', 'middleTrunk', 'lowerTrunk', ...paired.flatMap((n) => [n, `${n}L`, `${n}R`])];
  for (const name of names)
    for (const what of ['mass', 'length', 'centre', 'radius.frontBack', 'radius.lateral', 'radius.long'])
      expect(ids, `${name} ${what}`).toContain(`segment:${name}.${what}`);
});

describe('one side', () => {
  test('a heavier left thigh leaves the right one with its share of the rest, and the body its mass', () => {
    for (const one of [spec, child]) {
      const heavy = put(one, 'segment:thighL.mass', 1.1);
      const [left, right] = [segmentOf(one, 'thighL').mass, segmentOf(one, 'thighR').mass];
      const rest = (massOf(one) - 1.1 * left) / (massOf(one) - left);
      expect(segmentOf(heavy, 'thighL').mass / left).toBeCloseTo(1.1, 12);
      for (const name of ['thighR', 'head', 'footL', 'pelvis'])
        expect(segmentOf(heavy, name).mass / segmentOf(one, name).mass, name).toBeCloseTo(rest, 10);
      expect(segmentOf(heavy, 'thighR').mass / right).toBeCloseTo(rest, 10);
      expect(Math.abs(massOf(heavy) / massOf(one) - 1)).toBeLessThan(EXACT);
    }
  });

  test('a body with two different sides keeps them when another segment changes', () => {
    const uneven = put(spec, 'segment:shankL.mass', 1.2);
    const changed = put(uneven, 'segment:head.mass', 1.1);
    expect(segmentOf(changed, 'shankL').mass / segmentOf(changed, 'shankR').mass).toBeCloseTo(
      segmentOf(uneven, 'shankL').mass / segmentOf(uneven, 'shankR').mass,
      10,
    );
  });

  test('an input of both sides takes the place of each', () => {
    const uneven = put(spec, 'segment:handL.length', 1.2);
    const even = put(uneven, 'segment:hand.length', 1);
    expect(segmentOf(even, 'handL').values).toEqual(segmentOf(even, 'handR').values);
  });

  test('a longer left forearm is longer on the left alone', () => {
    const longer = put(spec, 'segment:forearmL.length', 1.05);
    expect(segmentOf(longer, 'handL').p_PoBo_P[1] / segmentOf(spec, 'handL').p_PoBo_P[1]).toBeCloseTo(1.05, 12);
    expect(segmentOf(longer, 'handR').p_PoBo_P).toEqual(segmentOf(spec, 'handR').p_PoBo_P);
  });
});

describe('inside a segment', () => {
  test('the mass centre moves along the segment', () => {
    const moved = put(spec, 'segment:thigh.centre', 1.05);
    for (const side of ['L', 'R'])
      expect(segmentOf(moved, `thigh${side}`).p_BoBcm_B[1]).toBeCloseTo(
        1.05 * segmentOf(spec, `thigh${side}`).p_BoBcm_B[1],
        12,
      );
  });

  test('a radius changes its own moment, by the square, and no other', () => {
    for (const [what, axis] of [
      ['frontBack', 0],
      ['lateral', 2],
      ['long', 1],
    ] as const) {
      const changed = segmentOf(put(spec, `segment:upperTrunk.radius.${what}`, 1.02), 'upperTrunk').I_BBcm_B;
      const before = segmentOf(spec, 'upperTrunk').I_BBcm_B;
      for (let i = 0; i < 3; i++) expect(changed[i] / before[i]).toBeCloseTo(i === axis ? 1.02 ** 2 : 1, 10);
    }
  });

  test('the range of a radius ends where no real body is', () => {
    const { range } = findInput(spec, 'segment:upperTrunk.radius.long');
    for (const value of range)
      expect(() => makeBody(findInput(spec, 'segment:upperTrunk.radius.long').put(spec, value).athlete)).not.toThrow();
    const [a, b] = segmentOf(spec, 'upperTrunk').values.radiiShare;
    expect(range[1]).toBeLessThanOrEqual(Math.hypot(a, b));
  });
});

test('a margin varies them, and says so by name and unit', () => {
  const ids = ['segment:thighL.mass', 'segment:upperArmR.centre', 'segment:lowerTrunk.radius.lateral'];
  const request = {
    spec: child,
    seed: 3,
    window: [{ result: 'short', low: -0.2, high: 0.2 }],
    vary: ids.map((input) => ({ input, by: findInput(child, input).scale, kind: 'normal' as const })),
    correlations: [],
  };
  expect(openStudy(request, undefined).spread.parts.map((p) => OUT_UNITS[p.input.unit].suffix)).toEqual([
    'kg',
    'share',
    'share',
  ]);
  const { results, faults } = new StudyRunner(request, undefined).samples(0, 6);
  expect(Object.keys(faults)).toEqual([]);
  expect(new Set(results).size).toBe(6);
});

test('what was changed goes into the file, with the age of the athlete', () => {
  const file = fileOf('back-tuck');
  const changed = put(child, 'segment:thighL.mass', 1.1);
  const written = updateSkill(file, child, changed);
  const again = parseSkill(written, shelf);
  const body = makeBody(again.athlete);
  expect(body.age).toBe(11);
  body.segments.forEach((s) => {
    expect(s.mass).toBeCloseTo(segmentOf(changed, s.name).mass, 6);
  });
});
