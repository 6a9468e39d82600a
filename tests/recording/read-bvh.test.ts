// Skeletons: matrices and places by hand, any order of channels and any way of writing; what is no skeleton says so.
import { describe, expect, test } from 'vitest';
import { readText } from './parts.ts';

const ARM = `HIERARCHY
ROOT hips
{
  OFFSET 0 1 0
  CHANNELS 6 Xposition Yposition Zposition Zrotation Xrotation Yrotation
  JOINT upper arm
  {
    OFFSET 0 0 -0.2
    CHANNELS 3 Yrotation Zrotation Xrotation
    End Site
    {
      OFFSET 0 -0.3 0
    }
  }
}
MOTION
Frames: 2
Frame Time: 0.01
0 0 0 0 0 0 0 0 0
1 2 3 90 0 0 0 90 0
`;

const rounded = (list: ArrayLike<number>): number[] => Array.from(list, (x) => Math.round(x * 1e12) / 1e12 + 0);

test('joints, offsets, ends and rate are those of the file', () => {
  const r = readText('arm.bvh', ARM);
  expect([r.kind, r.frames, r.rateHz, r.unitM, r.notes]).toEqual(['bvh', 2, 100, undefined, []]);
  expect(r.joints.map(({ name, parent, offset, ends }) => [name, parent, offset, ends])).toEqual([
    ['hips', -1, [0, 1, 0], []],
    ['upper arm', 0, [0, 0, -0.2], [[0, -0.3, 0]]],
  ]);
  expect([...r.times]).toEqual([0, 0.01]);
});

test('90 degrees about Z turns X into Y; the root lies at its offset plus its place', () => {
  const [hips, arm] = readText('arm.bvh', ARM).joints;
  // columns are where the axes go: X to Y, Y to -X
  expect(rounded(hips.R.subarray(9))).toEqual([0, -1, 0, 1, 0, 0, 0, 0, 1]);
  expect(rounded(arm.R.subarray(9))).toEqual([0, -1, 0, 1, 0, 0, 0, 0, 1]);
  expect([...(hips.p ?? [])]).toEqual([0, 1, 0, 1, 3, 3]);
  expect(arm.p).toBeUndefined();
});

test('rotations are composed in the order of the channels: Z then X is not X then Z', () => {
  const order = (first: string, second: string): number[] =>
    rounded(
      readText(
        'a.bvh',
        `HIERARCHY ROOT a { OFFSET 0 0 0 CHANNELS 2 ${first}rotation ${second}rotation } MOTION Frames: 2 Frame Time: 0.1\n90 90\n0 0\n`,
      ).joints[0].R.subarray(0, 9),
    );
  // Rz(90) Rx(90): X to Y, Y to Z, Z to X
  expect(order('Z', 'X')).toEqual([0, 0, 1, 1, 0, 0, 0, 1, 0]);
  // Rx(90) Rz(90): X to Z, Y to -X, Z to -Y
  expect(order('X', 'Z')).toEqual([0, -1, 0, 0, 0, -1, 1, 0, 0]);
});

describe('the same skeleton, written another way', () => {
  const plain = readText('arm.bvh', ARM);
  test.each([
    ['carriage returns', ARM.replaceAll('\n', '\r')],
    ['both line ends', ARM.replaceAll('\n', '\r\n')],
    ['mixed line ends', ARM.replace('\n', '\r\n').replace('{\n', '{\r')],
    ['a byte-order mark', `\uFEFF${ARM}`],
    ['small letters', ARM.replace(/HIERARCHY|ROOT|OFFSET|CHANNELS|JOINT|MOTION/g, (w) => w.toLowerCase())],
    ['tabs and blanks', ARM.replaceAll(' ', '\t ')],
    ['braces on the line of the name', ARM.replace(/\n\s*{/g, '{')],
    ['no space after the colon', ARM.replace('Frames: 2', 'Frames:2').replace('Time: ', 'Time:')],
    ['space before the colon', ARM.replace('Frames:', 'Frames :')],
    ['empty lines', ARM.replaceAll('\n', '\n\n')],
    ['no line end at the end', ARM.trimEnd()],
    ['no name that says it', ARM],
  ])('%s', (how, text) => {
    expect(readText(how.startsWith('no name') ? 'x.dat' : 'arm.bvh', text)).toEqual(plain);
  });

  test('UTF-16, either end first', () => {
    const little = new Uint8Array(Buffer.from(`\uFEFF${ARM}`, 'utf16le'));
    const big = new Uint8Array(Buffer.from(`\uFEFF${ARM}`, 'utf16le').swap16());
    for (const bytes of [little, big])
      expect(readText('arm.bvh', new TextDecoder(bytes[0] === 255 ? 'utf-16le' : 'utf-16be').decode(bytes))).toEqual(
        plain,
      );
  });
});

const JOINT = (offset: string, values: string): string => `HIERARCHY
ROOT a { OFFSET 0 0 0 CHANNELS 3 Zrotation Xrotation Yrotation
JOINT b { OFFSET ${offset} CHANNELS 3 Xposition Yposition Zposition } }
MOTION Frames: 2 Frame Time: 0.1
0 0 0 ${values}
0 0 0 ${values}
`;

test('places of a joint below the root are places from the parent, or come on top of its offset where they lie about 0', () => {
  const place = readText('a.bvh', JOINT('0 5 0', '0 5.1 0'));
  expect(place.joints[1].p?.slice(0, 3)).toEqual(Float64Array.of(0, 5.1, 0));
  expect(place.notes).toEqual([expect.stringContaining('in place of OFFSET')]);
  const added = readText('a.bvh', JOINT('0 5 0', '0.1 0.1 0'));
  expect(added.joints[1].p?.slice(0, 3)).toEqual(Float64Array.of(0.1, 5.1, 0));
  expect(added.notes).toEqual([expect.stringContaining('"b" lie nearer to 0')]);
});

test('an axis without a channel keeps the offset', () => {
  const text = JOINT('1 5 2', '5').replace('3 Xposition Yposition Zposition', '1 Yposition');
  expect(readText('a.bvh', text).joints[1].p?.slice(0, 3)).toEqual(Float64Array.of(1, 5, 2));
});

test('frames other than stated are read and said; a last line that breaks off is left out and said', () => {
  expect(readText('arm.bvh', ARM.replace('Frames: 2', 'Frames: 9')).notes).toEqual([
    'The file states 9 frames and has 2: the 2 are read.',
  ]);
  const more = readText('arm.bvh', `${ARM}0 0 0 0 0 0 0 0 0\n`);
  expect([more.frames, more.notes.length]).toEqual([3, 1]);
  const short = readText('arm.bvh', `${ARM}0 0 0 0`);
  expect([short.frames, short.notes]).toEqual([2, ['The file breaks off in line 21: that line is left out.']]);
});
