// The estimate tool in a browser: typed, computed in its worker, set beside the flight; hostile sheets; what is loaded when.
import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import { findInBothThemes } from './axe.ts';
import { openBench, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const isTouch = (page: Page): boolean => (page.viewportSize()?.width ?? 0) < 1100;

async function openEstimate(page: Page): Promise<void> {
  if (isTouch(page)) {
    await page.getByRole('button', { name: 'Menu' }).click();
    await page.getByRole('button', { name: 'Estimate' }).click();
    const dialog = page.locator('dialog[open]');
    if (await dialog.count()) await page.keyboard.press('Escape');
  } else await page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name: 'Estimate' }).click();
  await expect(page.locator('.sheet-line .line-estimate').first()).toBeVisible({ timeout: 60_000 });
}

const line = (page: Page, name: string): Locator => page.locator(`.sheet-line[data-name="${name}"]`);
const field = (page: Page, n: number): Locator => page.getByLabel(`Line ${n}`, { exact: true });

async function startOwn(page: Page): Promise<void> {
  await page.getByLabel('Sheet', { exact: true }).selectOption('new');
  await expect(field(page, 1)).toHaveValue('');
}

async function openSheets(page: Page): Promise<void> {
  await openBench(page);
  await openEstimate(page);
}

async function openOwnSheet(page: Page): Promise<void> {
  await openSheets(page);
  await startOwn(page);
}

test('nothing of it is loaded before it is opened; the parser of formulas only in its worker', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  const asked: string[] = [];
  page.on('request', (request) => asked.push(new URL(request.url()).pathname));
  await openBench(page);
  await page.waitForLoadState('networkidle');
  expect(asked.filter((p) => /estimate/.test(p))).toEqual([]);
  await openEstimate(page);
  expect(asked.filter((p) => /browser-entry/.test(p)).length).toBeGreaterThan(0);
  // what the page itself loaded holds no parser: the one chunk with mathjs is asked for by the worker
  const here = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .map((e) => e.name)
      .filter((name) => name.endsWith('.js')),
  );
  const texts = await Promise.all(here.map((url) => page.request.get(url).then((r) => r.text())));
  expect(texts.filter((text) => text.includes('FunctionAssignmentNode') && text.includes('parsec'))).toEqual([]);
});

test('a sheet is written by keyboard, in any order, and computed as it is typed', {
  tag: ['@desktop', '@phone', '@whole'],
}, async ({ page }) => {
  await openOwnSheet(page);
  await field(page, 1).click();
  await page.keyboard.type('energy = mass * g * rise to J');
  await page.keyboard.press('Enter');
  await expect(field(page, 2)).toBeFocused();
  await page.keyboard.type('mass = 55 kg +- 1 kg');
  await page.keyboard.press('Enter');
  await page.keyboard.type('rise = 5 ft');
  await page.keyboard.press('Enter');
  await page.keyboard.type('g = 9.81 m/s^2');
  await expect(line(page, 'energy').locator('.line-estimate')).toHaveText('822 ± 15 J');
  await expect(line(page, 'energy').locator('math')).toBeVisible();
  // an edit of a value is seen in the result
  await field(page, 3).fill('rise = 0.46 m');
  await expect(line(page, 'energy').locator('.line-estimate')).toContainText('248.2 ± 4.5 J');
  // arrows walk the lines; an empty line goes by Backspace
  await field(page, 4).press('ArrowUp');
  await expect(field(page, 3)).toBeFocused();
  await field(page, 4).press('Enter');
  await expect(field(page, 5)).toBeFocused();
  await page.keyboard.press('Backspace');
  await expect(field(page, 4)).toBeFocused();
  await expect(page.locator('.sheet-line')).toHaveCount(4);
});

test('at 1280 x 720 seven lines are seen at once, the floor and its play with them; one button gives the height back', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  await openSheets(page);
  await page.getByLabel('Sheet', { exact: true }).selectOption('straight-somersaults');
  await expect(line(page, 'somersaults').locator('.line-why')).not.toBeEmpty();
  const seen = (): Promise<number> =>
    page.locator('.sheet-line').evaluateAll(
      (all) =>
        all.filter((one) => {
          const { top, bottom } = one.getBoundingClientRect();
          const body = one.closest('.estimate-body')?.getBoundingClientRect();
          return body && top >= body.top && bottom <= Math.min(body.bottom, innerHeight);
        }).length,
    );
  expect(await seen()).toBeGreaterThanOrEqual(7);
  await page.getByRole('button', { name: 'Play' }).first().click();
  await page.getByRole('button', { name: 'Pause' }).first().click();
  await page.getByRole('button', { name: 'Fold', exact: true }).click();
  await expect(page.locator('.air')).toBeVisible();
  await page.getByRole('button', { name: 'Take the height' }).click();
  await expect(page.locator('.air')).toBeHidden();
});

test('ready sheets: both numbers follow the flight, CSV and print hold them, axe finds nothing', {
  tag: '@once',
}, async ({ page }) => {
  await openSheets(page);
  await test.step('estimate, simulated, ratio and what makes the difference; both follow the flight', async () => {
    await page.getByLabel('Sheet', { exact: true }).selectOption('straight-somersaults');
    const row = line(page, 'somersaults');
    await expect(row.locator('.line-why')).toContainText('The straight rod');
    const ratio = Number(await row.locator('.ratio-line').getAttribute('data-ratio'));
    const [estimate, simulated] = await Promise.all(
      ['.line-estimate b', '.line-simulated b'].map(async (s) => Number(await row.locator(s).textContent())),
    );
    expect(estimate / simulated).toBeCloseTo(ratio, 2);
    expect(ratio).toBeLessThan(0.9);
  });
  await test.step('axe finds nothing', async () => {
    await page.getByLabel('Sheet', { exact: true }).selectOption('energy-of-spin');
    await expect(line(page, 'energy_flip').locator('.line-estimate')).toBeVisible();
    await page.getByRole('button', { name: 'How to write a line' }).click();
    expect(await findInBothThemes(page, '.tool')).toEqual([]);
  });
  await test.step('CSV and page to print hold the sheet', async () => {
    await page.getByLabel('Sheet', { exact: true }).selectOption('energy-ledger');
    await expect(line(page, 'energy_pass').locator('.line-estimate')).toContainText('1,26');
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'CSV', exact: true }).click();
    const csv = readFileSync(await (await saved).path(), 'utf8');
    expect(csv).toMatch(/energy_pass,126\d\.\d/);
    const opened = page.context().waitForEvent('page');
    await page.getByRole('button', { name: 'Page to print' }).click();
    const shown = await opened;
    await expect(shown.getByRole('heading', { level: 1 })).toContainText('Energy of a pass');
    await expect(shown.locator('math').first()).toBeVisible();
    await expect(shown.locator('body')).toContainText('A model, not coaching advice');
    await shown.close();
  });
});

test('plain bodies stand over the athlete, and can be put away', { tag: ['@desktop', '@phone', '@whole'] }, async ({
  page,
}) => {
  await openSheets(page);
  await page.getByLabel('Sheet', { exact: true }).selectOption('energy-of-spin');
  const bodies = page.getByRole('region', { name: 'Plain bodies' });
  await expect(bodies).toContainText('disc, radius 0.5 m');
  const canvas = page.locator('canvas[data-ready="true"]').first();
  const picture = (): Promise<string> => canvas.screenshot().then((b) => b.toString('base64'));
  await page.waitForTimeout(400);
  const withBodies = await picture();
  await bodies.getByRole('checkbox').setChecked(false);
  await page.waitForTimeout(400);
  expect(await picture()).not.toBe(withBodies);
  // an edge is moved by key: the line of its length takes the size
  await bodies.getByRole('button', { name: /change radius_flip/ }).press('ArrowRight');
  await expect(bodies).toContainText('disc, radius 0.51 m');
});

test('a sheet is kept over a reload, and an own one can be saved and opened again', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openOwnSheet(page);
  await field(page, 1).fill('T = 1.2 s vs {air time}');
  await expect(line(page, 'T').locator('.line-estimate')).toHaveText('1.2 s');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save sheet' }).click();
  const path = await (await saved).path();
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({
    format: 'shapeflight-sheet',
    lines: ['T = 1.2 s vs {air time}'],
  });
  await page.reload();
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await openEstimate(page);
  await expect(field(page, 1)).toHaveValue('T = 1.2 s vs {air time}');
});

test('an own sheet: kept with the skill, faults by their line, nothing hostile reaches the page', {
  tag: '@once',
}, async ({ page }) => {
  await openOwnSheet(page);
  await test.step('a sheet goes with the skill, in one step that can be undone', async () => {
    await field(page, 1).fill('T = 1.2 s vs {air time}');
    await expect(line(page, 'T').locator('.line-simulated')).toContainText('s');
    const choice = page.getByLabel('Sheet', { exact: true });
    await page.getByRole('button', { name: 'Keep with skill' }).click();
    await expect(choice).toHaveValue('skill');
    await choice.selectOption('energy-ledger');
    await expect(line(page, 'energy_pass')).toBeVisible();
    await choice.selectOption('skill');
    await expect(field(page, 1)).toHaveValue('T = 1.2 s vs {air time}');
    await page.locator('.tool').focus();
    await undo(page);
    await expect(choice.locator('option[value="skill"]')).toHaveCount(0);
    await expect(choice.locator('option:checked')).toHaveText('My sheet');
    await expect(field(page, 1)).toHaveValue('T = 1.2 s vs {air time}');
    await startOwn(page);
  });
  await test.step('a fault is reported by its line, names both units, and leaves the others as they are', async () => {
    await field(page, 1).fill('x = 3 J + 2 N');
    await field(page, 1).press('Enter');
    await field(page, 2).fill('y = 4 kg');
    const fault = page.locator('.line-fault');
    await expect(fault).toContainText('Line 1 is not computed. J (energy or torque) and N (force) cannot be added.');
    await expect(fault).toContainText('The others are right.');
    await expect(field(page, 1)).toHaveAttribute('aria-invalid', 'true');
    await expect(field(page, 1)).toHaveAccessibleDescription(/cannot be added/);
    await expect(line(page, 'y').locator('.line-estimate')).toHaveText('4 kg');
    // a line asked for in another kind of unit is corrected by one press; a wrong line moves with its fault
    await field(page, 2).fill('rise = 1.5 m to s');
    await expect(fault.nth(1)).toContainText('rise is a length, in m; it was asked for in s, a time.');
    await page.getByRole('button', { name: 'Write to m', exact: true }).click();
    await expect(line(page, 'rise').locator('.line-estimate')).toHaveText('1.5 m');
    await field(page, 2).press('Alt+ArrowUp');
    await expect(field(page, 1)).toHaveValue('rise = 1.5 m to m');
    await expect(fault).toContainText('Line 2 is not computed.');
    await startOwn(page);
  });
  await test.step('a hostile sheet neither freezes nor reaches the page', async () => {
    const hostile = [
      'a = 9^9^9^9^9',
      'b = import({}, {})',
      'c = cos.constructor("return 1")()',
      'd = 1:1e9',
      '# <img src=x onerror="window.reached = 1">',
      ...Array.from({ length: 150 }, (_, i) => `e_${i} = ${i === 0 ? '1 +- 0.1' : `e_${i - 1} / 2 + e_${i - 1} / 2`}`),
    ];
    await field(page, 1).fill('');
    await field(page, 1).focus();
    await page.evaluate((text) => {
      const target = document.activeElement as HTMLTextAreaElement;
      target.value = text;
      target.dispatchEvent(new InputEvent('input', { bubbles: true }));
    }, hostile.join('\n'));
    await expect(line(page, 'e_149').locator('.line-estimate')).toContainText('1.00 ± 0.10');
    await expect(page.locator('.line-fault')).toHaveCount(4);
    expect(await page.evaluate(() => 'reached' in window)).toBe(false);
    // the page still answers: out of the line, then out of the tool
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await expect(page.locator('.estimate')).toHaveCount(0);
  });
});

const choice = (page: Page): Locator => page.getByLabel('Sheet', { exact: true });
const chosen = (page: Page): Locator => choice(page).locator('option:checked');

test('choosing another sheet keeps one’s own, an edited ready sheet becomes a copy, and both outlive a reload', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openOwnSheet(page);
  for (let n = 1; n <= 8; n++) {
    await field(page, n).fill(`x_${n} = ${n} m`);
    if (n < 8) await field(page, n).press('Enter');
  }
  await choice(page).selectOption('energy-ledger');
  await expect(line(page, 'energy_pass')).toBeVisible();
  const text = await field(page, 2).inputValue();
  await field(page, 2).fill(`${text} # mine`);
  await expect(chosen(page)).toHaveText('Copy of Energy of a pass, part by part');
  await choice(page).selectOption('energy-ledger');
  await expect(field(page, 2)).toHaveValue(text);
  await page.reload();
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await openEstimate(page);
  await choice(page).selectOption({ label: 'My sheet' });
  await expect(page.locator('.sheet-line')).toHaveCount(8);
  await expect(field(page, 8)).toHaveValue('x_8 = 8 m');
  await choice(page).selectOption({ label: 'Copy of Energy of a pass, part by part' });
  await expect(field(page, 2)).toHaveValue(`${text} # mine`);
  await page.getByRole('button', { name: 'Start over' }).click();
  await expect(field(page, 2)).toHaveValue(text);
});

test('undo belongs to the sheet while it has the focus, to the skill otherwise', { tag: ['@once', '@whole'] }, async ({
  page,
}) => {
  await openBench(page);
  const before = (await readSentence(page)).text;
  await page.keyboard.press('v');
  const speed = page.getByRole('dialog').getByRole('spinbutton', { name: 'Speed up' });
  await speed.fill('5.2');
  await speed.press('Enter');
  await page.keyboard.press('Escape');
  const skill = (await readSentence(page)).text;
  expect(skill).not.toBe(before);
  await openEstimate(page);
  await startOwn(page);
  await field(page, 1).click();
  await page.keyboard.type('a = 1 m');
  await page.keyboard.press('Enter');
  await page.keyboard.type('b = 2 m');
  // a phone has its button in the menu
  const isPhone = (page.viewportSize()?.width ?? 0) < 700;
  const button = async (): Promise<Locator> => {
    if (isPhone) await page.getByRole('button', { name: 'Menu' }).click();
    const scope = isPhone ? page.getByRole('dialog') : page;
    return scope.getByRole('button', { name: /^Undo/ }).first();
  };
  const close = async (): Promise<void> => {
    if (isPhone) await page.keyboard.press('Escape');
    if (isPhone) await expect(page.getByRole('dialog')).toHaveCount(0);
  };
  await expect(await button()).toHaveAttribute('title', 'Undo: Edit line 2');
  await close();
  // by key: the letters of a line are one step
  await undo(page);
  await expect(field(page, 2)).toHaveValue('');
  await undo(page);
  await expect(page.locator('.sheet-line')).toHaveCount(1);
  await page.keyboard.press('ControlOrMeta+Shift+z');
  await page.keyboard.press('ControlOrMeta+Shift+z');
  await expect(field(page, 2)).toHaveValue('b = 2 m');
  expect((await readSentence(page)).text).toBe(skill);
  // by button, and by name
  await field(page, 1).fill('a = 7 m');
  await (await button()).click();
  await close();
  await expect(field(page, 1)).toHaveValue('a = 1 m');
  await field(page, 1).focus();
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('undo');
  await page.getByRole('option', { name: /Undo: Edit line 2/ }).click();
  await expect(field(page, 2)).toHaveValue('');
  // choosing is a step of the sheets too
  await choice(page).selectOption('energy-ledger');
  await undo(page);
  await expect(chosen(page)).toHaveText('My sheet');
  await page.getByRole('button', { name: 'Delete sheet' }).click();
  await expect(chosen(page)).not.toHaveText('My sheet');
  await page.locator('.notice').first().getByRole('button', { name: 'Undo' }).click();
  await expect(chosen(page)).toHaveText('My sheet');
  await expect(field(page, 1)).toHaveValue('a = 1 m');
  expect((await readSentence(page)).text).toBe(skill);
  // outside of the sheet it is the skill's
  await page.getByTestId('sentence').click();
  await expect(await button()).not.toHaveAttribute('title', /line|sheet/);
  await close();
  await undo(page);
  await expect.poll(async () => (await readSentence(page)).text).toBe(before);
  await expect(field(page, 1)).toHaveValue('a = 1 m');
});
