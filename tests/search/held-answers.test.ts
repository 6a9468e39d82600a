/** Where a landing on the feet is wanted, an answer is held by its own verdict; what touches rail, table or board is none. */
import { describe, expect, it } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import { aimAt, makeUnknown, ownAim, parseSkill, type SearchProblem, type SkillSpec, solve } from '../../sim/index.ts';
import { byCost } from '../../sim/search/solve.ts';
import { isHeld, touchedOf } from '../../sim/skill/verdict-held.ts';
import { casesOf, isWhole } from '../corpus.ts';
import { fileOf, shelf } from '../skill/load.ts';

const RAD = Math.PI / 180;
const specOf = (id: string): SkillSpec => parseSkill(fileOf(id), shelf);
const answerOf = (id: string, vary: readonly string[], ending?: 'held' | 'any', most: Partial<SearchProblem> = {}) => {
  const aim = ownAim(specOf(id), undefined, ending);
  return solve({ ...aim, contact, unknowns: vary.map((v) => makeUnknown(aim.spec, v)), ...most });
};

/** How many answers are asked for of a search that is led on. */
const LED_ON = casesOf(3, 1);

describe('an answer that lands on its feet', () => {
  it.each([
    ...(isWhole
      ? [
          ['back-tuck', ['takeoff.h.z', 'takeoff.speedUp'], 3] as const,
          ['back-straight-full', ['takeoff.h.z', 'takeoff.speedUp', 'block:2.start'], 1] as const,
        ]
      : []),
    // the landing model in full: what its band holds it does not, so that the search is led on
    ['floor-double-tuck', ['takeoff.h.z', 'takeoff.speedUp'], LED_ON] as const,
  ])('%s: is held by its verdict', (id, vary, least) => {
    const { solutions } = answerOf(id, vary, undefined, { answers: least });
    expect(solutions.length).toBeGreaterThanOrEqual(least);
    expect(solutions.filter((s) => s.held !== isHeld(s.verdict))).toEqual([]);
    expect(solutions[0].held).toBe(true);
    const last = solutions.map((s) => s.held).lastIndexOf(true);
    expect(solutions.slice(0, last + 1).every((s) => s.held)).toBe(true);
  });

  it('is none where the landing model holds nothing or it touches the rail: the nearest says so', () => {
    const { solutions, nearest, touching } = answerOf('giant-release-late', [
      'swing.releaseAngle',
      'block:2.start',
      'block:3.start',
    ]);
    for (const s of solutions) expect([isHeld(s.verdict), touchedOf(s.verdict)]).toEqual([true, undefined]);
    expect(touching.length).toBeGreaterThan(0);
    expect(touching.every((solid) => solid === 'rail')).toBe(true);
    if (solutions.length > 0) return;
    expect(nearest?.held).toBe(false);
    expect(nearest?.obstacles).toContainEqual({ kind: 'ending' });
    expect(nearest?.terms.find((t) => t.wish.result === 'reach')?.met).toBe(false);
  });

  it('may be asked for by its angle alone: then it falls where its verdict says so, and touches nothing still', () => {
    const { solutions, touching } = answerOf('giant-release-late', ['swing.releaseAngle', 'block:2.start'], 'any');
    for (const s of solutions) {
      expect(s.held).toBeUndefined();
      expect(touchedOf(s.verdict)).toBeUndefined();
    }
    expect(solutions.length + touching.length).toBeGreaterThan(0);
  });

  it('that is not held comes after those that are, however forgiving', () => {
    const [one] = answerOf('back-tuck', ['takeoff.h.z'], undefined, { answers: 1, fits: 1 }).solutions;
    const falling = { ...one, held: false, cost: { ...one.cost, margin: 0.9 } };
    expect([falling, one].sort(byCost)).toEqual([one, falling]);
  });
});

describe('a held landing is asked for', () => {
  const endingOf = (id: string) => ownAim(specOf(id)).ending;
  it('on a floor or mat, not of a bed, of water, or of a landing on the hands', () => {
    expect(['back-tuck', 'giant-double-straight'].map(endingOf)).toEqual(['held', 'held']);
    expect(['trampoline-full', 'dive-forward-one-and-half-pike'].map(endingOf)).toEqual([undefined, undefined]);
    expect(aimAt(specOf('back-tuck'), { somersaults: 0.5, twists: 0, landingAngle: 180 * RAD }).ending).toBeUndefined();
  });

  it('in place of its angle, and beside it where a tolerance of the angle is stated', () => {
    const toleranceOf = (within?: { landing: number }) =>
      ownAim(specOf('back-tuck'), within).wishes.find((w) => w.result === 'short');
    expect(toleranceOf()).toMatchObject({ tolerance: 60 * RAD, isLoose: true });
    expect(toleranceOf({ landing: 3 * RAD })).toEqual({ result: 'short', value: 0, tolerance: 3 * RAD });
  });
});
