/**
 * The numbers of docs/twist-and-shape.md. Two rules there are "common practice, no source": that a straight body has
 * "about twice the energy" of a tucked one, and a vault whose twist went 2.5 turns in one half somersault with the arms
 * in and 0.5 turn in the next with the arms out.
 */
import { describe, expect, it } from 'vitest';
import { shapes } from '../../presets/index.ts';
import { calcFrames, calcShapeMoments, calcTiltAccount, calcWobble, flySkill, frameTimes } from '../../sim/index.ts';
import { flyFor, rad, stopKeys, turn } from '../checks/flown.ts';
import { preset } from '../skill/load.ts';
import { type Degrees, man, move, poseRad, rest } from './adults.ts';

const momentsIn = (deg: Degrees) => calcShapeMoments(man, poseRad(man, deg));
const shape = (id: string): Degrees => shapes[id].angles;
const near = (value: number, wanted: number, tolerance: number): void =>
  expect(Math.abs(value - wanted), `${value} against ${wanted}`).toBeLessThanOrEqual(tolerance);
/** as printed in the page: half a unit of the last digit shown */
const TENTH = 0.05;
const HUNDREDTH = 0.005;

describe('energy of straight and tucked', () => {
  const straight = momentsIn(shape('straight')).lateral;
  const tuck = momentsIn(shape('tuck')).lateral;

  it('the lateral moments are 11.31 and 3.82 kg m2, in the ratio 2.96', () => {
    near(straight, 11.31, HUNDREDTH);
    near(tuck, 3.82, HUNDREDTH);
    near(straight / tuck, 2.96, HUNDREDTH);
  });

  it('at one revolution a second the straight body has 2.96 times the energy and the momentum', () => {
    near((straight * turn * turn) / 2, 223.2, TENTH);
    near((tuck * turn * turn) / 2, 75.3, TENTH);
    near(straight * turn, 71.0, TENTH);
    near(tuck * turn, 24.0, TENTH);
  });

  it('at h = 50 kg m2/s it is the tucked one that has 2.96 times the energy, and turns 2.96 times as fast', () => {
    near(50 ** 2 / (2 * straight), 110.6, TENTH);
    near(50 ** 2 / (2 * tuck), 327.6, TENTH);
    near(50 / straight / turn, 0.704, 0.0005);
    near(50 / tuck / turn, 2.086, 0.0005);
  });

  it('a flight that tucks at h = 50 shows both energies, and the joints put in the 217.1 J between', () => {
    const flight = flyFor(man, move(man, shape('straight'), shape('tuck'), 0.3), { h: [0, 0, 50], T: 0.4 });
    const f = calcFrames(flight, [0, 0.4]);
    near(f.eRotation[0], 110.6, TENTH);
    near(f.eRotation[1], 327.6, TENTH);
    near(f.jointWork[1], 217.1, TENTH);
    near(f.jointWork[1], f.eTotal[1] - f.eTotal[0], 1e-4);
    near(f.somersaultRate[1] / turn, 2.086, 0.0005);
  });
});

describe('arms in and arms out', () => {
  // the pose of the rule: toes pointed, arms abducted
  const arms = (shoulderElevation: number): Degrees => ({ anklePlantarFlexion: 60, shoulderElevation });
  const perTilt = ({ lateral, long }: { lateral: number; long: number }): number => (lateral - long) / long;
  const [inn, out] = [momentsIn(arms(3)), momentsIn(arms(90))];

  /** Flies h = 50 with the arms held, from a tilt at zero or quarter twist, over this many somersaults of F. */
  function held(elevation: number, tiltDeg: number, from: 'zero' | 'quarter', somersaults: number) {
    const twist = from === 'zero' ? 0 : turn / 4;
    const { lateral } = elevation === 3 ? inn : out;
    const T = (somersaults * turn * lateral * 1.2) / 50;
    const flight = flyFor(man, rest(man, arms(elevation)), { attitude: [0, tiltDeg * rad, twist], h: [0, 0, 50], T });
    const f = calcFrames(flight, frameTimes(T, 240));
    const done = [...f.somersault].findIndex((s) => s >= somersaults * turn);
    const twists = [...f.twist].slice(0, done + 1).map((x) => (x - twist) / turn);
    // at exactly this many somersaults, between the last two frames
    const [a, b] = [f.somersault[done - 1], f.somersault[done]].map((x) => x / turn);
    twists[done] = twists[done - 1] + ((twists[done] - twists[done - 1]) * (somersaults - a)) / (b - a);
    return { twists: twists[done], farthest: Math.max(...twists.map(Math.abs)), f, done };
  }

  it('(A - C)/C is 10.51 and 3.75, in the ratio 2.81', () => {
    near(perTilt(inn), 10.51, HUNDREDTH);
    near(perTilt(out), 3.75, HUNDREDTH);
    near(perTilt(inn) / perTilt(out), 2.81, HUNDREDTH);
  });

  it('2.5 twists in half a somersault take 28 deg of tilt with the arms in', () => {
    near(Math.asin(5 / perTilt(inn)) / rad, 28.4, TENTH);
    near(held(3, 28, 'zero', 0.5).twists, 2.5, 0.1);
  });

  it('at that tilt the arms-out body still twists 1.01 times in the half somersault, not 0.5', () => {
    near(held(90, 28, 'zero', 0.5).twists, 1.01, HUNDREDTH);
  });

  it('0.5 twist in the half somersault needs the tilt, at zero twist, brought down to about 12 deg', () => {
    near(held(90, 12, 'zero', 0.5).twists, 0.5, 0.03);
  });

  it('the critical tilts at a quarter twist are 4.3 deg with the arms in, 11.6 with them out', () => {
    const critical = (A: number, B: number, C: number): number =>
      Math.asin(Math.sqrt((1 / A - 1 / B) / (1 / C - 1 / B))) / rad;
    near(critical(inn.lateral, inn.frontBack, inn.long), 4.27, HUNDREDTH);
    near(critical(out.lateral, out.frontBack, out.long), 11.62, HUNDREDTH);
  });

  it('at 8 deg at a quarter twist the arms-in body twists on, the arms-out body swings +-44 deg about the quarter', () => {
    const wobble = held(90, 8, 'quarter', 3);
    near(wobble.farthest * 360, 43.7, TENTH);
    const twists = [...wobble.f.twist].slice(0, wobble.done);
    expect(Math.min(...twists)).toBeGreaterThan(0);
    expect(Math.max(...twists)).toBeLessThan(turn / 2);
    const steady = held(3, 8, 'quarter', 3);
    expect(steady.twists).toBeGreaterThan(4);
  });

  it('the mode flips at the critical tilt: 0.1 deg either side of 11.62', () => {
    expect(held(90, 11.5, 'quarter', 6).farthest).toBeLessThan(0.25);
    expect(held(90, 11.74, 'quarter', 6).farthest).toBeGreaterThan(1);
  });

  it('in one flight: arms in for half a somersault at 28 deg, out within 0.2 s: 2.57 twists, then 1.04, not 0.5', () => {
    const half = (turn * inn.lateral) / 2 / 50;
    const from = poseRad(man, arms(3));
    const to = poseRad(man, arms(90));
    const schedule = stopKeys(
      man,
      Object.fromEntries(
        man.angles.map(({ name }, i) => [
          name,
          [
            [half, from[i]],
            [half + 0.2, to[i]],
          ] as const,
        ]),
      ),
    );
    const flight = flyFor(man, schedule, { attitude: [0, 28 * rad, 0], h: [0, 0, 50], T: 2.4 * half });
    const f = calcFrames(flight, frameTimes(2.4 * half, 480));
    const at = (somersaults: number): number => [...f.somersault].findIndex((s) => s >= somersaults * turn);
    near(f.twist[at(0.5)] / turn, 2.57, 0.02);
    near((f.twist[at(1)] - f.twist[at(0.5)]) / turn, 1.04, 0.02);
    for (const s of [0.5, 1]) near(f.tilt[at(s)] / rad, 27.6, 0.6);
  });

  it('twists per somersault over three, as the page prints them', () => {
    const table = [
      [4, 0.92, 0.53],
      [8, 1.61, 0.76],
      [12, 2.33, 1.01],
      [20, 3.75, 1.5],
      [28, 5.09, 1.99],
    ];
    for (const [tilt, a, b] of table) {
      near(held(3, tilt, 'zero', 3).twists / 3, a, 0.05);
      near(held(90, tilt, 'zero', 3).twists / 3, b, 0.05);
    }
  });
});

describe('which tilt makes the twist, and how it comes about', () => {
  const full = preset('former/back-straight-full');
  const flight = flySkill(full);

  it('a full with one arm up and one down to the end, at 0.5 s: 8.3 and 11.1 deg of tilt, 1.35, 1.76 and 1.36 rev/s', () => {
    const long = calcWobble(flight, 0.5)?.long;
    if (!long) throw new Error('no momentum');
    near(long.lean / rad, 2.9, TENTH);
    near(long.axisTilt / rad, 8.3, TENTH);
    near(long.bodyTilt / rad, 11.1, TENTH);
    near(long.rateByAxis / turn, 1.35, HUNDREDTH);
    near(long.rateByBody / turn, 1.76, HUNDREDTH);
    near(long.rate / turn, 1.36, HUNDREDTH);
  });

  it('its greatest tilt, 11.1 deg: 4.8 by the arms, 5.7 round the leaning axis, 0.5 by breathing', () => {
    const { mechanism, total, tGreatest } = calcTiltAccount(full, { flight });
    const { parts, byLean, byBreathing } = mechanism.greatest;
    near(total.greatest / rad, 11.1, TENTH);
    near(tGreatest, 0.47, HUNDREDTH);
    near(Math.abs(parts[0].momentum), 6.2, TENTH);
    near(parts[0].turned / rad, 4.8, TENTH);
    near(byLean / rad, 5.7, TENTH);
    near(byBreathing / rad, 0.5, TENTH);
  });
});
