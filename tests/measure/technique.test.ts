/** Technique is read as it was put in: poses by hand, and times from the polynomial of a move, apart from the engine's own. */
import { describe, expect, test } from 'vitest';
import { athletes, shapes } from '../../presets/start.ts';
import {
  buildSkill,
  calcFrames,
  checkSkillFile,
  type FileBlock,
  frameTimes,
  launch,
  makeFlyer,
  parseSkill,
} from '../../sim/index.ts';
import { readTechnique, type Technique } from '../../sim/measure/technique.ts';

const DEG = 180 / Math.PI;
const RATE = 1000;
/** s: one row */
const ROW = 1 / RATE + 1e-9;

type Deg = Readonly<Record<string, number>>;
const block = (shape: string, from: number, to: number, adjustDeg: Deg = {}): FileBlock => ({
  shape,
  from: { anchor: 'takeoff', s: from },
  to: { anchor: 'takeoff', s: to },
  adjustDeg,
});

function read(blocks: readonly FileBlock[], momentum = [0, 0, 0] as [number, number, number]): Technique {
  const file = checkSkillFile({
    format: 'shapeflight-skill',
    version: 2,
    title: 'made for a test',
    athlete: { ref: 'ilse-marrow' },
    phases: [
      {
        kind: 'flight',
        takeoff: {
          lowestPointHeightM: 0,
          velocityMPerS: { along: 0, up: 4 },
          momentum: { vectorKgM2PerS: momentum },
        },
        end: { durationS: 0.8 },
        schedule: { base: 'straight', blocks: [...blocks] },
      },
    ],
  });
  const skill = buildSkill(parseSkill(file, { athletes, shapes }));
  const flight = makeFlyer({}).fly(launch(skill));
  return readTechnique(flight, calcFrames(flight, frameTimes(flight.duration, RATE)));
}
const held = (deg: Deg, shape = 'straight'): Technique => read([block(shape, 0, 0.8, deg)]);

/** Share of a minimum-jerk move that is done after the share s of its time (Flash & Hogan 1985). */
const moved = (s: number): number => s ** 3 * (10 - 15 * s + 6 * s * s);
/** The share of time after which that share is done. */
function timeOf(share: number): number {
  let [a, b] = [0, 1];
  for (let i = 0; i < 50; i++) [a, b] = moved((a + b) / 2) < share ? [(a + b) / 2, b] : [a, (a + b) / 2];
  return a;
}

describe('arms, legs, head', () => {
  test.each([
    [{ shoulderElevation: 180 }, 180],
    [{ shoulderElevation: 90 }, 90],
    [{ shoulderElevation: 120, shoulderPlane: 90 }, 120],
    [{ shoulderElevationL: 150, shoulderElevationR: 40 }, 40],
  ])('arms at %o are up by %f deg: the lower one counts', (deg, up) => {
    const { armsUpAtTakeoff = 0, armsUpAtTouchdown = 0, armsUnevenAtTouchdown = 0 } = held(deg as Deg);
    // deg: a hand's centre lies on the line of the arm
    expect(armsUpAtTakeoff * DEG).toBeCloseTo(up, 1);
    expect(armsUpAtTouchdown * DEG).toBeCloseTo(up, 1);
    expect(armsUnevenAtTouchdown * DEG).toBeCloseTo('shoulderElevationL' in deg ? 110 : 0, 1);
  });

  test('legs opened by 15 deg to each side are 30 deg apart', () =>
    expect((held({ hipAbduction: 15 }).legsApart ?? 0) * DEG).toBeCloseTo(30, 6));

  test('one knee bent alone parts the shanks', () =>
    expect((held({ kneeFlexionL: 40 }).legsApart ?? 0) * DEG).toBeCloseTo(40, 6));

  test('bends at touchdown: hips and spine together, the more bent knee, the neck', () => {
    const t = held({ hipFlexion: 30, lumbarFlexion: 10, kneeFlexionL: 20, kneeFlexionR: 25, neckFlexion: -12 });
    expect([t.hipAtTouchdown, t.kneeAtTouchdown, t.headOff].map((x = 0) => Math.round(x * DEG * 1e6) / 1e6)).toEqual([
      40, 25, 12,
    ]);
  });
});

describe('tuck', () => {
  const t = read([
    block('straight', -0.1, 0.1),
    block('straight', 0.3, 0.5, { hipFlexion: 110, kneeFlexion: 120 }),
    block('straight', 0.7, 0.8),
  ]);

  test('is tight while within 15 deg of its deepest', () => {
    const late = timeOf(1 - 15 / 110) * 0.2;
    expect(Math.abs((t.tightFrom ?? 0) - (0.1 + late))).toBeLessThan(ROW);
    expect(Math.abs((t.tightTo ?? 0) - (0.7 - late))).toBeLessThan(ROW);
  });

  test('is straight again once hips and knees are bent by less than 30 deg', () =>
    expect(Math.abs((t.straightBy ?? 0) - (0.5 + 0.2 * timeOf(1 - 30 / 120)))).toBeLessThan(ROW));

  test('says how far the hands are from the legs: hands that hold the shins are on their skin', () => {
    // arms hang beside the hips, the shins are before the body
    expect(t.handsToLegs).toBeGreaterThan(0.1);
    // the hand's half thickness and the slack of the hold, m: measured 0.01 to 0.04
    const { handsToLegs = 1 } = held({}, 'tuck');
    expect(handsToLegs).toBeGreaterThan(0);
    expect(handsToLegs).toBeLessThan(0.15);
  });

  test('a straight body is never tight', () => expect(held({}).tightFrom).toBeUndefined());
});

describe('wrap', () => {
  const blocks = [block('armsOverhead', -0.1, 0.1), block('wrapped', 0.25, 0.5), block('tShape', 0.65, 0.8)];

  test('is as long as the arms are in the shape, and the way there before and after', () => {
    const { wrappedFrom = 0, wrappedTo = 0 } = read(blocks);
    // a wrap counts from the moment that hands are near and elbows bent: within the moves of 0.15 s
    expect(wrappedFrom).toBeGreaterThan(0.1);
    expect(wrappedFrom).toBeLessThanOrEqual(0.25);
    expect(wrappedTo).toBeGreaterThanOrEqual(0.5);
    expect(wrappedTo).toBeLessThan(0.65);
  });

  test('arms by the sides, overhead or in a T are none', () => {
    for (const shape of ['straight', 'armsOverhead', 'tShape', 'tuck'])
      expect(held({}, shape).wrappedFrom, shape).toBeUndefined();
  });

  test('twist is counted from it: a body that turns at a steady rate', () => {
    const body = read([block('wrapped', 0, 0.4), block('wrapped', 0.41, 0.8, { elbowFlexion: 30 })], [0, 6, 0]);
    expect(body.twistBack).toBeCloseTo(0, 9);
    expect(body.twistInLastQuarter).toBeGreaterThan(0.15);
    expect(body.twistInLastQuarter).toBeLessThan(0.35);
    expect(body.twistAfterWrap).toBeGreaterThan(0);
  });
});

test('a straight jump turned from the floor: rate, tilt and momentum at take-off', () => {
  const t = read([block('straight', 0, 0.8)], [0, 6, 0]);
  const { massKg = 0, statureM = 1 } = athletes['ilse-marrow'] as { massKg: number; statureM: number };
  expect(t.momentumPerMH2).toBeCloseTo(6 / (massKg * statureM ** 2), 9);
  expect(t.twistRateAtTakeoff).toBeGreaterThan(6);
  expect(t.tiltAtTakeoff).toBeCloseTo(0, 9);
  expect(t.airTime).toBe(0.8);
  // by hand: v^2 / 2 g over where the mass centre leaves
  expect(t.peakHeight).toBeGreaterThan(4 ** 2 / (2 * 9.81));
});
