// Browser tests against the built app, served as `npm start` serves it.
import { defineConfig } from '@playwright/test';
import { browserFlags, findBrowser, noWebglFlags } from './browser/find-browser.mjs';

// workers read this file again: the first reading decides, the environment carries it on
process.env.SHAPEFLIGHT_TEST_PORT ??= String(20_000 + (process.pid % 20_000));
process.env.SHAPEFLIGHT_BROWSER ??= (await findBrowser()) ?? '';
const executablePath = process.env.SHAPEFLIGHT_BROWSER || undefined;
const baseURL = `http://127.0.0.1:${process.env.SHAPEFLIGHT_TEST_PORT}/`;

const launch = (extra: string[] = []) => ({ executablePath, args: [...browserFlags, ...extra] });

export default defineConfig({
  testDir: './browser',
  testMatch: '**/*.spec.ts',
  outputDir: './browser-out',
  fullyParallel: true,
  forbidOnly: true,
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
    { name: 'desktop', use: { viewport: { width: 1440, height: 900 } } },
    { name: 'tablet', use: { viewport: { width: 1024, height: 768 }, hasTouch: true } },
    { name: 'phone', use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } },
    {
      name: 'no-webgl',
      grep: /@renderer/,
      use: { viewport: { width: 1440, height: 900 }, launchOptions: launch(noWebglFlags) },
    },
  ],
});
