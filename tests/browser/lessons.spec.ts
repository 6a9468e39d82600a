// The lessons, walked step by step on the device of their reader: the page says what they quote, by the names they give.

import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import { floorTexts } from '../../src/features/ruler/words.ts';
import { bob, centre, cursorOf, drawAlong, openBench, openFirst, readSentence, rowsOf } from './bench.ts';
import { test } from './kept-files.ts';
import { walk } from './lessons.ts';
import { leadLimb, limb } from './limbs.ts';

const button = (page: Page | Locator, name: string): Locator => page.getByRole('button', { name, exact: true });
const sentence = (page: Page): Locator => page.getByTestId('sentence');
const openTool = (page: Page, name: string): Locator =>
  page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name, exact: true });

test('coach: arms in, faster', { tag: ['@tablet', '@whole'] }, async ({ page }) => {
  const { says, typed, named, end } = walk('coach');
  const number = (id: 'rate' | 'spread' | 'momentum'): Locator => page.locator(`[data-number="${id}"]`);
  const tool = page.locator('[data-tool="compare"]');
  const flag = page.locator('.ruler');
  await openFirst(page);

  await page.locator('.skill-title').tap();
  await page.getByRole('searchbox', { name: 'Find a skill' }).fill(typed('arms out'));
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^Jump with a full turn, arms out and in/ })
    .tap();
  await says('No somersault, 1.00 twist left, 0.65 s in the air', sentence(page));

  const speed = page.getByTitle(floorTexts.speed);
  for (let i = 0; i < 3 && (await speed.textContent())?.trim() !== '¼ speed'; i++) await speed.tap();
  await expect(speed).toHaveText('¼ speed');
  await button(page, named('Play')).tap();
  await expect(button(page, 'Pause')).toBeVisible();
  await expect(button(page, named('Play'))).toBeVisible();
  const last = await cursorOf(page);
  expect(last).toBeCloseTo(Number(await bob(page).getAttribute('aria-valuemax')), 2);
  const floor = await centre(page.locator('.floor'));
  await drawAlong(page, floor, -60);
  expect(await cursorOf(page)).toBeLessThan(last - 0.02);

  const wrapped = page.locator('.tile').nth(1);
  await expect(wrapped).toHaveAccessibleName(new RegExp(`^${named('Arms wrapped for the twist')}`));
  await wrapped.tap();
  await says('0.33 s', flag);
  await says('2.23', number('rate'));
  await says('2.3 times faster', number('rate'));
  await says('0.53', number('spread'));
  await says('2.3 times smaller', number('spread'));
  await button(page, named('5 more rows')).tap();
  await says(
    'arms in, arms down: long-axis spread 1.2 to 0.5 kg·m², tilt 0 to 3° to the right, twist rate 1.0 to 2.2 rev/s, angular momentum unchanged; the joints put in 30 J',
    page.getByTestId('explanation'),
  );
  await button(page, named('Close All rows')).tap();

  await drawAlong(page, floor, -500);
  await says('0.00 s', flag);
  await says('0.96', number('rate'));
  await says('1.25', number('spread'));
  await button(page, named('Menu')).tap();
  await button(page, named('Mark this moment')).tap();
  await wrapped.tap();
  await says('0.96 at the mark', number('rate'));
  await says('1.25 at the mark', number('spread'));
  await says('7.52 at the mark', number('momentum'));
  const read = async (id: 'rate' | 'spread'): Promise<number[]> =>
    [...((await number(id).textContent()) ?? '').matchAll(/\d+\.\d+/g)].map(([text]) => Number(text));
  const [rates, spreads] = [await read('rate'), await read('spread')];
  for (const i of [0, 1]) expect(rates[i] * spreads[i]).toBeCloseTo(1.2, 1);
  await button(page, named('Menu')).tap();
  await button(page, named('Delete mark')).tap();

  await button(page, named('Arms wide against arms in')).tap();
  await says(
    'Arms in: twists 2.7 times as fast as with arms wide. Same push off the floor.',
    page.getByTestId('answer'),
  );
  await says('0.56 twists of 1: 159° short', page.locator('.other-way'));
  await button(page, named('Keep B')).tap();
  await button(page, named('Menu')).tap();
  await openTool(page, named('Compare')).tap();
  await tool.getByLabel(named('Together at')).selectOption({ label: named('the highest point') });
  await tool.getByRole('tab', { name: 'Differences' }).tap();
  const row = (name: string): Locator => tool.locator(`tr[data-row="${name}"] td`);
  await says('same', row('momentum').nth(2));
  await says('0.53', row('longMoment').nth(0));
  await says('1.45', row('longMoment').nth(1));
  await says('2.24', row('peakTwistRate').nth(0));
  await says('0.96', row('peakTwistRate').nth(1));

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

test('student: predict, then fly', { tag: ['@desktop', '@whole'] }, async ({ page }) => {
  const { says, named, end } = walk('student');
  const cut = page.getByRole('region', { name: 'Values at the cursor' });
  const values = cut.locator('.cut-value b');
  const caution = page.locator('.caution');
  await openFirst(page);

  const start = page.getByRole('region', { name: named('Start here') });
  await button(start, named('One arm down')).click();
  await expect(page.locator('.skill-title')).toContainText(named('Back somersault, straight, full twist'));
  await start.getByRole('button', { name: named('All rows') }).click();
  const first = '0.95 somersaults backward, 0.99 twists left, 0.94 s in the air, on the feet, may take a step';
  await says(first, sentence(page));
  const undo = async (): Promise<void> => {
    await button(page, named('Undo')).click();
    await expect(sentence(page)).toHaveText(first);
  };
  await page.keyboard.press('Home');
  for (let i = 0; i < 4; i++) await page.keyboard.press('Shift+ArrowRight');
  for (let i = 0; i < 2; i++) await page.keyboard.press('ArrowRight');
  expect(await cursorOf(page)).toBeCloseTo(0.42, 6);
  await says('1.52', values.nth(0));
  await says('1.05', values.nth(1));
  await says('7.4', values.nth(2));
  await says(
    'arms down: lateral spread 9.0 to 7.3 kg·m², somersault rate 0.9 to 1.0 rev/s, tilt 1 to 8° to the right, twist rate 0.1 to 1.7 rev/s, angular momentum unchanged; the joints put in 59 J',
    page.getByTestId('explanation'),
  );

  const edge = await centre(page.getByLabel('Wrapped to twist left, left arm below ends', { exact: true }));
  await page.mouse.move(edge.x, edge.y);
  await page.mouse.down();
  const held = page.locator('.plate');
  const wanted = 'Wrapped to twist left, left arm below ends at 0.60 s';
  for (let dx = 4; dx < 110 && !(await held.allTextContents()).join().includes(wanted); dx += 1)
    await page.mouse.move(edge.x + dx, edge.y);
  await says(wanted, held);
  await page.mouse.up();
  await says('0.95 somersaults backward, 1.01 twists left, 0.93 s in the air', sentence(page));
  await undo();

  await button(page, named('Menu')).click();
  await openTool(page, named('Pose')).last().click();
  const tile = (name: string): Locator => page.getByRole('button', { name: new RegExp(`^Add ${name}:`) });
  await expect(tile('Straight, arms at the sides')).toBeVisible();
  await page.keyboard.press('Home');
  for (let i = 0; i < 4; i++) await page.keyboard.press('Shift+ArrowRight');
  expect(await cursorOf(page)).toBeCloseTo(0.4, 6);
  await tile('Straight, arms out to the sides').click();
  await says('0.30 twists of 1: 252° short; 0.93 somersaults backward', sentence(page));
  await undo();
  await tile('Straight, arms at the sides').click();
  await says('1.25 twists of 1: 91° past, tilted 15°, head to the right; 0.96 somersaults backward', sentence(page));
  await says('Left elbow bend asks for more than 3 times the strength known for this joint', caution);
  await undo();

  await expect(limb(page, 'front armL')).toBeVisible();
  await button(page, named('just this moment')).click();
  await leadLimb(page, 'front armL', 40, -10);
  await expect.poll(async () => (await readSentence(page)).twists).toBeLessThan(0.97);
  await says('Faster than these arms can', page.locator('.pose-plates'));
  const mark = page.getByRole('button', { name: /^Pose at 0\.40/ });
  await says('Pose at 0.40 seconds', (await mark.getAttribute('aria-label')) ?? '');
  await undo();

  await openTool(page, named('Why')).click();
  const account = page.locator('[data-tool="account"]');
  await says('8.5° head to the right. Arms gave 76 % of the greatest tilt.', account);
  for (const source of ['chest', 'hips'])
    await says('both sides alike', account.locator(`tr[data-source="${source}"]`));
  await says('Arms take 6.5 kg·m²/s about the front-back axis (0.10 s): the body turns +2.9°.', account);
  await account.getByLabel('the twist done').check();
  await says('Arms gave 74 % of the twist done.', account);
  await says('Held in this shape, the body twists on.', account);

  await openTool(page, named('Estimate')).click();
  await page.getByLabel('Sheet', { exact: true }).selectOption({ label: 'Straight somersaults in a flight' });
  const line = page.locator('.sheet-line[data-name="somersaults"]');
  await says('0.6169', line.locator('.line-estimate b'));
  await says('0.9464', line.locator('.line-simulated b'));
  await says('The straight rod. Most of it: 0.85 with inertia as simulated.', line);
  end();
});

test.describe('on a large screen', () => {
  test.use({ viewport: { width: 1920, height: 1080 } });

  test('biomechanist: a skill before it is filmed', { tag: ['@desktop', '@whole'] }, async ({ page }) => {
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
    await says('Tobias Fenn', page.locator('.before .whose'));
    await page.getByRole('button', { name: named('Off the floor') }).click();
    await expect(page.getByRole('dialog').getByRole('spinbutton', { name: 'Mass' })).toHaveValue('66.0');
    await page.keyboard.press('Escape');

    await button(page, named('About this result')).click();
    await button(page, named('Draft another skill by its name or code')).click();
    await page.getByRole('textbox', { name: 'Skill, code or dive number' }).fill(typed('8 00 o'));
    await expect(button(page, named('Backward'))).toHaveAttribute('aria-pressed', 'true');
    await button(page, named('Draft')).click();
    await says(
      'First draft of Double back, tuck: a start for editing, not a technique to copy.',
      page.locator('.notice'),
    );
    await says('2.00 somersaults backward, no twist, 1.76 s in the air, bounces, 0.4 m back', sentence(page));
    await expect(page.locator('.caution')).toHaveCount(0);

    await openTool(page, named('Before and after')).click();
    await button(tool, named('Bed bounce')).click();
    await says('It neither slips nor pulls.', page.getByTestId('possible'));
    const push = tool.locator('.report').filter({ hasText: 'Impulse' });
    await says('6.0 body weights, mean force over 0.32 s', push);
    await says('adds 1 024 J', push);
    await button(tool, named('Land on a soft mat')).click();
    await says('Sits down, as if the bed did not give.', page.getByTestId('verdict'));
    await says('18.1', big);
    const account = tool.locator('.report').filter({ hasText: 'Sinks in' });
    await says('Energy not accounted for', account);
    await says('−2 J', account);
    await page.getByLabel('Mat', { exact: true }).selectOption({ label: 'Competition mat' });
    await says('21.8', big);
    await button(page, named('Undo')).click();
    await expect(big).toHaveText('18.1');
    const knees = page.getByRole('spinbutton', { name: 'Knees at touchdown' });
    await knees.fill('35');
    await knees.press('Enter');
    await says('7.5', big);
    await button(page, named('Undo')).click();
    await expect(big).toHaveText('18.1');
    await openTool(page, named('Before and after')).click();

    await page.getByRole('button', { name: 'Large stage' }).click();
    const bar = page.getByRole('toolbar', { name: 'Large stage' });
    await expect(button(bar, named('Sizes'))).toHaveAttribute('aria-pressed', 'true');
    const stage = await centre(page.locator('.large-stage'));
    const tape = async (x1: number, y1: number, x2: number, y2: number): Promise<void> => {
      await button(bar, named('Length')).click();
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
    await button(bar, named('Length')).click();
    const yOf = (m: number): number => stage.y + 100 - ((m - low) / (high - low)) * 200;
    await tape(stage.x, yOf(1.15), stage.x, yOf(6.05));
    // 1 px is some 1.3 cm here
    expect(Number.parseFloat((await page.locator('.measure-hint').textContent()) ?? '')).toBeCloseTo(4.9, 1);
    await button(bar, named('Length')).click();
    await button(bar, named('Every step')).click();
    await expect(button(bar, named('Every step'))).toHaveAttribute('aria-pressed', 'true');
    await button(bar, named('Close')).click();

    await button(page, named('Menu')).click();
    await button(page, named('Print sheet')).click();
    const sheet = page.getByRole('dialog', { name: 'Print sheet' });
    await expect(sheet.getByRole('table')).toBeVisible();
    const heads = await sheet.getByRole('columnheader').allTextContents();
    const apex = heads.findIndex((head) => head.includes('highest point'));
    await says('highest point', heads[apex] ?? '');
    await says(
      '6.05',
      sheet
        .getByRole('row', { name: /^Centre of mass/ })
        .getByRole('cell')
        .nth(apex),
    );
    const csv = await save(button(sheet, named('Frames as CSV')));
    expect(csv.name).toBe('double-back-tuck-frames.csv');
    const lines = rowsOf(csv.bytes.toString('utf8'));
    expect([lines.length - 1, lines[0].split(',').length]).toEqual([424, 235]);
    expect((await save(button(sheet, named('Picture as SVG')))).name).toBe('double-back-tuck-sheet.svg');
    expect((await save(button(sheet, named('Picture as PNG')))).bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
    await page.keyboard.press('Escape');
    await expect(sheet).toBeHidden();
    await button(page, named('Menu')).click();
    const kept = await save(button(page, named('Save file')));
    expect(kept.name).toBe('double-back-tuck.json');
    expect(JSON.parse(kept.bytes.toString('utf8'))).toMatchObject({ phases: [{ place: 'trampoline' }, {}, {}] });
    await button(page, named('Save to the shelf')).click();
    await expect(page.locator('.notice').last()).toContainText('is on the shelf');
    expect((await readSentence(page)).somersaults).toBeCloseTo(2, 2);
    end();
  });
});
