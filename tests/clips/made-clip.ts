// Film clips made by the browser itself, of pictures that are known: plain shapes, at stated times, in a stated file.
import path from 'node:path';
import type { Page } from '@playwright/test';
import type { ClipBand, ClipOrder, ClipShape } from './clip-order.ts';
import { encodeInPage } from './encode-in-page.ts';

const BUNDLE = path.resolve(import.meta.dirname, '../../node_modules/mediabunny/dist/bundles/mediabunny.min.cjs');
/** A page that browsers trust, so that they encode in it; nothing is asked of the net. */
const BLANK = 'https://made-clips.invalid/';

/** A whole picture, still while the shutter is open. */
export const wholeBand = (height: number, shapes: readonly ClipShape[]): ClipBand[] => [
  { rows: [0, height], instants: [shapes] },
];

/** `page`: any page of the browser; the clip is made in one of its own beside it. */
export async function makeClip(page: Page, order: ClipOrder): Promise<Buffer> {
  if (order.draw.length !== order.stampsS.length)
    throw new RangeError(`${order.draw.length} pictures, ${order.stampsS.length} stamps`);
  const own = await page.context().newPage();
  try {
    await own.route(`${BLANK}**`, (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html>' }));
    await own.goto(BLANK);
    await own.addScriptTag({ path: BUNDLE });
    // as text, which goes over far faster than as values; seven digits are enough
    const text = JSON.stringify(order, (_, value) =>
      typeof value === 'number' && !Number.isInteger(value) ? Number(value.toPrecision(7)) : value,
    );
    return Buffer.from(await own.evaluate(encodeInPage, text), 'base64');
  } finally {
    await own.close();
  }
}
