/**
 * Words drawn once and stamped again: outlines of letters are the dearest thing a picture draws, and while a hand drags the
 * same names are written every frame. A canvas that is not in the page, too, knows its font without the page's styles, which
 * a canvas in the page makes the browser compute at once.
 */
import type { Size } from '../size.ts';

/** Its size is that on the page, px. */
interface Stamp extends Size {
  readonly canvas: HTMLCanvasElement;
  /** of the letters' baseline from the top, px */
  readonly baseline: number;
}

const HALO = 4;
const MOST = 120;
/** The first was not asked for longest. */
const stamps = new Map<string, Stamp>();

/** `cover` is the halo's opacity, 0 to 1. */
export function getStamp(
  text: string,
  font: string,
  colour: string,
  halo: string | undefined,
  ratio: number,
  cover = 0.92,
): Stamp | undefined {
  const key = `${text}|${font}|${colour}|${halo}|${ratio}|${cover}`;
  const known = stamps.get(key);
  if (known) {
    stamps.delete(key);
    stamps.set(key, known);
    return known;
  }
  const canvas = takeOldest() ?? document.createElement('canvas');
  const g = canvas.getContext('2d');
  if (!g) return undefined;
  g.font = font;
  g.textBaseline = 'alphabetic';
  const measured = g.measureText(text);
  const width = Math.ceil(measured.width) + 2 * HALO;
  const height = Math.ceil(measured.fontBoundingBoxAscent + measured.fontBoundingBoxDescent) + 2 * HALO;
  // setting the size forgets the rest
  canvas.width = Math.ceil(width * ratio);
  canvas.height = Math.ceil(height * ratio);
  g.scale(ratio, ratio);
  g.font = font;
  g.textBaseline = 'middle';
  const middle = g.measureText(text).fontBoundingBoxAscent;
  if (halo !== undefined) {
    g.lineJoin = 'round';
    g.lineWidth = HALO;
    g.strokeStyle = halo;
    g.globalAlpha = cover;
    g.strokeText(text, HALO, height / 2);
    g.globalAlpha = 1;
  }
  g.fillStyle = colour;
  g.fillText(text, HALO, height / 2);
  const made = { canvas, width, height, baseline: height / 2 + measured.fontBoundingBoxAscent - middle };
  stamps.set(key, made);
  return made;
}

/** Where there are enough of them, the canvas of one that has gone out of use. */
function takeOldest(): HTMLCanvasElement | undefined {
  if (stamps.size < MOST) return undefined;
  for (const [key, { canvas }] of stamps) {
    stamps.delete(key);
    return canvas;
  }
}

/** After a change of theme, or when the typeface has come. */
export const clearStamps = (): void => stamps.clear();
globalThis.document?.fonts.addEventListener('loadingdone', clearStamps);

/** Left edge of a stamp whose text is aligned at x. */
export function stampLeft({ width }: Stamp, x: number, align: CanvasTextAlign): number {
  if (align === 'right' || align === 'end') return x - width + HALO;
  if (align === 'center') return x - width / 2;
  return x - HALO;
}

/** Puts a stamp on whole device pixels, where its letters were drawn sharp. */
export function putStamp(g: CanvasRenderingContext2D, stamp: Stamp, left: number, top: number, ratio: number): void {
  const whole = (v: number): number => Math.round(v * ratio) / ratio;
  g.drawImage(stamp.canvas, whole(left), whole(top), stamp.canvas.width / ratio, stamp.canvas.height / ratio);
}
