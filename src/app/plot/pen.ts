/** What every plot row draws with. */

import type { Place } from '../../../sim/math/sorted.ts';
import type { FlightResult } from '../../engine/result.ts';
import { type TimeAxis, xOf } from '../../ui/plot/axis.ts';
import type { ColourName, PlotPalette } from '../../ui/plot/palette.ts';
import { getStamp, putStamp, stampLeft } from '../../ui/plot/stamp.ts';
import type { UnitSystem } from '../../ui/units.ts';
import type { Beside } from '../beside.ts';
import { calcPlace } from './readout.ts';

export interface Box {
  readonly y: number;
  readonly height: number;
}

export interface Pen {
  readonly g: CanvasRenderingContext2D;
  /** device px of a px */
  readonly ratio: number;
  readonly axis: TimeAxis;
  readonly result: FlightResult;
  readonly palette: PlotPalette;
  readonly cursor: number;
  readonly place: Place;
  readonly lineWidth: number;
  readonly units: UnitSystem;
  /** numbers at the left of the curves have no room */
  readonly unticked?: boolean;
  /** the other way of the skill on the same clock: dashed */
  readonly beside?: Beside & { readonly pen: Pen };
  /** the flight before the hand that is at work: pale */
  readonly earlier?: Pen;
}

/** of the width of the line, which stays apart from its gaps in a hall too; and px at least */
const DASH = [
  [2.2, 6],
  [1.5, 4],
] as const;
export function inDashes({ g, lineWidth }: Pen, draw: () => void): void {
  g.setLineDash(DASH.map(([share, least]) => Math.max(lineWidth * share, least)));
  draw();
  g.setLineDash([]);
}

/** What was before, of its hue. */
const PALE = 0.42;
export function inPale({ g }: Pen, draw: () => void): void {
  g.globalAlpha = PALE;
  draw();
  g.globalAlpha = 1;
}

/** The same row with another flight: on the same ruler, to its own end. */
export const penOf = (pen: Pen, result: FlightResult): Pen => ({
  ...pen,
  result,
  axis: { ...pen.axis, duration: result.flight.duration },
  place: calcPlace(result.frames, pen.cursor),
});

export type Curve = (row: number) => number;
/** From value to y. */
export type Scale = (value: number) => number;

export function makeScale(box: Box, low: number, high: number): Scale {
  const span = high - low || 1;
  return (v) => box.y + box.height - ((v - low) / span) * box.height;
}

/** A round number at or above v: 1, 1.2, 1.6, 2, 3, 4, 5, 6, 8, 10 times a power of ten. */
export function niceTop(v: number): number {
  if (!(v > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(v));
  const lead = v / power;
  return ([1, 1.2, 1.6, 2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10].find((n) => n >= lead - 1e-9) ?? 10) * power;
}

export function findTop(pen: Pen, ...curves: Curve[]): number {
  let top = 0;
  for (const curve of curves) {
    for (let i = 0; i < pen.result.frames.n; i++) {
      const v = curve(i);
      if (v > top) top = v;
    }
  }
  return top;
}

export function tracePath(pen: Pen, curve: Curve, scale: Scale, to = Number.POSITIVE_INFINITY): void {
  const { g, axis, result } = pen;
  const { t, n } = result.frames;
  let drawing = false;
  const end = Math.min(to, axis.duration + 1e-9);
  for (let i = 0; i < n && t[i] <= end; i++) {
    const v = curve(i);
    if (Number.isNaN(v)) {
      drawing = false;
      continue;
    }
    if (drawing) g.lineTo(xOf(axis, t[i]), scale(v));
    else g.moveTo(xOf(axis, t[i]), scale(v));
    drawing = true;
  }
}

export function drawCurve(pen: Pen, curve: Curve, scale: Scale, colour: ColourName, width = pen.lineWidth): void {
  const { g, palette } = pen;
  g.beginPath();
  tracePath(pen, curve, scale);
  g.strokeStyle = palette.colour[colour];
  g.lineWidth = width;
  g.lineJoin = 'round';
  g.stroke();
}

/** The area between a curve and zero; what is undefined has none. */
export function fillUnder(pen: Pen, curve: Curve, scale: Scale, colour: ColourName): void {
  const { g, axis, palette, result } = pen;
  const { t, n } = result.frames;
  g.beginPath();
  g.moveTo(xOf(axis, t[0]), scale(0));
  for (let i = 0; i < n; i++) g.lineTo(xOf(axis, t[i]), scale(curve(i) || 0));
  g.lineTo(xOf(axis, t[n - 1]), scale(0));
  g.closePath();
  g.fillStyle = palette.colour[colour];
  g.fill();
}

/** A curve's value at the cursor. */
export const curveAt = (pen: Pen, curve: Curve): number =>
  curve(pen.place.i) * (1 - pen.place.share) + curve(pen.place.i + 1) * pen.place.share;

export function drawRing(
  pen: Pen,
  value: number,
  scale: Scale,
  colour: ColourName,
  dash: readonly number[] = [],
): void {
  if (Number.isNaN(value)) return;
  const { g, axis, palette } = pen;
  g.setLineDash([...dash]);
  g.beginPath();
  g.arc(xOf(axis, pen.cursor), scale(value), pen.lineWidth * 1.9, 0, 2 * Math.PI);
  g.fillStyle = palette.colour.ground;
  g.fill();
  g.strokeStyle = palette.colour[colour];
  g.lineWidth = pen.lineWidth;
  g.stroke();
  g.setLineDash([]);
}

export function drawRule(pen: Pen, y: number, strong: boolean): void {
  const { g, axis, palette } = pen;
  const at = Math.round(y) + 0.5;
  g.beginPath();
  g.moveTo(axis.x0, at);
  g.lineTo(xOf(axis, axis.duration), at);
  g.strokeStyle = strong ? palette.colour['rule-2'] : palette.colour.rule;
  g.lineWidth = 1;
  g.stroke();
}

export function drawTick(pen: Pen, y: number, text: string): void {
  const { axis, palette } = pen;
  if (pen.unticked) return;
  drawWords(pen, text, palette.font(palette.tickPx, 450), axis.x0 - 7, y, 'ink-2', 'right', null);
}

export function drawName(
  pen: Pen,
  text: string,
  x: number,
  y: number,
  colour: ColourName,
  align: CanvasTextAlign = 'center',
  halo: ColourName | null = 'ground',
): void {
  drawWords(pen, text, pen.palette.font(pen.palette.tickPx + 1, 620), x, y, colour, align, halo);
}

function drawWords(
  { g, palette, ratio }: Pen,
  text: string,
  font: string,
  x: number,
  y: number,
  colour: ColourName,
  align: CanvasTextAlign,
  halo: ColourName | null,
): void {
  const stamp = getStamp(text, font, palette.colour[colour], halo === null ? undefined : palette.colour[halo], ratio);
  if (!stamp) return;
  putStamp(g, stamp, stampLeft(stamp, x, align), y - stamp.height / 2, ratio);
}
