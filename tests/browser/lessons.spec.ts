// The lessons, walked step by step on the device of their reader: the page says what they quote, by the names they give.

import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import { floorTexts } from '../../src/features/ruler/words.ts';
import { bob, centre, cursorOf, drag, openBench, readSentence } from './bench.ts';
import { test } from './kept-files.ts';
import { walk } from './lessons.ts';

const button = (page: Page | Locator, name: string): Locator => page.getByRole('button', { name, exact: true });
const sentence = (page: Page): Locator => page.getByTestId('sentence');
const openTool = (page: Page, name: string): Locator =>
  page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name, exact: true });

test('coach: arms in, faster', { tag: '@tablet' }, async ({ page }) => {
  const { says, typed, named, end } = walk('coach');
  const card = page.locator('.rate-moment');
  const tool = page.locator('[data-tool="compare"]');
  const thumb = page.getByRole('navigation', { name: floorTexts.controls });
  const back = thumb.getByRole('button').filter({ hasText: '‹' });
  const on = thumb.getByRole('button').filter({ hasText: '›' });
  const flag = page.locator('.ruler');
  await openBench(page);

  await page.locator('.skill-title').tap();
  await page.getByRole('searchbox', { name: 'Find a skill' }).fill(typed('arms out'));
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^Jump with a full turn, arms out and in/ })
    .tap();
  await says('No somersault, 1.00 twist left, 0.76 s in the air', sentence(page));

  const speed = page.getByTitle(floorTexts.speed);
  for (let i = 0; i < 3 && (await speed.textContent())?.trim() !== '¼ speed'; i++) await speed.tap();
  await expect(speed).toHaveText('¼ speed');
  await button(page, named('Play')).tap();
  await expect(button(page, 'Pause')).toBeVisible();
  await expect(button(page, named('Play'))).toBeVisible();
  const last = await cursorOf(page);
  expect(last).toBeCloseTo(Number(await bob(page).getAttribute('aria-valuemax')), 2);
  const wheel = await centre(page.getByRole('slider', { name: floorTexts.jog }));
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x?: number) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: x === undefined ? [] : [{ x, y: wheel.y }] });
  await touch('touchStart', wheel.x);
  for (let i = 1; i <= 4; i++) await touch('touchMove', wheel.x - 8 * i);
  await touch('touchEnd');
  expect(await cursorOf(page)).toBeLessThan(last - 0.02);

  for (let i = 0; i < 3 && !(await flag.textContent())?.includes('0.33 s'); i++) await back.tap();
  await says('0.33 s', flag);
  await says(
    'arms in: long-axis moment 1.4 to 0.6 kg·m², twist rate 0.9 to 2.0 rev/s, angular momentum unchanged; the joints put in 29 J',
    page.getByTestId('explanation'),
  );

  await back.tap();
  await says('0.00 s', flag);
  await says('0.86', card.locator('.xl').first());
  await says('1.45', card.locator('.xl').last());
  await button(page, named('Mark this moment')).tap();
  await on.tap();
  await says('2.04', card.locator('.xl').first());
  await says('0.61', card.locator('.xl').last());
  await says('0.86 at the mark', card);
  await says('1.45 at the mark', card);
  const areas = await card.locator('svg rect').evaluateAll((all) =>
    all.map((one) => {
      const { width, height } = one.getBoundingClientRect();
      return width * height;
    }),
  );
  expect(areas).toHaveLength(2);
  // drawn to the pixel: 1 px of some 40 by 150
  expect(Math.abs(areas[0] / areas[1] - 1)).toBeLessThan(0.1);
  await button(page, named('Delete mark')).tap();

  await button(page, named('Menu')).tap();
  await openTool(page, named('Compare')).tap();
  await button(tool, named('Arms wide against arms in')).tap();
  const versions = tool.locator('.version-sentence');
  await says('1.00 twist left', versions.nth(0));
  await says('0.65 twists of 1: 126° short', versions.nth(1));
  await says('1.36 twists of 1: 129° past', versions.nth(2));
  const before = await versions.allTextContents();
  await tool.getByLabel('Held equal').selectOption({ label: 'angular momentum' });
  await expect(versions).toHaveText(before.map((one) => one.replace(/\s+/g, ' ').trim()));
  await tool.getByRole('tab', { name: 'Differences' }).tap();
  const row = (name: string): Locator => tool.locator(`tr[data-row="${name}"] td`);
  await says('same', row('momentum').nth(2));
  await says('1.45', row('longMoment').nth(0));
  await says('0.56', row('longMoment').nth(1));
  await says('0.86', row('peakTwistRate').nth(0));
  await says('2.21', row('peakTwistRate').nth(1));

  await tool.getByRole('tab', { name: 'Versions' }).tap();
  await tool.getByLabel('Stay when closed').check();
  await button(tool, named('Close Compare')).tap();
  await button(page, named('Play')).tap();
  await expect(button(page, 'Pause')).toBeVisible();
  await button(page, named('Find')).tap();
  await page.getByRole('dialog').getByRole('combobox').fill('large');
  await page
    .getByRole('option', { name: /^Open or close the large stage/ })
    .first()
    .tap();
  const front = button(page.getByRole('toolbar', { name: 'Large stage' }), 'Front');
  await front.tap();
  await expect(front).toHaveAttribute('aria-pressed', 'true');
  end();
});

test('student: predict, then fly', { tag: '@desktop' }, async ({ page }) => {
  const { says, named, end } = walk('student');
  const cut = page.getByRole('region', { name: 'Values at the cursor' });
  const values = cut.locator('.cut-value b');
  const caution = page.locator('.caution');
  await openBench(page);

  await expect(page.locator('.skill-title')).toContainText('Back somersault, straight, full twist');
  const first = '1.00 somersault backward, 1.00 twist left, 1.04 s in the air, on the feet, would fall back';
  await says(first, sentence(page));
  const undo = async (): Promise<void> => {
    await button(page, named('Undo')).click();
    await expect(sentence(page)).toHaveText(first);
  };
  expect(await cursorOf(page)).toBeCloseTo(0.47, 2);
  await says('1.35', values.nth(0));
  await says('0.89', values.nth(1));
  await says('11.1', values.nth(2));
  await says('48.9', values.nth(4));
  await says('constant in flight', cut);
  await says(
    'arms apart: long-axis moment 1.5 to 0.8 kg·m², tilt 0 to 7° to the right, twist rate 0.0 to 1.5 rev/s, angular momentum unchanged; the joints put in 21 J',
    page.getByTestId('explanation'),
  );

  const edge = await centre(page.getByLabel('Right arm up, left arm down ends', { exact: true }));
  await page.mouse.move(edge.x, edge.y);
  await page.mouse.down();
  const held = page.locator('.plate');
  const wanted = 'Right arm up, left arm down ends at 0.81 s';
  for (let dx = 20; dx < 110 && !(await held.allTextContents()).join().includes(wanted); dx += dx < 50 ? 15 : 1)
    await page.mouse.move(edge.x + dx, edge.y);
  await says(wanted, held);
  await page.mouse.up();
  await says(
    '1.11 twists of 1: 39° past; 1.00 somersault backward, 1.04 s in the air, on the feet, upright; landing not computed',
    sentence(page),
  );
  await undo();

  await openTool(page, named('Pose')).click();
  const tile = (name: string): Locator => page.getByRole('button', { name: new RegExp(`^Add ${name}:`) });
  await expect(tile('Arms wrapped for the twist')).toBeVisible();
  await page.keyboard.press('Home');
  for (let i = 0; i < 4; i++) await page.keyboard.press('Shift+ArrowRight');
  expect(await cursorOf(page)).toBeCloseTo(0.4, 6);
  await tile('Straight, arms out to the sides').click();
  await says('0.54 twists of 1: 166° short; 1.04 somersaults backward', sentence(page));
  await undo();
  await tile('Arms wrapped for the twist').click();
  await says('1.58 twists of 1: 209° past, tilted 11°, head to the right; 1.07 somersaults backward', sentence(page));
  await says('25° past', sentence(page));
  await says('Right elbow bend asks for more than 3 times the strength known for this joint', caution);
  await undo();

  await expect(page.getByText('Held upright: front')).toBeVisible();
  await drag(page, page.locator('[data-handle="front handL"]'), 30, -34);
  await says('0.85 twists of 1: 56° short; 0.95 somersaults backward', sentence(page));
  const mark = page.getByRole('button', { name: /^Pose at/ });
  await says('Pose at 0.40 seconds, 5 keys', (await mark.getAttribute('aria-label')) ?? '');
  await undo();

  await openTool(page, named('Why')).click();
  const account = page.locator('[data-tool="account"]');
  await says('11.1° head to the right. Arms gave 100 % of the greatest tilt.', account);
  for (const source of ['takeoff', 'chest', 'hips'])
    await says('both sides alike', account.locator(`tr[data-source="${source}"]`));
  await says('Arms take 6.2 kg·m²/s about the front-back axis (0.11 s): the body turns +4.8°.', account);
  await account.getByLabel('the twist done').check();
  await says('Arms gave 100 % of the twist done.', account);
  await says('Held in this shape, the body twists on.', account);

  await openTool(page, named('Estimate')).click();
  await page.getByLabel('Sheet', { exact: true }).selectOption({ label: 'Straight somersaults in a flight' });
  const line = page.locator('.sheet-line[data-name="somersaults"]');
  await says('0.684', line.locator('.line-estimate b'));
  await says('1', line.locator('.line-simulated b'));
  await says(
    'The straight rod makes most of the difference: with inertia taken from the simulation the ratio is 1.05 instead of 0.68.',
    line,
  );
  end();
});

test.describe('on a large screen', () => {
  test.use({ viewport: { width: 1920, height: 1080 } });

  test('biomechanist: a skill before it is filmed', { tag: '@desktop' }, async ({ page }) => {
    test.slow();
    const { says, typed, named, end } = walk('biomechanist');
    const tool = page.locator('[data-tool="contact"]');
    const big = tool.locator('.report').filter({ hasText: 'Sinks in' }).locator('.big').first();
    const save = async (press: Locator): Promise<{ name: string; bytes: Buffer }> => {
      const download = page.waitForEvent('download');
      await press.click();
      const file = await download;
      return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
    };
    await openBench(page);

    await button(page, named('Find')).click();
    await page.keyboard.type(typed('tobias'));
    await expect(page.getByRole('option').first()).toContainText('Give to this skill');
    await page.keyboard.press('Enter');
    await says('Tobias Fenn, Quarry Lane Trampoline Club', page.locator('.who'));
    await expect(button(page, named('All values'))).toBeVisible();
    await expect(page.getByRole('spinbutton', { name: 'Mass' })).toHaveValue('66.0');

    await page.getByTestId('code').getByRole('button').click();
    await page.getByRole('textbox', { name: 'Trampoline code or dive number' }).fill(typed('8 00 o'));
    await expect(button(page, named('Backward'))).toHaveAttribute('aria-pressed', 'true');
    await button(page, named('Draft')).click();
    await says('First draft of 8 00 o: a start for editing, not a technique to copy.', page.locator('.notice'));
    await says('2.00 somersaults backward, no twist, 1.77 s in the air, bounces, 0.5 m back', sentence(page));
    await says('Hip stretch asks for 1.4 times the strength known for this joint.', page.locator('.caution'));

    await openTool(page, named('Before and after')).click();
    await button(tool, named('Bed bounce')).click();
    await says('It neither slips nor pulls.', page.getByTestId('possible'));
    const push = tool.locator('.report').filter({ hasText: 'Impulse' });
    await says('6.0 body weights, mean force over 0.32 s', push);
    await says('adds 1 023 J', push);
    await button(tool, named('Land on a soft mat')).click();
    await says(
      'Bounces. The bed throws the athlete up again, so no step follows: computed is what taking it in asks for, not how it goes on.',
      page.getByTestId('verdict'),
    );
    await says('11.1', big);
    const account = tool.locator('.report').filter({ hasText: 'Sinks in' });
    await says('Energy not accounted for', account);
    await says('1 J', account);
    await tool.getByLabel('Mat', { exact: true }).selectOption({ label: 'Competition mat' });
    await says('14.0', big);
    await button(page, named('Undo')).click();
    await expect(big).toHaveText('11.1');
    const knees = tool.getByRole('spinbutton', { name: 'Knees at touchdown' });
    await knees.fill('35');
    await knees.press('Enter');
    await says('7.8', big);
    await button(page, named('Undo')).click();
    await expect(big).toHaveText('11.1');
    await openTool(page, named('Before and after')).click();

    await page.getByRole('button', { name: 'Large stage' }).click();
    const bar = page.getByRole('toolbar', { name: 'Large stage' });
    await expect(button(bar, named('Sizes'))).toHaveAttribute('aria-pressed', 'true');
    const stage = await centre(page.locator('.large-stage'));
    const tape = async (x1: number, y1: number, x2: number, y2: number): Promise<void> => {
      await button(bar, named('Tape')).click();
      await page.mouse.move(x1, y1);
      await page.mouse.down();
      await page.mouse.move(x2, y2, { steps: 4 });
      await page.mouse.up();
      await expect(page.locator('.measure-hint')).toHaveText(/^[\d.]+ m \(/);
    };
    const heightOf = async (point: number): Promise<number> => {
      const label = await page
        .getByRole('button', { name: `Point ${point} of the measure` })
        .getAttribute('aria-label');
      return Number(/([\d.]+) m up/.exec(label ?? '')?.[1]);
    };
    await tape(stage.x, stage.y + 100, stage.x, stage.y - 100);
    const [low, high] = [await heightOf(1), await heightOf(2)];
    await button(bar, named('Tape')).click();
    const yOf = (m: number): number => stage.y + 100 - ((m - low) / (high - low)) * 200;
    await tape(stage.x, yOf(1.15), stage.x, yOf(6.06));
    // 1 px is some 1.3 cm here
    expect(Number.parseFloat((await page.locator('.measure-hint').textContent()) ?? '')).toBeCloseTo(4.9, 1);
    await button(bar, named('Tape')).click();
    await button(bar, named('Strobe')).click();
    await expect(button(bar, named('Strobe'))).toHaveAttribute('aria-pressed', 'true');
    await button(bar, named('Strip')).click();

    await button(page, named('Print')).click();
    const sheet = page.getByRole('dialog', { name: 'Print sheet' });
    await expect(sheet.getByRole('table')).toBeVisible();
    const heads = await sheet.getByRole('columnheader').allTextContents();
    const apex = heads.findIndex((head) => head.includes('highest point'));
    await says('highest point', heads[apex] ?? '');
    await says(
      '6.06',
      sheet
        .getByRole('row', { name: /^Centre of mass/ })
        .getByRole('cell')
        .nth(apex),
    );
    const csv = await save(button(sheet, named('Frames as CSV')));
    expect(csv.name).toBe('double-back-tuck-frames.csv');
    const lines = csv.bytes.toString('utf8').trim().split('\n');
    expect([lines.length - 1, lines[0].split(',').length]).toEqual([426, 235]);
    expect((await save(button(sheet, named('Picture as SVG')))).name).toBe('double-back-tuck-sheet.svg');
    expect((await save(button(sheet, named('Picture as PNG')))).bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
    await page.keyboard.press('Escape');
    await expect(sheet).toBeHidden();
    const kept = await save(button(page, named('Save file')));
    expect(kept.name).toBe('double-back-tuck.json');
    expect(JSON.parse(kept.bytes.toString('utf8'))).toMatchObject({ phases: [{ place: 'trampoline' }, {}, {}] });
    await button(page, named('Save')).click();
    await expect(page.locator('.notice').last()).toContainText('is on the shelf');
    expect((await readSentence(page)).somersaults).toBeCloseTo(2, 2);
    end();
  });
});
