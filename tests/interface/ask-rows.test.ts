// Rows of Ask: shapes of an answer on the ruler, limits that it lies at, lines of spans, contours, and the sentence of what it does.
import { expect, test } from 'vitest';
import { RAD } from '../../sim/math/angles.ts';
import type { AskInput } from '../../src/engine/ask.ts';
import { heldSpans, movedEdges } from '../../src/features/ask/answer-shapes.ts';
import { clausesOfAnswer, sentenceOf } from '../../src/features/ask/answer-words.ts';
import { packLines } from '../../src/features/ask/lines.ts';
import { findLevels } from '../../src/features/ask/map-levels.ts';
import { listAtEnds } from '../../src/features/ask/span-ends.ts';

const at = (anchor: 'takeoff' | 'touchdown', s: number) => ({ anchor, s });
const block = (from: ReturnType<typeof at>, to: ReturnType<typeof at>, pose = {}) =>
  ({ shape: 'x', pose, adjust: {}, from, to, arms: 'joint' }) as never;

test('an answer has its shapes by the events of its own flight; edges that moved inside the flight are those of the skill as it is', () => {
  const blocks = [block(at('takeoff', 0), at('takeoff', 0.1)), block(at('takeoff', 0.3), at('touchdown', -0.2))];
  const now = heldSpans({ blocks }, { apex: 0.5, touchdown: 1 });
  expect(now).toEqual([
    { from: 0, to: 0.1 },
    { from: 0.3, to: 0.8 },
  ]);
  const answer = heldSpans({ blocks }, { apex: 0.5, touchdown: 1.1 });
  expect(movedEdges(now, answer, 1)).toEqual([0.8]);
  expect(movedEdges(now, now, 1)).toEqual([]);
});

test('an answer at the end of a span offers a wider one, cut at what is possible; one inside offers none', () => {
  const chosen = [
    { id: 'a', from: 0, to: 10 },
    { id: 'b', from: 0, to: 10 },
    { id: 'c', from: 0, to: 10 },
    { id: 'd', from: 0, to: 10 },
  ];
  const ranges: Record<string, readonly [number, number]> = {
    a: [-100, 100],
    b: [-100, 12],
    c: [-100, 100],
    d: [0, 10],
  };
  expect(listAtEnds(chosen, [0, 9.99, 5, 0], (id) => ranges[id])).toEqual([
    { id: 'a', side: 'from', wider: -5 },
    { id: 'b', side: 'to', wider: 12 },
    { id: 'd', side: 'from' },
  ]);
});

test('spans that do not touch share a line of the ruler', () => {
  expect(
    packLines([
      { left: 400, right: 600 },
      { left: 0, right: 300 },
      { left: 200, right: 350 },
    ]),
  ).toEqual([0, 0, 1]);
});

test('where a result does not vary a map has no contours; where it does each has a number of its own', () => {
  const round = (): number[] => [1, 2, 3, 4, 5, 6, 7, 8].map((k) => k * 1e-7);
  expect(findLevels([0, 4e-7, 8e-7], 'rev', round).levels).toEqual([]);
  expect(findLevels([Number.NaN], 'rev', round).levels).toEqual([]);
  expect(findLevels([0.9, 1.1], 'rev', () => [0.95, 1, 1.05])).toEqual({ levels: [0.95, 1, 1.05], decimals: 2 });
});

const input = (id: string, unit: AskInput['unit'], value: number): AskInput => ({
  id,
  unit,
  level: 'takeoff',
  value,
  range: [-100, 100],
  scale: 1,
});

test('what an answer does is one sentence: momentum off the floor, lean, the move that begins earlier', () => {
  const spec = {
    blocks: [
      block(at('takeoff', 0), at('takeoff', 0.1), { shoulderElevation: 3 }),
      block(at('takeoff', 0.3), at('takeoff', 0.5), { elbowFlexion: 90 * RAD }),
    ],
  };
  const setting = { spec, words: ['overhead', 'wrapped'], pushedOff: 'the floor', momentum: [48.9, 50.22] as const };
  const changes = [
    { input: input('takeoff.h.z', 'kgM2PerS', 48.9), value: 50.22, name: 'Somersault momentum' },
    { input: input('takeoff.lean', 'rad', 0), value: -9.8 * RAD, name: 'Lean backward' },
    { input: input('block:2.moveStart', 's', 0.1), value: 0.06, name: 'wrapped starts' },
    { input: input('takeoff.speedAlong', 'mPerS', 1), value: 1.0001, name: 'Speed forward' },
  ];
  expect(sentenceOf('Answer 1', clausesOfAnswer(changes, setting))).toBe(
    'Answer 1 leaves the floor with 2.7 % more momentum, leans 9.8° forward and goes into the wrap 0.04 s earlier.',
  );
  expect(sentenceOf('Answer 1', clausesOfAnswer([], { ...setting, momentum: [48.9, 48.9] }))).toBe(
    'Answer 1 changes nothing.',
  );
});
