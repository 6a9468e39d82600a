// The page under a dragging hand: script time from a move of an edge to the picture handed over, frame callbacks included, and all
// that the page's own thread does for it, layout, paint and drawing of the canvases among it; against a fixed piece of arithmetic.
import { measureBuilds, ms, openPage, printRows, share } from './pages.mjs';

const ROUNDS = 5;
const MOVES = 60;
/** Of the edges on the ruler one that has room on both sides, between two different shapes. */
const EDGE = 0;

async function grab(page) {
  const edge = page.locator('.edge').nth(EDGE);
  await edge.scrollIntoViewIfNeeded();
  const box = await edge.boundingBox();
  if (!box) throw new Error('The page shows no edge to drag.');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  return { x, y };
}

const move = ({ x, y, moves, nth }) =>
  new Promise((done) => {
    const edge = document.querySelectorAll('.edge')[nth];
    const sentence = () => document.querySelector('[data-testid="sentence"]')?.textContent ?? '';
    const found = { spent: [], units: [], said: [] };
    let i = 0;
    // what the page leaves to the next frame belongs to the move
    const real = window.requestAnimationFrame;
    window.requestAnimationFrame = (call) =>
      real((t) => {
        const start = performance.now();
        call(t);
        if (found.spent.length > 0) found.spent[found.spent.length - 1] += performance.now() - start;
      });
    const step = () => {
      const event = new PointerEvent('pointermove', {
        bubbles: true,
        pointerId: 1,
        clientX: x + 3 * ((i % 20) - 10),
        clientY: y,
      });
      const start = performance.now();
      edge.dispatchEvent(event);
      found.spent.push(performance.now() - start);
      found.said.push(sentence());
      i += 1;
      // asked for after the page's own: runs after it
      if (i < moves) real(() => real(step));
      else {
        window.requestAnimationFrame = real;
        real(() => real(() => done(found)));
      }
    };
    real(step);
  });

const arithmetic = () => {
  const start = performance.now();
  let sum = 0;
  for (let k = 0; k < 1_000_000; k++) sum += Math.sin(k) * Math.sqrt(k);
  return performance.now() - start + sum * 0;
};

/** Processor time of the page's thread, s. */
async function threadTime(session) {
  const { metrics } = await session.send('Performance.getMetrics');
  return Object.fromEntries(metrics.map(({ name, value }) => [name, value]));
}

await measureBuilds('A drag of an edge', async (browser, builds) => {
  for (const build of builds) {
    build.page = await openPage(browser, build.url);
    build.session = await build.page.context().newCDPSession(build.page);
    await build.session.send('Performance.enable', { timeDomain: 'threadTicks' });
    build.spent = [];
    build.units = [];
    build.tasks = [];
    build.layouts = [];
    build.said = new Set();
  }
  for (let round = 0; round < ROUNDS; round++) {
    for (const build of builds) {
      const { page, session } = build;
      await page.bringToFront();
      const at = await grab(page);
      const before = await threadTime(session);
      const found = await page.evaluate(move, { ...at, moves: MOVES, nth: EDGE });
      const after = await threadTime(session);
      build.units.push(await page.evaluate(arithmetic));
      build.tasks.push(((after.TaskDuration - before.TaskDuration) * 1000) / MOVES);
      const layout = ['LayoutDuration', 'RecalcStyleDuration'].reduce((sum, k) => sum + after[k] - before[k], 0);
      build.layouts.push((layout * 1000) / MOVES);
      build.spent.push(...found.spent);
      for (const words of found.said) build.said.add(words);
      await page.keyboard.press('Escape');
      await page.mouse.up();
    }
  }
  for (const { said } of builds) {
    // a drag that changes nothing would be quick
    if (said.size < 5) throw new Error(`The drag gave ${said.size} different results; nothing was measured.`);
  }
  printRows(builds, [
    ['a million sines and roots, median', ({ units }) => share(units, 0.5), ms],
    [`a move of an edge, script: median of ${ROUNDS * MOVES}`, ({ spent }) => share(spent, 0.5), ms],
    ['the same, 95 in 100 are under', ({ spent }) => share(spent, 0.95), ms],
    ['all that the thread does for it, median of rounds', ({ tasks }) => share(tasks, 0.5), ms],
    ['of that style and layout', ({ layouts }) => share(layouts, 0.5), ms],
  ]);
});
