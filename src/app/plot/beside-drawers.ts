/** The rows of two ways of a skill: A solid, the other dashed, and between them the tint of what the one has more. */
import { REV } from '../../../sim/math/angles.ts';
import { formatTick } from '../../ui/numbers.ts';
import { xOf } from '../../ui/plot/axis.ts';
import type { ColourName } from '../../ui/plot/palette.ts';
import { type BesideTurn, calcTurned } from '../beside-numbers.ts';
import { calcWrittenMore, besideTexts as t, wordMoreTurn } from '../beside-words.ts';
import { wayOf } from '../first-rows.ts';
import { clearEnd, findNamePlace, nameCurve, nameWidth, type WordBox } from './curve-names.ts';
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
  makeScale,
  niceTop,
  type Pen,
  type Scale,
} from './pen.ts';
import { calcPlace } from './readout.ts';
import type { RowDrawer } from './rows.ts';

/** Edge of the momentum, px. */
const EDGE = 3;
/** Of a ring, dashed. */
const RING = [2.5, 2];
/** A row lower than this has letters alone on its curves, px. */
const LOW = 56;
/** In one lower than this, words are in the tint or nowhere, px. */
const LEAST_WORDS = 44;
/** Of the greatest difference of two momenta that are the same, a share. */
const SAME = 0.005;

interface TwoCurves {
  /** by the rows of A and of the other */
  readonly own: Curve;
  readonly other: Curve;
  readonly hue: ColourName;
  readonly tint: ColourName;
}

const LOOKS = {
  twist: { hue: 'twist', tint: 'twist-tint', moment: 2 },
  somersault: { hue: 'som', tint: 'som-tint', moment: 0 },
} as const;

export function drawBesideRate(turn: BesideTurn): RowDrawer {
  return (pen, box) => {
    const { beside, result } = pen;
    if (!beside) return;
    const [a, b] = [result.frames, beside.result.frames];
    const way = wayOf(turn === 'twist' ? a.twist : a.somersault) * pen.units.toShown('rate', 1 / REV);
    const curveOf = (f: typeof a): Curve => {
      const rate = turn === 'twist' ? f.twistRate : f.somersaultRate;
      return (i) => rate[i] * way;
    };
    const two: TwoCurves = { own: curveOf(a), other: curveOf(b), ...LOOKS[turn] };
    const more = calcWrittenMore(calcTurned(a, a, turn), calcTurned(a, b, turn));
    drawTwo(pen, box, two, {
      least: pen.units.toShown('rate', 0.5),
      names:
        box.height > LOW && !pen.unticked
          ? [
              [t.named('A', beside.own), 'A'],
              [t.named(beside.letter, beside.other), beside.letter],
            ]
          : [['A'], [beside.letter]],
      area: wordMoreTurn(more, turn),
      isMore: more > 0,
    });
  };
}

export function drawBesideMoment(turn: BesideTurn): RowDrawer {
  return (pen, box) => {
    const { beside, result } = pen;
    if (!beside) return;
    const factor = pen.units.toShown('moment', 1);
    const curveOf =
      ({ moments }: typeof result.frames): Curve =>
      (i) =>
        moments[3 * i + LOOKS[turn].moment] * factor;
    const two: TwoCurves = { own: curveOf(result.frames), other: curveOf(beside.result.frames), ...LOOKS[turn] };
    drawTwo(pen, box, two, { least: 0, names: [['A'], [beside.letter]], area: '', isMore: true });
  };
}

/** Level in both. */
export const drawBesideMomentum: RowDrawer = (pen, box) => {
  const { beside } = pen;
  if (!beside) return;
  const wholeOf = ({ result, units }: Pen): Curve => {
    const h = result.frames.h_Scm_W;
    return (i) => units.toShown('momentum', Math.hypot(h[3 * i], h[3 * i + 1], h[3 * i + 2]));
  };
  const [own, other] = [wholeOf(pen), wholeOf(beside.pen)];
  const top = Math.max(findTop(pen, own), findTop(beside.pen, other), 1e-6);
  const scale = makeScale(box, 0, top);
  fillUnder(pen, own, scale, 'moving');
  drawRule(pen, scale(0), true);
  const isSame = Math.abs(own(0) - other(0)) < SAME * top;
  if (!isSame) inDashes(pen, () => drawCurve(beside.pen, other, scale, 'ink', pen.lineWidth));
  drawCurve(pen, own, scale, 'ink', EDGE);
  if (top > 0.01) drawTick(pen, scale(top), formatTick(Number(top.toPrecision(2))));
  drawRing(pen, curveAt(pen, own), scale, 'ink');
  const text = t.same(beside.letter);
  const [x, width] = [pen.axis.x0 + 14, nameWidth(pen, text)];
  const cursor = xOf(pen.axis, pen.cursor);
  const isStruck = cursor > x - 8 && cursor < x + width + 8;
  if (isSame && box.height > 24)
    drawName(pen, text, isStruck ? cursor + 14 : x, box.y + box.height / 2, 'ink', 'left', null);
};

interface Said {
  readonly least: number;
  /** of A and of the other, the longest first */
  readonly names: readonly [readonly string[], readonly string[]];
  readonly area: string;
  /** A has more */
  readonly isMore: boolean;
}

function drawTwo(pen: Pen, box: Box, { own, other, hue, tint }: TwoCurves, said: Said): void {
  const { beside, palette } = pen;
  if (!beside) return;
  const top = niceTop(Math.max(said.least, findTop(pen, own), findTop(beside.pen, other)));
  const dip = Math.max(...[findTop(pen, (i) => -own(i)), findTop(beside.pen, (i) => -other(i))]);
  const low = dip > 0.06 * top ? -niceTop(dip) : -dip;
  const scale = makeScale(box, low, top);
  drawRule(pen, scale(top), false);
  fillBetween(pen, own, beside.pen, other, scale, palette.colour[tint]);
  const last = pen.axis.duration > beside.pen.axis.duration ? { pen, curve: own } : { pen: beside.pen, curve: other };
  if (said.area)
    fillAfter(last.pen, last.curve, Math.min(pen.axis.duration, beside.pen.axis.duration), scale, palette.colour[tint]);
  drawRule(pen, scale(0), true);
  drawTick(pen, scale(top), formatTick(top));
  drawTick(pen, scale(0), '0');
  if (scale(low) - scale(0) > 14) drawTick(pen, scale(low), formatTick(low));
  inDashes(pen, () => drawCurve(beside.pen, other, scale, hue, pen.lineWidth * 0.9));
  drawCurve(pen, own, scale, hue);
  const area = said.area
    ? nameArea(pen, said.area, own, byRowsOf(pen, beside.pen, other), scale, {
        tint,
        isMore: said.isMore,
        isLow: box.height < LEAST_WORDS,
      })
    : undefined;
  const taken = area ? [area] : [];
  const room: Box = { y: box.y - 4, height: box.height + 8 };
  // where a name would be as near to the other curve, the letter has its own place more often
  const nameOne = (one: Pen, names: readonly string[], curve: Curve, against: Curve): void => {
    const others = [{ curve: against, scale }];
    const isPlain = (text: string): boolean =>
      findNamePlace(one, text, curve, scale, others, room, taken)?.isPlain === true;
    nameCurve(one, names.find(isPlain) ?? names[names.length - 1], hue, curve, scale, others, room, taken);
  };
  nameOne(pen, said.names[0], own, byRowsOf(pen, beside.pen, other));
  nameOne(beside.pen, said.names[1], other, byRowsOf(beside.pen, pen, own));
  drawRing(beside.pen, curveAt(beside.pen, other), scale, hue, RING);
  drawRing(pen, curveAt(pen, own), scale, hue);
}

/** A curve of another flight by the rows of this one: at the same times. */
const byRowsOf =
  ({ result: { frames } }: Pen, { result }: Pen, curve: Curve): Curve =>
  (row) => {
    const { i, share } = calcPlace(result.frames, frames.t[row]);
    return curve(i) + share * (curve(i + 1) - curve(i));
  };

/** Who lands later turns on alone. */
function fillAfter(pen: Pen, curve: Curve, from: number, scale: Scale, colour: string): void {
  const { g, axis, result } = pen;
  const { t: times, n } = result.frames;
  g.beginPath();
  g.moveTo(xOf(axis, times[n - 1]), scale(0));
  for (let i = n - 1; i >= 0 && times[i] >= from; i--) g.lineTo(xOf(axis, times[i]), scale(curve(i)));
  g.lineTo(xOf(axis, from), scale(0));
  g.closePath();
  g.fillStyle = colour;
  g.fill();
}

/** of the tint over the height of its words */
const AREA_ROOM = 1.5;
/** px of a line of them over the size of a tick */
const LINE = 1.35;

/**
 * What the tint comes to, in one line or in two, where it is widest over the whole length of the words, and where the one is over the other as in the
 * whole. Where it is narrow everywhere, over the zero line.
 */
function nameArea(pen: Pen, text: string, own: Curve, other: Curve, scale: Scale, look: AreaLook): WordBox | undefined {
  const { palette } = pen;
  const [number, ...words] = text.split(' ');
  for (const lines of [[text], [number, words.join(' ')]]) {
    const width = Math.max(...lines.map((line) => nameWidth(pen, line))) + 6;
    const tall = (AREA_ROOM + LINE * (lines.length - 1)) * palette.tickPx;
    const place = findArea(pen, width, tall, own, other, scale, look.isMore);
    if (!place) continue;
    for (const [k, line] of lines.entries())
      drawName(
        pen,
        line,
        place.x,
        place.y + (k - (lines.length - 1) / 2) * LINE * palette.tickPx,
        'ink',
        'left',
        look.tint,
      );
    return { left: place.x, right: place.x + width, y: place.y };
  }
  if (look.isLow) return undefined;
  const width = nameWidth(pen, text) + 6;
  const y = scale(0) - 0.8 * palette.tickPx;
  const right = clearEnd(
    pen,
    width,
    [y],
    [own, other].map((curve) => ({ curve, scale })),
    'right',
  );
  drawName(pen, text, right, y, 'ink', 'right');
  return { left: right - width, right, y };
}

interface AreaLook {
  readonly tint: ColourName;
  /** words elsewhere would be on a curve */
  readonly isLow: boolean;
  /** A has more of it in the whole */
  readonly isMore: boolean;
}

function findArea(
  pen: Pen,
  width: number,
  tall: number,
  own: Curve,
  other: Curve,
  scale: Scale,
  isMore: boolean,
): { x: number; y: number } | undefined {
  const { axis, result } = pen;
  const { t: times, n } = result.frames;
  const cursor = xOf(axis, pen.cursor);
  let best: { x: number; y: number; room: number } | undefined;
  for (let x = axis.x0 + 4; x + width < xOf(axis, axis.duration); x += 6) {
    if (x < cursor + 8 && x + width > cursor - 8) continue;
    // the tint is free from `above` to `under` over all of the words
    let [above, under] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (let i = 0; i < n; i++) {
      const px = xOf(axis, times[i]);
      if (px < x - 4 || px > x + width + 4) continue;
      const [high, low] = isMore ? [own(i), other(i)] : [other(i), own(i)];
      above = Math.max(above, scale(high));
      under = Math.min(under, scale(low));
    }
    // of two places about as wide the one nearer to the cursor, where the eye is
    const room = under - above - Math.min(Math.abs(x - cursor), Math.abs(x + width - cursor)) / 40;
    if (under - above > tall && (!best || room > best.room)) best = { x, y: (above + under) / 2, room };
  }
  return best;
}
