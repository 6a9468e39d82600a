// A skill goes to another browser as a link, is changed there, and comes back beside the work of the first; what is not ticked is not in it.
import { expect, type Page } from '@playwright/test';
import { readSkillLink } from '../../sim/index.ts';
import { editSpeedUp, openFirst } from './bench.ts';
import { test } from './kept-files.ts';

const FULL = 'Back somersault, straight, full twist';
const BENCH = 'https://bench.example/';

async function readLink(page: Page): Promise<string> {
  await page.keyboard.press('h');
  const link = page.getByRole('textbox', { name: 'The whole link' });
  await expect(link).toHaveValue(/#1\.[\w-]{100,}$/);
  return link.inputValue();
}
const fragmentOf = (link: string): string => link.slice(link.indexOf('#'));
const notice = (page: Page) => page.locator('.notice');
const openLink = (page: Page, link: string): Promise<void> =>
  page.evaluate((hash) => {
    location.hash = hash;
  }, fragmentOf(link));
const shelfTitles = async (page: Page): Promise<string[]> => {
  await page.keyboard.press('s');
  const own = page.getByRole('dialog').getByRole('list', { name: 'Your skills' });
  await expect(own.getByRole('listitem').first()).toBeVisible();
  const titles = await own.locator('li b').allTextContents();
  await page.keyboard.press('Escape');
  return titles;
};

test('from one browser to another and back, beside the work of both', { tag: '@once' }, async ({
  page,
  browser,
  baseURL,
}) => {
  await page.goto('./?skill=back-straight-full');
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  const bare = await readLink(page);
  const sentence = page.locator('.hand-sentence');
  await expect(sentence).toHaveText('Handed on: the skill and height 1.62 m, female. Name and mass stay here.');
  const text = JSON.stringify(readSkillLink(bare));
  for (const word of ['Ilse', 'Saltmarsh', '"massKg":54', 'ageYears']) expect(text).not.toContain(word);
  await expect(page.locator('[data-way="code"]')).toContainText('No code: this bench has no address. Set one in Menu.');

  // the address is set, and the code is there
  await page.getByRole('button', { name: 'Change in Menu' }).click();
  const address = page.getByRole('textbox', { name: 'Address of this bench' });
  await address.fill('bench');
  await address.press('Enter');
  await expect(page.getByRole('dialog').getByRole('alert')).toContainText('begins with https://');
  await address.fill(BENCH);
  await address.press('Enter');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Show it large: Code to scan' }).click();
  await expect(page.getByRole('img', { name: /^Code to scan/ }).last()).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.locator('[data-tool="hand"]')).toBeVisible();

  await page.getByRole('checkbox', { name: /^mass/ }).check();
  await expect(sentence).toHaveText('Handed on: the skill, height 1.62 m, female and mass 54.0 kg. Name stays here.');
  await page.getByRole('button', { name: 'Copy link: Link' }).click();
  await expect(page.getByRole('button', { name: 'Copied.: Link' })).toBeVisible();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  expect(link.startsWith(`${BENCH}#1.`)).toBe(true);
  expect(readSkillLink(link).file.athlete).toMatchObject({ massKg: 54, name: 'Athlete of 1.62 m' });
  // every opening begins without ticks
  await page.keyboard.press('Escape');
  await page.keyboard.press('h');
  await expect(page.getByRole('checkbox', { name: /^mass/ })).not.toBeChecked();
  await page.keyboard.press('h');

  const other = await browser.newContext({ baseURL, reducedMotion: 'reduce', serviceWorkers: 'block' });
  const theirs = await other.newPage();
  await openFirst(theirs);
  await editSpeedUp(theirs, '3.1');
  await openLink(theirs, link);
  await expect(notice(theirs)).toContainText(`From a link: ${FULL}. Your work is kept.`);
  expect(new URL(theirs.url()).hash).toBe('');
  await expect(theirs.locator('.skill-title')).toHaveAccessibleName(new RegExp(FULL));
  expect(await shelfTitles(theirs)).toHaveLength(2);
  await openLink(theirs, link);
  await expect(notice(theirs)).toContainText('It was here already.');
  expect(await shelfTitles(theirs)).toHaveLength(2);
  // damaged: said, and nothing is changed
  const at = fragmentOf(link).length >> 1;
  const damaged = `${fragmentOf(link).slice(0, at)}!${fragmentOf(link).slice(at + 1)}`;
  await openLink(theirs, damaged);
  await expect(theirs.locator('.file-fault')).toContainText(
    /The link was not opened. This link is damaged at its \d+\w\w letter. Nothing was changed./,
  );
  await theirs.locator('.file-fault').getByRole('button').click();
  await expect(theirs.locator('.skill-title')).toHaveAccessibleName(new RegExp(FULL));
  await editSpeedUp(theirs, '4.6');
  const back = await readLink(theirs);
  await other.close();

  // back in the first, which has gone on meanwhile, by a load of the page
  await editSpeedUp(page, '4.7');
  await page.goto('about:blank');
  await page.goto(`./${fragmentOf(back)}`);
  await expect(notice(page)).toContainText(`From a link: ${FULL}. Your work is kept.`);
  await notice(page).getByRole('button', { name: 'Compare with mine' }).click();
  const compare = page.locator('[data-tool="compare"]');
  await expect(compare).toContainText('B');
  await expect(compare).toContainText(FULL);
  await page.keyboard.press('v');
  await expect(page.getByRole('dialog').getByRole('spinbutton', { name: 'Speed up' })).toHaveValue(/^4\.60?$/);
  await page.keyboard.press('Escape');
  await page.reload();
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await expect(notice(page)).toHaveCount(0);
  expect(await shelfTitles(page)).toHaveLength(2);
});

test('on a phone: ticks, sentence and ways are under the floor; the device shares what is ticked', {
  tag: ['@phone', '@whole'],
}, async ({ page }) => {
  await page.addInitScript(() => {
    const device = { shared: [] as unknown[], fault: '', kinds: ['txt', 'json'] };
    const read = async (data: ShareData) => ({
      ...data,
      files: await Promise.all((data.files ?? []).map(async (f) => ({ name: f.name, text: await f.text() }))),
    });
    Object.assign(globalThis, { device });
    navigator.canShare = (data) =>
      (data?.files ?? []).every(({ name }) => device.kinds.some((kind) => name.endsWith(kind)));
    navigator.share = async (data = {}) => {
      if (device.fault) throw new DOMException('', device.fault);
      device.shared.push(await read(data));
    };
  });
  await openFirst(page);
  await page.keyboard.press('h');
  const hand = page.locator('.hand-touch');
  await expect(hand.locator('.hand-sentence')).toContainText('Name and mass stay here.');

  const set = (what: { fault?: string; kinds?: string[] }): Promise<void> =>
    page.evaluate((change) => {
      Object.assign((globalThis as unknown as { device: object }).device, change);
    }, what);
  const share = (): Promise<void> => hand.getByRole('button', { name: /: Share$/ }).click();
  const last = (): Promise<{ name: string; text: string } | undefined> =>
    page.evaluate(
      () =>
        (
          globalThis as unknown as { device: { shared: { files: { name: string; text: string }[] }[] } }
        ).device.shared.at(-1)?.files[0],
    );
  const row = hand.locator('[data-way="share"]');
  // without an address its file, as the device takes it; of the athlete only what is ticked
  await share();
  await expect.poll(async () => (await last())?.name).toMatch(/\.json$/);
  for (const word of ['Ilse', '"massKg": 54', 'ageYears']) expect((await last())?.text).not.toContain(word);
  // closed without a choice nothing is said; a refusal is
  await set({ fault: 'AbortError' });
  await share();
  await expect(row.getByRole('alert')).toHaveCount(0);
  await set({ fault: 'NotAllowedError' });
  await share();
  await expect(row.getByRole('alert')).toHaveText('The device did not share it. The file works.');
  await set({ fault: '', kinds: ['txt'] });
  await hand.getByRole('checkbox', { name: 'name' }).check();
  await expect(hand.locator('.hand-sentence')).toContainText('name Ilse Marrow');
  await expect(row).toContainText('its file as text');
  await share();
  await expect.poll(async () => (await last())?.name).toMatch(/\.json\.txt$/);
  expect((await last())?.text).toContain('Ilse Marrow');
  await expect(row.getByRole('alert')).toHaveCount(0);
  await set({ kinds: [] });
  await share();
  await expect(row.getByRole('alert')).toHaveText('This device cannot share it. The file works.');

  const download = page.waitForEvent('download');
  await hand.getByRole('button', { name: 'Save: File' }).click();
  expect((await download).suggestedFilename()).toMatch(/\.json$/);
});
