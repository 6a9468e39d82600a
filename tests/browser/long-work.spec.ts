// Long work leaves nothing behind: what is alive after equal rounds of it is the same, by counts.
import { expect } from '@playwright/test';
import { countBounds, MOST_WORKERS, roundOfWork } from '../reliability/long-work.ts';
import { openBench } from './bench.ts';
import { test } from './kept-files.ts';
import { type LiveCounts, readLive, watchLive } from './live-counts.ts';
import { edits, goHome, openAndClose, openings, switches } from './work-steps.ts';

test('what is alive does not grow from one round of work to the next', { tag: '@once' }, async ({ page, context }) => {
  test.setTimeout(roundOfWork.rounds * (30_000 + 1000 * roundOfWork.edits));
  page.setDefaultTimeout(15_000);
  const faults: string[] = [];
  page.on('pageerror', (fault) => faults.push(fault.message));
  await watchLive(page);
  await openBench(page);
  const devtools = await context.newCDPSession(page);
  await devtools.send('Performance.enable');
  await devtools.send('HeapProfiler.enable');
  const rounds: LiveCounts[] = [];
  for (let round = 0; round < roundOfWork.rounds; round++) {
    await goHome(page);
    for (let n = 0; n < roundOfWork.edits; n++) await edits[n % edits.length][1](page, n);
    for (let n = 0; n < roundOfWork.switches; n++) await switches[n % switches.length][1](page, n);
    for (let n = 0; n < roundOfWork.openings; n++) await openAndClose(page, openings[n % openings.length]);
    await goHome(page);
    rounds.push(await readLive(page, devtools));
  }
  await devtools.detach();
  const [second, last] = [rounds[1], rounds[rounds.length - 1]];
  const grown = countBounds
    .filter(({ what, most }) => (last[what] ?? 0) - (second[what] ?? 0) > most)
    .map(({ what }) => `${what}: ${rounds.map((counts) => counts[what] ?? 0).join(' ')}`);
  expect(grown).toEqual([]);
  // each count is bounded, and is one that was counted
  expect(Object.keys(last).filter((what) => !countBounds.some((one) => one.what === what))).toEqual(
    Object.keys(last).filter((what) => ['Worker', 'WebGL contexts', 'OffscreenCanvas'].includes(what)),
  );
  expect(last.Worker ?? 0).toBeLessThanOrEqual(MOST_WORKERS);
  expect(faults).toEqual([]);
});

test('what is left alive is found out', { tag: '@once' }, async ({ page, context }) => {
  await watchLive(page);
  await openBench(page);
  const devtools = await context.newCDPSession(page);
  await devtools.send('Performance.enable');
  await devtools.send('HeapProfiler.enable');
  const before = await readLive(page, devtools);
  await page.evaluate(() => {
    const kept: unknown[] = [];
    Object.assign(window, { kept });
    for (let i = 0; i < 5; i++) {
      const list = document.createElement('ul');
      list.innerHTML = '<li>left</li>'.repeat(400);
      kept.push(
        list,
        URL.createObjectURL(new Blob(['left'])),
        new BroadcastChannel(`left ${i}`),
        new OffscreenCanvas(1, 1),
      );
      const canvas = document.createElement('canvas');
      kept.push(
        canvas,
        setInterval(() => undefined, 1e6),
      );
      window.addEventListener('resize', () => i);
      matchMedia('(min-width: 1px)').addEventListener('change', () => i);
      new ResizeObserver(() => i).observe(list);
    }
    const again = (): number => requestAnimationFrame(again);
    again();
  });
  const after = await readLive(page, devtools);
  const grown = (what: string): number => (after[what] ?? 0) - (before[what] ?? 0);
  for (const what of [
    'object URLs',
    'BroadcastChannel',
    'OffscreenCanvas',
    'intervals',
    'window listeners',
    'media listeners',
    'ResizeObserver',
    'canvas',
  ])
    expect(grown(what), what).toBeGreaterThanOrEqual(5);
  expect(grown('nodes')).toBeGreaterThan(3900);
  expect(grown('frames asked for when idle')).toBeGreaterThan(2);
});
