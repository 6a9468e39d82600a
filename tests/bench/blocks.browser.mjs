// How long one task holds the page's thread in every act of a person: processor time of the longest task of each, the least of three
// runs in pages of their own. An act that could not be done in any run is said.
import { printActs, traceActs } from './longest-task.mjs';
import { listActs, query } from './page-acts.mjs';
import { measureBuilds, openPage } from './pages.mjs';

const RUNS = 3;
/** `--skills 200` opens every ready skill. */
const at = process.argv.indexOf('--skills');
const mostSkills = at > 0 ? Number(process.argv[at + 1]) : 12;

await measureBuilds(`The longest task of an act, least of ${RUNS} runs`, async (browser, builds) => {
  for (const build of builds) {
    const scout = await openPage(browser, build.url, query);
    await scout.waitForTimeout(1500);
    const acts = await listActs(scout, mostSkills);
    await scout.context().close();
    const runs = [];
    for (let i = 0; i < RUNS; i++) {
      const page = await openPage(browser, build.url, query);
      await page.waitForTimeout(1500);
      runs.push(await traceActs(page, acts));
      await page.context().close();
    }
    const least = acts.map((act, i) => ({ ...act, longest: Math.min(...runs.map((run) => run[i] ?? Infinity)) }));
    for (const { kind, name, longest } of least)
      if (longest === Infinity) console.log(`  could not be done: ${kind ?? 'what prepares'} ${name}`);
    build.acts = least.filter(({ kind, longest }) => kind && longest < Infinity);
  }
  printActs(builds);
});
