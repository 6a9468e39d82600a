/** A landing is fixed by one change, the smallest of its sort that does it, and what is said of it is what is flown. */
import { describe, expect, it } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { parseSkill, type SkillFile, type SkillSpec } from '../../sim/index.ts';
import { FIX_KINDS, listFixChanges } from '../../sim/search/fix-change.ts';
import { type FixAnswer, fixLandingSteps } from '../../sim/search/landing-fix.ts';
import { buildSkill } from '../../sim/skill/build-skill.ts';
import { makeFlyer } from '../../sim/skill/flyer.ts';
import { judgeFlight } from '../../sim/skill/judge-flight.ts';
import { launch } from '../../sim/skill/launch.ts';
import { needsFix } from '../../sim/skill/needs-fix.ts';
import type { SkillVerdict } from '../../sim/skill/skill-verdict.ts';
import { isHeld } from '../../sim/skill/verdict-held.ts';
import { isWhole } from '../corpus.ts';

const at = (s: number) => ({ anchor: 'takeoff', s }) as const;
/** A tucked back somersault on the floor, the angular momentum as it comes. */
const backTuck = (straightSomersaults: number, up = 3.6): SkillFile => ({
  format: 'shapeflight-skill',
  version: 2,
  title: 'Back tuck',
  athlete: { ref: 'nell-oakum' },
  phases: [
    {
      kind: 'flight',
      takeoff: { lowestPointHeightM: 0, velocityMPerS: { along: -0.6, up }, momentum: { straightSomersaults } },
      end: { surface: { kind: 'floor', heightM: 0 } },
      schedule: {
        base: 'straight',
        blocks: [
          { shape: 'armsOverhead', from: at(-0.2), to: at(-0.05), adjustDeg: { shoulderPlane: 90 } },
          { shape: 'tuck', from: at(0.36), to: at(0.42), arms: 'front' },
          {
            shape: 'landing',
            from: { anchor: 'touchdown', s: -0.05 },
            to: { anchor: 'touchdown', s: -0.03 },
            arms: 'front',
            adjustDeg: { kneeFlexion: 45, hipFlexion: 46, anklePlantarFlexion: -14, shoulderElevation: 100 },
          },
        ],
      },
    },
  ],
  target: { somersaults: 1, direction: 'backward', twists: 0, landingAngleDeg: -16 },
});

const specOf = (file: SkillFile): SkillSpec => parseSkill(file, { athletes, shapes });

function verdictFlown(spec: SkillSpec): SkillVerdict {
  const skill = launch(buildSkill(spec));
  return judgeFlight(skill, makeFlyer().fly(skill));
}

function fix(spec: SkillSpec): FixAnswer {
  const steps = fixLandingSteps(spec);
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

const spec = specOf(backTuck(0.52));
const answer = fix(spec);

describe('a landing that is fixed', () => {
  it('was not held, and every answer is, flown apart from the search', () => {
    expect(isHeld(verdictFlown(spec))).toBe(false);
    expect(answer.fixes.length).toBeGreaterThanOrEqual(3);
    for (const { spec: fixed } of answer.fixes) {
      const verdict = verdictFlown(fixed);
      expect(verdict.missed).toEqual([]);
      expect(isHeld(verdict)).toBe(true);
    }
  });

  it('changes one thing, in the order in which an athlete is asked, the rotation of the push last', () => {
    const changes = listFixChanges(spec);
    const kinds = answer.fixes.map(({ steps }) => {
      expect(steps).toHaveLength(1);
      const change = changes.find((c) => c.id === steps[0].id);
      return change ? FIX_KINDS.indexOf(change.kind) : -1;
    });
    expect(kinds).toEqual([...kinds].sort((a, b) => a - b));
    expect(new Set(kinds).size).toBe(kinds.length);
    expect(answer.fixes[answer.fixes.length - 1].steps[0].cue.kind).toBe('rotation');
  });

  it('is changed by no more than it needs: one step less does not fix it', () => {
    const changes = listFixChanges(spec);
    for (const { steps } of answer.fixes) {
      const [{ id, by }] = steps;
      const change = changes.find((c) => c.id === id);
      if (!change) throw new Error(id);
      expect(Math.abs(by)).toBeGreaterThanOrEqual(change.least - 1e-9);
      const less = by - Math.sign(by) * change.step;
      if (Math.abs(less) > change.least - 1e-9) expect(isHeld(verdictFlown(change.put(spec, less)))).toBe(false);
    }
  });

  it('has the body of before: mass is nothing to change', () => {
    for (const { spec: fixed } of answer.fixes) expect(fixed.athlete).toEqual(spec.athlete);
  });

  it('asks for no tuck before 0.22 s, and for no move before the feet have left', () => {
    for (const { spec: fixed } of answer.fixes)
      for (const { shape, from } of fixed.blocks) if (shape === 'tuck') expect(from.s).toBeGreaterThanOrEqual(0.22);
  });

  it('goes on longer with the rotation that it had', () => {
    const longer = answer.fixes.find(({ steps }) => steps[0].cue.kind === 'airTime');
    if (!longer) throw new Error('no answer by air time');
    const h = (s: SkillSpec): number => makeFlyer().fly(launch(buildSkill(s))).h_Scm_W[2];
    expect(h(longer.spec)).toBeCloseTo(h(spec), 9);
    expect(longer.airTime[0]).toBeGreaterThan(longer.airTime[1]);
  });
});

describe('a landing that no small change fixes', () => {
  it('has no answer', () => {
    expect(fix(specOf(backTuck(0.1))).fixes).toEqual([]);
  });
});

describe('what there is to fix', () => {
  const asked = (change: (spec: SkillSpec) => SkillSpec): boolean => {
    const spec = change(specOf(backTuck(0.52)));
    return needsFix(launch(buildSkill(spec)), verdictFlown(spec));
  };
  it('is a landing with a target, on a surface, that is not held', () => {
    expect(asked((s) => s)).toBe(true);
    expect(asked(({ target: _, ...s }) => s)).toBe(false);
    expect(asked((s) => ({ ...s, end: { kind: 'duration', duration: 0.7 } }))).toBe(false);
  });
  it('is nothing once it is fixed', () => {
    for (const { spec: fixed } of answer.fixes)
      expect(needsFix(launch(buildSkill(fixed)), verdictFlown(fixed))).toBe(false);
  });
});

describe('one end of a shape that was dragged until the landing was lost', () => {
  const dragged: readonly (readonly [string, number, 'from' | 'to', number])[] = [
    ['back-straight-full', 1, 'to', -0.1],
    ['back-straight-full', 1, 'from', 0.1],
    ['back-straight-full', 1, 'from', -0.1],
    ['back-straight-full', 0, 'to', 0.1],
    ['back-straight-double', 2, 'from', -0.1],
    ['back-straight-half', 2, 'from', -0.1],
    ['back-tuck', 1, 'to', 0.1],
    ['back-pike', 1, 'from', -0.1],
  ];
  it.runIf(isWhole).each(dragged)('%s, block %i, %s, %f s: there is a single way back', (id, i, side, by) => {
    const own = specOf(skills[id]);
    const spec = {
      ...own,
      blocks: own.blocks.map((b, k) => (k === i ? { ...b, [side]: { ...b[side], s: b[side].s + by } } : b)),
    };
    expect(needsFix(launch(buildSkill(own)), verdictFlown(own))).toBe(false);
    expect(needsFix(launch(buildSkill(spec)), verdictFlown(spec))).toBe(true);
    const { fixes } = fix(spec);
    expect(fixes.length).toBeGreaterThan(0);
    for (const { steps, spec: fixed } of fixes) {
      expect(steps).toHaveLength(1);
      expect(needsFix(launch(buildSkill(fixed)), verdictFlown(fixed))).toBe(false);
    }
  });
});
