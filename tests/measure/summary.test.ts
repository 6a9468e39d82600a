// Words and numbers of a summary, against a rigid plate whose turning is known by hand: angle = h t / I.

import { describe, expect, test } from 'vitest';
import { parseSkill } from '../../sim/files/parse-skill.ts';
import {
  calcFrames,
  flySkill,
  formatSummary,
  formatSummaryJson,
  frameTimes,
  type SkillFile,
  type Summary,
  summarize,
  wordVerdict,
} from '../../sim/index.ts';
import { calcSkillVerdict, type SkillVerdict } from '../../sim/skill/skill-verdict.ts';
import { launchedOf } from '../skill/load.ts';

const REV = 2 * Math.PI;
const DEG = Math.PI / 180;
/** Angles of a rigid body about a fixed axis, measured 5e-13. */
const TURN_TOLERANCE = 1e-9;

// moments: front-back 8, long 2, lateral 10
const plate = {
  kind: 'tree',
  name: 'Plate',
  segments: [{ name: 'plate', massKg: 50, centreM: [0, 0, 0], inertiaKgM2: [8, 2, 10, 0, 0, 0] }],
};

interface Asked {
  h: [number, number, number];
  lean?: number;
  tilt?: number;
  twist?: number;
  duration?: number;
  target?: SkillFile['target'];
}

function sum(asked: Asked): Summary {
  const { h, lean = 0, tilt = 0, twist = 0, duration = 1, target } = asked;
  const file = {
    format: 'shapeflight-skill',
    version: 1,
    title: 'Plate',
    athlete: plate,
    takeoff: {
      massCentreHeightM: 1,
      velocityMPerS: { along: 0, up: 4.905 },
      attitudeDeg: { somersault: lean, tilt, twist },
      momentum: { vectorKgM2PerS: h },
    },
    end: { durationS: duration },
    schedule: {},
    ...(target ? { target } : {}),
  };
  const skill = launchedOf(parseSkill(file, { athletes: {}, shapes: {} }));
  const flight = flySkill(skill);
  return summarize(flight, calcFrames(flight, frameTimes(flight.duration, 240)), skill.target);
}

/** h about the lateral axis for n turns in 1 s. */
const turns = (n: number): [number, number, number] => [0, 0, 10 * REV * n];

describe('somersault', () => {
  test.each([
    ['backward', 1.25, 0, 1.25, 'backward'],
    ['forward', -1.25, 0, 1.25, 'forward'],
    ['backward about Z is forward for one who faces the other way', 1.25, 180, 1.25, 'forward'],
    ['a third of a turn', 1 / 3, 0, 1 / 3, 'backward'],
    ['too little for a word', 0.049, 0, 0.049, ''],
  ])('%s', (_, n, twist, done, word) => {
    const s = sum({ h: turns(n), twist });
    expect(s.somersaults).toBeCloseTo(done, 9);
    expect(Math.abs((s.somersaults ?? 0) - done)).toBeLessThan(TURN_TOLERANCE);
    expect(s.somersaultWord).toBe(word);
    expect(s.twists).toBeLessThan(TURN_TOLERANCE);
    expect(s.twistWord).toBe('');
  });

  test('the word does not flip after half a twist at take-off nor during the flight', () => {
    expect(sum({ h: [0, 4 * REV, 10 * REV * 0.8] }).somersaultWord).toBe('backward');
  });
});

test('twist about the long axis: one turn each 2 s per 2 pi of momentum, to the left when positive', () => {
  for (const [sign, word] of [
    [1, 'left'],
    [-1, 'right'],
  ] as const) {
    const s = sum({ h: [0, sign * 2 * REV * 1.5, 0] });
    expect(Math.abs((s.twists ?? 0) - 1.5)).toBeLessThan(TURN_TOLERANCE);
    expect(s.twistWord).toBe(word);
    expect(s.somersaultWord).toBe('');
    expect(s.twistRate?.value).toBeCloseTo(sign * 1.5 * REV, 9);
  }
});

const verdictOf = (s: Summary): SkillVerdict => calcSkillVerdict(s, {});
const sentenceOf = (s: Summary): string => wordVerdict(verdictOf(s));

describe('landing', () => {
  const one = { somersaults: 1, direction: 'backward', twists: 0 } as const;
  test.each([
    ['short', turns(0.95), 0, one, 18, 'short'],
    ['past', turns(1.05), 0, one, -18, 'past'],
    ['as wanted', turns(1), 0, one, 0, ''],
    ['short forward', turns(-0.95), 0, { ...one, direction: 'forward' }, 18, 'short'],
    ['short, with a lean at take-off taken in', turns(0.95), 10, one, 8, 'short'],
    ['short by more than half a turn', turns(0.4), 0, one, 216, 'short'],
    ['the wrong way round', turns(-0.1), 0, one, 396, 'short'],
    ['a dive that enters head first', turns(1.4), 0, { ...one, somersaults: 1.5, landingAngleDeg: 180 }, 36, 'short'],
    ['no target: to the nearest upright', turns(1.9), 0, undefined, 36, 'short'],
    ['a wanted lean', turns(1), 0, { ...one, landingAngleDeg: -10 }, -10, 'past'],
  ] as const)('%s', (_, h, lean, target, short, word) => {
    const s = sum({ h: [...h], lean, target });
    expect(s.landing?.short).toBeCloseTo(short * DEG, 8);
    expect(s.landing?.word).toBe(word);
  });

  test('head first is distinguished from upright', () => {
    expect(sum({ h: turns(0.5), target: { ...one, landingAngleDeg: 180 } }).landing?.inverted).toBe(true);
    expect(sum({ h: turns(0.5) }).landing?.inverted).toBe(false);
  });
});

test('tilt at the end keeps its sign and side', () => {
  const s = sum({ h: [0, 0, 0], tilt: 12 });
  expect(s.tilt).toBeCloseTo(12 * DEG, 12);
  expect(s.tiltWord).toBe('right');
  expect(sum({ h: [0, 0, 0], tilt: -12 }).tiltWord).toBe('left');
  expect(sum({ h: [0, 0, 0], tilt: 0.4 }).tiltWord).toBe('');
});

test('the highest point lies on the parabola: v^2 / 2 g above the start, at v / g', () => {
  const { height } = sum({ h: [0, 0, 0] });
  expect(height.t).toBeCloseTo(0.5, 12);
  expect(height.value).toBeCloseTo(1 + 4.905 ** 2 / (2 * 9.81), 12);
  // the flight ends on the way up
  const early = sum({ h: [0, 0, 0], duration: 0.25 }).height;
  expect(early.t).toBe(0.25);
});

describe('past 80 degrees of tilt', () => {
  // turning about the front-back axis: |tilt| passes 80 deg at t = 80 / 360 s
  const s = sum({ h: [8 * REV, 0, 0] });
  test('counts are blank, and it is said from when', () => {
    expect(s.undefinedFrom).toBeCloseTo(80 / 360, 9);
    expect([s.somersaults, s.twists, s.tilt, s.landing]).toEqual([undefined, undefined, undefined, undefined]);
    expect(s.somersaultWord + s.twistWord + s.tiltWord).toBe('');
  });
  test('in words and in JSON', () => {
    const said = { sentence: sentenceOf(s), verdict: verdictOf(s) };
    expect(said.sentence).toContain('not defined after 0.22 s');
    expect(formatSummary('Plate', said.sentence, s)).toContain('not defined');
    const json = JSON.parse(formatSummaryJson('Plate', said, s));
    expect(json.done).toMatchObject({ somersaults: null, twists: null, undefinedFromS: s.undefinedFrom });
    expect(json.landing).toBeNull();
  });
});

test('the sentence', () => {
  const target = { somersaults: 1, direction: 'backward', twists: 0 } as const;
  expect(sentenceOf(sum({ h: turns(0.95), target }))).toBe(
    '0.95 somersaults backward, no twist, 1.00 s in the air, ends 18 deg short',
  );
  expect(sentenceOf(sum({ h: turns(-1) }))).toBe('1.00 somersault forward, no twist, 1.00 s in the air, ends upright');
});

test('without a direction of rotation nothing is short or past', () => {
  expect(sentenceOf(sum({ h: turns(0) }))).toBe('No somersault, no twist, 1.00 s in the air, ends upright');
  expect(sentenceOf(sum({ h: turns(0.04) }))).toContain('ends leaning 14 deg back');
  expect(sentenceOf(sum({ h: turns(-0.04) }))).toContain('ends leaning 14 deg forward');
  expect(sentenceOf(sum({ h: turns(0.04), twist: 180 }))).toContain('ends leaning 14 deg forward');
  expect(formatSummary('Plate', '', sum({ h: turns(0.04) }))).not.toMatch(/short|past/);
  expect(formatSummary('Plate', '', sum({ h: turns(0) }))).toContain('This body has no joints.');
});
