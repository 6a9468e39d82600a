// The longest task of the page's thread in each of a list of acts: processor time, from the browser's own trace, which says the same on
// a busy machine.
import { ms, printRows, share } from './pages.mjs';

/** Longer tasks are felt (W3C Long Tasks: 50 ms). */
export const FELT_MS = 50;
/** After an act, what it leaves to do. */
const REST_MS = 400;
/** Of the longest acts so many are listed. */
const LISTED = 40;

/** [{ kind, name, run, rest }]: an act without a kind prepares the next; `rest` in ms where it leaves more to do. */
export function makeActs() {
  const acts = [];
  return { acts, act: (kind, name, run, rest = REST_MS) => acts.push({ kind, name, run, rest }) };
}

/** ms, of each act; undefined where it could not be done. */
export async function traceActs(page, acts) {
  const session = await page.context().newCDPSession(page);
  const events = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...value));
  const includedCategories = ['toplevel', 'blink.user_timing', 'devtools.timeline', '__metadata'];
  await session.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig: { includedCategories } });
  const failed = new Set();
  const mark = (name) => page.evaluate((n) => performance.mark(n), name);
  for (const [i, { run, rest }] of acts.entries()) {
    await mark(`act ${i}`);
    try {
      await run(page);
    } catch {
      failed.add(i);
    }
    await page.waitForTimeout(rest);
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
  return longest.map((one, i) => (failed.has(i) ? undefined : one));
}

/** `build.acts` have kind, name and `longest`. */
export function printActs(builds) {
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
    for (const { kind, name: which, longest } of felt.slice(0, LISTED))
      console.log(`    ${ms(longest)}  ${kind}: ${which}`);
  }
}
