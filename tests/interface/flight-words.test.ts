// What the engine tells of a flight beside its numbers: the code, limbs that pass through the body, what just changed.

import { describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import type { SkillVerdict } from '../../sim/index.ts';
import { wordCaution } from '../../src/app/say/caution-words.ts';
import { wordCode, wordNoCode, wordShortCode } from '../../src/app/say/code-words.ts';
import { explainWords } from '../../src/app/say/explain-units.ts';
import { sayLikelihood } from '../../src/app/say/say-likelihood.ts';
import { setUnits } from '../../src/ui/units.ts';
import { flightIn } from '../files/parts.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const fly = (id: string) => engine.fly(skills[id]);

describe('code', () => {
  it('is that of the name of the skill', () => {
    expect(wordCode(fly('back-straight-full').code)).toBe('trampoline code 4 2 / (difficulty 0.7), back full');
    expect(wordShortCode(fly('back-straight-full').code)).toBe('trampoline code 4 2 /');
    expect(wordCode(fly('trampoline-barani').code)).toBe('4 1 / (difficulty 0.6), barani');
    expect(wordShortCode(fly('dive-forward-one-and-half-pike').code)).toBe('dive 103B');
    expect(wordCode(fly('dive-forward-one-and-half-pike').code)).toMatch(/^dive 103B; 6 0 </);
    expect(wordNoCode(fly('back-straight-full').code)).toBe('');
  });

  it('is missing with a reason, which is shown in its place', () => {
    const file = structuredClone(skills['back-straight-full']);
    flightIn(file).takeoff = { ...flightIn(file).takeoff, momentum: { straightSomersaults: 6 } };
    const { code } = engine.fly(file);
    expect(wordCode(code)).toBe('');
    expect(wordNoCode(code)).toMatch(/^No code: \d+ quarter somersaults/);
  });
});

describe('overlaps', () => {
  it('names limb, place, instant and depth; one meeting of two arms is one caution', () => {
    const found = engine.overlaps(fly('back-straight-double'));
    for (const one of found) {
      expect(one.deepMm).toBeGreaterThan(15);
      expect(wordCaution(one)).toMatch(/^(Left|Right) .+ passes through the .+ at \d\.\d\d s, \d+ mm deep\.$/);
    }
    expect(new Set(found.map((one) => `${one.through} ${one.t}`)).size).toBe(found.length);
    expect(engine.overlaps(fly('back-tuck'))).toEqual([]);
  });

  it('the arm that is led through the chest is reported', () => {
    const file = structuredClone(skills['back-straight']);
    flightIn(file).schedule.keys = [
      ...(flightIn(file).schedule.keys ?? []),
      ...[
        ['shoulderPlaneR', 20],
        ['shoulderElevationR', 12],
        ['shoulderTurnR', 90],
        ['elbowFlexionR', 100],
      ].map(([angle, deg]) => ({ angle, at: { anchor: 'takeoff', s: 0.4 }, deg, kind: 'stop' }) as never),
    ];
    const [deepest] = engine.overlaps(engine.fly(file));
    expect(deepest.limb).toMatch(/R$/);
    expect(wordCaution(deepest)).toMatch(/^Right .+ passes through the (chest|belly|pelvis|head) at /);
  });
});

describe('a take-off outside what is usual for its place', () => {
  it('is a caution beside those of the joints, with its range and what that rests on; a usual one is none', () => {
    const file = structuredClone(skills['back-tuck']);
    expect(engine.fly(file).takeoffCautions).toEqual([]);
    flightIn(file).takeoff.velocityMPerS.up = 9;
    expect(engine.fly(file).takeoffCautions.map(wordCaution)).toEqual([
      'Leaves the floor upward at 9.0 m/s. Usual 3.5 to 4.9 (from memory).',
    ]);
  });
});

describe('what just changed', () => {
  const result = fly('back-straight-full');
  const say = (t: number): string => engine.explain(result, t, explainWords());

  it('is said of the move under way or just done, in words without signs', () => {
    const said = say(0.1);
    expect(said).toMatch(/^arms apart: long-axis moment [\d.]+ to [\d.]+ kg·m², .*twist rate 0\.0 to [\d.]+ rev\/s/);
    expect(said).not.toMatch(/->|[−-]\d/);
    expect(say(0.3)).toBe(said);
    expect(say(result.flight.duration)).not.toBe(said);
  });

  it('is said in the units that are set', () => {
    setUnits({ measure: 'imperial', turning: 'degrees' });
    expect(say(0.1)).toMatch(
      /^arms apart: long-axis moment \d+ to \d+ lb·ft², .*twist rate 0 to \d+ °\/s.*; the joints .* ft·lb$/,
    );
    setUnits({ measure: 'metric', turning: 'revolutions' });
    expect(say(0.1)).toMatch(/^arms apart: long-axis moment [\d.]+ to [\d.]+ kg·m²/);
  });

  it('is nothing before anything moves', () => {
    expect(engine.explain(fly('arms-in-spin'), 0.01, explainWords())).toBe('');
  });
});

describe('how often a landing ends so', () => {
  const verdict = fly('back-tuck').outline.verdict;
  const tenths = [
    { kind: 'knees', tenths: 9 },
    { kind: 'steps', tenths: 1 },
  ] as const;
  const say = (ending: SkillVerdict['ending']): string =>
    sayLikelihood({
      verdict: () => ({ ...verdict, ending }),
      likelihood: () => ({ samples: 20, tenths, ranges: [] }),
    });

  it('begins with the ending that is said, however seldom it comes', () => {
    expect(say({ kind: 'landed', how: 'steps', t: 0.3 })).toBe(
      'steps in 1 of 10 of the stated ranges; more often on the knees in 9',
    );
    expect(say({ kind: 'landed', how: 'stands', t: 0.3 })).toMatch(
      /^stands in 0 of 10 .*; more often on the knees in 9, steps in 1$/,
    );
  });

  it('is said of nothing that was not landed on the feet', () => {
    expect(say({ kind: 'bounces', travel: 0, bend: 0 })).toBe('');
    expect(say({ kind: 'notComputed', why: { kind: 'pending' } })).toBe('');
  });
});
