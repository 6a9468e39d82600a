/** The plot rows: turning rates, tilt, moments, angular momentum, energy. No boxes, no legend: names stand on the lines. */

import { DEG, REV } from '../../../sim/math/angles.ts';
import { formatNumber, formatTick, isTidy } from '../../ui/numbers.ts';
import { xOf } from '../../ui/plot/axis.ts';
import type { ColourName } from '../../ui/plot/palette.ts';
import { texts } from '../words.ts';
import { clearEnd, nameCurve, nameWidth, type WordBox } from './curve-names.ts';
import { fillBetween } from './fill-between.ts';
import {
  type Box,
  type Curve,
  curveAt,
  drawCurve,
  drawName,
  drawRing,
  drawRule,
  drawTick,
  fillUnder,
  findTop,
  inDashes,
  inPale,
  makeScale,
  niceTop,
  type Pen,
  type Scale,
  tracePath,
} from './pen.ts';
import { calcPlace, readAt } from './readout.ts';

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
    const ofBoth = (twistOne: Curve, somOne: Curve): Curve[] =>
      which === 'both' ? [twistOne, somOne] : which === 'twist' ? [twistOne] : [somOne];
    const shown = ofBoth(twist, som);
    const others = (pen.beside ? [pen.beside] : []).map(({ letter, pen: other }) => {
      const { twistRate, somersaultRate } = other.result.frames;
      const [turning, over]: Curve[] = [(i) => twistRate[i] * st, (i) => somersaultRate[i] * ss];
      const beside = [onRowsOf(pen, other, turning), onRowsOf(pen, other, over)];
      return { letter, pen: other, twist: turning, som: over, shown: ofBoth(turning, over), beside };
    });
    const before = pen.earlier ? ratesBefore(pen.earlier, st, ss, ofBoth) : undefined;
    const all = [{ pen, shown }, ...others, ...(before ? [before] : [])];
    const top = niceTop(Math.max(pen.units.toShown('rate', 0.5), ...all.map((one) => findTop(one.pen, ...one.shown))));
    const dip = Math.max(...all.map((one) => findTop(one.pen, ...one.shown.map(downward))));
    const low = dip > 0.06 * top ? -niceTop(dip) : -dip;
    const scale = makeScale(box, low, top);
    drawRule(pen, scale(top), false);
    if (box.height > 56) drawRule(pen, scale(top / 2), false);
    const beside = others.flatMap((one) => ofBoth(one.beside[0], one.beside[1]));
    const filled = which === 'somersault' ? som : twist;
    if (before) {
      const tint = pen.palette.colour[which === 'somersault' ? 'som-tint' : 'twist-tint'];
      fillBetween(pen, filled, before.pen, which === 'somersault' ? before.som : before.twist, scale, tint);
    }
    const words = before
      ? undefined
      : which === 'somersault'
        ? fillTurns(pen, { curve: som, counted: f.somersault, word: p.somersault, tint: 'som-tint' }, scale, beside)
        : fillTurns(pen, { curve: twist, counted: f.twist, word: p.twist, tint: 'twist-tint' }, scale, [
            ...(which === 'both' ? [som] : []),
            ...beside,
          ]);
    drawRule(pen, scale(0), true);
    const tick = (v: number): void => drawTick(pen, scale(v), formatTick(v));
    tick(top);
    if (box.height > 56 && isTidy(top / 2)) tick(top / 2);
    drawTick(pen, scale(0), '0');
    if (scale(low) - scale(0) > 14) tick(low);
    for (const other of others)
      inDashes(pen, () => {
        if (which !== 'twist') drawCurve(other.pen, other.som, scale, 'som', pen.lineWidth * 0.8);
        if (which !== 'somersault') drawCurve(other.pen, other.twist, scale, 'twist', pen.lineWidth * 0.8);
      });
    if (before)
      inPale(pen, () => {
        if (which !== 'twist') drawCurve(before.pen, before.som, scale, 'som', pen.lineWidth * 0.92);
        if (which !== 'somersault') drawCurve(before.pen, before.twist, scale, 'twist');
      });
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
    const taken = [...(words ? [words] : []), ...sides, ...(before ? [nameBefore(pen, box, scale, all)] : [])];
    if (which === 'both' && box.height > 50) {
      const drawn = beside.map((curve) => ({ curve, scale }));
      nameCurve(pen, p.twist, 'twist', twist, scale, [both[1], ...drawn], box, taken);
      nameCurve(pen, p.somersault, 'som', som, scale, [both[0], ...drawn.slice(0, 1)], box, taken);
    }
    for (const { letter, pen: other, twist: turning, som: over, beside } of others) {
      const isTwist = which === 'twist' || (which === 'both' && isFarther(pen, [twist, beside[0]], [som, beside[1]]));
      nameCurve(other, letter, isTwist ? 'twist' : 'som', isTwist ? turning : over, scale, both, box, taken);
    }
    if (which !== 'twist') drawRing(pen, curveAt(pen, som), scale, 'som');
    if (which !== 'somersault') drawRing(pen, curveAt(pen, twist), scale, 'twist');
  };
}

interface RatesBefore {
  readonly pen: Pen;
  readonly twist: Curve;
  readonly som: Curve;
  readonly shown: Curve[];
}

function ratesBefore(pen: Pen, st: number, ss: number, ofBoth: (a: Curve, b: Curve) => Curve[]): RatesBefore {
  const { twistRate, somersaultRate } = pen.result.frames;
  const [twist, som]: Curve[] = [(i) => twistRate[i] * st, (i) => somersaultRate[i] * ss];
  return { pen, twist, som, shown: ofBoth(twist, som) };
}

/** What the pale curves are, clear of all of them. */
function nameBefore(
  pen: Pen,
  box: Box,
  scale: Scale,
  all: readonly { readonly pen: Pen; readonly shown: readonly Curve[] }[],
): WordBox {
  const width = nameWidth(pen, p.before);
  const drawn = all.flatMap((one) => one.shown.map((curve) => ({ curve: onRowsOf(pen, one.pen, curve), scale })));
  const y = box.y + box.height - 0.9 * pen.palette.tickPx;
  const right = clearEnd(pen, width, [y], drawn, 'right');
  drawName(pen, p.before, right, y, 'ink-2', 'right', null);
  return { left: right - width, right, y };
}

const downward =
  (curve: Curve): Curve =>
  (row) =>
    -curve(row);

/** A curve of another flight by the rows of this one: at the same times. */
const onRowsOf =
  ({ result: { frames } }: Pen, other: Pen, curve: Curve): Curve =>
  (row) => {
    const { i, share } = calcPlace(other.result.frames, frames.t[row]);
    return curve(i) + share * (curve(i + 1) - curve(i));
  };

/** Whether the first two curves come farther apart than the second two. */
function isFarther({ result: { frames } }: Pen, first: readonly Curve[], second: readonly Curve[]): boolean {
  const apart = ([a, b]: readonly Curve[]): number => {
    let most = 0;
    for (let i = 0; i < frames.n; i++) most = Math.max(most, Math.abs(a(i) - b(i)));
    return most;
  };
  return apart(first) >= apart(second);
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

interface Turning {
  readonly curve: Curve;
  /** rad, counted */
  readonly counted: Float64Array;
  readonly word: string;
  readonly tint: ColourName;
}

/** The area under a rate up to the cursor is the turn so far. */
function fillTurns(
  pen: Pen,
  { curve, counted, word, tint }: Turning,
  scale: (v: number) => number,
  others: readonly Curve[],
): WordBox | undefined {
  const { g, axis, cursor, palette, place, result } = pen;
  const f = result.frames;
  const done = Math.abs(readAt(counted, place) - counted[0]) / REV;
  if (!(done > 0.005)) return undefined;
  const here = curveAt(pen, curve);
  g.beginPath();
  tracePath(pen, curve, scale, cursor);
  if (!Number.isNaN(here)) g.lineTo(xOf(axis, cursor), scale(here));
  g.lineTo(xOf(axis, cursor), scale(0));
  g.lineTo(axis.x0, scale(0));
  g.closePath();
  g.fillStyle = palette.colour[tint];
  g.fill();
  const degrees = pen.units.unitOf('turns') === '°';
  const text = p.area(pen.units.sayNumber('turns', done, 2) + (degrees ? '°' : ''), word, degrees);
  const x = xOf(axis, cursor);
  // the words stand under the curve, where it is high enough over their whole length
  const width = text.length * palette.tickPx * 0.56;
  let low = Number.POSITIVE_INFINITY;
  for (let i = 0; i < f.n; i++) {
    const px = xOf(axis, f.t[i]);
    if (px > x - width - 18 && px < x - 10) low = Math.min(low, curve(i));
  }
  if (x - 14 - width < axis.x0 + 4) return undefined;
  const room = Number.isFinite(low) ? scale(0) - scale(low) : 0;
  if (room < palette.tickPx * 1.7 || x - 14 - width < axis.x0 + 4) return undefined;
  // another curve must not strike the words through
  const clear = (y: number): boolean => {
    for (let i = 0; i < f.n; i++) {
      const px = xOf(axis, f.t[i]);
      const isNear = (other: Curve): boolean => Math.abs(scale(other(i)) - y) < palette.tickPx * 0.85;
      if (px > x - width - 18 && px < x - 10 && others.some(isNear)) return false;
    }
    return true;
  };
  const y = [0.5, 0.3, 0.7].map((share) => scale(0) - room * share).find(clear);
  if (y === undefined) return undefined;
  drawName(pen, text, x - 14, y, 'ink', 'right', tint);
  return { left: x - 14 - width, right: x - 14, y };
}

export const drawTilt: RowDrawer = (pen, box) => drawTiltRow(pen, box, false);
/** The area filled, as a row of its own size. */
export const drawTiltFilled: RowDrawer = (pen, box) => drawTiltRow(pen, box, true);

function drawTiltRow(pen: Pen, box: Box, isFilled: boolean): void {
  const f = pen.result.frames;
  const tilt: Curve = (i) => f.tilt[i] * DEG;
  const { earlier } = pen;
  const was: Curve = (i) => (earlier ? earlier.result.frames.tilt[i] * DEG : 0);
  const { beside } = pen;
  const others: readonly { readonly pen: Pen; readonly curve: Curve }[] = [
    ...(earlier ? [{ pen: earlier, curve: was }] : []),
    ...(beside ? [{ pen: beside.pen, curve: (i: number) => beside.result.frames.tilt[i] * DEG }] : []),
  ];
  const top = Math.max(findTop(pen, tilt), ...others.map((one) => findTop(one.pen, one.curve)));
  const bottom = Math.max(findTop(pen, downward(tilt)), ...others.map((one) => findTop(one.pen, downward(one.curve))));
  const reach = Math.max(5, top, bottom);
  const step = niceTop(reach);
  // of two ways each side is as high as it needs: both are in a row that is made for one
  const sideOf = (v: number): number => (beside ? Math.min(step, niceTop(v)) : step);
  const high = top > 0.12 * reach ? sideOf(top) : bottom > 0.5 ? 0 : step;
  const low = bottom > 0.12 * reach ? -sideOf(bottom) : 0;
  const scale = makeScale(box, low, high);
  if (isFilled) fillUnder(pen, tilt, scale, 'tilt-tint');
  drawRule(pen, scale(0), true);
  if (high > 0) {
    drawRule(pen, scale(high), false);
    drawTick(pen, scale(high), `${formatNumber(high, 0)}°`);
  }
  const isRoomy = (v: number): boolean => !beside || Math.abs(scale(v) - scale(0)) > pen.palette.tickPx * 1.2;
  if (low < 0 && isRoomy(low)) {
    drawRule(pen, scale(low), false);
    drawTick(pen, scale(low), `${formatNumber(-low, 0)}°`);
  }
  if (box.height > 30) drawTick(pen, scale(0), '0°');
  if (earlier) inPale(pen, () => drawCurve(earlier, was, scale, 'tilt'));
  const other = beside && others.at(-1);
  if (other) inDashes(other.pen, () => drawCurve(other.pen, other.curve, scale, 'tilt', pen.lineWidth * 0.8));
  drawCurve(pen, tilt, scale, 'tilt');
  // where the sign matters it is a word, where the curve leaves room
  const name = (text: string, v: number): void => {
    const y = scale(v) + (v > 0 ? 8 : -8);
    const end = clearEnd(
      pen,
      nameWidth(pen, text),
      [y],
      [{ curve: tilt, scale }, ...(other ? [{ curve: onRowsOf(pen, other.pen, other.curve), scale }] : [])],
      high > 0 && low < 0 ? 'left' : 'right',
    );
    drawName(pen, text, end, y, 'tilt', 'right');
  };
  if (high > 0 && isRoomy(high) && (low < 0 || (top > 3 && top >= bottom))) name(p.toRight, high);
  if (low < 0 && (high > 0 || bottom > 3) && isRoomy(low)) name(p.toLeft, low);
  if (beside && other)
    nameCurve(
      other.pen,
      beside.letter,
      'tilt',
      other.curve,
      scale,
      [{ curve: onRowsOf(other.pen, pen, tilt), scale }],
      box,
    );
  drawRing(pen, curveAt(pen, tilt), scale, 'tilt');
}

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
  const factor = pen.units.toShown('moment', 1);
  const momentOf =
    ({ result }: Pen): Curve =>
    (i) =>
      result.frames.moments[3 * i + axis] * factor;
  const moment = momentOf(pen);
  const besides = [pen.beside?.pen, pen.earlier].filter((one) => one !== undefined);
  const others = besides.map((other) => findTop(other, momentOf(other)));
  const top = niceTop(Math.max(findTop(pen, moment), ...others));
  const scale = makeScale(box, 0, top);
  drawRule(pen, box.y, false);
  drawRule(pen, box.y + box.height, true);
  drawTick(pen, box.y + 1, formatTick(top));
  drawTick(pen, box.y + box.height, '0');
  const { beside, earlier } = pen;
  if (beside) inDashes(pen, () => drawCurve(beside.pen, momentOf(beside.pen), scale, hue, pen.lineWidth * 0.8));
  if (earlier) {
    fillBetween(
      pen,
      moment,
      earlier,
      momentOf(earlier),
      scale,
      pen.palette.colour[hue === 'twist' ? 'twist-tint' : 'som-tint'],
    );
    inPale(pen, () => drawCurve(earlier, momentOf(earlier), scale, hue));
  }
  drawCurve(pen, moment, scale, hue);
  const drawn = beside ? [{ curve: onRowsOf(pen, beside.pen, momentOf(beside.pen)), scale }] : [];
  if (name) nameCurve(pen, name, hue, moment, scale, drawn, { y: box.y - 4, height: box.height + 4 });
  drawRing(pen, curveAt(pen, moment), scale, hue);
}
