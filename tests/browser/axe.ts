// axe on this page: one document without frames, and of its results only the violations are worked out. Finds the same in a quarter of the time.
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';

export async function makeAxe(page: Page): Promise<AxeBuilder> {
  // half a megabyte that this document need not read twice
  const isThere = await page.evaluate(() => 'axe' in window);
  const builder = new AxeBuilder({ page, ...(isThere ? { axeSource: 'void 0' } : {}) });
  return builder.options({ resultTypes: ['violations'] }).setLegacyMode(true);
}

export const ALL_RULES = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds in one part of the page, a line a rule; without names of rules, all that it checks by itself. */
export async function findViolations(page: Page, part: string, rules?: string[]): Promise<string[]> {
  const axe = (await makeAxe(page)).include(part);
  const { violations } = await (rules ? axe.withTags(rules) : axe).analyze();
  return violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join('; ')}`);
}

/** All that axe checks of colours. The themes differ in colours only (tests/interface/dark-theme.test.ts), so the dark one is asked for these. */
export const COLOUR_RULES = ['color-contrast', 'link-in-text-block'];
export const SCHEMES = ['light', 'dark'] as const;

/** axe on the page in one theme: in light by rules of these tags (without tags, by all of its own), in dark by those of colours. */
export async function makeAxeIn(
  page: Page,
  colorScheme: (typeof SCHEMES)[number],
  tags?: string[],
): Promise<AxeBuilder> {
  await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
  const axe = await makeAxe(page);
  if (colorScheme === 'dark') return axe.withRules(COLOUR_RULES);
  return tags ? axe.withTags(tags) : axe;
}

/** What axe finds in one part of the page, in light and in dark. */
export async function findInBothThemes(page: Page, part: string, tags?: string[]): Promise<string[]> {
  const found: string[] = [];
  for (const colorScheme of SCHEMES) {
    const { violations } = await (await makeAxeIn(page, colorScheme, tags)).include(part).analyze();
    found.push(
      ...violations.map((v) => `${colorScheme} ${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join('; ')}`),
    );
  }
  return found;
}

/** Without the sizes of targets: handles on the ruler and limbs of the figure may be closer than 24 px, which access.spec.ts and pose.spec.ts look at. */
export const findButSizes = async (page: Page, part: string): Promise<string[]> =>
  (await findInBothThemes(page, part, ALL_RULES)).filter((one) => !one.includes(' target-size: '));
