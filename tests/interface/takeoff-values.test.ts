// What a flight starts with, in words: stated by the file, or given by the swing or the push before it.
import { expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import type { Page } from '../../src/app/page.ts';
import { wordTakeoff } from '../../src/app/say/say-flight.ts';
import { getGiven, getStated } from '../../src/app/takeoff-values.ts';
import { mapFirst } from '../../src/features/ask/ask-start.ts';
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
  expect(all).toEqual(['across', 'along', 'gravity', 'height', 'lean', 'momentum', 'tilt', 'twist', 'up']);
  expect(said(id)).toMatch(/(Lowest point|Centre of mass): -?\d+\.\d\d m/);
});

it('what the swing launched is said with its source', () => {
  const result = flown('giant-double-straight');
  const given = getGiven(result, engine.launchedTakeoff(result));
  expect(given.find(({ id }) => id === 'up')?.value).toBeCloseTo(result.frames.v_WScm_W[1], 6);
  expect(given.find(({ id }) => id === 'momentum')?.value).toBeCloseTo(Math.abs(result.frames.h_Scm_W[2]), 6);
  expect(said('giant-double-straight')).toMatch(
    /^Given by the swing: .*Speed up: \d.*Momentum backward: \d+\.\d kg·m²\/s$/,
  );
});

it('a push gives speed and momentum beside the place that is stated', () => {
  expect(said('vault-handspring-half')).toMatch(
    /^Centre of mass: 2\.20 m.*\. Given by the push: Speed up: .*Momentum forward: \d/,
  );
});

it('a push towards a stated take-off gives none of it', () => {
  expect(said('floor-double-tuck')).not.toContain('Given by');
});

it('a map opens on what the skill turns about', () => {
  const first = (id: string): string => mapFirst(flown(id).outline);
  expect(first('giant-double-straight')).toBe('somersaults');
  expect(first('back-tuck')).toBe('somersaults');
  expect(first('back-straight-full')).toBe('twists');
  expect(first('cat-turn')).toBe('twists');
});
