// What a flight starts with, in words: stated by the file, or given by the swing or the push before it.
import { expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import type { Page } from '../../src/app/page.ts';
import { wordTakeoff } from '../../src/app/say/say-flight.ts';
import { getGiven, getStated, highestOver } from '../../src/app/takeoff-values.ts';
import { mapFirst, momentumFirst } from '../../src/features/ask/ask-start.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const flown = (id: string) => engine.fly(skills[id]);
const said = (id: string): string => {
  const result = flown(id);
  return wordTakeoff({ flight: { result: () => result }, services: { flying: engine } } as unknown as Page);
};

it.each(Object.keys(skills))('%s: every value of the take-off is stated or given, none is both', (id) => {
  const result = flown(id);
  const given = getGiven(result, engine.launchedTakeoff(result)).map((one) => one.id);
  const all = [...getStated(result).map((one) => one.id), ...given].sort();
  const [x, y, z] = result.flight.h_Scm_W;
  // a jump with a turn turns about other axes than the somersault's: all of its rotation is one more value
  const whole = Math.hypot(x, y) > Math.abs(z) ? ['rotation'] : [];
  const jump = ['airTime', 'momentum', 'rate', 'rise', 'straight', 'up', ...whole];
  expect(all).toEqual([...jump, 'across', 'along', 'gravity', 'height', 'lean', 'tilt', 'twist'].sort());
  expect(said(id)).toMatch(/(Lowest point|Centre of mass): -?\d+\.\d\d m/);
});

it('what the swing launched is said with its source', () => {
  const result = flown('giant-double-straight');
  const given = getGiven(result, engine.launchedTakeoff(result));
  expect(given.find(({ id }) => id === 'up')?.value).toBeCloseTo(result.frames.v_WScm_W[1], 6);
  expect(given.find(({ id }) => id === 'momentum')?.value).toBeCloseTo(Math.abs(result.frames.h_Scm_W[2]), 6);
  expect(said('giant-double-straight')).toMatch(
    /^Given by the swing: Air time: 1\.\d\d s; .*Speed up: \d.*Rotation backward: \d+\.\d kg·m²\/s;/,
  );
});

it('a push gives speed and momentum beside the place that is stated', () => {
  expect(said('vault-handspring-half')).toMatch(
    /Centre of mass: 2\.20 m\. Given by the push: Air time: .*Speed up: .*Rotation forward: \d/,
  );
});

it('a push towards a stated take-off gives none of it', () => {
  expect(said('floor-double-tuck')).not.toContain('Given by');
});

it('a map opens on the twist, or where there is none on the landing as it is judged', () => {
  const first = (id: string, judged: readonly string[]): string => mapFirst(flown(id).outline, judged);
  expect(first('giant-double-straight', ['reach', 'tilt', 'twists'])).toBe('reach');
  expect(first('back-tuck', ['reach', 'tilt', 'twists'])).toBe('reach');
  expect(first('back-tuck', ['short', 'tilt', 'twists'])).toBe('short');
  expect(first('back-tuck', [])).toBe('somersaults');
  expect(first('back-straight-full', ['reach', 'tilt', 'twists'])).toBe('twists');
  expect(first('cat-turn', ['short'])).toBe('twists');
});

it('a jump is asked for the momentum about the vertical, a somersault for its own', () => {
  expect(momentumFirst(flown('arms-in-spin').outline)).toBe('takeoff.h.y');
  expect(momentumFirst(flown('back-tuck').outline)).toBe('takeoff.h.z');
  expect(momentumFirst(flown('back-straight-full').outline)).toBe('takeoff.h.z');
});

it.each([
  ['back-tuck', 'floor', 0],
  ['trampoline-full', 'bed', 1.155],
  ['dive-forward-one-and-half-pike', 'water', 0],
])('%s: the highest point is over the %s', (id, over, y) => {
  const result = engine.fly(skills[id]);
  const { frames } = result;
  let top = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < frames.n; i++) top = Math.max(top, frames.p_WScm_W[3 * i + 1]);
  const found = highestOver(result);
  expect(found.over).toBe(over);
  // rows are 1/240 s apart at the coarsest: less than 0.1 mm of the peak
  expect(Math.abs(found.m - (top - y))).toBeLessThan(1e-3);
});
