/** Steps of long work on the page, each a small one as a person does it; a round of them ends where it began. */
import { expect, type Page } from '@playwright/test';
import { centre, leaveFocus, pickSkill } from './bench.ts';

type Step = (page: Page, n: number) => Promise<void>;

const press = (key: string) => (page: Page) => page.keyboard.press(key);

/** There and a little back, so that a round of them does not end at the edge of what is possible. */
const wayOf = (n: number): 1 | -1 => (Math.floor(n / 10) % 2 === 0 ? 1 : -1);

async function dragBy(page: Page, selector: string, dx: number, dy: number): Promise<void> {
  const { x, y } = await centre(page.locator(selector).first());
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2);
  await page.mouse.move(x + dx, y + dy);
  await page.mouse.up();
}

/** One edit each, in turn: by key, by drag, typed, taken back and done again. */
export const edits: readonly (readonly [string, Step])[] = [
  [
    'a value stepped by key',
    (page, n) => page.getByRole('spinbutton', { name: 'Height' }).press(wayOf(n) > 0 ? 'ArrowUp' : 'ArrowDown'),
  ],
  [
    'a value typed',
    async (page, n) => {
      const field = page.getByRole('spinbutton', { name: 'Air time' });
      await field.fill(n % 20 < 10 ? '0.95' : '1.05');
      await field.press('Enter');
    },
  ],
  ['an end of a shape dragged', (page, n) => dragBy(page, '.edge', -12 * wayOf(n), 0)],
  [
    'undo',
    async (page) => {
      await leaveFocus(page);
      await page.keyboard.press('ControlOrMeta+z');
    },
  ],
  ['redo', press('ControlOrMeta+Shift+z')],
  [
    'keys of an instant picked and moved',
    async (page, n) => {
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.press(wayOf(n) > 0 ? ',' : '.');
      await page.keyboard.press('Escape');
    },
  ],
  ['the skill seen from the other side', press('x')],
  ['a key dragged', (page, n) => dragBy(page, '.lane-keys .key', 8 * wayOf(n), 0)],
  ['undo again', press('ControlOrMeta+z')],
  [
    'a name typed into the wrong place',
    async (page) => {
      const field = page.getByRole('spinbutton', { name: 'Height' });
      await field.fill('900');
      await field.press('Enter');
      await field.press('Escape');
      await leaveFocus(page);
    },
  ],
];

export const switches: readonly (readonly [string, Step])[] = [
  [
    'large and back',
    async (page) => {
      await page.keyboard.press('g');
      await page.keyboard.press('g');
    },
  ],
  [
    'rows',
    async (page) => {
      await page.keyboard.press('r');
      await page.keyboard.press('r');
    },
  ],
  [
    'dark and back',
    async (page) => {
      await page.emulateMedia({ colorScheme: 'dark' });
      await page.emulateMedia({ colorScheme: 'light' });
    },
  ],
  [
    'tablet and back',
    async (page) => {
      const size = page.viewportSize();
      await page.setViewportSize({ width: 800, height: 1000 });
      await page.setViewportSize(size ?? { width: 1440, height: 900 });
    },
  ],
  [
    'play and stop',
    async (page) => {
      await page.keyboard.press('Space');
      await page.keyboard.press('End');
      await page.keyboard.press('Space');
      await page.keyboard.press('Space');
      await page.keyboard.press('Home');
    },
  ],
  [
    'the next shapes',
    async (page) => {
      await page.keyboard.press('PageDown');
      await page.keyboard.press('PageUp');
    },
  ],
];

/** Every tool and panel by its key, and what closes it. */
export const openings: readonly string[] = [
  ...['p', 'c', 'w', 'm', 'k', 'e', 'i', 'q', 'h'],
  ...['v', 'j', 'b', 's', '?', 'ControlOrMeta+k', 'ControlOrMeta+p'],
];
const ROOMS = ['p', 'c', 'w', 'm', 'k', 'e', 'i', 'q', 'h'];

export async function openAndClose(page: Page, key: string): Promise<void> {
  await page.keyboard.press(key);
  if (ROOMS.includes(key)) {
    await page.locator('.tool, .room').first().waitFor();
    const tabs = page.locator('.tool [role="tab"]:not([aria-selected="true"])');
    const names = await tabs.evaluateAll((all) => all.map((one) => one.id));
    for (const id of names) await page.locator(`[id="${id}"]`).click();
    await leaveFocus(page);
    await page.keyboard.press(key);
    await expect(page.locator('.tool, .room')).toHaveCount(0);
  } else {
    await page.locator('dialog[open]').waitFor();
    await page.keyboard.press('Escape');
    await expect(page.locator('dialog[open]')).toHaveCount(0);
  }
}

/** The same document, cursor and places as before. */
export async function goHome(page: Page): Promise<void> {
  await leaveFocus(page);
  await pickSkill(page, 'Back somersault, straight, full twist');
  await expect(page.locator('dialog[open]')).toHaveCount(0);
  await page.keyboard.press('Home');
  await page.keyboard.press('Escape');
}
