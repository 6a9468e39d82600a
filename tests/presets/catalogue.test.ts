// The list behind the shelf: every ready skill has one entry, with the place that its file is flown at.
import { describe, expect, it } from 'vitest';
import { catalogue, chains, skills } from '../../presets/index.ts';
import { SKILL_PLACES, type SkillFile, type SkillPlace } from '../../sim/index.ts';

const ready: Readonly<Record<string, SkillFile>> = { ...skills, ...chains };
/** a line of the shelf */
const LONGEST = 90;
/** m over the water: a springboard is 1 or 3 m up, a platform 5 to 10 */
const HIGHEST_BOARD = 3;

/** From what the file states, without flying it. */
function placeOf({ phases }: SkillFile): SkillPlace {
  if (phases.some(({ kind }) => kind === 'swing' || kind === 'catch')) return 'bars';
  if (phases.some((p) => p.kind === 'contact' && p.place === 'vaultTable')) return 'vault';
  const last = phases.filter((p) => p.kind === 'flight').at(-1);
  const surface = last?.end.surface?.kind;
  if (surface !== 'water') return surface === 'trampoline' ? 'trampoline' : 'floor';
  const from = last?.takeoff;
  const height = from && 'lowestPointHeightM' in from ? from.lowestPointHeightM : 0;
  return (height ?? 0) > HIGHEST_BOARD ? 'platform' : 'board';
}

describe('the catalogue of ready skills', () => {
  it('has each ready skill once, and nothing else', () => {
    expect(catalogue.map(({ id }) => id).sort()).toEqual(Object.keys(ready).sort());
  });

  it('names the place that the file is flown at, in the order of the shelf', () => {
    expect(catalogue.map(({ id, place }) => `${id}: ${place}`)).toEqual(
      catalogue.map(({ id }) => `${id}: ${placeOf(ready[id])}`),
    );
    const order = catalogue.map(({ place }) => SKILL_PLACES.indexOf(place));
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  it('says what to see in one line that ends as a sentence, each in its own words', () => {
    for (const { see, id } of catalogue) {
      expect(see.length, id).toBeLessThanOrEqual(LONGEST);
      expect(see, id).toMatch(/^[A-Z].*[^.]\.$/);
    }
    expect(new Set(catalogue.map(({ see }) => see)).size).toBe(catalogue.length);
  });

  it('is found by words of the trade: at least two each, in small letters but for numbers of dives', () => {
    for (const { words, id } of catalogue) {
      expect(words.length, id).toBeGreaterThanOrEqual(2);
      expect(new Set(words).size, id).toBe(words.length);
      for (const word of words) expect(word).toMatch(/^([a-z][a-z -]*|\d{3,5}[A-D])$/);
    }
  });

  it('has three to start with, each once, none of them advanced', () => {
    const stories = catalogue.filter(({ story }) => story !== undefined);
    expect(stories.map(({ story }) => story).sort()).toEqual([1, 2, 3]);
    expect(stories.filter(({ level }) => level === 'advanced')).toEqual([]);
  });
});
