/** The command "solve": answers as text and JSON, the best as a skill that flies; bad input by name. */
import { rmSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { makeFolder, run } from './run.ts';

const { folder, at, read } = makeFolder();
afterAll(() => rmSync(folder, { recursive: true }));

describe('shapeflight solve', () => {
  it('writes answers as JSON and the best as a skill, the same twice, with the caution', async () => {
    const vary = ['--vary', 'takeoff.straightSomersaults', '--vary', 'takeoff.speedUp=4..4.6', '--fits', '2'];
    const [json, skill] = [at('a.json'), at('a-skill.json')];
    const first = await run('solve', 'back-straight', ...vary, '--json', json, '--out', skill);
    expect(first.err).toBe('');
    expect(first.code).toBe(0);
    expect(first.out).toMatch(/answer/);
    expect(first.out).toMatch(/not coaching advice/);
    const told = JSON.parse(read('a.json'));
    const [best] = told.solutions;
    expect(best.met).toBe(true);
    expect(best.values['takeoff.speedUp_mPerS']).toBeGreaterThanOrEqual(4);
    expect(best.values['takeoff.speedUp_mPerS']).toBeLessThanOrEqual(4.6);
    expect(best.cost.peakSpeed.source).toMatch(/\w/);
    expect(told.caution).toMatch(/not coaching advice/);
    expect((await run('fly', skill)).out).toMatch(/lands as wanted|lands upright/);
    expect((await run('solve', 'back-straight', ...vary)).out).toBe(first.out);
  });

  it.each([
    [['solve', 'back-straight'], /--vary is missing/],
    [['solve', 'back-straight', '--vary', 'takeoff.speedup'], /takeoff.speedUp/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z=50..40'], /vary.takeoff.h.z/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--target', 'twist=2'], /twists/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--limits', 'pain'], /range,speed,torque/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--within', 'tilt=0'], /target.within.tilt/],
    [['solve', 'back-straight', '--vary', 'takeoff.h.z', '--seed', 'x'], /--seed/],
  ])('%j is refused in one line', async (argv, words) => {
    const { code, out, err } = await run(...argv);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(words);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});
