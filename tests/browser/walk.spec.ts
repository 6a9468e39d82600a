// Every tool by keyboard alone: the focus is seen wherever it is, nothing holds it, and Escape leads out.
import { expect, type Page } from '@playwright/test';
import { someOf } from '../corpus.ts';
import { openFirst } from './bench.ts';
import { test } from './kept-files.ts';

/** More stops than any tool has: a walk that is not through by then is caught somewhere. */
const MOST_STOPS = 220;

interface Stop {
  readonly name: string;
  readonly fault: string;
  /** place in the document: a walk goes back at its end alone */
  readonly at: number;
}

/** Where the focus is; undefined: on nothing. */
const readStop = (page: Page): Promise<Stop | undefined> =>
  page.evaluate(() => {
    const el = document.activeElement as HTMLElement | null;
    if (!el || el === document.body) return undefined;
    const rings = (one: Element | null, pseudo?: string): boolean => {
      if (!one) return false;
      const style = getComputedStyle(one, pseudo);
      return style.outlineStyle !== 'none' && Number.parseFloat(style.outlineWidth) >= 2;
    };
    const mark = getComputedStyle(el, '::after');
    const isMarked =
      rings(el) ||
      rings(el.parentElement) ||
      rings(el.closest('label')) ||
      [...el.querySelectorAll('*')].some((one) => rings(one)) ||
      rings(el, '::before') ||
      rings(el, '::after') ||
      // an edge of a shape shows its grip, a limb its name
      (el.matches('.edge') && mark.opacity === '1') ||
      (el.matches('[data-limb]') && document.querySelector('.limb-name, .pose-plate') !== null);
    const box = el.getBoundingClientRect();
    const isSeen = box.bottom > 0 && box.right > 0 && box.top < innerHeight && box.left < innerWidth;
    const name = `${el.tagName.toLowerCase()}.${el.className} "${(el.getAttribute('aria-label') ?? el.textContent ?? '').trim().slice(0, 40)}"`;
    return {
      name,
      fault: [isMarked ? '' : 'no focus to be seen', isSeen ? '' : 'off the screen'].filter(Boolean).join(', '),
      at: [...document.querySelectorAll('*')].indexOf(el),
    };
  });

/** `npm test` walks every second. */
const TOOLS = [
  ['', 'the bench'],
  ['c', 'Compare'],
  ['w', 'Why'],
  ['m', 'Before and after'],
  ['k', 'Ask'],
  ['e', 'Estimate'],
  ['i', 'Film'],
  ['h', 'Hand on'],
  ['p', 'Pose'],
] as const;

async function walkTool(page: Page, key: string): Promise<void> {
  if (key) {
    await page.keyboard.press(key);
    await expect(page.locator('[data-tool]')).toBeVisible();
    await expect(page.locator('.tool-loading')).toHaveCount(0);
    // what comes late is there: a tool has more to press than its name and the floor
    await expect.poll(() => page.locator('[data-tool] :is(button, input, select)').count()).toBeGreaterThan(5);
  }
  // from the top of the page
  await page.evaluate(() => {
    document.body.tabIndex = -1;
    document.body.focus();
    document.body.removeAttribute('tabindex');
  });
  const faults: string[] = [];
  let first: Stop | undefined;
  let last: Stop | undefined;
  let stops = 0;
  for (; stops < MOST_STOPS; stops++) {
    await page.keyboard.press('Tab');
    const stop = await readStop(page);
    // past the last the focus leaves the page, or begins again
    if (!stop || (first && stop.at <= first.at)) break;
    first ??= stop;
    if (last && stop.at < last.at) {
      faults.push(`${stop.name}: back from ${last.name}`);
      break;
    }
    if (stop.fault) faults.push(`${stop.name}: ${stop.fault}`);
    last = stop;
  }
  expect(faults).toEqual([]);
  expect(stops).toBeGreaterThan(15);
  expect(stops).toBeLessThan(MOST_STOPS);
  if (!key) return;
  await page.locator('[data-tool]').focus();
  await page.keyboard.press('Escape');
  await expect(page.locator('[data-tool]')).toHaveCount(0);
}

test('by Tab through every tool: always seen, in order, never caught; Escape leads out', { tag: '@desktop' }, async ({
  page,
}) => {
  test.slow();
  await openFirst(page);
  for (const [key, tool] of someOf(TOOLS, 2)) await test.step(tool, () => walkTool(page, key));
});
