// The picture of a code, read by another library, is the link byte for byte.
import jsQR from 'jsqr';
import { expect, test } from 'vitest';
import { writeSkillLink } from '../../sim/handing/link.ts';
import { hasCode, makeCode, QUIET } from '../../src/features/hand/code-picture.ts';
import { handOn, NONE, ready } from './ready.ts';

/** px of a module */
const SCALE = 4;

/** The path as a camera would see it: dark squares on white, quiet zone around. */
function paint({ size, path }: ReturnType<typeof makeCode>): { data: Uint8ClampedArray; side: number } {
  const side = (size + 2 * QUIET) * SCALE;
  const data = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const [, x, y, run] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    for (let py = 0; py < SCALE; py++)
      for (let px = 0; px < Number(run) * SCALE; px++) {
        const at = 4 * (((Number(y) + QUIET) * SCALE + py) * side + (Number(x) + QUIET) * SCALE + px);
        data.fill(0, at, at + 3);
      }
  return { data, side };
}

test.each(['back-tuck', 'giant-late-hand-full', 'tumbling-double-straight-half-out'])(
  'the code of %s reads as its link',
  (id) => {
    const file = ready.find(([name]) => name === id)?.[1];
    if (!file) throw new Error(id);
    const link = `https://bench.example/#${writeSkillLink(handOn(file, NONE))}`;
    const code = makeCode(link);
    const { data, side } = paint(code);
    expect(jsQR(data, side, side)?.data).toBe(link);
  },
);

test('a text of more bytes than the largest code has none', () => {
  expect(makeCode('a'.repeat(2953)).size).toBe(177);
  expect([hasCode('a'.repeat(2953)), hasCode('a'.repeat(2954))]).toEqual([true, false]);
});
