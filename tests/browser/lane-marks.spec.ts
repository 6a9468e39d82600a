// The marks of keys say side and kind by form alone: in black and white, and unlike those of programs that draw by keyframes.
import { expect } from '@playwright/test';
import { openFirst } from './bench.ts';
import { test } from './kept-files.ts';

interface Form {
  readonly fill: string;
  readonly corner: string;
  readonly lean: string;
  readonly width: number;
  readonly height: number;
}

test('marks differ by side and by kind without a colour; none is a disc or a square on its corner', {
  tag: '@desktop',
}, async ({ page }) => {
  await openFirst(page);
  await page.keyboard.press('r');
  await page.locator('.lane-keys .key').first().waitFor();
  const formOf = (side: string, kind: string): Promise<Form> =>
    page
      .locator(`.lane-keys .key.${side}`)
      .first()
      .evaluate((key, asked) => {
        key.classList.remove('stop', 'pass');
        key.classList.add(asked);
        const dot = key.querySelector('.dot') as HTMLElement;
        const style = getComputedStyle(dot);
        return {
          fill: `${style.backgroundColor} ${style.backgroundImage}`,
          corner: style.borderTopLeftRadius,
          lean: style.transform,
          width: dot.offsetWidth,
          height: dot.offsetHeight,
        };
      }, kind);
  const sides = ['left', 'right', 'both', 'centre'];
  const resting = await Promise.all(sides.map((side) => formOf(side, 'stop')));
  expect(new Set(resting.map(({ fill, corner }) => `${fill} ${corner}`)).size).toBe(sides.length);
  for (const [i, side] of sides.entries()) {
    const moving = await formOf(side, 'pass');
    expect(moving.lean).not.toBe(resting[i].lean);
    for (const { corner, width, height, lean } of [resting[i], moving]) {
      if (side !== 'centre') expect(height).toBeGreaterThan(1.5 * width);
      else expect(corner).toBe('0px');
      // upright or leaning, never turned by an eighth: the second number of a matrix is the sine of a turn
      expect(Number(/matrix\([^,]+, ([^,]+)/.exec(lean)?.[1] ?? 0)).toBe(0);
    }
  }
});
