/** The code of a flight: the rule of docs/notation.md on columns made for it, and on the preset skills as flown. */

import { describe, expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import {
  type CodeColumns,
  calcFrames,
  codeOfFlight,
  flySkill,
  formatTrampolineCode,
  frameTimes,
  namesOfSkill,
  parseSkill,
  placeOfSkill,
  type SkillFile,
  summarize,
  wordNames,
} from '../../sim/index.ts';
import { CODE_WIDTHS } from '../../sim/notation/code-of-skill.ts';
import { MISS_WIDTHS } from '../../sim/skill/skill-verdict.ts';
import { flightIn } from '../files/parts.ts';
import { launchedOf } from '../skill/load.ts';

const REV = 2 * Math.PI;
const N = 400;

/** Twist done (revolutions) as a function of somersault done (revolutions), both from 0. */
function columns(somersaults: number, twistAt: (s: number) => number, hip = 0, knee = 0): CodeColumns {
  const rows = Array.from({ length: N + 1 }, (_, i) => (somersaults * i) / N);
  return {
    t: rows.map((_, i) => i / N),
    somersault: rows.map((s) => REV * s),
    twist: rows.map((s) => REV * twistAt(Math.abs(s))),
    hipBend: rows.map(() => hip),
    kneeBend: rows.map(() => knee),
  };
}
const textOf = (c: CodeColumns): string => {
  const found = codeOfFlight(c);
  return found.kind === 'code' ? formatTrampolineCode(found.code) : found.reason;
};

describe('the code of columns', () => {
  test('digits are what each complete somersault adds, whichever way the flight turns', () => {
    const out = (s: number): number => Math.max(0, s - 1);
    for (const turn of [1, -1])
      for (const side of [1, -1]) expect(textOf(columns(2 * turn, (s) => side * out(s)))).toBe('8 02 /');
    expect(textOf(columns(2, (s) => Math.min(1, s)))).toBe('8 20 /');
    expect(textOf(columns(3, (s) => s))).toBe('12 222 /');
  });
  test('halves go up, also at the quarter somersault', () => {
    expect(textOf(columns(0.125, () => 0))).toBe('1 0 /');
    expect(textOf(columns(0.1249, () => 0))).toBe('0 0 /');
    expect(textOf(columns(1, (s) => 0.25 * s))).toBe('4 1 /');
    expect(textOf(columns(1, (s) => 0.2499 * s))).toBe('4 0 /');
  });
  test('what remains short of a somersault counts to the last digit', () => {
    expect(textOf(columns(1.75, (s) => s / 1.75))).toBe('7 2 /');
    expect(textOf(columns(1.97, (s) => (s / 1.97) * 1))).toBe('8 11 /');
  });
  test('the shape is the bend of hips and knees: 135 deg or less between upper body and thighs, and thighs and shanks', () => {
    const bend = (deg: number): number => (deg * Math.PI) / 180;
    expect(textOf(columns(1, () => 0, bend(44), bend(90)))).toBe('4 0 /');
    expect(textOf(columns(1, () => 0, bend(46), bend(44)))).toBe('4 0 <');
    expect(textOf(columns(1, () => 0, bend(46), bend(46)))).toBe('4 0 o');
  });
  test('a twist that goes back, too many, a tilt beyond 80 deg, a body without hips: no code, and why', () => {
    expect(textOf(columns(2, (s) => (s < 1 ? s : 2 - s)))).toBe('the twist goes back in somersault 2: -2 half twists');
    expect(textOf(columns(1, (s) => 5 * s))).toBe('10 half twists in somersault 1; one digit ends at 9');
    expect(textOf(columns(5, () => 0))).toBe('20 quarter somersaults; the notation ends at 19');
    expect(textOf({ ...columns(1, () => 0), undefinedFrom: 0.431 })).toBe(
      'somersault and twist are not defined after 0.43 s',
    );
    const { hipBend: _, ...hipless } = columns(1, () => 0);
    expect(textOf(hipless)).toBe('this body has no hips and knees to read a shape from');
  });
});

// what the titles of the presets say, as their place says it; rails and tables are not counted so
const PRESETS: [string, string, string][] = [
  ['back-tuck', 'name', 'back tuck'],
  ['back-pike', 'name', 'back pike'],
  ['back-straight', 'name', 'back straight'],
  ['back-straight-half', 'name', 'back half'],
  ['back-straight-full', 'name', 'back full'],
  ['back-straight-double', 'name', 'back double full'],
  ['double-back-tuck', 'name', 'double back tuck'],
  ['double-back-straight', 'name', 'double back straight'],
  ['arms-in-spin', 'name', 'jump with a full turn'],
  ['trampoline-barani', 'code', '4 1 / (difficulty 0.6), barani'],
  ['dive-forward-one-and-half-pike', 'dive', '103B, forward 1 1/2 somersaults, pike'],
];
const NOT_COUNTED = ['giant-double-straight', 'vault-handspring-half'];

/** What it is called, with what that is; and all of it for machines. */
function called(file: SkillFile) {
  const skill = launchedOf(parseSkill(file, { athletes, shapes }));
  const flight = flySkill(skill);
  const frames = calcFrames(flight, frameTimes(flight.duration, 240));
  const names = namesOfSkill(summarize(flight, frames, skill.target), frames, placeOfSkill(skill));
  return { names, line: wordNames(names) };
}

// where count or end is not that of a code
const WITHOUT: [string, (file: SkillFile) => void, RegExp][] = [
  ['cat-turn', () => {}, /0\.25 twists are 90 deg off a whole half twist/],
  ['back-tuck', (file) => turn(file, 0.75), /the landing is \d+ deg (short|past), and a skill is named within 60/],
  // on the head, as wanted: no code ends there
  [
    'back-straight',
    (file) => turn(file, 1.5, 180),
    /comes down on the (head|hands), 6 quarter somersaults from standing/,
  ],
  ['trampoline-double-tuck', (file) => turn(file, 1.24, 180), /comes down on the (head|hands), 10 quarter/],
];

function turn(file: SkillFile, straightSomersaults: number, landingAngleDeg?: number): void {
  const flight = flightIn(file);
  if (file.phases[0].kind !== 'flight') file.phases.shift();
  if (file.target && landingAngleDeg !== undefined) file.target = { ...file.target, landingAngleDeg };
  flight.takeoff = { ...flight.takeoff, momentum: { straightSomersaults } };
}

test.each(WITHOUT)('%s with another count or end has no code, and the reason', (id, change, reason) => {
  const file = structuredClone(skills[id]);
  change(file);
  const { names, line } = called(file);
  expect(names.code).toBeUndefined();
  expect(line?.[1]).toMatch(/^no (code|name): /);
  expect(line?.[1]).toMatch(reason);
});

test('what a code counts within is what the verdict calls missed', () => {
  expect(CODE_WIDTHS.twist).toBe(MISS_WIDTHS.twist);
  expect(CODE_WIDTHS.somersault).toBe(MISS_WIDTHS.somersault);
});

test.each(PRESETS)('%s has the %s %s', (id, what, line) => expect(called(skills[id]).line).toEqual([what, line]));

test.each(NOT_COUNTED)('%s is counted another way', (id) => expect(called(skills[id]).line).toBeUndefined());

test('off the floor the trampoline code is there for machines', () => {
  expect(called(skills['back-straight-full']).names).toEqual({
    place: 'floor',
    name: 'back full',
    code: '4 2 /',
    difficulty: '0.7',
  });
});

test.each([
  [1, 'board'],
  [3, 'board'],
  [5, 'platform'],
  [10, 'platform'],
] as const)('from %s m over the water a dive is off the %s', (heightM, place) => {
  const file = structuredClone(skills['dive-forward-one-and-half-pike']);
  const { lowestPointHeightM: _, ...takeoff } = flightIn(file).takeoff;
  for (const height of [{ lowestPointHeightM: heightM }, { massCentreHeightM: heightM + 1.05 }]) {
    flightIn(file).takeoff = { ...takeoff, ...height };
    expect(placeOfSkill(launchedOf(parseSkill(file, { athletes, shapes })))).toBe(place);
  }
});
