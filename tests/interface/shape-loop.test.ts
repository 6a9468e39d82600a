// Turning without angular momentum: the loop that two joint angles go round.
import { expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { AXES, listParts } from '../../src/features/why/axis-momentum.ts';
import { findLoop, loopArea } from '../../src/features/why/shape-loop.ts';

const engine = makeEngine({ athletes, shapes });

const round = (times: number, way = 1): (readonly [number, number])[] =>
  Array.from({ length: 400 }, (_, i) => {
    const a = (way * 2 * Math.PI * times * i) / 400;
    return [0.5 * Math.cos(a), 0.5 * Math.sin(a)] as const;
  });

test('a loop counts each time it is gone round, with its sense; there and back goes round nothing', () => {
  /** of a polygon of 400 corners: 4e-5 of the circle */
  const DIGITS = 3;
  expect(loopArea(round(1))).toBeCloseTo(Math.PI / 4, DIGITS);
  expect(loopArea(round(2))).toBeCloseTo(Math.PI / 2, DIGITS);
  expect(loopArea(round(2, -1))).toBeCloseTo(-Math.PI / 2, DIGITS);
  const there = Array.from({ length: 50 }, (_, i) => [i / 50, Math.sin(i / 20)] as const);
  expect(loopArea([...there, ...there.toReversed()])).toBeCloseTo(0, 12);
});

type Key = { angle: string; deg: number };
/** The quarter turn with the spread of its legs changed; a file is plain data. */
function catTurn(change: (key: Key) => Key) {
  const file = structuredClone(skills['cat-turn']);
  const keys = JSON.stringify(file, (name, value: unknown) => (name === 'keys' ? (value as Key[]).map(change) : value));
  const { frames, skill } = engine.fly(JSON.parse(keys));
  const names = skill.body.angles.map((one) => one.name);
  return { frames, loop: findLoop(frames, names), names };
}
const isSpread = ({ angle }: Key): boolean => angle.startsWith('hipAbduction');

test('the quarter turn from rest goes round a loop of pike and spread; the other way round it turns the other way; along one line nothing is left', () => {
  const { frames, loop, names } = catTurn((key) => key);
  expect([loop?.across, loop?.up].map((k) => names[k ?? 0])).toEqual(['hipFlexionL', 'hipAbductionL']);
  const turn = frames.twist[frames.n - 1];
  // a quarter turn, of a loop of 2.07 rad² in two rounds
  expect(Math.abs(turn)).toBeGreaterThan(1);
  expect(Math.abs(loop?.areaRad2 ?? 0)).toBeCloseTo(2.07, 2);
  const mirrored = catTurn((key) => (isSpread(key) ? { ...key, deg: -key.deg } : key));
  expect(mirrored.loop?.areaRad2).toBeCloseTo(-(loop?.areaRad2 ?? 0), 6);
  /** rad; measured 3e-10 */
  expect(mirrored.frames.twist[mirrored.frames.n - 1] + turn).toBeCloseTo(0, 6);
  const line = catTurn((key) => (isSpread(key) ? { ...key, deg: 0 } : key));
  expect(line.loop).toBeUndefined();
  expect(line.frames.twist[line.frames.n - 1]).toBeCloseTo(0, 9);
  // with angular momentum it is not the loop that turns
  const tuck = engine.fly(skills['back-tuck']);
  expect(
    findLoop(
      tuck.frames,
      tuck.skill.body.angles.map((one) => one.name),
    ),
  ).toBeUndefined();
});

test('what parts carry about an axis adds up to the whole, with its sign', () => {
  const { frames } = engine.fly(skills['back-straight-full']);
  /** kg m²/s of some 50; the parts are summed on their own */
  const WITHIN = 8;
  for (const axis of AXES) {
    const all = listParts(frames, axis);
    const whole = all.at(-1);
    expect(whole?.group).toBe('sum');
    for (let i = 0; i < frames.n; i += 17) {
      const sum = all.slice(0, -1).reduce((so, { column }) => so + column[i], 0);
      expect(sum).toBeCloseTo(whole?.column[i] ?? Number.NaN, WITHIN);
    }
  }
  // without any of it, what the legs take the trunk gives
  const still = listParts(engine.fly(skills['cat-turn']).frames, 'long');
  const [upper, legs] = ['upper', 'legs'].map((group) => still.find((one) => one.group === group)?.column);
  const most = legs?.findIndex((v) => Math.abs(v) === Math.max(...legs.map(Math.abs))) ?? 0;
  expect(Math.sign(upper?.[most] ?? 0)).toBe(-Math.sign(legs?.[most] ?? 0));
  expect(Math.abs(legs?.[most] ?? 0)).toBeGreaterThan(0.5);
});
