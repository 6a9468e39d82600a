/**
 * The print sheet's picture: ten full poses over a ruled line that is the time axis, the body shapes on it, two plots
 * distinguished by weight. Black and grey only: who prints it gives the tokens their greys (PRINT_TOKENS).
 */

import type { FromTo } from '../../sim/index.ts';
import { flightApparatus } from './apparatus-flight.ts';
import { figureItems } from './figure.ts';
import { pathHeights, pathItems } from './flight-path.ts';
import { fitHeights, hairline, heightLines, heightPx, type LengthMarks } from './heights.ts';
import type { StageFlight, StagePose } from './pose-frames.ts';
import type { DrawItem, PictureSize, Token } from './scene.ts';
import { sideView } from './view.ts';

/** The tokens of a sheet without hues, as CSS colours. */
export const PRINT_TOKENS: Readonly<Partial<Record<Token, string>>> = {
  air: '#ffffff',
  ground: '#ffffff',
  raise: '#ffffff',
  moving: '#e4e4e4',
  floor: '#000000',
  ink: '#000000',
  'ink-2': '#303030',
  'ink-3': '#4a4a4a',
  rule: '#b4b4b4',
  'rule-2': '#6a6a6a',
  trunk: '#7a7a7a',
  'limb-l': '#000000',
  'limb-r': '#ffffff',
  'limb-line': '#000000',
  skin: '#ffffff',
  hair: '#000000',
  tape: '#ffffff',
};

interface PrintSpan extends FromTo {
  readonly title: string;
  /** of the move into it */
  readonly word: string;
}

interface PrintCurve {
  readonly name: string;
  readonly values: Float64Array;
  readonly width: number;
  /** of another version */
  readonly dash?: readonly number[];
}

export interface PrintPlot {
  readonly unit: string;
  readonly top: number;
  readonly low: number;
  readonly curves: readonly PrintCurve[];
  readonly height: number;
  readonly ticks: readonly { readonly value: number; readonly text: string }[];
}

export interface PrintInput {
  readonly flight: StageFlight;
  readonly poses: readonly StagePose[];
  readonly spans: readonly PrintSpan[];
  readonly plots: readonly PrintPlot[];
  /** times of the curves' values, s */
  readonly times: Float64Array;
  readonly width: number;
  /** room for the poses, px */
  readonly airHeight: number;
  readonly marks: LengthMarks;
  readonly seconds: (s: number) => string;
}

interface PrintPicture extends PictureSize {
  readonly items: DrawItem[];
  /** heights above the break mark are compressed */
  readonly isCompressed: boolean;
}

const LEFT = 92;
const RIGHT = 62;
const TICKS = 34;
const SHAPES = 22;
const GAP = 15;
/** px per m at most, and of a body that has to be small */
const MOST = 92;
const LEAST = 56;
const ABOVE = 1.15;

const text = (
  x: number,
  y: number,
  words: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
  weight = 450,
  size = 11.5,
): DrawItem => ({ kind: 'text', x, y, text: words, size, weight, fill: 'ink', anchor });

const line = (points: readonly number[], stroke: Token, width: number, dash?: readonly number[]): DrawItem => ({
  kind: 'line',
  points: Float32Array.from(points),
  stroke,
  width,
  ...(dash ? { dash } : {}),
});

export function printPicture(input: PrintInput): PrintPicture {
  const { flight, airHeight, width } = input;
  const T = flight.duration;
  const x = (t: number): number => LEFT + (t / T) * (width - LEFT - RIGHT);
  const { top, low } = pathHeights(flight);
  const floorY = airHeight;
  const scale = Math.min(MOST, Math.max(LEAST, (airHeight - 8) / (top + ABOVE)));
  const heights = fitHeights(floorY, scale, top, low);
  const y = (h: number): number => heightPx(heights, h);
  const lines = heightLines(heights, { labelX: LEFT - 30, from: 0, to: width, size: 11.5, marks: input.marks });
  const view = sideView(flight.v_WScm_W0[0]);
  const apparatus = flightApparatus(flight, {
    width,
    height: floorY,
    pxPerM: scale,
    left: LEFT - 60,
    right: width,
    x,
    y,
  });
  const items: DrawItem[] = [
    ...lines.lines,
    ...apparatus.behind,
    ...lines.labels.map((label) =>
      label.kind === 'text' ? { ...label, x: 0, y: label.y - 7, anchor: 'start' as const } : label,
    ),
    ...input.poses.flatMap((pose) =>
      figureItems(flight.body, pose.frames, {
        view,
        scale,
        anchor: pose.p_WScm_W,
        x: x(pose.t),
        y: y(pose.p_WScm_W[1]),
      }),
    ),
    ...pathItems(flight, (t, _x, py) => [x(t), y(py)]).filter((item) => item.kind === 'line'),
    ...apparatus.front,
    line([0, floorY, width, floorY], 'floor', 3),
    ...timeTicks(input, x, floorY),
  ];
  let under = floorY + TICKS;
  if (input.spans.length > 0) {
    items.push(...shapeRow(input, x, under));
    under += SHAPES + GAP;
  }
  const edges = input.spans.flatMap((s) => [s.from, s.to]).filter((t) => t > 0 && t < T);
  const plotsTop = under - GAP + 4;
  for (const plot of input.plots) {
    items.push(...drawPlot(plot, input.times, x, under, T));
    under += plot.height + GAP + 4;
  }
  const bottom = under - GAP - 4;
  items.push(...edges.map((t) => line([x(t), plotsTop, x(t), bottom], 'rule-2', 0.8, [1.2, 3])));
  return { items, width, height: Math.ceil(bottom + 6), isCompressed: Number.isFinite(heights.breakY) };
}

function timeTicks(input: PrintInput, x: (t: number) => number, floorY: number): DrawItem[] {
  const T = input.flight.duration;
  const step = [0.1, 0.2, 0.5, 1].find((s) => x(s) - x(0) >= 34) ?? 2;
  const items: DrawItem[] = [];
  for (let k = 0; k * (step / 5) <= T + 1e-9; k++) {
    const t = k * (step / 5);
    const isMain = k % 5 === 0;
    items.push(line([x(t), floorY, x(t), floorY + (isMain ? 9 : 5)], 'ink', isMain ? 1.2 : 0.8));
    if (isMain && T - t > 0.04) items.push(text(x(t), floorY + 23, t.toFixed(1), 'middle', 620, 12));
  }
  items.push(line([x(T), floorY, x(T), floorY + 13], 'ink', 1.6));
  items.push(text(x(T), floorY + 25, input.seconds(T), 'middle', 620, 12));
  return items;
}

/** As much of a word as has room: narrow letters are some 5.6 px wide. */
function shorten(word: string, room: number): string {
  const most = Math.floor((room - 8) / 5.8);
  if (word.length <= most) return word;
  return most >= 4 ? `${word.slice(0, most - 1).trimEnd()}…` : '';
}

function shapeRow(input: PrintInput, x: (t: number) => number, top: number): DrawItem[] {
  const T = input.flight.duration;
  const items: DrawItem[] = [];
  const box = (from: number, to: number, word: string, isHold: boolean): void => {
    const [a, b] = [x(Math.max(0, from)), x(Math.min(T, to))];
    if (b - a < 1) return;
    const points = Float32Array.from([a, top, b, top, b, top + SHAPES, a, top + SHAPES]);
    items.push({ kind: 'fill', contours: [points], fill: isHold ? 'raise' : 'moving' });
    items.push({ kind: 'line', points, closed: true, stroke: 'ink', width: 1 });
    const shown = shorten(word, b - a);
    if (shown) items.push(text((a + b) / 2, top + 15, shown, 'middle', isHold ? 640 : 450, 11));
  };
  input.spans.forEach((span, i) => {
    const before = input.spans[i - 1];
    if (before && span.from - before.to > 1e-6) box(before.to, span.from, span.word, false);
    if (!before && span.from > 1e-6) box(0, span.from, span.word, false);
    if (span.from < T && span.to > 0) box(span.from, span.to, span.title, true);
  });
  return items;
}

export function drawPlot(
  plot: PrintPlot,
  times: Float64Array,
  x: (t: number) => number,
  top: number,
  T: number,
): DrawItem[] {
  const y = (v: number): number => top + ((plot.top - v) / (plot.top - plot.low)) * plot.height;
  const items: DrawItem[] = [text(0, top + 10, plot.unit, 'start', 620, 12)];
  for (const { value, text: words } of plot.ticks) {
    items.push(hairline(x(0), y(value), x(T), y(value), value === 0 ? 'rule-2' : 'rule', value === 0 ? 1.2 : 0.8));
    items.push(text(x(0) - 8, y(value) + 4, words, 'end', 450, 11));
  }
  for (const curve of plot.curves)
    for (const points of pieces(curve.values, times, x, y)) items.push(line(points, 'ink', curve.width, curve.dash));
  for (const curve of plot.curves) {
    const others = plot.curves.filter((one) => one !== curve).map((one) => one.values);
    const spot = findSpot(curve.values, others, times, x, y, curve.name.length * 6.2, plot, top);
    if (spot) items.push(text(spot[0], spot[1], curve.name, 'middle', curve.width > 1.5 ? 640 : 480, 11));
  }
  return items;
}

/** Where a curve is not defined it has a gap. */
function pieces(
  values: Float64Array,
  times: Float64Array,
  x: (t: number) => number,
  y: (v: number) => number,
): number[][] {
  const out: number[][] = [];
  let now: number[] = [];
  for (let i = 0; i < values.length; i++) {
    if (Number.isNaN(values[i])) {
      if (now.length > 2) out.push(now);
      now = [];
    } else now.push(x(times[i]), y(values[i]));
  }
  if (now.length > 2) out.push(now);
  return out;
}

/** Where a name is on its curve: above or under it, as far from the other curves as can be, within the plot. */
function findSpot(
  own: Float64Array,
  others: readonly Float64Array[],
  times: Float64Array,
  x: (t: number) => number,
  y: (v: number) => number,
  width: number,
  plot: PrintPlot,
  top: number,
): [number, number] | undefined {
  let best: [number, number] | undefined;
  let most = Number.NEGATIVE_INFINITY;
  const n = own.length;
  for (let i = Math.ceil(n * 0.08); i < n * 0.92; i += Math.max(1, Math.floor(n / 40)))
    for (const way of [-1, 1]) {
      if (Number.isNaN(own[i])) continue;
      const [cx, cy] = [x(times[i]), y(own[i]) + way * 9];
      if (cy - 6 < top - 4 || cy + 6 > top + plot.height - 2) continue;
      let near = Number.POSITIVE_INFINITY;
      for (let k = 0; k < n; k++) {
        if (Math.abs(x(times[k]) - cx) > width / 2 + 4) continue;
        for (const curve of [own, ...others])
          if (!Number.isNaN(curve[k])) near = Math.min(near, Math.abs(y(curve[k]) - cy));
      }
      // the middle of the sheet is where an eye looks first
      const score = Math.min(near, 16) - 3 * Math.abs(i / n - 0.5);
      if (score > most) {
        most = score;
        best = [cx, cy + 4];
      }
    }
  return best;
}
