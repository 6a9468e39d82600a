// How long one task holds the page's thread when a skill is opened, an athlete given, an edit made or taken back, a tool opened:
// processor time of the longest task of each act, from the browser's own trace, which says the same on a busy machine.
import { measureBuilds, ms, openPage, printRows, share } from './pages.mjs';

/** Longer tasks are felt (W3C Long Tasks: 50 ms). */
const FELT_MS = 50;
/** After an act, what it leaves to do. */
const REST_MS = 400;

const rows = (page) => page.locator('dialog[open] ul.list').last().locator('button.row-button');

/** [kind, name, act]; an act without a kind prepares the next. */
async function listActs(page) {
  await page.keyboard.press('s');
  await rows(page).first().waitFor();
  const skills = await rows(page).locator('b').allTextContents();
  await page.keyboard.press('Escape');
  const acts = [];
  const act = (kind, name, run) => acts.push({ kind, name, run });
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

/** Longest task of the page's thread in each act, ms. */
async function trace(page, acts) {
  const session = await page.context().newCDPSession(page);
  const events = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...value));
  const includedCategories = ['toplevel', 'blink.user_timing', 'devtools.timeline', '__metadata'];
  await session.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig: { includedCategories } });
  const mark = (name) => page.evaluate((n) => performance.mark(n), name);
  for (const [i, { run }] of acts.entries()) {
    await mark(`act ${i}`);
    await run(page);
    await page.waitForTimeout(REST_MS);
  }
  await mark(`act ${acts.length}`);
  const done = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await done;
  const marks = events.filter(({ name, cat }) => /^act \d+$/.test(name) && cat.includes('user_timing'));
  const [{ pid, tid }] = marks;
  const starts = marks.sort((a, b) => a.ts - b.ts).map(({ ts }) => ts);
  const longest = acts.map(() => 0);
  for (const { name, ph, pid: p, tid: t, ts, dur, tdur } of events) {
    if (ph !== 'X' || p !== pid || t !== tid || !/RunTask$/.test(name)) continue;
    const at = starts.findLastIndex((start) => start <= ts);
    if (at >= 0 && at < acts.length) longest[at] = Math.max(longest[at], (tdur ?? dur) / 1000);
  }
  await session.detach();
  return longest;
}

await measureBuilds('The longest task of an act', async (browser, builds) => {
  for (const build of builds) {
    const page = await openPage(browser, build.url);
    await page.waitForTimeout(1500);
    const acts = await listActs(page);
    const longest = await trace(page, acts);
    build.acts = acts.map((act, i) => ({ ...act, longest: longest[i] })).filter(({ kind }) => kind);
    await page.context().close();
  }
  const kinds = [...new Set(builds[0].acts.map(({ kind }) => kind))];
  const of = (build, kind) => build.acts.filter((act) => act.kind === kind).map((act) => act.longest);
  printRows(
    builds,
    kinds.flatMap((kind) => [
      [`${kind}: median of ${of(builds[0], kind).length}`, (build) => share(of(build, kind), 0.5), ms],
      ['  the longest', (build) => Math.max(...of(build, kind)), ms],
    ]),
  );
  for (const { name, acts } of builds) {
    const felt = acts.filter(({ longest }) => longest > FELT_MS).sort((a, b) => b.longest - a.longest);
    console.log(`  ${name}: ${felt.length} of ${acts.length} acts hold the thread for more than ${FELT_MS} ms`);
    for (const { kind, name: which, longest } of felt.slice(0, 12))
      console.log(`    ${ms(longest)}  ${kind}: ${which}`);
  }
});
