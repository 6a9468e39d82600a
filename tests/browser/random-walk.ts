// One walk: gestures drawn with a seed, and at drawn instants the page ends and is opened again. What is found is what was handed over last.
import { expect, type Page } from '@playwright/test';
import { shelfTexts } from '../../src/app/shelf-words.ts';
import { commands } from '../../src/commands/table.ts';
import { type History, redo, undo } from '../../src/document/history.ts';
import { makeRandom, type Random } from '../reliability/corpus/random.ts';
import {
  STEPS_TO_END,
  TYPED,
  WALK_ENDS,
  WALK_STEPS,
  type Walk,
  type WalkEnd,
  type WalkStep,
} from '../reliability/walk.ts';

/** What leads out of the page, or asks the machine for something. */
const LEFT_OUT = ['open', 'save', 'save-original', 'save-version-1', 'print', 'undo', 'redo'];
const KEYS = commands.filter(({ id, keys }) => keys.length > 0 && !LEFT_OUT.includes(id)).map(({ keys }) => keys[0]);
const TOOL_KEYS = commands.filter(({ id }) => id.startsWith('tool-')).map(({ keys }) => keys[0]);
const MARK = 'handed over: ';
/** What the browser itself says of its graphics is not the page's. */
const NOT_OURS = /GL Driver|WebGL|GPU stall|Automatic fallback/;

interface Handed {
  readonly history: History<unknown>;
  readonly cursorS: number;
}

/** Each record that the page puts into its database, or beside it while that does not answer, is heard of here. */
const listenIn = (mark: string): void => {
  const { put } = IDBObjectStore.prototype;
  const { setItem } = Storage.prototype;
  Storage.prototype.setItem = function (key, text) {
    setItem.call(this, key, text);
    if (!key.startsWith('shapeflight.session.')) return;
    const { history, cursorS } = JSON.parse(text);
    console.debug(mark + JSON.stringify({ history, cursorS }));
  };
  IDBObjectStore.prototype.put = function (value, key) {
    const { history, cursorS } = value as { history?: unknown; cursorS?: unknown };
    if (this.transaction.db.name === 'shapeflight-sessions') console.debug(mark + JSON.stringify({ history, cursorS }));
    return put.call(this, value, key);
  };
  window.print = () => undefined;
};

const keyOf = (key: string): string => key.replace('Mod', 'ControlOrMeta').replace(/^Shift\+(.)$/, 'Shift+$1');

/** The middles of what is seen of a kind, in the order of the page. */
const findPlaces = (page: Page, kind: 'press' | 'drag' | 'edge' | 'type') =>
  page.evaluate((of) => {
    const all = {
      press:
        'button:not(:disabled), [role="tab"], [role="option"], summary, input[type="checkbox"], input[type="radio"]',
      drag: '.edge, [role="slider"], input[type="range"], canvas, .span, [data-limb]',
      edge: '.edge',
      type: 'input[type="text"], input[type="number"], input:not([type]), input[type="search"], textarea, [role="spinbutton"]',
    }[of];
    const top = document.querySelector('dialog[open]') ?? document;
    return [...top.querySelectorAll(all)].flatMap((one) => {
      const box = one.getBoundingClientRect();
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      const hit = box.width > 0 && document.elementFromPoint(x, y);
      const name = (one.getAttribute('aria-label') ?? one.textContent ?? '').trim().slice(0, 40);
      // what asks for a file, writes one or opens another window is left out
      const isOut = /open a file|save|print|download|copy|record|choose/i.test(name) || one.closest('a[href]');
      return hit && !isOut && (one.contains(hit) || hit.contains(one)) ? [{ x, y, name }] : [];
    });
  }, kind);

const rest = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));

function drawStep(r: Random): WalkStep {
  let left = r.int(WALK_STEPS.reduce((sum, [, weight]) => sum + weight, 0));
  return WALK_STEPS.find(([, weight]) => {
    left -= weight;
    return left < 0;
  })?.[0] as WalkStep;
}

export async function walk(first: Page, { seed, steps }: Walk): Promise<readonly string[]> {
  const r = makeRandom(seed);
  const context = first.context();
  const log: string[] = [];
  const faults: string[] = [];
  let handed: Handed[] = [];
  /** all documents that were ever handed over */
  const seen = new Set<string>();
  let page = first;
  let tool = 0;

  const watch = async (one: Page): Promise<void> => {
    await one.addInitScript(listenIn, MARK);
    one.on('pageerror', (error) => faults.push(`page error: ${error.message} ${error.stack?.split('\n')[1]}`));
    one.on('console', (said) => {
      const text = said.text();
      if (text.startsWith(MARK)) {
        const one: Handed = JSON.parse(text.slice(MARK.length));
        handed.push(one);
        seen.add(JSON.stringify(one.history.doc));
      } else if (said.type() === 'error' && !NOT_OURS.test(text)) faults.push(`console: ${text}`);
    });
    one.on('filechooser', () => undefined);
    one.on('download', (file) => void file.cancel());
  };
  const opened = async (): Promise<void> => {
    await expect(page.locator('#root > *').first()).toBeVisible();
    await expect.poll(() => handed.length).toBeGreaterThan(0);
  };
  /** gives what was done, in words that do it again */
  const step = async (): Promise<string> => {
    const what = drawStep(r);
    const { keyboard, mouse } = page;
    if (what === 'undo') {
      const key = r.isHit(0.7) ? 'ControlOrMeta+z' : 'ControlOrMeta+Shift+z';
      await keyboard.press(key);
      return key;
    }
    if (what === 'command' || what === 'tool') {
      const key = what === 'tool' ? TOOL_KEYS[tool++ % TOOL_KEYS.length] : r.isHit(0.2) ? 'Escape' : r.of(KEYS);
      if (what === 'tool') await keyboard.press('Escape');
      await keyboard.press(keyOf(key));
      return `${what} ${key}`;
    }
    const places = await findPlaces(page, what);
    const { x, y, name } = places[r.int(Math.max(places.length, 1))] ?? { x: 700, y: 300, name: 'the air' };
    if (what === 'press') {
      await mouse.click(x, y);
      return `press ${name}`;
    }
    if (what === 'type') {
      const text = r.of(TYPED);
      await mouse.click(x, y, { clickCount: 3 });
      await keyboard.type(text);
      const end = r.of(['Enter', 'Tab', 'Escape', undefined]);
      if (end) await keyboard.press(end);
      return `type "${text}" ${end ?? ''} into ${name}`;
    }
    const reach = what === 'edge' ? 40 : 120;
    const [dx, dy] = [r.int(2 * reach) - reach, r.int(reach) - reach / 2];
    const isHeld = r.isHit(0.3);
    await mouse.move(x, y);
    await mouse.down();
    await mouse.move(x + dx / 2, y + dy / 2, { steps: 2 });
    await mouse.move(x + dx, y + dy, { steps: 2 });
    if (!isHeld) await mouse.up();
    return `drag ${name} by ${dx}, ${dy}${isHeld ? ', held' : ''}`;
  };
  const end = async (way: WalkEnd): Promise<void> => {
    handed = [];
    if (way === 'reload') {
      await page.reload();
      return;
    }
    if (way === 'away and back') {
      await page.goto('about:blank');
      await page.goBack();
      return;
    }
    const old = page;
    page = await context.newPage();
    await watch(page);
    if (way === 'crash') {
      const crashed = old.waitForEvent('crash');
      await old.goto('chrome://crash').catch(() => undefined);
      await crashed;
    }
    await old.close();
    await page.goto('./?rows=all');
  };
  /** the history can be walked from one end to the other */
  const listDocs = ({ history }: Handed): string[] => {
    const docs = [JSON.stringify(history.doc)];
    for (let h = history; h.done.length > 0; ) {
      h = undo(h);
      docs.push(JSON.stringify(h.doc));
    }
    for (let h = history; h.undone.length > 0; ) {
      h = redo(h);
      expect(h.doc).toHaveProperty('title');
    }
    return docs;
  };

  await watch(page);
  await page.goto('./?rows=all');
  await page.mouse.click(700, 300);
  await page.keyboard.press('v');
  await page.keyboard.press('Escape');
  for (let n = 0; n < steps; n++) {
    log.push(await step());
    await rest(page);
    if (faults.length > 0) break;
    if (!r.isHit(1 / STEPS_TO_END) && n < steps - 1) continue;
    const way = r.of(WALK_ENDS);
    const last = handed.at(-1);
    log.push(`end: ${way}`);
    await end(way);
    await opened();
    const [found] = handed;
    const docs = listDocs(found);
    const near = [docs[0], docs[1], found.history.undone.length > 0 ? JSON.stringify(redo(found.history).doc) : ''];
    // a hand that was at work when it was kept has gone on: what it began from is one step back
    const isCut = last?.history.done.at(-1)?.title === shelfTexts.cutShort;
    const goesOn = isCut && JSON.stringify(undo(last.history).doc) === docs[1];
    if (last && !goesOn) expect(near, log.join('\n')).toContain(JSON.stringify(last.history.doc));
    if (last && docs[0] === JSON.stringify(last.history.doc))
      expect(docs.length, log.join('\n')).toBe(last.history.done.length + 1);
  }
  expect(faults, `seed ${seed}, ${log.length} steps:\n${log.join('\n')}`).toEqual([]);
  // a walk that changes nothing shows nothing
  expect(seen.size).toBeGreaterThan(steps / 12);
  return log;
}
