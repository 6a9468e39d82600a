// Acts of a person, each with its kind and name: every tool with its tabs and words, every view and switch, play, undo, drags, openings.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { root } from '../../src/cli/install.mjs';
import { makeActs } from './longest-task.mjs';

/** What prepares an act leaves little to do. */
const SHORT_MS = 200;
const PICKED = 'skill=back-straight-full&rows=all';
export const query = `?${PICKED}`;
/** What asks for a file or writes one, opens another window, or looks for a camera. */
const LEADS_OUT = /open|save|print|download|copy|record|choose|camera|file|read|paper/i;

/** Tool and key, as the table of commands has them; a tool that has none is an error. */
function listTools() {
  const source = (name) => readFileSync(path.join(root, name), 'utf8');
  const keys = /TOOL_KEYS[^{]*\{([^}]*)\}/.exec(source('src/commands/table.ts'))?.[1] ?? '';
  return [...source('src/app/layout/tools/tool-list.ts').matchAll(/^ {4}name: '(\w+)'/gm)].map(([, name]) => {
    const key = new RegExp(`\\b${name}: '(\\w)'`).exec(keys)?.[1];
    if (!key) throw new Error(`The tool ${name} has no key.`);
    return { name, key: key.toLowerCase() };
  });
}

const rows = (page) => page.locator('dialog[open] ul.list').last().locator('button.row-button');
const ground = (page) => page.evaluate(() => document.activeElement?.blur());
const press = (key) => async (page) => {
  await ground(page);
  await page.keyboard.press(key);
};
/** Of an open tool: tabs, words that are on or off, folds. */
const switches = (name) =>
  ['[role="tab"]', '[aria-pressed]', 'summary'].map((one) => `[data-tool="${name}"] ${one}:not(:disabled)`).join(', ');
const nameOf = (one) => (one.getAttribute('aria-label') ?? one.textContent ?? '').trim().slice(0, 40);

async function listSwitches(page, { name, key }) {
  await press(key)(page);
  await page.locator(`[data-tool="${name}"]`).waitFor();
  await page.waitForTimeout(1500);
  const found = await page
    .locator(switches(name))
    .evaluateAll(
      (all, say) =>
        all.map((one) =>
          one.getBoundingClientRect().width > 0 ? new Function('one', `return (${say})(one)`)(one) : '',
        ),
      nameOf.toString(),
    );
  await press(key)(page);
  const names = [...new Set(found)].filter((one) => one && !LEADS_OUT.test(one));
  return names;
}

const pressSwitch = (tool, name) => async (page) => {
  const at = await page
    .locator(switches(tool))
    .evaluateAll(
      (all, [say, wanted]) => all.findIndex((one) => new Function('one', `return (${say})(one)`)(one) === wanted),
      [nameOf.toString(), name],
    );
  if (at < 0) throw new Error(`${name} is not there`);
  await page.locator(switches(tool)).nth(at).click({ timeout: 4000 });
};

const drag = (find, dx, dy) => async (page) => {
  const { x, y } = await find(page);
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx, y + dy, { steps: 8 });
  await page.mouse.up();
};
const middle = (selector) => async (page) => {
  const one = page.locator(selector).first();
  await one.scrollIntoViewIfNeeded({ timeout: 4000 });
  const { x, y, width, height } = await one.boundingBox();
  return { x: x + width / 2, y: y + height / 2 };
};
const limb = (name) => async (page) => {
  const [x, y] = (await page.locator(`[data-limb="${name}"]`).first().getAttribute('data-at', { timeout: 4000 }))
    .split(' ')
    .map(Number)
    .slice(-2);
  const box = await page
    .locator('.figure-handle')
    .filter({ has: page.locator(`[data-limb="${name}"]`) })
    .first()
    .boundingBox();
  return { x: box.x + x, y: box.y + y };
};

const SWITCHES = [
  ['large view, on', 'g'],
  ['large view, zoomed', '+'],
  ['large view, fitted', '0'],
  ['large view, off', 'g'],
  ['rows, folded', 'r'],
  ['rows, shown', 'r'],
  ['mark, set', 't'],
  ['mark, away', 't'],
  ['loop, on', 'l'],
  ['loop, off', 'l'],
];
const PANELS = [
  ['skills', 's'],
  ['values', 'v'],
  ['joints', 'j'],
  ['shapes', 'b'],
  ['keys', '?'],
  ['commands', 'Control+k'],
];
const COMMANDS = [
  'Use dark colours',
  'Use light colours',
  'Use the colours of the system',
  'Hall: large text',
  'Hall: large text',
  'About this result',
  'Start here',
  'Lessons: read one',
  'Glossary: what',
];

/** `mostSkills`: of the ready skills so many are opened, evenly drawn from the list. */
export async function listActs(page, mostSkills) {
  const tools = [];
  for (const tool of listTools()) tools.push({ ...tool, switches: await listSwitches(page, tool) });
  await press('s')(page);
  await rows(page).first().waitFor();
  const skills = await rows(page).locator('b').allTextContents();
  await page.keyboard.press('Escape');

  const { acts, act } = makeActs();
  const prepare = (run) => act(undefined, '', run, SHORT_MS);
  for (const { name, key, switches: words } of tools)
    for (const turn of ['first', 'again']) {
      act(`a tool is opened, ${turn}`, name, press(key), 900);
      if (turn === 'first')
        for (const word of words) act('a tab or word of a tool', `${name}: ${word}`, pressSwitch(name, word));
      act('a tool is closed', `${name}, ${turn}`, press(key));
    }
  for (const [name, key] of SWITCHES) act('a switch', name, press(key));
  act('play', 'begun', press('Space'), 1200);
  act('play', 'ended', press('Space'));
  for (const [name, key] of PANELS) {
    act('a panel is opened', name, press(key));
    act('a panel is closed', name, (p) => p.keyboard.press('Escape'));
  }
  for (const name of COMMANDS) {
    prepare(press('Control+k'));
    prepare((p) => p.keyboard.type(name));
    act('a command', name, (p) => p.keyboard.press('Enter'), 700);
    prepare((p) => p.keyboard.press('Escape'));
    prepare((p) => p.keyboard.press('Escape'));
  }
  const back = () => act('undo', 'of a gesture', press('Control+z'));
  const again = () => act('redo', 'of a gesture', press('Control+y'));
  const gestures = [
    ['an edge', middle('.edge'), 40, 0],
    ['the cursor', middle('[role="slider"][aria-label="Time in the flight"]'), 120, 0],
  ];
  for (const [name, find, dx, dy] of gestures) act('a drag', name, drag(find, dx, dy), 700);
  // the figure itself is a handle while it is posed
  act(undefined, '', press('p'), 900);
  act('a drag', 'an arm', drag(limb('front armL'), 40, -10), 700);
  prepare(press('p'));
  for (let i = 0; i < 2; i++) back();
  for (let i = 0; i < 2; i++) again();
  prepare(press('j'));
  act('a drag', 'a key', drag(middle('.lane-keys .key'), 15, 0), 700);
  prepare((p) => p.keyboard.press('Escape'));
  back();
  act(
    'a file is opened',
    'a full twist',
    async (p) => {
      const chooser = p.waitForEvent('filechooser');
      await ground(p);
      await p.keyboard.press('Control+o');
      await (await chooser).setFiles(path.join(root, 'tests/former/back-straight-full.json'));
    },
    900,
  );
  const every = Math.max(1, Math.ceil(skills.length / mostSkills));
  skills.forEach((name, i) => {
    if (i % every > 0) return;
    prepare(press('s'));
    act('a ready skill is opened', name, (p) => rows(p).nth(i).click({ timeout: 4000 }), 600);
  });
  for (let i = 0; i < 3; i++) act('undo', 'of an opening', press('Control+z'));
  for (let i = 0; i < 3; i++) act('redo', 'of an opening', press('Control+y'));
  return acts;
}
