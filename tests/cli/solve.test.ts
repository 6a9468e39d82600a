/** The command "solve": answers as text and JSON, the best as a skill that flies; bad input by name. */
import { rmSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { type Answer, makeBody, type Solution } from '../../sim/index.ts';
import { keepFlying } from '../../src/cli/solve-kept.ts';
import { formatAnswer, wordNothingFlown } from '../../src/cli/solve-words.ts';
import { fileOf, specOf } from '../skill/load.ts';
import { makeFolder, run } from './run.ts';

const { folder, at, read } = makeFolder();
afterAll(() => rmSync(folder, { recursive: true }));

const verdict: Solution['verdict'] = {
  missed: [],
  flown: { somersaultWord: 'backward', twistWord: '', duration: 1 },
  ending: { kind: 'inAir' },
  basis: 'touchdown',
};
const found = (cost: object = {}): Solution => ({
  ...{ values: [], spec: specOf(fileOf('back-straight')), terms: [], broken: [], verdict, twists: 0, off: 0 },
  events: { apex: 0.5, touchdown: 1 },
  cost: { momentum: 30, cautions: [], ...cost },
});
const problem = { spec: found().spec, wishes: [], unknowns: [] };
const body = makeBody(problem.spec.athlete);
const note = { tries: 10, balance: 'without the reflex' };
const answerOf = (solutions: Solution[], more: Partial<Answer> = {}): Answer => ({
  ...{ solutions, seed: 1, fits: 8, flights: 90, draws: 48, unflown: 3, notKept: 0, touching: [], isComplete: true },
  ...more,
});

describe('what was found and does not fly as it would be written', () => {
  it('is left out, counted and said', () => {
    const [a, b] = [found(), found()];
    const kept = keepFlying(answerOf([a, b], { notKept: 1 }), (s) => s === b);
    expect(kept.solutions).toEqual([b]);
    expect(kept.notKept).toBe(2);
    expect(formatAnswer(problem, kept, body, note)).toMatch(/2 answers that were found could not be flown again/);
    expect(formatAnswer(problem, answerOf([a]), body, note)).not.toMatch(/again as/);
  });

  it('leaves no answer where none of those that are left is held', () => {
    const [held, falls] = [
      { ...found(), held: true },
      { ...found(), held: false },
    ];
    const kept = keepFlying(answerOf([held, falls]), (s) => s === falls);
    expect(kept.solutions).toEqual([]);
    expect(kept.nearest).toEqual({ ...falls, obstacles: [{ kind: 'ending' }] });
  });

  it('is not said to be a flight that could not be flown', () => {
    const nothing = keepFlying(answerOf([], { nearest: { ...found(), obstacles: [] } }), () => false);
    expect(nothing.nearest).toBeUndefined();
    expect(wordNothingFlown(problem, nothing)).toMatch(/nothing that was found could be flown again .* 3 of 49 starts/);
    expect(wordNothingFlown(problem, answerOf([]))).toMatch(/no flight could be flown within the spans/);
  });
});

describe('what a joint is asked for', () => {
  const peak = { kind: 'torque', angle: 0, t: 0, value: 100, known: 10, share: 7.85, source: 'here' } as const;
  const costs = (cost: object): string => formatAnswer(problem, answerOf([found(cost)]), body, note);

  it('is no per cent of a strength that is next to nothing: the speed is said', () => {
    expect(costs({ torque: { ...peak, beyond: { rate: 15 } } })).toMatch(
      /100 N·m, at 859 deg\/s, where next to no strength is known/,
    );
    expect(costs({ torque: { ...peak, beyond: 'over' } })).toMatch(/100 N·m, more than 3 times the strength known/);
    expect(costs({ torque: { ...peak, beyond: { rate: 15 } } })).not.toMatch(/785/);
    expect(costs({ torque: { ...peak, share: 1.2 } })).toMatch(/100 N·m, 120 % of its limit/);
  });

  it('is in degrees a second, and compared with nothing at an age that nothing is known of', () => {
    expect(costs({ speed: { ...peak, kind: 'speed', value: 10, share: 0.5 } })).toMatch(/573 deg\/s|572\.96 deg\/s/);
    const young = { notCompared: { title: '14 years old:', detail: 'shown.' } };
    expect(costs(young)).toMatch(/fastest not compared at this age; strongest not compared at this age/);
  });
});

describe('what touches, and what is not held', () => {
  it('is counted and said; what is not held says so', () => {
    const held = { ...found(), held: true };
    const falls = { ...found(), held: false };
    const out = formatAnswer(
      { ...problem, ending: 'held' },
      answerOf([held, falls], { touching: ['rail', 'rail'] }),
      body,
      note,
    );
    expect(out).toMatch(/2 answers, 1 of them not held/);
    expect(out).toMatch(/2 more would touch the rail, and are refused/);
    expect(out).toMatch(/^ {2}2 {2}not held: /m);
    expect(out).not.toMatch(/^ {2}1 {2}not held/m);
    const none = answerOf([], { touching: ['rail'], nearest: { ...falls, obstacles: [{ kind: 'ending' }] } });
    expect(formatAnswer(problem, none, body, note)).toMatch(/^1 would touch the rail, and is refused$/m);
    expect(formatAnswer(problem, none, body, note)).toMatch(/^ {2}the landing would not be held$/m);
  });
});

it('a margin that cannot be computed is said, and ends nothing', async () => {
  const vary = ['--vary', 'takeoff.speedUp=-3..-2', '--fits', '2', '--tries', '10', '--json', at('m.json')];
  const { code, out, err } = await run('solve', 'tests/former/back-straight-full.json', ...vary);
  expect([code, err]).toEqual([0, '']);
  expect(out).toMatch(/margin could not be computed \(takeoff\.h\.z: 944\.77\d* .* -400 to 400 \(kg·m²\/s\)\)/);
  const { solutions, nearest } = JSON.parse(read('m.json'));
  expect(solutions).toEqual([]);
  expect(nearest.cost).toMatchObject({ margin: null, marginFault: expect.stringContaining('takeoff.h.z') });
});

describe('shapeflight solve', () => {
  it('writes answers as JSON and the best as a skill, the same twice, with the caution', async () => {
    const vary = ['--vary', 'takeoff.straightSomersaults', '--vary', 'takeoff.speedUp=4..4.6'];
    vary.push('--fits', '1', '--tries', '20');
    const [json, skill] = [at('a.json'), at('a-skill.json')];
    const first = await run('solve', 'back-straight', ...vary, '--json', json, '--out', skill);
    expect(first.err).toBe('');
    expect(first.code).toBe(0);
    expect(first.out).toMatch(/answer/);
    expect(first.out).toMatch(/not coaching advice/);
    const shown = JSON.parse(read('a.json'));
    const [best] = shown.solutions;
    expect(best.met).toBe(true);
    expect(best.values['takeoff.speedUp_mPerS']).toBeGreaterThanOrEqual(4);
    expect(best.values['takeoff.speedUp_mPerS']).toBeLessThanOrEqual(4.6);
    expect(best.cost.peakSpeed.source).toMatch(/\w/);
    expect(shown.caution).toMatch(/not coaching advice/);
    // the margin is the share that the command margin finds with the same samples, but for the rounding of the file
    expect(shown.margin).toMatchObject({ tries: 20, balance: expect.stringMatching(/^without/) });
    const study = at('margin.json');
    await run('margin', skill, '--samples', '20', '--no-bars', '--json', study);
    expect(best.cost.margin).toBeCloseTo(JSON.parse(read('margin.json')).inWindow.share, 12);
    expect(first.out).toMatch(/margin \d+\.\d % of 20 tries \(/);
    expect(best.held).toBe(true);
    const [, sentence] = /^ {2}1 {2}(\S.*)$/m.exec(first.out) ?? [];
    expect((await run('fly', skill)).out).toContain(`\n${sentence}\n`);
    expect((await run('solve', 'back-straight', ...vary)).out).toBe(first.out);
  });

  it('looks for a wider margin, and tells it with the errors of another seed', async () => {
    const vary = ['--vary', 'takeoff.straightSomersaults', '--vary', 'takeoff.speedUp=4..4.6', '--seed', '3'];
    const more = ['--fits', '2', '--answers', '1', '--tries', '10', '--forgiving', '2', '--json', at('f.json')];
    const { code, out, err } = await run('solve', 'back-straight', ...vary, ...more);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/The most forgiving: 2 moves, \d met the target again, \d kept/);
    expect(out).toMatch(/errors of seed 4: \d+\.\d % of 50 tries/);
    const { solutions, margin } = JSON.parse(read('f.json'));
    expect(margin.forgiving).toMatchObject({ rounds: 2, seed: 4, after: { n: 50 } });
    const margins = solutions.map((s: { cost: { margin: number } }) => s.cost.margin);
    expect(margins).toEqual([...margins].sort((a, b) => b - a));
  });

  it.each([
    [['solve', 'back-straight'], /--vary is missing/],
    [['solve', 'back-straight', '--vary', 'takeoff.speedup'], /takeoff.speedUp/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z=50..40'], /vary.takeoff.h.z/],
    [
      ['solve', 'back-straight', '--vary', 'takeoff.lean=-800..10'],
      /vary\.takeoff\.lean: -800 is .* -360 to 360 \(deg\)/,
    ],
    [['solve', 'back-straight', '--vary', 'takeoff.lean=10..-10'], /"10 to -10 \(deg\)"/],
    [['solve', 'giant-double-straight', '--vary', 'takeoff.foo'], /takeoff\.foo" is not .*swing\.releaseAngle/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--within', 'tilt=-2'], /target.within.tilt: -2 /],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--target', 'twist=2'], /twists/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--limits', 'pain'], /range,speed,torque/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--within', 'tilt=0'], /target.within.tilt/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--seed', 'x'], /--seed/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--tries', '-1'], /--tries/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--tries', '0', '--forgiving', '3'], /leaves the margin out/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--balance', 'knees'], /off, hips, arms/],
  ])('%j is refused in one line', async (argv, words) => {
    const { code, out, err } = await run(...argv);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(words);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});

it('says of a skill to be held straight that its margin is of an open loop, unless the reflex flies it', async () => {
  const argv = ['--vary', 'takeoff.h.z', '--fits', '1', '--tries', '2'];
  expect((await run('solve', 'back-straight', ...argv)).out).toMatch(/margin: .*an open loop is no measure/);
  expect((await run('solve', 'back-straight', ...argv, '--balance', 'hips')).out).not.toContain('open loop');
  expect((await run('solve', 'back-tuck', ...argv)).out).not.toContain('open loop');
});
