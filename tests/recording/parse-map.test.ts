// A map as a file: read, written, read again the same; what is wrong in it is said with its path.
import { expect, test } from 'vitest';
import { MAP_ENTRIES } from '../../sim/files/recording-map-file.ts';
import { formatMap, parseMap } from '../../sim/recording/parse-map.ts';
import { RECORDING_LIMITS } from '../../sim/recording/recording-limits.ts';
import type { ColumnMeaning, RecordingMap } from '../../sim/recording/recording-map.ts';

const means: readonly ColumnMeaning[] = [
  { kind: 'angle', angle: 'kneeFlexionL', inRadians: false },
  { kind: 'point', point: 'LELB', axis: 2, unitM: 0.001 },
  { kind: 'quaternion', of: 'thighL', part: 3 },
  { kind: 'matrix', of: 'F', part: 5 },
  { kind: 'attitude', of: 'trunk', part: 'twist', inRadians: true },
  { kind: 'ignored' },
];
const MAP: RecordingMap = {
  unitM: 0.01,
  up: '-z',
  joints: [{ from: 'Hips', segment: 'pelvis', basis: 'hand' }],
  points: [
    { from: 'LELB', segment: 'upperArmL', at_B: [0, -0.25, 0.02], isFixed: true, basis: 'hand' },
    { from: 'stray', segment: '', basis: 'hand' },
  ],
  columns: means.map((one, k) => ({ from: `column ${k}`, means: one, basis: 'hand' })),
};

test('a map that is written reads back the same', () => {
  expect(parseMap(JSON.parse(formatMap(MAP)))).toEqual(MAP);
  expect(parseMap(JSON.parse(formatMap({})))).toEqual({});
});

test('what was known by its name is by hand once a file states it', () => {
  const named = { ...MAP, joints: [{ ...MAP.joints[0], basis: 'name' as const }] };
  expect(parseMap(JSON.parse(formatMap(named))).joints?.[0].basis).toBe('hand');
});

const head = { format: 'shapeflight-recording-map', version: 1 };
test.each<[string, unknown, string]>([
  ['another format', { format: 'shapeflight-sheet' }, 'format: "shapeflight-sheet"'],
  ['a later version', { ...head, version: 2 }, 'version: 2 is not possible; allowed: 1'],
  ['a unit of 0', { ...head, unitM: 0 }, 'unitM: 0'],
  ['an axis that is none', { ...head, up: 'up' }, 'up: "up"'],
  ['a joint without a segment', { ...head, joints: [{ from: 'a' }] }, 'joints[0].segment: this field is missing'],
  ['a place of two numbers', { ...head, points: [{ from: 'a', segment: 'b', atM: [1, 2] }] }, 'points[0].atM'],
  [
    'a place far from the body',
    { ...head, points: [{ from: 'a', segment: 'b', atM: [1, 2, 30] }] },
    'points[0].atM[2]: 30',
  ],
  [
    'a kind that is none',
    { ...head, columns: [{ from: 'a', means: { kind: 'mood' } }] },
    'columns[0].means.kind: "mood"',
  ],
  [
    'a row 4',
    { ...head, columns: [{ from: 'a', means: { kind: 'matrix', of: 'F', row: 4, column: 1 } }] },
    'columns[0].means.row: 4',
  ],
  [
    'a name twice',
    {
      ...head,
      joints: [
        { from: 'a', segment: 'b' },
        { from: 'a', segment: 'c' },
      ],
    },
    'joints[1].from: "a"',
  ],
  ['an unknown field', { ...head, colour: 1 }, 'colour: unknown field; allowed: only the fields of docs/recording.md'],
  ['a list', [], 'file: an empty list'],
])('%s is refused with its path', (_, json, message) => expect(() => parseMap(json)).toThrow(message));

test('a map has room for as many entries as a recording has columns', () =>
  expect(MAP_ENTRIES).toBe(RECORDING_LIMITS.columns));
