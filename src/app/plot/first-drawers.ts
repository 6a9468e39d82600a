/** The three large rows: shape, rate and momentum of the one axis; or rates, tilt and the share about the long axis. */

import { formatTick } from '../../ui/numbers.ts';
import { xOf } from '../../ui/plot/axis.ts';
import type { ColourName } from '../../ui/plot/palette.ts';
import type { FirstStory, OneAxis } from '../first-rows.ts';
import { doLimbsMatter, limbsCurve, longShareCurve } from '../first-rows.ts';
import { firstTexts } from '../first-words.ts';
import { drawHatch } from './backdrop.ts';
import { nameWidth } from './curve-names.ts';
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
  makeScale,
  type Pen,
} from './pen.ts';
import { drawLateralMoment, drawLongMoment, drawRates, drawTiltFilled, type RowDrawer } from './rows.ts';

/** Edge of the momentum, px. */
const EDGE = 3;
/** px between the momentum and what the limbs carry of it */
const GAP = 8;

export const getFirstDrawers = (story: FirstStory): readonly [RowDrawer, RowDrawer, RowDrawer] =>
  story.kind === 'twisting'
    ? [drawRates('both'), drawTiltFilled, drawShare]
    : story.axis === 'long'
      ? [drawRates('twist'), drawLongMoment, drawWhole('long', 'twist-tint')]
      : [drawRates('somersault'), drawLateralMoment, drawWhole('lateral', 'som-tint')];

const wholeCurve =
  ({ result: { frames }, units }: Pen): Curve =>
  (i) =>
    units.toShown('momentum', Math.hypot(frames.h_Scm_W[3 * i], frames.h_Scm_W[3 * i + 1], frames.h_Scm_W[3 * i + 2]));

function drawLevel(pen: Pen, whole: Curve, scale: (v: number) => number, top: number, fill: ColourName): void {
  fillUnder(pen, whole, scale, fill);
  drawRule(pen, scale(0), true);
  drawCurve(pen, whole, scale, 'ink', EDGE);
  if (top > 0.01) drawTick(pen, scale(top), formatTick(Number(top.toPrecision(2))));
}

/** All of the momentum is about the one axis; under it, where limbs carry some, a strip of that on the same scale. */
function drawWhole(axis: OneAxis, tint: ColourName): RowDrawer {
  return (pen, box) => {
    const { frames } = pen.result;
    const whole = wholeCurve(pen);
    const top = Math.max(findTop(pen, whole), 1e-6);
    const hasStrip = doLimbsMatter(frames, axis);
    const strip: Box = { y: box.y + box.height * 0.56 + GAP, height: box.height * 0.44 - GAP };
    const level: Box = hasStrip ? { y: box.y, height: box.height * 0.56 } : box;
    const scale = makeScale(level, 0, top);
    drawLevel(pen, whole, scale, top, tint);
    drawRing(pen, curveAt(pen, whole), scale, 'ink');
    if (hasStrip) drawLimbs(pen, strip, axis, level.height / top);
  };
}

/** What moving limbs carry: upward with the turn, downward against it. */
function drawLimbs(pen: Pen, box: Box, axis: OneAxis, pxPerUnit: number): void {
  const { g, axis: time } = pen;
  const raw = limbsCurve(pen.result.frames, axis);
  const limbs: Curve = (i) => pen.units.toShown('momentum', raw(i));
  const [up, down] = [findTop(pen, limbs), findTop(pen, (i) => -limbs(i))];
  const px = Math.min(pxPerUnit, box.height / (up + down));
  const zero = box.y + up * px + (box.height - (up + down) * px) / 2;
  const scale = (v: number): number => zero - v * px;
  g.save();
  g.beginPath();
  const { t, n } = pen.result.frames;
  g.moveTo(xOf(time, t[0]), zero);
  for (let i = 0; i < n; i++) g.lineTo(xOf(time, t[i]), scale(limbs(i)));
  g.lineTo(xOf(time, t[n - 1]), zero);
  g.closePath();
  g.fillStyle = pen.palette.colour['rule-2'];
  g.fill();
  g.clip();
  drawHatch(pen, time.x0, box.y - 2, xOf(time, time.duration) - time.x0, box.height + 4);
  g.restore();
  drawRule(pen, zero, true);
  drawCurve(pen, limbs, scale, 'ink-2', 1.3);
  drawRing(pen, curveAt(pen, limbs), scale, 'ink-2');
}

/** The whole is level; of it, what is about the long axis, on the same scale from the same zero. */
const drawShare: RowDrawer = (pen, box) => {
  const whole = wholeCurve(pen);
  const raw = longShareCurve(pen.result.frames);
  const long: Curve = (i) => pen.units.toShown('momentum', raw(i));
  const top = Math.max(findTop(pen, whole, long), 1e-6);
  const dip = findTop(pen, (i) => -long(i));
  const scale = makeScale(box, dip > 0.04 * top ? -dip : 0, top);
  drawLevel(pen, whole, scale, top, 'moving');
  fillUnder(pen, long, scale, 'twist');
  drawRule(pen, scale(0), true);
  drawRing(pen, curveAt(pen, whole), scale, 'ink');
  const here = curveAt(pen, long);
  drawRing(pen, here, scale, 'twist');
  nameShare(
    pen,
    firstTexts.longShare(
      pen.units.sayNumber(
        'momentum',
        raw(pen.place.i) * (1 - pen.place.share) + raw(pen.place.i + 1) * pen.place.share,
      ),
    ),
    long,
    scale,
  );
};

/** Beside the cursor, over the share where it is highest along the words. */
function nameShare(pen: Pen, text: string, long: Curve, scale: (v: number) => number): void {
  const { axis, palette, result } = pen;
  const width = nameWidth(pen, text) + 10;
  const here = xOf(axis, pen.cursor);
  const isRight = here + 14 + width < xOf(axis, axis.duration);
  const [from, to] = isRight ? [here + 14, here + 14 + width] : [here - 14 - width, here - 14];
  let y = scale(0);
  for (let i = 0; i < result.frames.n; i++) {
    const x = xOf(axis, result.frames.t[i]);
    if (x >= from && x <= to) y = Math.min(y, scale(long(i)));
  }
  drawName(pen, text, isRight ? from : to, y - palette.tickPx * 0.85, 'ink', isRight ? 'left' : 'right', null);
}
