// Walks a lesson on the page: presses what is bold by the name it has for everybody, and waits until what is quoted can be read there.
import { expect, type Locator, type Page } from '@playwright/test';
import type { Act, Step } from './lesson-script.ts';

export interface Walker {
  readonly page: Page;
  /** how long a name or a quote is waited for, ms */
  readonly waits: number;
  readonly hasTouch: boolean;
}

const PRESSED = ['button', 'tab', 'option', 'checkbox', 'radio', 'switch', 'link', 'menuitem'] as const;
const DRAWN = ['slider'] as const;
const WRITTEN = ['spinbutton', 'textbox', 'searchbox', 'combobox'] as const;
type Role = (typeof PRESSED | typeof WRITTEN | typeof DRAWN)[number];

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);

/** Those that can be seen: by the whole name, else by how it begins. */
async function findAll(page: Page, roles: readonly Role[], name: string): Promise<Locator[]> {
  const within = (place: Page | Locator, named: RegExp): Locator => {
    const [first, ...rest] = roles.map((role) => place.getByRole(role, { name: named }));
    return rest.reduce((all, one) => all.or(one), first).filter({ visible: true });
  };
  const dialogs = page.getByRole('dialog').filter({ visible: true });
  // what is over the page is pressed first
  const places = (await dialogs.count()) > 0 ? [dialogs.last(), page] : [page];
  const names = [new RegExp(`^${escaped(name)}$`), new RegExp(`^${escaped(name)}(?![\\p{L}\\p{N}])`, 'u')];
  for (const place of places)
    for (const named of names) {
      const found = await within(place, named).all();
      if (found.length > 0) return found;
    }
  return [];
}

async function findOne({ page, waits }: Walker, roles: readonly Role[], name: string): Promise<Locator> {
  let found: Locator[] = [];
  await expect
    .poll(
      async () => {
        found = await findAll(page, roles, name);
        return found.length;
      },
      { message: `named ${name} on the page`, timeout: waits },
    )
    .toBe(1);
  return found[0];
}

/** What can be read, in the order of the page: text that has room, and what is in fields. */
const seen = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const parts: string[] = [];
    const isHidden = (one: Element): boolean => {
      if (!one.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return true;
      const { width, height } = one.getBoundingClientRect();
      // said to screen readers alone
      return width <= 1 && height <= 1 && getComputedStyle(one).overflow === 'hidden';
    };
    const visit = (node: Node): void => {
      if (node instanceof Text) parts.push(node.data);
      if (!(node instanceof Element) || isHidden(node)) return;
      if (node instanceof HTMLInputElement) parts.push(node.value);
      else if (node instanceof HTMLSelectElement) parts.push(node.selectedOptions[0]?.text ?? '');
      else node.childNodes.forEach(visit);
      if (!getComputedStyle(node).display.startsWith('inline')) parts.push(' ');
    };
    visit(document.body);
    return parts
      .join('')
      .replace(/\s+/g, ' ')
      .replace(/ ([,.;:])/g, '$1');
  });

/** A quote says it word for word; "…" leaves out a few words. No number is the tail or the head of a longer one. */
const quoteOf = (quote: string): RegExp => {
  const words = quote.replace(/\s+/g, ' ').trim().split(/ ?… ?/).map(escaped).join('.{1,60}?');
  return new RegExp(String.raw`(?<![\p{L}\p{N}.])${words}(?![\p{L}\p{N}]|\.\d)`, 'u');
};

/** px */
const FIRST_DRAW = 16;
const MOST_MOVES = 12;

interface Hand {
  down(x: number, y: number): Promise<void>;
  move(x: number, y: number): Promise<void>;
  up(): Promise<void>;
}

/** A mouse, or a finger on what is touched. */
async function makeHand(page: Page, hasTouch: boolean): Promise<Hand> {
  const { mouse } = page;
  if (!hasTouch)
    return {
      down: async (x, y) => {
        await mouse.move(x, y);
        await mouse.down();
      },
      move: (x, y) => mouse.move(x, y),
      up: () => mouse.up(),
    };
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd') => async (x?: number, y?: number) => {
    await session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: x === undefined || y === undefined ? [] : [{ x, y }],
    });
  };
  return { down: touch('touchStart'), move: touch('touchMove'), up: touch('touchEnd') };
}

const doAct: { [K in Act['kind']]: (walker: Walker, act: Extract<Act, { kind: K }>) => Promise<void> } = {
  press: async (walker, { name }) => {
    const target = await findOne(walker, PRESSED, name);
    await (walker.hasTouch ? target.tap({ timeout: walker.waits }) : target.click({ timeout: walker.waits }));
  },
  key: ({ page }, { key }) => page.keyboard.press(key),
  write: async (walker, { text, field }) => {
    const target = field ? await findOne(walker, WRITTEN, field) : walker.page.locator('input:focus, textarea:focus');
    await target.fill(text, { timeout: walker.waits });
    if (field) await target.press('Enter');
  },
  draw: async (walker, { end, to }) => {
    const { page, hasTouch } = walker;
    const target = await findOne(walker, DRAWN, end);
    const box = await target.boundingBox();
    if (!box) throw new Error('it has no room on the page');
    // what is drawn is flown and shown with the next pictures
    const at = async (): Promise<number> => {
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
      return Number(await target.getAttribute('aria-valuenow'));
    };
    const start = await at();
    const y = box.y + box.height / 2;
    const hand = await makeHand(page, hasTouch);
    let x = box.x + box.width / 2;
    let dx = Math.sign(to - start) * FIRST_DRAW;
    let now = start;
    await hand.down(x, y);
    for (let tries = 0; tries < MOST_MOVES && now.toFixed(2) !== to.toFixed(2); tries++) {
      x += dx;
      await hand.move(x, y);
      const before = now;
      now = await at();
      // as far as is missing, by what the last move did
      dx = now === before ? Math.sign(dx) : Math.round(((to - now) * dx) / (now - before)) || Math.sign(to - now);
    }
    await hand.up();
    expect((await at()).toFixed(2)).toBe(to.toFixed(2));
  },
  says: async ({ page, waits }, { quote }) => {
    await expect.poll(() => seen(page), { message: `said on the page`, timeout: waits }).toMatch(quoteOf(quote));
  },
};

/** Does what is written, in its order; what cannot be done is said with the lesson, the step and its words. */
export async function walkLesson(walker: Walker, lesson: string, steps: readonly Step[]): Promise<void> {
  for (const { number, acts } of steps)
    for (const act of acts)
      try {
        await (doAct[act.kind] as (walker: Walker, act: Act) => Promise<void>)(walker, act);
      } catch (error) {
        const words = Object.values(act).slice(1).join(', ');
        throw new Error(`${lesson}, step ${number}: ${act.kind} ${words}`, { cause: error });
      }
}
