/** A drawing list as grey pixels, so that a test can ask what a picture shows at the size that it has on the screen. */
import { readFileSync } from 'node:fs';
import type { DrawItem, Points, Token } from '../../src/scene/scene.ts';

/** Samples along each side of a pixel. */
const FINE = 4;

type Theme = 'light' | 'dark';

/** Relative lightness of a token, 0 black to 1 white, as the style sheet gives its colour. */
export function tones(theme: Theme): (token: Token) => number {
  const css = readFileSync(new URL('../../src/ui/tokens.css', import.meta.url), 'utf8');
  const dark = css.indexOf('[data-theme="dark"] {');
  const blocks = { light: css.slice(css.indexOf(':root {'), dark), dark: css.slice(dark, css.indexOf('@media')) };
  return (token) => {
    const hex = new RegExp(`--${token}: #([0-9a-f]{6});`).exec(blocks[theme])?.[1];
    if (hex === undefined) throw new Error(`no colour ${token}`);
    const [r, g, b] = [0, 2, 4].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255);
    return 0.299 * r + 0.587 * g + 0.114 * b;
  };
}

/** Lightness of each pixel, row by row. */
export function rasterise(
  items: readonly DrawItem[],
  width: number,
  height: number,
  tone: (token: Token) => number,
): Float64Array {
  const [w, h] = [width * FINE, height * FINE];
  const fine = new Float64Array(w * h).fill(tone('air'));
  const paint = (contours: readonly Points[], value: number): void => {
    for (let y = 0; y < h; y++) {
      const crossings = crossingsAt(contours, (y + 0.5) / FINE);
      let winding = 0;
      for (let k = 0; k + 1 < crossings.length; k++) {
        winding += crossings[k][1];
        if (winding === 0) continue;
        const from = Math.max(0, Math.ceil(crossings[k][0] * FINE - 0.5));
        const to = Math.min(w - 1, Math.ceil(crossings[k + 1][0] * FINE - 0.5) - 1);
        for (let x = from; x <= to; x++) fine[y * w + x] = value;
      }
    }
  };
  for (const item of items) {
    if (item.kind === 'fill') paint(item.contours, tone(item.fill));
    else if (item.kind === 'segments') {
      for (let i = 0; i < item.points.length; i += 4) {
        paint([bar(item.points.slice(i, i + 4), item.width)], tone(item.stroke));
      }
    } else if (item.kind === 'line') {
      for (let i = 0; i + 3 < item.points.length; i += 2) {
        paint([bar(item.points.slice(i, i + 4), item.width)], tone(item.stroke));
      }
    } else throw new Error(`a figure has no ${item.kind}`);
  }
  const out = new Float64Array(width * height);
  for (let y = 0; y < h; y++) {
    for (let x = 0; x < w; x++) {
      out[Math.floor(y / FINE) * width + Math.floor(x / FINE)] += fine[y * w + x] / FINE ** 2;
    }
  }
  return out;
}

/** Where a level line meets the contours, left to right, and which way they run there. */
function crossingsAt(contours: readonly Points[], y: number): [number, number][] {
  const found: [number, number][] = [];
  for (const p of contours) {
    for (let i = 0; i < p.length; i += 2) {
      const j = (i + 2) % p.length;
      const [y0, y1] = [p[i + 1], p[j + 1]];
      if (y0 <= y === y1 <= y) continue;
      found.push([p[i] + ((y - y0) / (y1 - y0)) * (p[j] - p[i]), y1 > y0 ? 1 : -1]);
    }
  }
  return found.sort((a, b) => a[0] - b[0]);
}

/** A straight stroke as a rectangle. */
function bar([x0, y0, x1, y1]: ArrayLike<number> & Iterable<number>, width: number): Points {
  const size = Math.hypot(x1 - x0, y1 - y0) || 1;
  const [nx, ny] = [(-(y1 - y0) / size) * (width / 2), ((x1 - x0) / size) * (width / 2)];
  return Float32Array.from([x0 + nx, y0 + ny, x0 - nx, y0 - ny, x1 - nx, y1 - ny, x1 + nx, y1 + ny]);
}
