// How long one task holds the page's thread when a skill is opened, an athlete given, an edit made or taken back, a tool opened:
// processor time of the longest task of each act.
import { makeActs, printActs, traceActs } from './longest-task.mjs';
import { measureBuilds, openPage } from './pages.mjs';

const rows = (page) => page.locator('dialog[open] ul.list').last().locator('button.row-button');

async function listActs(page) {
  await page.keyboard.press('s');
  await rows(page).first().waitFor();
  const skills = await rows(page).locator('b').allTextContents();
  await page.keyboard.press('Escape');
  const { acts, act } = makeActs();
  skills.forEach((name, i) => {
    act(undefined, '', (p) => p.keyboard.press('s'));
    act('a ready skill is opened', name, (p) => rows(p).nth(i).click());
  });
  for (let i = 0; i < 5; i++) act('undo of an opening', `${i}`, (p) => p.keyboard.press('Control+z'));
  for (let i = 0; i < 5; i++) act('redo of an opening', `${i}`, (p) => p.keyboard.press('Control+y'));
  // one whose take-off is stated, so that it can be typed
  act(undefined, '', (p) => p.keyboard.press('s'));
  act(undefined, '', (p) => rows(p).filter({ hasText: 'full twist' }).first().click());
  for (const value of ['4.8', '5.1', '4.6', '5']) {
    const field = (p) => p.getByRole('spinbutton', { name: 'Speed up' });
    act(undefined, '', (p) => field(p).fill(value));
    act('a value is typed', value, (p) => field(p).press('Enter'));
  }
  for (let i = 0; i < 5; i++) {
    act(undefined, '', (p) => p.keyboard.press('Escape'));
    act(undefined, '', (p) => p.locator('.sentence').click({ position: { x: 2, y: 2 } }));
    act(undefined, '', (p) => p.keyboard.press('v'));
    act('an athlete is given', `${i}`, (p) => rows(p).nth(i).click());
    act(undefined, '', (p) => p.keyboard.press('Escape'));
  }
  const tools = await page.locator('nav.tool-bar button').allTextContents();
  for (const turn of ['first', 'again'])
    tools.forEach((name, i) => {
      act(`a tool is opened, ${turn}`, name, (p) => p.locator('nav.tool-bar button').nth(i).click());
      act(undefined, '', (p) => p.locator('nav.tool-bar button').nth(i).click());
    });
  return acts;
}

await measureBuilds('The longest task of an act', async (browser, builds) => {
  for (const build of builds) {
    const page = await openPage(browser, build.url);
    await page.waitForTimeout(1500);
    const acts = await listActs(page);
    const longest = await traceActs(page, acts);
    build.acts = acts.map((act, i) => ({ ...act, longest: longest[i] })).filter(({ kind }) => kind);
    await page.context().close();
  }
  printActs(builds);
});
