// In every tool: texts never meet texts or controls, nor leave the screen, nor are cut, at every size; every control has a name that tells it
// apart; axe finds nothing in the tools of tablet and phone. And the checks themselves can fail.
import { expect, type Page } from '@playwright/test';
import { isWhole } from '../corpus.ts';
import { ALL_RULES, findInBothThemes } from './axe.ts';
import { FINGER, findMeetings, MOUSE, watchCanvases } from './boxes.ts';
import { test } from './kept-files.ts';
import { findNameFaults, nameFaults } from './names.ts';

const TOOLS = ['', 'c', 'w', 'm', 'k', 'e', 'h', 'p'] as const;
/** `npm test` looks at the first of each device without a tool, and at the second with all of them: the one with the least room. */
const SIZES: Record<'desktop' | 'tablet' | 'phone', readonly string[]> = {
  desktop: ['1440x900', '960x600', '1280x720', '1920x1080'],
  tablet: ['1024x768', '768x1024'],
  phone: ['844x390', '360x640', '390x844'],
};

async function openAt(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
}

/** The pictures are drawn a frame after what they show. */
const settle = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise<void>((done) => setTimeout(() => requestAnimationFrame(() => done()), 150)));

for (const device of ['desktop', 'tablet', 'phone'] as const)
  test(`nothing is in the way of anything, ${device}`, { tag: `@${device}` }, async ({ page }) => {
    test.slow();
    const rule = device === 'desktop' ? MOUSE : FINGER;
    const found: Record<string, string[]> = {};
    await watchCanvases(page);
    for (const rows of device === 'desktop' ? ['', '&rows=all'] : ['']) {
      // all rows open are tight where the page is low
      const all = rows ? SIZES.desktop.slice(1, 3) : SIZES[device];
      const sizes = isWhole ? all : all.slice(0, rows ? 1 : 2);
      for (const size of sizes) {
        const [width, height] = size.split('x').map(Number);
        await page.setViewportSize({ width, height });
        await openAt(page, `./?renderer=canvas${rows}`);
        const withTools = isWhole || size === sizes[sizes.length - 1];
        for (const key of withTools ? TOOLS : ['']) {
          if (key) await page.keyboard.press(key);
          await settle(page);
          const state = `${size} ${rows || 'calm'} tool "${key}"`;
          const here = await findMeetings(page, rule);
          // the tree for screen readers is the same at every size of a device, and so is what axe finds in a tool
          if (size === sizes[sizes.length - 1]) {
            here.push(...(await findNameFaults(page)));
            if (key && device !== 'desktop') here.push(...(await findInBothThemes(page, '.tool', ALL_RULES)));
          }
          // a screen of this size holds all of the first sight
          const over = await page.evaluate(() => document.documentElement.scrollHeight - innerHeight);
          if (device === 'desktop' && !rows && !key && height >= 720 && over > 0) here.push(`scrolls ${over} px`);
          if (here.length > 0) found[state] = here;
          if (key) await page.keyboard.press(key);
        }
      }
    }
    expect(found).toEqual({});
  });

test('a page that is broken on purpose is found out', { tag: '@desktop' }, async ({ page }) => {
  await watchCanvases(page);
  await openAt(page, './?renderer=canvas');
  await page.evaluate(() => {
    const put = (html: string): void => void document.body.insertAdjacentHTML('beforeend', html);
    const fixed = 'position:fixed;z-index:99;';
    put(`<p style="${fixed}left:300px;top:300px">one over</p><p style="${fixed}left:310px;top:304px">another</p>`);
    put(`<p style="${fixed}left:300px;top:400px;font-size:9px">too small</p>`);
    put(
      `<p style="${fixed}left:300px;top:440px;width:40px;overflow:hidden;white-space:nowrap">this is cut in half</p>`,
    );
    put(
      `<p style="${fixed}left:300px;top:460px;width:40px;overflow:hidden;white-space:nowrap;text-overflow:ellipsis">dots at its end</p>`,
    );
    put(`<p style="${fixed}left:-20px;top:500px">leaves the screen</p>`);
    put(
      `<p style="${fixed}left:300px;top:540px">under a button</p><button style="${fixed}left:290px;top:530px;opacity:0.5">b</button>`,
    );
    const canvas = document.createElement('canvas');
    canvas.setAttribute('style', `${fixed}left:600px;top:300px`);
    document.body.append(canvas);
    const g = canvas.getContext('2d');
    if (!g) return;
    g.font = '14px sans-serif';
    g.fillText('drawn here', 40, 40);
    g.fillText('and there', 50, 44);
    g.fillText('out of its picture', 280, 80);
  });
  const found = (await findMeetings(page, FINGER)).join('\n');
  for (const wrong of [
    'texts meet: "one over"',
    '9.0 px: "too small"',
    'cut: "this is cut in half"',
    'cut by dots: "dots at its end"',
    'off the screen: "leaves the screen"',
    'is on "under a button"',
    'texts meet: "drawn here"',
    'cut by its picture: "out of its picture"',
    'for a finger: "b"',
  ])
    expect(found).toContain(wrong);
});

test('controls without a name and two of one name are found out', { tag: '@once' }, async ({ page }) => {
  await page.setContent(`<main>
    <div role="group" aria-label="one"><input type="range" aria-label="Lets go at"><button>A</button><button>A</button><input type="range" aria-label="Lets go at"></div>
    <div role="group" aria-label="two"><input type="range" aria-label="Lets go at"><button>A</button><button></button></div>
  </main>`);
  const faults = nameFaults(await page.locator('body').ariaSnapshot());
  expect(faults.map((one) => one.replace(/: - .*$/, ''))).toEqual([
    'two of button "A" in group "one"',
    'two of slider "Lets go at" in group "one"',
    'button without a name in group "two"',
  ]);
});

test('the sliders of a swing, its release and the landing have names of their own', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await openAt(page, './?skill=giant-double-straight');
  await page.keyboard.press('m');
  await expect(page.locator('.contact-knobs').getByRole('slider').nth(3)).toBeVisible();
  expect(await findNameFaults(page)).toEqual([]);
});
