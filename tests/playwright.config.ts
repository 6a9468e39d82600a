// Browser tests against the built app, served as `npm start` serves it.
import { defineConfig } from '@playwright/test';
import { browserFlags, findBrowser, noWebglFlags } from './browser/find-browser.mjs';
import { isWhole } from './corpus.ts';

// workers read this file again: the first reading decides, the environment carries it on
process.env.SHAPEFLIGHT_TEST_PORT ??= String(20_000 + (process.pid % 20_000));
process.env.SHAPEFLIGHT_BROWSER ??= (await findBrowser()) ?? '';
const executablePath = process.env.SHAPEFLIGHT_BROWSER || undefined;
const baseURL = `http://127.0.0.1:${process.env.SHAPEFLIGHT_TEST_PORT}/`;

const launch = (extra: string[] = []) => ({ executablePath, args: [...browserFlags, ...extra] });

/**
 * A device lists what is for it: all tests without a tag, and those whose tag names it. Not for every device are tests of one
 * way to work (@desktop, @touch, @tablet), and tests of what is the same on all of them: stored records, workers, files (@once).
 * Of a test for several devices `npm test` takes a sample, and `npm run test:all` each: of the two that are touched the phone, of the
 * largest and the smallest the largest, and both where it is about the room that there is (@both). What asks further of a tool that has its
 * walk in the sample is @whole.
 */
const listed = (...tags: string[]): RegExp =>
  new RegExp(`^(?!.*@(desktop|touch|tablet|phone|once)\\b)|@(${tags.join('|')})\\b`, 's');
const leftOut = isWhole ? undefined : /@whole\b/;
const leftOutOnPhone = isWhole ? undefined : /@whole\b|^(?!.*@both\b).*@desktop\b/s;
const onTabletAlone = /^(?!.*@(desktop|phone)\b).*@tablet\b/s;
/** whole files, by the same rule */
const desktopFiles = /bench\.spec\.ts/;
const touchFiles = /(lane-sheet|touch)\.spec\.ts/;

export default defineConfig({
  testDir: './browser',
  testMatch: '**/*.spec.ts',
  outputDir: './browser-out',
  fullyParallel: true,
  forbidOnly: true,
  grepInvert: leftOut,
  retries: 0,
  workers: 2,
  // software WebGL on two busy cores is slow; these bound a hang, they do not measure
  timeout: 90_000,
  expect: { timeout: 15_000 },
  reporter: [['list']],
  use: {
    baseURL,
    launchOptions: launch(),
    // the first flight plays by itself unless motion is reduced: every test but that one wants a still cursor
    contextOptions: { reducedMotion: 'reduce' },
    serviceWorkers: 'block',
    // a fresh page in a browser that knows the files already: storage, routes and listeners are cleared between tests
    reuseContext: true,
    trace: 'off',
    screenshot: 'only-on-failure',
  },
  webServer: {
    command: `node src/cli/start.mjs --port ${process.env.SHAPEFLIGHT_TEST_PORT}`,
    cwd: '..',
    url: baseURL,
    timeout: 120_000,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 2_000 },
  },
  projects: [
    {
      name: 'desktop',
      grep: listed('desktop', 'once'),
      testIgnore: touchFiles,
      use: { viewport: { width: 1440, height: 900 } },
    },
    {
      name: 'tablet',
      grep: isWhole ? listed('tablet', 'touch') : onTabletAlone,
      testIgnore: desktopFiles,
      use: { viewport: { width: 1024, height: 768 }, hasTouch: true },
    },
    {
      name: 'phone',
      grep: listed('phone', 'touch'),
      grepInvert: leftOutOnPhone,
      testIgnore: desktopFiles,
      use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
    },
    {
      name: 'no-webgl',
      grep: /@renderer/,
      use: { viewport: { width: 1440, height: 900 }, launchOptions: launch(noWebglFlags) },
    },
  ],
});
