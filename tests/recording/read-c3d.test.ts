// Binary points in every byte order: numbers by hand, in bytes by hand, and through a writer apart from the reader.
import { describe, expect, test } from 'vitest';
import { readRecording } from '../../sim/recording/read-recording.ts';
import { type C3dSpec, float, type Processor, texts, word, writeC3d } from './c3d-writer.ts';
import { pointOf } from './parts.ts';

const SPEC: C3dSpec = {
  labels: ['LELB', 'RELB'],
  frames: [
    [
      [100.5, -20.25, 1500],
      [1, 2, 3],
    ],
    [[101, -20, 1499.5], null],
    [
      [-0.5, 0, 7],
      [4, 5, 6],
    ],
  ],
  rate: 120,
};
const no = Number.NaN;
const LEFT = [100.5, -20.25, 1500, 101, -20, 1499.5, -0.5, 0, 7];
const RIGHT = [1, 2, 3, no, no, no, 4, 5, 6];
const read = (spec: C3dSpec) => readRecording('a.c3d', writeC3d(spec));

describe.each(['Intel', 'DEC', 'MIPS'] as Processor[])('%s', (processor) => {
  test('floats', () => {
    const r = read({ ...SPEC, processor });
    expect([r.kind, r.frames, r.rateHz, r.unitM, r.up, r.notes]).toEqual(['c3d', 3, 120, 0.001, '+z', []]);
    expect([pointOf(r, 'LELB'), pointOf(r, 'RELB')]).toEqual([LEFT, RIGHT]);
    expect([...r.times]).toEqual([0, 1 / 120, 2 / 120]);
  });

  test('whole numbers times a scale', () => {
    const r = read({ ...SPEC, processor, isFloat: false, scale: 0.25 });
    expect([pointOf(r, 'LELB'), pointOf(r, 'RELB')]).toEqual([LEFT, RIGHT]);
  });

  test('analog values are passed over and counted; locked names are read', () => {
    const r = read({ ...SPEC, processor, analog: 6, isLocked: true });
    expect([pointOf(r, 'LELB'), pointOf(r, 'RELB')]).toEqual([LEFT, RIGHT]);
    expect(r.notes).toEqual(['6 analog channels are left out (6 values a frame).']);
  });
});

test('a float of the VAX is read from its bytes: 1, -2.5 and 0 as the handbook has them', () => {
  // 1.0 is 4080 0000, -2.5 is C120 0000 (words in hexadecimal), each word with its low byte first
  const bytes = writeC3d({ ...SPEC, processor: 'DEC' });
  const at = 512 * (bytes[16] + 256 * bytes[17] - 1);
  bytes.set([0x80, 0x40, 0, 0, 0x20, 0xc1, 0, 0, 0, 0, 0, 0], at);
  expect(pointOf(readRecording('a.c3d', bytes), 'LELB').slice(0, 3)).toEqual([1, -2.5, 0]);
});

test('more labels than one parameter holds go on in the next; a point without a label gets its number', () => {
  const labels = ['A', 'B', 'C', 'D', 'E'];
  const frames = [0, 1].map((i) => labels.map((_, k) => [k, i, 1]));
  expect(read({ labels, frames, labelsEach: 2 }).points.map(({ name }) => name)).toEqual(labels);
  const short = read({ labels, frames, extra: [texts('POINT:LABELS', ['A', 'B'])] });
  expect(short.points.map(({ name }) => name)).toEqual(['A', 'B', 'point 3', 'point 4', 'point 5']);
});

test('more frames than a word counts are stated by the trial', () => {
  const count = 65_540;
  const frames = Array.from({ length: count }, (_, i) => [[i / 64, 1, 1]]);
  const two = (n: number): [number, number] => [n & 0xffff, n >> 16];
  const r = read({
    labels: ['A'],
    frames,
    isFloat: false,
    scale: 1,
    extra: [word('TRIAL:ACTUAL_START_FIELD', ...two(1)), word('TRIAL:ACTUAL_END_FIELD', ...two(count))],
  });
  expect([r.frames, r.points[0].p[3 * (count - 1)]]).toEqual([count, Math.round((count - 1) / 64)]);
});

test('counts that do not agree are said; the one that the file has room for holds', () => {
  const r = read({ ...SPEC, extra: [word('POINT:FRAMES', 900)] });
  expect([r.frames, r.notes]).toEqual([3, ['The file states 900 and 3 frames: 3 are read.']]);
  const cut = writeC3d({ ...SPEC, header: { last: 900 }, extra: [word('POINT:FRAMES', 900)] });
  const { frames, notes } = readRecording('a.c3d', cut.subarray(0, cut.length - 448));
  expect([frames, notes]).toEqual([2, ['The file states 900 frames and ends after 2: the 2 are read.']]);
});

test('without parameters the header says points, rate, scale and place', () => {
  const leaveOut = ['POINT:USED', 'POINT:SCALE', 'POINT:RATE', 'POINT:FRAMES', 'POINT:DATA_START', 'POINT:UNITS'];
  const r = read({ ...SPEC, leaveOut });
  expect(pointOf(r, 'LELB')).toEqual(LEFT);
  expect([r.rateHz, r.unitM, r.notes]).toEqual([120, undefined, ['The file states no unit of length.']]);
});

test.each<[string, C3dSpec, string]>([
  ['no point', { ...SPEC, extra: [word('POINT:USED', 0)] }, 'POINT:USED: 0'],
  ['a rate of 0', { ...SPEC, extra: [float('POINT:RATE', 0)] }, 'POINT:RATE: 0'],
  ['a negative rate', { ...SPEC, extra: [float('POINT:RATE', -100)] }, 'POINT:RATE: -100'],
  ['a scale of 0', { ...SPEC, extra: [float('POINT:SCALE', 0)] }, 'POINT:SCALE: 0'],
  ['too many points', { ...SPEC, extra: [word('POINT:USED', 60000)] }, 'POINT:USED: 60000'],
  ['a processor that is none', { ...SPEC, over: [[515, 99]] }, 'a.c3d byte 515: 99'],
  [
    'a place beyond all bounds',
    {
      ...SPEC,
      frames: [
        [[1, 2, 1e30], null],
        [[1, 2, 3], null],
      ],
    },
    'frame 1 point "LELB"',
  ],
])('%s is refused', (_, spec, message) => expect(() => read(spec)).toThrow(message));
