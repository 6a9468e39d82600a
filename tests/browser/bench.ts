// What the specs share: opening the bench, reading its sentence, dragging as a hand does.
import path from 'node:path';
import { expect, type FileChooser, type Locator, type Page } from '@playwright/test';

/** Opens the page as someone sees it who comes for the first time. */
export async function openFirst(page: Page): Promise<void> {
  await open(page, './');
}

/** The whole bench on a full twist: every row, and something to say in each. */
export const BENCH = './?skill=back-straight-full&rows=all';

export async function openBench(page: Page): Promise<void> {
  await open(page, BENCH);
}

/** The bench with what this browser has kept of it. */
export async function openKept(page: Page): Promise<void> {
  await open(page, './?rows=all');
}

/** Waits until the first picture is drawn. */
async function open(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
}

/** By the key that opens a file. The browser has to be asked for its dialogs before the key comes: the round trip is behind that request. */
export async function chooseFile(page: Page, file: Parameters<FileChooser['setFiles']>[0]): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.evaluate(() => undefined);
  await page.keyboard.press('ControlOrMeta+o');
  await (await chooser).setFiles(file);
}

/** Opens the full as it was before it was made from technique: what is tested of a tool does not change with the skill that opens first. */
export async function openFormer(page: Page): Promise<void> {
  await openBench(page);
  await chooseFile(page, path.resolve(import.meta.dirname, '../former/back-straight-full.json'));
  await expect(page.getByTestId('sentence')).toContainText('1.04');
}

/** Opens the page, and of the ready skills that have these words the one with the shortest name: of "double" and "double with a twist" the first. */
export async function openSkill(page: Page, name: string): Promise<void> {
  await openBench(page);
  await pickSkill(page, name);
}

export async function pickSkill(page: Page, name: string): Promise<void> {
  await page.keyboard.press('s');
  await page.getByRole('searchbox').fill(name);
  const found = page.getByRole('dialog').getByRole('button', { name: new RegExp(name, 'i') });
  await found.first().waitFor();
  const lengths = await found.evaluateAll((all) =>
    all.map((one) => (one.querySelector('b') ?? one).textContent?.length ?? 0),
  );
  await found.nth(lengths.indexOf(Math.min(...lengths))).click();
}

export interface Said {
  readonly somersaults: number;
  readonly twists: number;
  readonly text: string;
}

/** The numbers of the result line, as a person reads them. */
/** What was pressed has come to its end: undo and a pose that is put are flown in the page's next task and shown in the one after. */
export const settled = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    for (let i = 0; i < 4; i++) await new Promise((resolve) => setTimeout(resolve));
  });

export async function readSentence(page: Page): Promise<Said> {
  await settled(page);
  const text = ((await page.getByTestId('sentence').textContent()) ?? '').replace(/\s+/g, ' ');
  const number = (pattern: RegExp): number => Number(pattern.exec(text)?.[1] ?? Number.NaN);
  return { text, somersaults: number(/([\d.]+) somersault/), twists: number(/([\d.]+) twist/) };
}

export async function centre(target: Locator): Promise<{ x: number; y: number }> {
  await target.scrollIntoViewIfNeeded();
  const box = await target.boundingBox();
  if (!box) throw new Error('nothing to touch: the target has no box');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** A drag in several moves; `release` false leaves the button down. */
export async function drag(page: Page, target: Locator, dx: number, dy: number, release = true): Promise<void> {
  const { x, y } = await centre(target);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 3 });
  await page.mouse.move(x + dx, y + dy, { steps: 3 });
  if (release) await page.mouse.up();
}

export const bob = (page: Page): Locator => page.getByRole('slider', { name: 'Time in the flight' });
export const cursorOf = async (page: Page): Promise<number> => Number(await bob(page).getAttribute('aria-valuenow'));
export async function undo(page: Page): Promise<void> {
  await page.keyboard.press('ControlOrMeta+z');
  await settled(page);
}

/** A change as a person makes it, on any device. */
export async function editSpeedUp(page: Page, metresPerS: string): Promise<void> {
  await page.keyboard.press('v');
  const field = page.getByRole('dialog').getByRole('spinbutton', { name: 'Speed up' });
  await field.fill(metresPerS);
  await field.press('Enter');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
}

/** Keys are the page's again, not those of what has the focus. */
export const leaveFocus = (page: Page): Promise<void> =>
  page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());

/** Those of the buttons that are under a thumb's size, px, each with its name. */
export const smallTargets = (buttons: Locator, least: number): Promise<string[]> =>
  buttons.evaluateAll(
    (all, px) =>
      all
        .map((b) => ({ name: b.textContent || b.getAttribute('aria-label'), ...b.getBoundingClientRect().toJSON() }))
        .filter((r) => r.width < px || r.height < px)
        .map((r) => `${r.name}: ${r.width} x ${r.height}`),
    least,
  );

/** A drag by one finger in four steps of (dx, dy). */
export async function dragByFinger(page: Page, target: Locator, dx: number, dy: number): Promise<void> {
  const box = await target.boundingBox();
  if (!box) throw new Error('nothing to touch: the target has no box');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const session = await page.context().newCDPSession(page);
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
  for (let i = 1; i <= 4; i++)
    await session.send('Input.dispatchTouchEvent', {
      type: 'touchMove',
      touchPoints: [{ x: x + dx * i, y: y + dy * i }],
    });
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}

/** A finger rests before it is lifted, ms: lifted on the way it throws, and the tap that comes next only stops that. */
const RESTS = 150;

/** One finger from x to x + dx on one line. */
export async function drawAlong(page: Page, { x, y }: { x: number; y: number }, dx: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: number) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: at === undefined ? [] : [{ x: at, y }] });
  await touch('touchStart', x);
  for (let i = 1; i <= 5; i++) await touch('touchMove', x + (dx * i) / 5);
  await page.waitForTimeout(RESTS);
  await touch('touchMove', x + dx + Math.sign(dx));
  await touch('touchEnd');
}

/** Names and rows of a table, without the lines over them that say where it is from. */
export const rowsOf = (csv: string): string[] =>
  csv
    .trim()
    .split('\n')
    .filter((line) => !line.startsWith('#'));
