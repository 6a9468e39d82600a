/** A map on a canvas: grey steps, contours with numbers, hatch where it lands outside, as far as its rows have come. */

import type { Asking } from '../../engine/ask.ts';
import type { PlotPalette } from '../../ui/plot/palette.ts';
import type { Size } from '../../ui/size.ts';
import { type AskUnit, numberIn } from './ask-words.ts';
import { findLevels } from './map-levels.ts';
import type { MapResult } from './map-state.ts';

/** Results that are wanted have their steps about the middle of the window, in half widths; others between round values. */
export const STEPS = [1, 2, 4] as const;
const HATCH = 7;
const MOST_LEVELS = 8;
const COARSELY = 0.3;
/** places along a contour for its label, in this order */
const SPOTS = [0.5, 0.3, 0.7, 0.15, 0.85];
/** px between a label and a ring */
const RING = 30;

export interface MapPlace extends Size {
  readonly left: number;
  readonly top: number;
}

type Rgb = readonly [number, number, number];

function rgbOf(colour: string): Rgb {
  const n = Number.parseInt(colour.replace('#', ''), 16);
  return [(n >> 16) & 255, (n >> 8) & 255, n & 255];
}
const mix = (a: Rgb, b: Rgb, s: number): Rgb => [
  a[0] + (b[0] - a[0]) * s,
  a[1] + (b[1] - a[1]) * s,
  a[2] + (b[2] - a[2]) * s,
];

/** From the nearest to what is wanted to the farthest. */
function tones(palette: PlotPalette): readonly Rgb[] {
  const [air, far] = [rgbOf(palette.colour.air), rgbOf(palette.colour['rule-2'])];
  return [0, 0.14, 0.3, 0.5].map((s) => mix(air, far, s));
}

export function drawMap(
  g: CanvasRenderingContext2D,
  engine: Asking,
  report: MapResult,
  result: string,
  unit: AskUnit,
  place: MapPlace,
  palette: PlotPalette,
  /** rings and numbers that no contour's label comes near */
  rings: readonly (readonly [number, number])[],
): void {
  const values = report.values.get(result);
  if (!values) return;
  const n = report.count;
  const whole = report.rows === n;
  // while it fills it is drawn often, so coarsely
  const share = whole ? 1 : COARSELY;
  const w = Math.max(2, Math.round(place.width * share));
  const h = Math.max(2, Math.round(place.height * share));
  const bound = report.window.find((b) => b.result === result);
  const { levels, decimals } = findLevels(values, unit, (list) => engine.levels(list as Float64Array, MOST_LEVELS));
  const grey = tones(palette);
  const hatch = rgbOf(palette.colour['rule-2']);
  const ground = rgbOf(palette.colour.ground);
  const image = new ImageData(w, h);
  const step = (v: number): number => {
    if (bound) {
      const d = Math.abs(2 * v - bound.low - bound.high) / (bound.high - bound.low);
      return STEPS.findIndex((s) => d <= s);
    }
    const k = levels.findIndex((l) => v < l);
    return (k < 0 ? levels.length : k) % 4;
  };
  for (let py = 0; py < h; py++) {
    const gy = (1 - py / (h - 1)) * (n - 1);
    const j = Math.min(n - 2, Math.floor(gy));
    for (let px = 0; px < w; px++) {
      const gx = (px / (w - 1)) * (n - 1);
      const i = Math.min(n - 2, Math.floor(gx));
      const [s, u] = [gx - i, gy - j];
      const at = j * n + i;
      const blend = (list: Float64Array): number =>
        (list[at] * (1 - s) + list[at + 1] * s) * (1 - u) + (list[at + n] * (1 - s) + list[at + n + 1] * s) * u;
      const v = blend(values);
      const o = 4 * (py * w + px);
      let c = ground;
      if (Number.isFinite(v)) {
        const k = step(v);
        c = grey[k < 0 ? 3 : k];
        if (whole && (px + py) % HATCH === 0 && blend(report.distance) > 1) c = hatch;
      } else if ((px - py + 10 * HATCH * h) % HATCH === 0 && rowDone(report, values, j)) c = hatch;
      image.data[o] = c[0];
      image.data[o + 1] = c[1];
      image.data[o + 2] = c[2];
      image.data[o + 3] = 255;
    }
  }
  const sheet = new OffscreenCanvas(w, h);
  sheet.getContext('2d')?.putImageData(image, 0, 0);
  g.drawImage(sheet, place.left, place.top, place.width, place.height);

  if (!whole) return;
  g.save();
  g.beginPath();
  g.rect(place.left, place.top, place.width, place.height);
  g.clip();
  const x = (i: number): number => place.left + (i / (n - 1)) * place.width;
  const y = (j: number): number => place.top + (1 - j / (n - 1)) * place.height;
  const trace = (line: readonly number[]): void => {
    g.beginPath();
    for (let k = 0; k < line.length; k += 2) {
      if (k === 0) g.moveTo(x(line[0]), y(line[1]));
      else g.lineTo(x(line[k]), y(line[k + 1]));
    }
    g.stroke();
  };
  const labels: { text: string; x: number; y: number }[] = [];
  g.lineJoin = 'round';
  g.lineWidth = 1;
  g.strokeStyle = palette.colour['ink-2'];
  for (const level of levels)
    for (const line of engine.contour(values, n, n, level)) {
      trace(line);
      const long = lengthOf(line, x, y);
      if (long < 60) continue;
      const text = numberIn(unit, level, decimals);
      // in the middle of the line, or where it is free of the others
      for (const share of SPOTS) {
        const k = 2 * Math.round((share * (line.length - 2)) / 2);
        const spot = { text, x: x(line[k]), y: y(line[k + 1]) };
        const isFree =
          labels.every((l) => Math.hypot(l.x - spot.x, l.y - spot.y) > 34) &&
          rings.every(([rx, ry]) => Math.hypot(rx - spot.x, ry - spot.y) > RING);
        if (!isFree) continue;
        labels.push(spot);
        break;
      }
    }
  g.lineWidth = 2.2;
  g.strokeStyle = palette.colour.ink;
  for (const line of engine.contour(report.distance, n, n, 1)) trace(line);
  g.restore();

  g.font = palette.font(palette.tickPx, 620);
  g.textAlign = 'center';
  g.textBaseline = 'middle';
  for (const { text, x: lx, y: ly } of labels) {
    const half = g.measureText(text).width / 2 + 2;
    const tx = Math.min(Math.max(lx, place.left + half), place.left + place.width - half);
    const ty = Math.min(Math.max(ly, place.top + 8), place.top + place.height - 8);
    g.fillStyle = palette.colour.air;
    g.fillRect(tx - half, ty - 7, 2 * half, 14);
    g.fillStyle = palette.colour.ink;
    g.fillText(text, tx, ty);
  }
}

/** A row that has come; it may still hold places that cannot be flown. */
const rowDone = (report: MapResult, _: Float64Array, j: number): boolean => j + 1 < report.rows;

function lengthOf(line: readonly number[], x: (i: number) => number, y: (j: number) => number): number {
  let sum = 0;
  for (let k = 2; k < line.length; k += 2)
    sum += Math.hypot(x(line[k]) - x(line[k - 2]), y(line[k + 1]) - y(line[k - 1]));
  return sum;
}
