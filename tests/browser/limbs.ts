// The limbs of the large figure, taken hold of as a hand does.
import type { Locator, Page } from '@playwright/test';

export const limb = (page: Page, name: string): Locator => page.locator(`[data-limb="${name}"]`);

/** Where the upper or the lower half of a limb is on the page. */
export async function placeOf(
  page: Page,
  name: string,
  half: 'upper' | 'lower' = 'lower',
): Promise<{ x: number; y: number }> {
  const at = (await limb(page, name).getAttribute('data-at'))?.split(' ').map(Number) ?? [];
  const box = await page
    .locator('.figure-handle')
    .filter({ has: limb(page, name) })
    .boundingBox();
  if (!box) throw new Error(`no figure with ${name}`);
  const [x, y] = half === 'lower' && at.length > 2 ? at.slice(2) : at;
  return { x: box.x + x, y: box.y + y };
}

interface Led {
  readonly half?: 'upper' | 'lower';
  /** the button stays down */
  readonly held?: true;
}

export async function leadLimb(page: Page, name: string, dx: number, dy: number, led: Led = {}): Promise<void> {
  const { x, y } = await placeOf(page, name, led.half);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 3 });
  await page.mouse.move(x + dx, y + dy, { steps: 3 });
  if (!led.held) await page.mouse.up();
}

export interface Finger {
  down(x: number, y: number): Promise<void>;
  move(x: number, y: number): Promise<void>;
  /** a second finger beside the first */
  second(x: number, y: number): Promise<void>;
  up(): Promise<void>;
}

export async function makeFinger(page: Page): Promise<Finger> {
  const session = await page.context().newCDPSession(page);
  let points: { x: number; y: number; id: number }[] = [];
  const send = (type: 'touchStart' | 'touchMove' | 'touchEnd') =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: points });
  return {
    down: async (x, y) => {
      points = [{ x, y, id: 0 }];
      await send('touchStart');
    },
    move: async (x, y) => {
      points = [{ x, y, id: 0 }, ...points.slice(1)];
      await send('touchMove');
    },
    second: async (x, y) => {
      points = [...points, { x, y, id: 1 }];
      await send('touchStart');
    },
    up: async () => {
      points = [];
      await send('touchEnd');
    },
  };
}

export async function leadByFinger(page: Page, name: string, dx: number, dy: number, led: Led = {}): Promise<void> {
  const finger = await makeFinger(page);
  const { x, y } = await placeOf(page, name, led.half);
  await finger.down(x, y);
  for (let i = 1; i <= 5; i++) await finger.move(x + (dx * i) / 5, y + (dy * i) / 5);
  if (!led.held) await finger.up();
}
