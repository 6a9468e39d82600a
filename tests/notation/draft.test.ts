/**
 * Drafts from codes, flown from the file they make: they end within 5 deg of the wanted somersaults and within 15 deg of
 * the wanted twist, and the flight's own code is the one that was typed.
 */

import { describe, expect, test } from 'vitest';
import { athletes, shapes } from '../../presets/index.ts';
import {
  calcFrames,
  type Draft,
  type DraftSpec,
  draftOfCode,
  draftSkill,
  FieldError,
  fileOfDraft,
  flySkill,
  frameTimes,
  parseSkill,
  readAthlete,
  shapeInRadians,
  summarize,
  wordCode,
} from '../../sim/index.ts';
import { launchedOf } from '../skill/load.ts';

const inRadians = Object.fromEntries(Object.entries(shapes).map(([id, shape]) => [id, shapeInRadians(shape)]));
const draftFor = (spec: DraftSpec, athlete: string): Draft =>
  draftSkill(spec, { athlete: readAthlete(athletes[athlete]), shapes: inRadians });

/** Off the wanted turn, deg. */
const SOMERSAULT_DEG = 5;
const TWIST_DEG = 15;
/** A draft flies at most this often; at 6 ms a flight that is 0.3 s. */
const MOST_FLIGHTS = 50;

function flown(code: string, athlete: string, direction?: 'backward' | 'forward') {
  const spec = draftOfCode(code, direction);
  const draft = draftFor(spec, athlete);
  const skill = launchedOf(parseSkill(fileOfDraft(draft, { ref: athlete }), { athletes, shapes }));
  const flight = flySkill(skill);
  const frames = calcFrames(flight, frameTimes(flight.duration, 240));
  const summary = summarize(flight, frames, skill.target);
  return { spec, draft, summary, line: wordCode(summary, frames, skill.end.surface?.kind) };
}

const CODES: [string, string][] = [
  ['4 0 o', '4 0 o (difficulty 0.5), back somersault'],
  ['4 0 <', '4 0 < (difficulty 0.6), back somersault'],
  ['4 0 /', '4 0 / (difficulty 0.6), back somersault'],
  ['4 1 /', '4 1 / (difficulty 0.6), barani'],
  ['4 2 /', '4 2 / (difficulty 0.7), back full'],
  ['4 3 /', '4 3 / (difficulty 0.8), rudi'],
  ['4 4 /', '4 4 / (difficulty 0.9), back double full'],
  ['3 0 /', '3 0 / (difficulty 0.3)'],
  ['5 0 o', '5 0 o (difficulty 0.6)'],
  ['8 00 o', '8 00 o (difficulty 1.1), double back'],
  ['8 00 /', '8 00 / (difficulty 1.3), double back'],
  ['8 11 /', '8 11 / (difficulty 1.5), half-in half-out'],
  ['8 02 /', '8 02 / (difficulty 1.5), full-out'],
  ['8 01 <', '8 01 < (difficulty 1.3), barani-out'],
  ['8 22 /', '8 22 / (difficulty 1.7), full-in full-out'],
  ['12 000 <', '12 000 < (difficulty 2.1), triple back'],
  ['12 001 o', '12 001 o (difficulty 1.7), barani-out'],
  ['103B', 'dive 103B; '],
  ['105C', 'dive 105C; '],
  ['107B', 'dive 107B; '],
  ['201A', 'dive 201A; '],
  ['305C', 'dive 305C; '],
  ['402C', 'dive 402C; '],
  ['612B', 'dive 612B; '],
  ['5132D', 'dive 5132D; '],
  ['5231D', 'dive 5231D; '],
];

describe.each(['tobias-fenn', 'nell-oakum'])('drafted for %s', (athlete) => {
  test.each(CODES)('%s flies as %s', (code, line) => {
    const { spec, draft, summary, line: found } = flown(code, athlete);
    const twists = spec.halfTwists.reduce((a, b) => a + b, 0) / 2;
    const off = {
      somersault: Math.abs((summary.somersaults ?? Number.NaN) - spec.somersaults) * 360,
      twist: Math.abs((summary.twists ?? Number.NaN) - twists) * 360,
    };
    expect.soft(off.somersault).toBeLessThan(SOMERSAULT_DEG);
    expect.soft(off.twist).toBeLessThan(TWIST_DEG);
    expect.soft(summary.somersaultWord).toBe(spec.direction);
    // the file flies as the draft said it does
    expect.soft(summary.somersaults).toBeCloseTo(Math.abs(draft.reached.somersaults), 5);
    expect.soft(draft.falls).toEqual([]);
    expect.soft(found.slice(0, line.length)).toBe(line);
    expect.soft(draft.flights).toBeLessThanOrEqual(MOST_FLIGHTS);
  });
});

describe('a draft', () => {
  test('is the same each time', () => {
    const spec = draftOfCode('8 02 /');
    expect(draftFor(spec, 'ilse-marrow').spec).toEqual(draftFor(spec, 'ilse-marrow').spec);
  });
  test('turns the way that was asked', () => {
    expect(flown('4 0 o', 'ilse-marrow', 'forward').summary.somersaultWord).toBe('forward');
    expect(flown('4 2 /', 'ilse-marrow', 'forward').line).toMatch(/^4 2 \//);
  });
  test('a jump turns about its long axis alone', () => {
    const { summary, line } = flown('0 2 /', 'ilse-marrow');
    expect(Math.abs((summary.twists ?? 0) - 1) * 360).toBeLessThan(TWIST_DEG);
    expect(line).toMatch(/^0 2 \//);
  });
  test('says what it does not reach: nine half twists, or a tuck that twists throughout', () => {
    const nine = flown('4 9 /', 'ilse-marrow');
    expect(nine.draft.falls.join()).toContain('twist');
    expect(flown('8 11 o', 'ilse-marrow').draft.falls).toContain(
      'every somersault twists, and twists are drafted straight, not in a tuck',
    );
  });
  test('5253B is a hard one: it comes within 15 deg of the turns, and says what is missing', () => {
    for (const athlete of ['tobias-fenn', 'nell-oakum']) {
      const { draft, summary } = flown('5253B', athlete);
      // measured 1 deg and 11 deg; the pike after the twist lasts too briefly to be read as one
      expect(Math.abs((summary.somersaults ?? 0) - 2.5) * 360).toBeLessThan(TWIST_DEG);
      expect(Math.abs((summary.twists ?? 0) - 1.5) * 360).toBeLessThan(TWIST_DEG);
      expect(draft.falls.join()).toMatch(/the pike is held for 0\.\d\d s only/);
    }
  });
  test('refuses what is no code, and shapes that are not there', () => {
    expect(() => draftOfCode('back tuck')).toThrow(FieldError);
    expect(() =>
      draftSkill(draftOfCode('4 0 o'), { athlete: readAthlete(athletes['ilse-marrow']), shapes: {} }),
    ).toThrow(/shapes/);
  });
});
