/**
 * How far the body frame F turns while a body without angular momentum changes its shape: it would stand still for two
 * rigid halves on one hinge, and turns a little for a human. The numbers of docs/conventions.md, "The body frame".
 */
import { expect, it } from 'vitest';
import { type Body, calcFrames, frameTimes } from '../../sim/index.ts';
import { flyFor, rad } from '../checks/flown.ts';
import { type Degrees, man, move, woman } from './adults.ts';

const rounded = { lumbarFlexion: 50, thoracicFlexion: 30 };
const forward = (shoulderElevation: number): Degrees => ({ shoulderPlane: 90, shoulderElevation });
const tuck = { hipFlexion: 135, kneeFlexion: 140 };

interface Turn {
  /** largest turn from the start, either way, deg */
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  /** rev/s, in a change of shape that takes 0.5 s */
  readonly rate: number;
}

function turnOf(body: Body, from: Degrees, to: Degrees): Turn {
  const flight = flyFor(body, move(body, from, to, 0.5), { h: [0, 0, 0], T: 0.5 });
  const f = calcFrames(flight, frameTimes(0.5, 120));
  const far = (x: Float64Array): number => Math.max(...[...x].map((v) => Math.abs(v - x[0]))) / rad;
  const rate = Math.max(...[...f.somersaultRate].map(Math.abs)) / (360 * rad);
  return { somersault: far(f.somersault), tilt: far(f.tilt), twist: far(f.twist), rate };
}

const worst = (bodies: readonly Body[], shapes: readonly Degrees[], key: keyof Turn): number =>
  Math.max(...bodies.flatMap((body) => shapes.map((shape) => turnOf(body, {}, shape)[key])));

const both = [man, woman];

it('tucks and pikes with a straight spine turn F by at most 3.2 deg, 4.2 with the arms swung forward', () => {
  const hips = [30, 60, 90, 120, 150, 170].map((hipFlexion) => ({ hipFlexion }));
  expect(worst(both, [tuck, { hipFlexion: 110, kneeFlexion: 110 }, ...hips], 'somersault')).toBeLessThanOrEqual(3.2);
  const withArms = [
    { ...tuck, ...forward(60) },
    { hipFlexion: 150, ...forward(120) },
  ];
  expect(worst(both, withArms, 'somersault')).toBeLessThanOrEqual(4.2);
});

it('the pelvis itself seems to somersault at 0.5 rev/s and more in the same pike, F at less than 0.02', () => {
  const flight = flyFor(man, move(man, {}, { hipFlexion: 150 }, 0.5), { h: [0, 0, 0], T: 0.5 });
  const f = calcFrames(flight, frameTimes(0.5, 120));
  let pelvis = 0;
  for (let i = 0; i < f.n; i++) pelvis = Math.max(pelvis, Math.abs(f.w_WB_B[3 * i + 2]) / (360 * rad));
  expect(pelvis).toBeGreaterThanOrEqual(0.5);
  expect(turnOf(man, {}, { hipFlexion: 150 }).rate).toBeLessThanOrEqual(0.02);
});

it('a spine rounded by 80 deg adds: 8 deg in a tuck, 13 in a pike of 120, 18.2 in one of 170', () => {
  expect(worst(both, [{ ...tuck, ...rounded }], 'somersault')).toBeLessThanOrEqual(8);
  expect(worst(both, [{ hipFlexion: 120, ...rounded }], 'somersault')).toBeLessThanOrEqual(13);
  const deepest = worst(both, [{ hipFlexion: 170, ...rounded }], 'somersault');
  expect(deepest).toBeLessThanOrEqual(18.2);
  expect(deepest).toBeGreaterThanOrEqual(17);
});

it('straddles turn it the other way: 10 deg at 45 deg of abduction, 15.3 at 60, 20.3 at 75', () => {
  const straddle = (hipAbduction: number): Degrees[] => [90, 120].map((hipFlexion) => ({ hipFlexion, hipAbduction }));
  expect(worst(both, straddle(45), 'somersault')).toBeLessThanOrEqual(10);
  expect(worst(both, straddle(60), 'somersault')).toBeLessThanOrEqual(15.3);
  const widest = worst(both, straddle(75), 'somersault');
  expect(widest).toBeLessThanOrEqual(20.3);
  expect(widest).toBeGreaterThanOrEqual(19);
});

it('arms swung to overhead by the front turn it by 7 deg: they belong to neither of its halves', () => {
  const turned = worst(both, [forward(180)], 'somersault');
  expect(turned).toBeLessThanOrEqual(7);
  expect(turned).toBeGreaterThanOrEqual(6);
});

it('a 40 deg turn of the trunk held in a pike shows up to 8 deg of tilt and 20.3 of twist', () => {
  let [tilt, twist] = [0, 0];
  for (const body of both)
    for (const hipFlexion of [60, 90, 120, 150])
      for (const [lumbarTurn, thoracicTurn] of [
        [20, 20],
        [40, 0],
        [0, 40],
      ]) {
        const shown = turnOf(body, { hipFlexion }, { hipFlexion, lumbarTurn, thoracicTurn });
        tilt = Math.max(tilt, shown.tilt);
        twist = Math.max(twist, shown.twist);
      }
  expect(tilt).toBeLessThanOrEqual(8);
  expect(tilt).toBeGreaterThanOrEqual(7);
  expect(twist).toBeLessThanOrEqual(20.3);
  expect(twist).toBeGreaterThanOrEqual(18);
});

it('in a straight body the same turn of the trunk shows less than 5 deg of twist', () => {
  const turned = Math.max(...both.map((body) => turnOf(body, {}, { lumbarTurn: 20, thoracicTurn: 20 }).twist));
  expect(turned).toBeLessThanOrEqual(5);
});
