// Whatever is pressed, typed and dragged, and whenever the page ends in between: what is found is what was shown, with its whole past.
import { SAMPLE_WALK, WALKS } from '../reliability/walk.ts';
import { test } from './kept-files.ts';
import { walk } from './random-walk.ts';

const asked = process.env.SHAPEFLIGHT_WALK?.split(',').map(Number);
const walks = asked ? [{ seed: asked[0], steps: asked[1] ?? SAMPLE_WALK.steps }] : [SAMPLE_WALK, ...WALKS];

for (const one of walks)
  test(`a walk of ${one.steps} steps with seed ${one.seed} loses nothing`, {
    tag: asked || one === SAMPLE_WALK ? '@once' : ['@once', '@whole'],
  }, async ({ page }) => {
    test.setTimeout(one.steps * 5000);
    const log = await walk(page, one);
    if (asked) console.log(log.join('\n'));
  });
