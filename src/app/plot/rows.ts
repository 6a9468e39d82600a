/** The plot rows: turning rates, tilt, moments, angular momentum, energy. No boxes, no legend: names stand on the lines. */

import { DEG, REV } from '../../../sim/math/angles.ts';
import { isPlural } from '../../../sim/words/verdict-words.ts';
import { formatNumber, formatTick, isTidy } from '../../ui/numbers.ts';
import { xOf } from '../../ui/plot/axis.ts';
import { texts } from '../words.ts';
import {
  type Box,
  type Curve,
  clearEnd,
  curveAt,
  drawCurve,
  drawName,
  drawRing,
  drawRule,
  drawTick,
  findTop,
  makeScale,
  nameCurve,
  nameWidth,
  niceTop,
  type Pen,
  type Scale,
  tracePath,
  type WordBox,
} from './pen.ts';
import { readAt } from './readout.ts';

export type RowDrawer = (pen: Pen, box: Box) => void;

const p = texts.plots;

/** +1 or -1: rates are drawn upward in the direction that the flight turns. */
const directionOf = (column: Float64Array): number => (lastDefined(column) < column[0] ? -1 : 1);

function lastDefined(column: Float64Array): number {
  for (let i = column.length - 1; i >= 0; i--) if (!Number.isNaN(column[i])) return column[i];
  return column[0];
}

export function drawRates(which: 'both' | 'twist' | 'somersault'): RowDrawer {
  return (pen, box) => {
    const f = pen.result.frames;
    const st = directionOf(f.twist) * pen.units.toShown('rate', 1 / REV);
    const ss = directionOf(f.somersault) * pen.units.toShown('rate', 1 / REV);
    const twist: Curve = (i) => f.twistRate[i] * st;
    const som: Curve = (i) => f.somersaultRate[i] * ss;
    const shown = which === 'both' ? [twist, som] : which === 'twist' ? [twist] : [som];
    const top = niceTop(Math.max(pen.units.toShown('rate', 0.5), findTop(pen, ...shown)));
    const dip = findTop(
      pen,
      ...shown.map(
        (c): Curve =>
          (i) =>
            -c(i),
      ),
    );
    const low = dip > 0.06 * top ? -niceTop(dip) : -dip;
    const scale = makeScale(box, low, top);
    drawRule(pen, scale(top), false);
    if (box.height > 56) drawRule(pen, scale(top / 2), false);
    const words = which === 'somersault' ? undefined : fillTwist(pen, twist, scale, which === 'both' ? som : undefined);
    drawRule(pen, scale(0), true);
    const tick = (v: number): void => drawTick(pen, scale(v), formatTick(v));
    tick(top);
    if (box.height > 56 && isTidy(top / 2)) tick(top / 2);
    drawTick(pen, scale(0), '0');
    if (scale(low) - scale(0) > 14) tick(low);
    if (which !== 'twist') drawCurve(pen, som, scale, 'som', pen.lineWidth * 0.92);
    if (which !== 'somersault') drawCurve(pen, twist, scale, 'twist');
    const both = [
      { curve: twist, scale },
      { curve: som, scale },
    ];
    const sides =
      which !== 'somersault' && findTop(pen, (i) => -twist(i)) > 0.06 * top
        ? nameTwistSides(pen, scale, st > 0, which === 'both' ? both : both.slice(0, 1), words)
        : [];
    const taken = words ? [words, ...sides] : sides;
    if (which === 'both' && box.height > 60) {
      nameCurve(pen, p.twist, 'twist', twist, scale, [both[1]], box, taken);
      nameCurve(pen, p.somersault, 'som', som, scale, [both[0]], box, taken);
    }
    if (which !== 'twist') drawRing(pen, curveAt(pen, som), scale, 'som');
    if (which !== 'somersault') drawRing(pen, curveAt(pen, twist), scale, 'twist');
  };
}

/** A twist that turns back goes below zero: both sides of the line get their word. */
function nameTwistSides(
  pen: Pen,
  scale: Scale,
  leftIsUp: boolean,
  curves: Parameters<typeof clearEnd>[3],
  taken: WordBox | undefined,
): WordBox[] {
  const { left, right } = p.twistSides;
  const off = pen.palette.tickPx * 0.75;
  const width = nameWidth(pen, right);
  const ys = [scale(0) - off, scale(0) + off];
  const x = clearEnd(pen, width, ys, curves, 'right', taken);
  drawName(pen, leftIsUp ? left : right, x, scale(0) - off, 'twist', 'right');
  drawName(pen, leftIsUp ? right : left, x, scale(0) + off, 'twist', 'right');
  return ys.map((y) => ({ left: x - width, right: x, y }));
}

/** The area under the twist rate up to the cursor is the twist so far. */
function fillTwist(
  pen: Pen,
  twist: Curve,
  scale: (v: number) => number,
  other: Curve | undefined,
): WordBox | undefined {
  const { g, axis, cursor, palette, place, result } = pen;
  const f = result.frames;
  const done = Math.abs(readAt(f.twist, place) - f.twist[0]) / REV;
  if (!(done > 0.005)) return undefined;
  const here = curveAt(pen, twist);
  g.beginPath();
  tracePath(pen, twist, scale, cursor);
  if (!Number.isNaN(here)) g.lineTo(xOf(axis, cursor), scale(here));
  g.lineTo(xOf(axis, cursor), scale(0));
  g.lineTo(axis.x0, scale(0));
  g.closePath();
  g.fillStyle = palette.colour['twist-tint'];
  g.fill();
  const degrees = pen.units.unitOf('turns') === '°';
  const text = p.area(pen.units.sayNumber('turns', done, 2) + (degrees ? '°' : ''), isPlural(done), degrees);
  const x = xOf(axis, cursor);
  // the words stand under the curve, where it is high enough over their whole length
  const width = text.length * palette.tickPx * 0.56;
  let low = Number.POSITIVE_INFINITY;
  for (let i = 0; i < f.n; i++) {
    const px = xOf(axis, f.t[i]);
    if (px > x - width - 18 && px < x - 10) low = Math.min(low, twist(i));
  }
  const room = Number.isFinite(low) ? scale(0) - scale(low) : 0;
  if (room < palette.tickPx * 1.7) return undefined;
  // another curve must not strike the words through
  const clear = (y: number): boolean => {
    if (!other) return true;
    for (let i = 0; i < f.n; i++) {
      const px = xOf(axis, f.t[i]);
      if (px > x - width - 18 && px < x - 10 && Math.abs(scale(other(i)) - y) < palette.tickPx * 0.85) return false;
    }
    return true;
  };
  const y = [0.5, 0.3, 0.7].map((share) => scale(0) - room * share).find(clear);
  if (y === undefined) return undefined;
  drawName(pen, text, x - 14, y, 'ink', 'right', 'twist-tint');
  return { left: x - 14 - width, right: x - 14, y };
}

export const drawTilt: RowDrawer = (pen, box) => {
  const f = pen.result.frames;
  const tilt: Curve = (i) => f.tilt[i] * DEG;
  const top = findTop(pen, tilt);
  const bottom = findTop(pen, (i) => -tilt(i));
  const reach = Math.max(5, top, bottom);
  const step = niceTop(reach);
  const high = top > 0.12 * reach ? step : bottom > 0.5 ? 0 : step;
  const low = bottom > 0.12 * reach ? -step : 0;
  const scale = makeScale(box, low, high);
  drawRule(pen, scale(0), true);
  if (high > 0) {
    drawRule(pen, scale(high), false);
    drawTick(pen, scale(high), `${formatNumber(high, 0)}°`);
  }
  if (low < 0) {
    drawRule(pen, scale(low), false);
    drawTick(pen, scale(low), `${formatNumber(-low, 0)}°`);
  }
  if (box.height > 30) drawTick(pen, scale(0), '0°');
  drawCurve(pen, tilt, scale, 'tilt');
  // where the sign matters it is a word, where the curve leaves room
  const name = (text: string, v: number): void => {
    const y = scale(v) + (v > 0 ? 8 : -8);
    const end = clearEnd(
      pen,
      nameWidth(pen, text),
      [y],
      [{ curve: tilt, scale }],
      high > 0 && low < 0 ? 'left' : 'right',
    );
    drawName(pen, text, end, y, 'tilt', 'right');
  };
  if (high > 0 && (low < 0 || (top > 3 && top >= bottom))) name(p.toRight, high);
  if (low < 0 && (high > 0 || bottom > 3)) name(p.toLeft, low);
  drawRing(pen, curveAt(pen, tilt), scale, 'tilt');
};

export const drawMoments: RowDrawer = (pen, box) => {
  const f = pen.result.frames;
  const factor = pen.units.toShown('moment', 1);
  const lateral: Curve = (i) => f.moments[3 * i] * factor;
  const front: Curve = (i) => f.moments[3 * i + 1] * factor;
  const gap = 8;
  const half = (box.height - gap) / 2;
  const upper: Box = { y: box.y, height: half };
  const lower: Box = { y: box.y + half + gap, height: half };
  const top = niceTop(findTop(pen, lateral, front));
  const scale = makeScale(upper, 0, top);
  drawRule(pen, upper.y, false);
  drawRule(pen, upper.y + upper.height, true);
  drawTick(pen, upper.y, formatTick(top));
  drawCurve(pen, front, scale, 'tilt', pen.lineWidth * 0.92);
  drawCurve(pen, lateral, scale, 'som', pen.lineWidth * 0.92);
  drawRing(pen, curveAt(pen, front), scale, 'tilt');
  drawRing(pen, curveAt(pen, lateral), scale, 'som');
  drawMoment(pen, lower, 2, 'twist', p.longAxis);
};

export const drawLongMoment: RowDrawer = (pen, box) => drawMoment(pen, box, 2, 'twist', '');
export const drawLateralMoment: RowDrawer = (pen, box) => drawMoment(pen, box, 0, 'som', '');

function drawMoment(pen: Pen, box: Box, axis: number, hue: 'twist' | 'som', name: string): void {
  const f = pen.result.frames;
  const factor = pen.units.toShown('moment', 1);
  const moment: Curve = (i) => f.moments[3 * i + axis] * factor;
  const top = niceTop(findTop(pen, moment));
  const scale = makeScale(box, 0, top);
  drawRule(pen, box.y, false);
  drawRule(pen, box.y + box.height, true);
  drawTick(pen, box.y + 1, formatTick(top));
  drawTick(pen, box.y + box.height, '0');
  drawCurve(pen, moment, scale, hue);
  if (name) nameCurve(pen, name, hue, moment, scale, [], { y: box.y - 4, height: box.height + 4 });
  drawRing(pen, curveAt(pen, moment), scale, hue);
}
