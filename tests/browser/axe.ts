// axe on this page: one document without frames, and of its results only the violations are worked out. Finds the same in a quarter of the time.
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';

export const makeAxe = (page: Page): AxeBuilder =>
  new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode(true);

export const ALL_RULES = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds in one part of the page, a line a rule; without names of rules, all that it checks by itself. */
export async function findViolations(page: Page, part: string, rules?: string[]): Promise<string[]> {
  const axe = makeAxe(page).include(part);
  const { violations } = await (rules ? axe.withTags(rules) : axe).analyze();
  return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join('; ')}`);
}

/** The same in light and in dark. */
export async function findInBothThemes(page: Page, part: string): Promise<string[]> {
  const found: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    found.push(...(await findViolations(page, part)).map((one) => `${colorScheme} ${one}`));
  }
  return found;
}
