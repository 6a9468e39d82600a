// How long one task holds the page's thread under Hand on: opened, each way picked, its settings changed, and what it makes.
import { makeActs, printActs, traceActs } from './longest-task.mjs';
import { measureBuilds, openPage } from './pages.mjs';

/** Until a moving picture, a PNG or the room for error is there. */
const MAKING_MS = 12_000;
const SLOW_MS = 2500;

const WAYS = ['code', 'card', 'pictures', 'moving', 'report', 'file', 'share', 'link'];
const row = (p, id) => p.locator(`[data-way="${id}"]`);
const pick = (p, id) => row(p, id).click({ position: { x: 40, y: 12 } });
const select = (p, label, value) => p.locator('.paper-way').getByLabel(label).selectOption({ index: value });
const press = (p, name) => p.locator('.paper-way, .moving-view').getByRole('button', { name, exact: true }).click();
const tick = (p, name) => p.getByRole('checkbox', { name }).first().click();

function listActs() {
  const { acts, act } = makeActs();
  for (const turn of ['first', 'again']) {
    act(`Hand on is opened, ${turn}`, '', (p) => p.keyboard.press('h'), SLOW_MS);
    for (const id of WAYS) act(`a way is picked, ${turn}`, id, (p) => pick(p, id), 1200);
    if (turn === 'first') act(undefined, '', (p) => p.keyboard.press('h'));
  }
  act(undefined, '', (p) => pick(p, 'card'), 1200);
  act('a card is changed', 'a cue', (p) => p.locator('.paper-cue input').first().fill('Long and still.'));
  act('a card is changed', 'a mark', async (p) => {
    await row(p, 'card').locator('.peg').nth(1).focus();
    await p.keyboard.press('Shift+ArrowRight');
  });
  act('a card is changed', 'the name is ticked', (p) => tick(p, /^name/));
  act('a card is made', 'read', (p) => press(p, 'These cues are right'));
  act('a card is made', 'SVG', (p) => press(p, 'Keep as SVG'));
  act('a card is made', 'PNG', (p) => press(p, 'Keep as PNG'), SLOW_MS);
  act('a card is made', 'printed', (p) => press(p, 'Print'), SLOW_MS);
  act('a card is made', 'room for error', (p) => press(p, 'Compute the room for error'), MAKING_MS);
  act(undefined, '', (p) => pick(p, 'pictures'), 1200);
  for (const i of [0, 1, 2]) act('pictures are changed', `layout ${i}`, (p) => select(p, 'Poses', i), 900);
  for (const i of [1, 2, 0]) act('pictures are changed', `steps ${i}`, (p) => select(p, /^At/, i), 900);
  act('pictures are changed', '16 of them', (p) => p.locator('.paper-way input[type="number"]').first().fill('16'));
  act('pictures are changed', '16 of them', (p) => p.keyboard.press('Enter'), 900);
  act('pictures are changed', 'curves', (p) => select(p, 'Under it', 1), 900);
  act('pictures are changed', 'width', async (p) => {
    await p.getByLabel('Width in print, mm').fill('1200');
    await p.keyboard.press('Enter');
  });
  act('pictures are made', 'SVG', (p) => press(p, 'Keep as SVG'));
  act('pictures are made', 'PNG of 1200 mm', (p) => press(p, 'Keep as PNG, 300 dpi'), MAKING_MS);
  act(undefined, '', (p) => pick(p, 'report'), 1200);
  act('a report is changed', 'the name is ticked', (p) => tick(p, /^name/), 900);
  act('a report is made', 'SVG', (p) => press(p, 'Keep as SVG'));
  act('a report is made', 'printed', (p) => press(p, 'Print'), SLOW_MS);
  act(undefined, '', (p) => pick(p, 'moving'), 1200);
  for (const name of ['the front', 'above', 'close', 'the side', 'real', '1080 × 1080', '1280 × 720', 'WebM', 'MP4'])
    act('a moving picture is changed', name, (p) => press(p, name), 900);
  act('a moving picture is changed', 'rates', (p) => tick(p, /^rates/), 900);
  act('a moving picture is made', '', (p) => row(p, 'moving').getByRole('button').first().click(), MAKING_MS);
  return acts;
}

await measureBuilds('The longest task of an act under Hand on', async (browser, builds) => {
  for (const build of builds) {
    const page = await openPage(browser, build.url, '?skill=back-straight-double');
    // a page with an address, on a device that prints and shares
    await page.addInitScript(() => {
      globalThis.print = () => {};
      globalThis.navigator.share = () => Promise.resolve();
      localStorage.setItem('shapeflight.address', 'https://bench.example/');
    });
    await page.reload();
    await page.waitForTimeout(2000);
    const acts = listActs();
    const longest = await traceActs(page, acts);
    build.acts = acts.map((act, i) => ({ ...act, longest: longest[i] })).filter(({ kind }) => kind);
    await page.context().close();
  }
  printActs(builds);
});
