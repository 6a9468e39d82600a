// What the engine tells of a flight beside its numbers: the code, limbs that pass through the body, what just changed.

import { describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import type { SkillVerdict } from '../../sim/index.ts';
import { wordCaution } from '../../src/app/say/caution-words.ts';
import { wordNames, wordNoName } from '../../src/app/say/code-words.ts';
import { explainWords } from '../../src/app/say/explain-units.ts';
import { sayLikelihood } from '../../src/app/say/say-likelihood.ts';
import { speakVerdict, wordLanding } from '../../src/app/say/sentence-words.ts';
import { setUnits } from '../../src/ui/units.ts';
import { flightIn } from '../files/parts.ts';
import { former, sampleOf } from '../former/index.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const fly = (id: string) => engine.fly(sampleOf(id));

describe('what a skill is called', () => {
  const names = (id: string) => fly(id).names;
  it('is the name on the floor, code and difficulty on the bed, the number over water', () => {
    expect(wordNames(names('back-straight-full'))).toBe('Back full');
    expect(wordNames(names('back-tuck'))).toBe('Back tuck');
    expect(wordNames(names('arms-in-spin'))).toBe('Jump with a full turn');
    expect(wordNames(names('trampoline-barani'))).toBe('4 1 / (difficulty 0.6), barani');
    expect(wordNames(names('dive-forward-one-and-half-pike'))).toBe('dive 103B, forward 1 1/2 somersaults, pike');
    expect(wordNoName(names('back-straight-full'))).toBe('');
  });

  it('is missing with a reason, which is shown in its place', () => {
    const file = structuredClone(former['back-straight-full']);
    flightIn(file).takeoff = { ...flightIn(file).takeoff, momentum: { straightSomersaults: 6 } };
    const found = engine.fly(file).names;
    expect(wordNames(found)).toBe('');
    expect(wordNoName(found)).toMatch(/^No name: \d+ quarter somersaults/);
  });

  it('0.65 of a turn is no jump with a turn, has no code, and is not called upright', () => {
    const file = structuredClone(former['arms-in-spin']);
    const { takeoff, end } = flightIn(file);
    flightIn(file).takeoff = { ...takeoff, momentum: { vectorKgM2PerS: [0, 0.65 * 7.799, 0] } };
    delete file.target;
    for (const kind of ['floor', 'trampoline'] as const) {
      flightIn(file).end = { ...end, surface: { kind, heightM: 0 } };
      const { names: found, outline } = engine.fly(file);
      expect(outline.twists).toBeCloseTo(0.65, 2);
      expect(wordNames(found)).toBe('');
      expect(wordNoName(found)).toMatch(/^No (name|code): 0\.65 twists are 5\d deg off a whole half twist/);
      expect(speakVerdict(outline.verdict)).not.toContain('upright');
      expect(wordLanding(outline)).toMatch(/^facing 5\d° aside$/);
    }
  });
});

describe('overlaps', () => {
  it('names limb, place, instant and depth; one meeting of two arms is one caution', () => {
    const found = engine.overlaps(fly('former/back-straight-double'));
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
  const result = fly('former/back-straight-full');
  const say = (t: number): string => engine.explain(result, t, explainWords());

  it('is said of the move under way or just done, in words without signs', () => {
    const said = say(0.1);
    expect(said).toMatch(/^arms apart: long-axis spread [\d.]+ to [\d.]+ kg·m², .*twist rate 0\.0 to [\d.]+ rev\/s/);
    expect(said).not.toMatch(/->|[−-]\d/);
    expect(say(0.3)).toBe(said);
    expect(say(result.flight.duration)).not.toBe(said);
  });

  it('is said in the units that are set', () => {
    setUnits({ measure: 'imperial', turning: 'degrees' });
    expect(say(0.1)).toMatch(
      /^arms apart: long-axis spread \d+ to \d+ lb·ft², .*twist rate 0 to \d+ °\/s.*; the joints .* ft·lb$/,
    );
    setUnits({ measure: 'metric', turning: 'revolutions' });
    expect(say(0.1)).toMatch(/^arms apart: long-axis spread [\d.]+ to [\d.]+ kg·m²/);
  });

  it('is nothing before anything moves', () => {
    expect(engine.explain(fly('former/arms-in-spin'), 0.01, explainWords())).toBe('');
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
