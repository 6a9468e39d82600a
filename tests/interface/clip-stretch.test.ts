// Nothing that was marked is lost when another stretch of a long clip is put on the ruler.

import { expect, test } from 'vitest';
import type { ClipMeasured } from '../../sim/index.ts';
import { onStretch, stretchOf } from '../../src/features/film/clip-stretch.ts';

const stampsFrom = (from: number) => ({ stamps: Float64Array.from({ length: 120 }, (_, k) => from + k / 10) });
const [first, second, far] = [stampsFrom(0), stampsFrom(6), stampsFrom(60)];
const marked: ClipMeasured = {
  trueHz: 120,
  marks: [
    { kind: 'takeoff', frame: 20 },
    { kind: 'landing', frame: 70 },
  ],
  posed: [],
};

test('what lies on both stretches keeps its instant; what does not is said to stay', () => {
  const { measuring, isSome } = onStretch(marked, first, second);
  expect(measuring.marks).toEqual([{ kind: 'landing', frame: 10 }]);
  expect(second.stamps[10]).toBe(first.stamps[70]);
  expect(isSome).toBe(true);
  expect(measuring.trueHz).toBe(120);
});

test('away and back again all of it is there, with what was changed since that is no mark', () => {
  const away = onStretch(marked, first, far);
  expect(away).toMatchObject({ measuring: { marks: [] }, isSome: true });
  const back = onStretch({ ...away.measuring, trueHz: 240 }, far, first, marked);
  expect(back).toEqual({ measuring: { ...marked, trueHz: 240 }, isSome: false });
});

test('a stretch is known by the file and where it begins', () => {
  const file = { name: 'a.mp4', bytes: 9 };
  expect(new Set([stretchOf(file, 0), stretchOf(file, 12), stretchOf({ ...file, bytes: 8 }, 0)]).size).toBe(3);
});
