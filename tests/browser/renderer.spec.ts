// Without WebGL the figures are drawn all the same; without any renderer the stage says what to do and the rest works.
import { expect } from '@playwright/test';
import { openSkill, readSentence } from './bench.ts';
import { test } from './kept-files.ts';

test('the stage is drawn, not blank @renderer', async ({ page }) => {
  // a skill without a caution, which takes of the stage's height on a phone
  await openSkill(page, 'Back somersault, straight, half twist');
  // all rows take of it too
  await page.keyboard.press('r');
  await page.keyboard.press('g');
  const box = await page.locator('.stage').first().boundingBox();
  if (!box) throw new Error('no stage');
  // ink of the figure: many different grey values in a picture of the stage
  // under the buttons, which are dark themselves
  const shot = await page.screenshot({ clip: { ...box, y: box.y + 60, height: box.height - 60 } });
  const tones = await page.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const g = canvas.getContext('2d');
    if (!g) return 0;
    g.drawImage(image, 0, 0);
    const { data } = g.getImageData(0, 0, image.width, image.height);
    let dark = 0;
    for (let i = 0; i < data.length; i += 4) if (data[i] < 60 && data[i + 1] < 80) dark += 1;
    return dark;
  }, shot.toString('base64'));
  // limbs of the left side alone cover more than this
  expect(tones).toBeGreaterThan(400);
});

test('no renderer at all: the stage says what to do, values and edits work', { tag: '@once' }, async ({ page }) => {
  await page.addInitScript(() => {
    const real = HTMLCanvasElement.prototype.getContext;
    // the plots keep their canvas; everything that a stage could ask for is refused
    HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
      return kind === '2d' && this.classList.contains('plots')
        ? (real as (...a: unknown[]) => unknown).call(this, kind, ...rest)
        : null;
    } as typeof real;
    Object.defineProperty(navigator, 'gpu', { value: undefined });
    Reflect.deleteProperty(window, 'OffscreenCanvas');
  });
  await page.goto('./');
  await expect(page.locator('.stage-failed').first()).toContainText('cannot draw the figures');
  const before = await readSentence(page);
  await page.getByRole('spinbutton', { name: 'Air time' }).press('ArrowUp');
  expect((await readSentence(page)).text).not.toBe(before.text);
});
