/**
 * A name with its halo, drawn once and stamped again: outlines of letters are the dearest thing a plot draws, and while
 * a hand drags the same names are written every frame.
 */
export interface Stamp {
  readonly canvas: HTMLCanvasElement;
  /** size on the page, px */
  readonly width: number;
  readonly height: number;
}

const HALO = 3;
const MOST = 120;
const stamps = new Map<string, Stamp>();

export function getStamp(text: string, font: string, colour: string, halo: string, ratio: number): Stamp | undefined {
  const key = `${text}|${font}|${colour}|${halo}|${ratio}`;
  const known = stamps.get(key);
  if (known) return known;
  const canvas = document.createElement('canvas');
  const g = canvas.getContext('2d');
  if (!g) return undefined;
  g.font = font;
  const measured = g.measureText(text);
  const width = Math.ceil(measured.width) + 2 * HALO;
  const height = Math.ceil(measured.fontBoundingBoxAscent + measured.fontBoundingBoxDescent) + 2 * HALO;
  canvas.width = Math.ceil(width * ratio);
  canvas.height = Math.ceil(height * ratio);
  g.scale(ratio, ratio);
  g.font = font;
  g.textBaseline = 'middle';
  g.lineJoin = 'round';
  g.lineWidth = HALO;
  g.strokeStyle = halo;
  g.globalAlpha = 0.8;
  g.strokeText(text, HALO, height / 2);
  g.globalAlpha = 1;
  g.fillStyle = colour;
  g.fillText(text, HALO, height / 2);
  const made = { canvas, width, height };
  if (stamps.size >= MOST) stamps.clear();
  stamps.set(key, made);
  return made;
}

/** After a change of theme, or when the typeface has come. */
export const clearStamps = (): void => stamps.clear();

/** Left edge of a stamp whose text is aligned at x. */
export function stampLeft(stamp: Stamp, x: number, align: CanvasTextAlign): number {
  if (align === 'right' || align === 'end') return x - stamp.width + HALO;
  if (align === 'center') return x - stamp.width / 2;
  return x - HALO;
}
