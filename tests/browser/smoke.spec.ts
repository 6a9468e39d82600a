// The page opens from the built files, under the content security policy, without an error or a foreign request.
import { expect } from '@playwright/test';
import { test } from './kept-files.ts';

test('the app opens without errors and asks nobody else for anything @renderer', async ({ page, baseURL }) => {
  const errors: string[] = [];
  const foreign: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  page.on('request', (request) => {
    const url = request.url();
    if (/^(data|blob):/.test(url)) return;
    if (!url.startsWith(baseURL ?? '')) foreign.push(url);
  });
  const response = await page.goto('./');
  expect(response?.headers()['content-security-policy']).not.toContain("'unsafe-eval'");
  await expect(page).toHaveTitle(/Shapeflight/);
  await expect(page.locator('#root > *').first()).toBeVisible();
  expect(errors).toEqual([]);
  expect(foreign).toEqual([]);
});
