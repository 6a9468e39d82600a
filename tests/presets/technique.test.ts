/**
 * What a coach would look for in each ready skill, as numbers read from its flight. A fact that cannot fail is none: each is broken by one fault of
 * the usual size (spoil.ts) put into the skill's file.
 */
import { describe, expect, it } from 'vitest';
import facts from '../../presets/technique.json' with { type: 'json' };
import { calcFrames, frameTimes, type SkillFile } from '../../sim/index.ts';
import { readTechnique, type Technique, techniqueUnit } from '../../sim/measure/technique.ts';
import { someOf } from '../corpus.ts';
import { fileOf, flightsOfFile } from './flown.ts';
import { spoil } from './spoil.ts';

interface Fact {
  readonly what: keyof Technique;
  readonly is: 'atMost' | 'atLeast';
  readonly value: number;
  readonly unit: string;
}

/** Of the last flight, in the units of the facts. */
function techniqueOf(file: SkillFile): (what: keyof Technique) => number | undefined {
  const { legs, stop } = flightsOfFile(file);
  if (stop) throw new Error(`${file.title}: stopped`);
  const { flight } = legs[legs.length - 1].whole;
  const read = readTechnique(flight, calcFrames(flight, frameTimes(flight.duration, 240), { isRough: true }));
  return (what) => {
    const value = read[what];
    return value === undefined ? undefined : value * techniqueUnit(what).scale;
  };
}

const holds = ({ is, value }: Fact, read: number | undefined): boolean =>
  read !== undefined && (is === 'atMost' ? read <= value : read >= value);

const skills = Object.entries(facts as unknown as Readonly<Record<string, readonly Fact[]>>);

describe.each(skills)('%s', (id, list) => {
  it('is done as a coach would have it', () => {
    const read = techniqueOf(fileOf(id));
    const missed = list.filter((fact) => !holds(fact, read(fact.what)));
    expect(missed.map((fact) => ({ ...fact, read: read(fact.what) }))).toEqual([]);
    expect(list.map(({ unit }) => unit)).toEqual(list.map(({ what }) => techniqueUnit(what).suffix));
  });
});

describe.each(someOf(skills, 6))('%s', (id, list) => {
  it('fails each of its facts by one fault', () => {
    const passed = list.filter((fact) => holds(fact, techniqueOf(spoil(fileOf(id), fact.what, fact.is))(fact.what)));
    expect(passed).toEqual([]);
  });
});
