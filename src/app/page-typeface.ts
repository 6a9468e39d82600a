/** The typeface that the page is set in, as its own files, so that what is kept as a picture has it inside and nothing more is loaded. */
import type { Typeface } from '../paper/page-svg.ts';

const FAMILY = 'Radio Canada Variable';
/** A letter by which each file is known. */
const LATIN = 'U+0000-00FF';
const LATIN_EXT = 'U+0100-02BA';

const known = new Map<string, Promise<string | undefined>>();

export async function readTypeface(isBeyondLatin: boolean): Promise<Typeface | undefined> {
  const [latin, latinExt] = await Promise.all([readFace(LATIN), isBeyondLatin ? readFace(LATIN_EXT) : undefined]);
  return latin === undefined ? undefined : { latin, ...(latinExt ? { latinExt } : {}) };
}

function readFace(range: string): Promise<string | undefined> {
  let found = known.get(range);
  if (!found) {
    found = load(range).catch(() => undefined);
    known.set(range, found);
  }
  return found;
}

async function load(range: string): Promise<string | undefined> {
  const address = findFace(range);
  if (!address) return undefined;
  const bytes = new Uint8Array(await (await fetch(address)).arrayBuffer());
  let text = '';
  for (let i = 0; i < bytes.length; i += 0x8000) text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(text);
}

function findFace(range: string): string | undefined {
  for (const sheet of document.styleSheets)
    for (const rule of sheet.cssRules) {
      if (!(rule instanceof CSSFontFaceRule)) continue;
      const { style } = rule;
      const ranges = style.getPropertyValue('unicode-range').replaceAll(/\s/g, '').toUpperCase().split(',');
      if (!style.getPropertyValue('font-family').includes(FAMILY) || style.getPropertyValue('font-style') === 'italic')
        continue;
      // browsers write U+0-FF as well
      if (!ranges.some((one) => sameRange(one, range))) continue;
      const [, address] = /url\("?([^")]+)"?\)/.exec(style.getPropertyValue('src')) ?? [];
      return address && new URL(address, sheet.href ?? location.href).href;
    }
  return undefined;
}

const ends = (range: string): string =>
  range
    .replace('U+', '')
    .split('-')
    .map((hex) => Number.parseInt(hex, 16))
    .join('-');
const sameRange = (a: string, b: string): boolean => ends(a) === ends(b);
