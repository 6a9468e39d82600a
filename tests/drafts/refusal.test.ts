// What does not fly: the limit is named, and lifting it alone lets the skill fly.
import { describe, expect, it } from 'vitest';
import { athletes, shapes } from '../../presets/index.ts';
import {
  calcFrames,
  draftOfCode,
  draftOfTrampoline,
  draftSkill,
  fileBeyondStrength,
  flySkill,
  frameTimes,
  nearSkills,
  parseSkill,
  parseTrampolineCode,
  readAthlete,
  readFlownCode,
} from '../../sim/index.ts';
import { searchDraft } from '../../sim/skill/draft-search.ts';
import { prepareDraft } from '../../sim/skill/draft-skill.ts';
import { wordRefusal } from '../../sim/words/draft-words.ts';
import { launchedOf } from '../skill/load.ts';
import { inputFor } from './listed.ts';

const fenn = inputFor('tobias-fenn');

describe('a triple somersault in a tuck off the floor', () => {
  const spec = draftOfTrampoline(parseTrampolineCode('12 000 o'), 'backward', 'floor');
  const draft = draftSkill(spec, fenn);

  it('is refused for the strength it asks for, and nothing is handed out', () => {
    expect(draft).toMatchObject({ kind: 'refused', limit: 'strength' });
    expect(draft).not.toHaveProperty('spec');
  });

  it('flies once that limit alone is lifted, and under no other', () => {
    const { base, tools } = prepareDraft(spec, fenn, () => {});
    expect(searchDraft(base, tools, 'strength')?.judged.faults).toEqual([]);
    expect(searchDraft(base, tools, 'push')?.judged.faults.length ?? 1).toBeGreaterThan(0);
  });

  it('can be had marked: it flies to its code, and says what it asks of muscles', () => {
    if (draft.kind !== 'refused' || !draft.beyond) throw new Error('no marked draft');
    const { spec: flown, asks } = draft.beyond;
    expect(asks.length).toBeGreaterThan(0);
    for (const ask of asks) expect(ask).toMatch(/asks for .* the strength known|than .* are known to/);
    const file = fileBeyondStrength(draft.beyond, { ref: 'tobias-fenn' });
    expect(file.title).toBe(`${flown.title} (draft beyond known strength)`);
    expect(JSON.stringify(file)).toContain(asks[0]);
    // the most first, of those whose sentence says how many times
    const times = asks.flatMap((ask) => /(\d+(?:\.\d)?) times/.exec(ask)?.slice(1).map(Number) ?? []);
    expect(times.length).toBeGreaterThan(1);
    expect(times).toEqual([...times].sort((a, b) => b - a));
    const skill = launchedOf(parseSkill(file, { athletes, shapes }));
    const flight = flySkill(skill);
    expect(readFlownCode(flight.body, calcFrames(flight, frameTimes(flight.duration, 240)))).toMatchObject({
      quarters: 12,
      halfTwists: [0, 0, 0],
      shape: 'tuck',
    });
  });

  it('is said in plain words', () => {
    if (draft.kind !== 'refused') throw new Error('flew');
    expect(wordRefusal('12 000 o', draft)).toMatch(
      /^12 000 o is not drafted: it asks more of joints and muscles than is known of them.*Without that limit it flies\./,
    );
  });
});

describe('a draft', () => {
  it('of a jump turns about its long axis alone', () => {
    const draft = draftSkill(draftOfCode('0 2 /'), fenn);
    if (draft.kind !== 'flown') throw new Error(draft.faults.join('; '));
    expect(Math.abs(draft.reached.twists - 1)).toBeLessThan(0.06);
  });
  it('of a jump in a tuck turns not at all', () => {
    expect(draftSkill(draftOfCode('0 0 o'), fenn).kind).toBe('flown');
  });
  it('turns the way that was asked', () => {
    const draft = draftSkill(draftOfCode('4 0 o', 'forward'), fenn);
    expect(draft).toMatchObject({
      kind: 'flown',
      found: { judged: { verdict: { flown: { somersaultWord: 'forward' } } } },
    });
  });
  it('is the same each time', () => {
    const spec = draftOfCode('4 1 /', 'backward');
    expect(draftSkill(spec, fenn)).toEqual(draftSkill(spec, fenn));
  });
  it('needs the shapes it is made of', () => {
    const input = { ...fenn, athlete: readAthlete(athletes['ilse-marrow']), shapes: {} };
    expect(() => draftSkill(draftOfCode('4 0 o'), input)).toThrow(/shapes/);
  });
});

describe('nearest to a skill', () => {
  it('is the same with a half twist less, then with two', () => {
    expect(nearSkills(draftOfCode('4 6 /')).map(({ code }) => code)).toEqual(['4 5 /', '4 4 /']);
    expect(nearSkills(draftOfCode('8 24 /')).map(({ code }) => code)).toEqual(['8 23 /', '8 22 /']);
    expect(nearSkills(draftOfCode('5337D')).map(({ code }) => code)).toEqual(['5336D', '5335D']);
  });
  it('is nothing where nothing twists', () => {
    expect(nearSkills(draftOfCode('8 00 o'))).toEqual([]);
    expect(nearSkills(draftOfCode('5251B'))).toEqual([]);
  });
});
