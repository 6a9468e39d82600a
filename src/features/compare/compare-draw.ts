/**
 * Curves of several versions in one row, on A's ruler: A solid, the others in their own dashes. Between the two that are
 * compared the difference is tinted. Each curve runs on its own clock, moved so that the flights meet where asked.
 */
import { DEG, REV } from '../../../sim/math/angles.ts';
import { nameCurve } from '../../app/plot/curve-names.ts';
import { fillBetween } from '../../app/plot/fill-between.ts';
import {
  type Box,
  curveAt,
  drawCurve,
  drawName,
  drawRing,
  drawRule,
  drawTick,
  findTop,
  makeScale,
  niceTop,
  type Pen,
  type Scale,
} from '../../app/plot/pen.ts';
import { calcPlace } from '../../app/plot/readout.ts';
import { texts } from '../../app/words.ts';
import type { FlightResult } from '../../engine/result.ts';
import { formatTick } from '../../ui/numbers.ts';
import type { TimeAxis } from '../../ui/plot/axis.ts';
import { xOf } from '../../ui/plot/axis.ts';
import type { ColourName, PlotPalette } from '../../ui/plot/palette.ts';
import type { UnitSystem } from '../../ui/units.ts';
import type { Letter } from './compare-state.ts';
import { placeLetters } from './end-letters.ts';
import { compareTexts as c } from './words.ts';

const DASHES: Readonly<Record<Letter, readonly number[]>> = {
  A: [],
  B: [6, 4],
  C: [1.6, 3.2],
  D: [8, 3, 1.6, 3],
  E: [12, 5],
  F: [3, 6],
  G: [8, 3, 1.6, 3, 1.6, 3],
  H: [2.5, 2.5, 12, 2.5],
};

/** A value of a flight at one of its frames, in the unit shown. */
type Measure = (result: FlightResult, units: UnitSystem) => (row: number) => number;

const wayOf = (column: Float64Array): number => {
  for (let i = column.length - 1; i >= 0; i--) if (!Number.isNaN(column[i])) return column[i] < column[0] ? -1 : 1;
  return 1;
};

const sideOf = (column: Float64Array): number => {
  let far = 0;
  for (const v of column) if (Math.abs(v) > Math.abs(far)) far = v;
  return far < 0 ? -1 : 1;
};

/** Rates are upward in the direction that the flight turns, tilt to the side that it leans to most. */
export const MEASURES = {
  twist: ({ frames: f }, units) => {
    const k = units.toShown('rate', wayOf(f.twist) / REV);
    return (i) => f.twistRate[i] * k;
  },
  somersault: ({ frames: f }, units) => {
    const k = units.toShown('rate', wayOf(f.somersault) / REV);
    return (i) => f.somersaultRate[i] * k;
  },
  tilt: ({ frames: f }) => {
    const k = sideOf(f.tilt) * DEG;
    return (i) => f.tilt[i] * k;
  },
  lateral: ({ frames: f }, units) => {
    const k = units.toShown('moment', 1);
    return (i) => f.moments[3 * i] * k;
  },
  long: ({ frames: f }, units) => {
    const k = units.toShown('moment', 1);
    return (i) => f.moments[3 * i + 2] * k;
  },
} as const satisfies Record<string, Measure>;
export type MeasureName = keyof typeof MEASURES;

export interface Course {
  readonly letter: Letter;
  readonly result: FlightResult;
  readonly shiftS: number;
  /** one of the two compared */
  readonly compared: boolean;
}

export interface ComparedLine {
  readonly name: MeasureName;
  readonly hue: ColourName;
  readonly tint: ColourName;
  readonly tinted: boolean;
}

/** Each version's pen: its frames, on A's ruler moved by its shift. */
export function makePens(
  g: CanvasRenderingContext2D,
  ratio: number,
  axis: TimeAxis,
  palette: PlotPalette,
  cursor: number,
  lineWidth: number,
  courses: readonly Course[],
  units: UnitSystem,
): Pen[] {
  return courses.map(({ result, shiftS }) => {
    const own = cursor + shiftS;
    const duration = result.flight.duration;
    return {
      g,
      ratio,
      axis: { ...axis, x0: axis.x0 - shiftS * axis.pxPerS, duration },
      result,
      palette,
      cursor: Math.min(Math.max(own, 0), duration),
      place: calcPlace(result.frames, own),
      lineWidth,
      units,
    };
  });
}

export function drawCompared(
  pens: readonly Pen[],
  courses: readonly Course[],
  lines: readonly ComparedLine[],
  box: Box,
): void {
  const [first] = pens;
  if (!first) return;
  const curvesOf = (line: ComparedLine) => courses.map((course) => MEASURES[line.name](course.result, first.units));
  const all = lines.map((line) => ({ line, curves: curvesOf(line) }));
  let high = 0;
  let low = 0;
  for (const { curves } of all)
    curves.forEach((curve, k) => {
      high = Math.max(high, findTop(pens[k], curve));
      low = Math.max(
        low,
        findTop(pens[k], (i) => -curve(i)),
      );
    });
  const top = niceTop(high);
  const bottom = low > 0.05 * top ? -niceTop(low) : 0;
  const scale = makeScale(box, bottom, top);
  drawRule(first, scale(top), false);
  if (bottom < 0) drawRule(first, scale(bottom), false);
  for (const { line, curves } of all) {
    if (!line.tinted) continue;
    const [x, y] = courses.flatMap((course, k) => (course.compared ? [k] : []));
    if (x !== undefined && y !== undefined)
      fillBetween(pens[x], curves[x], pens[y], curves[y], scale, first.palette.colour[line.tint]);
  }
  drawRule(first, scale(0), true);
  drawTick(first, scale(top) + 1, formatTick(top));
  if (box.height > 26) drawTick(first, scale(0), '0');
  if (bottom < 0 && scale(bottom) - scale(0) > 14) drawTick(first, scale(bottom), formatTick(bottom));
  for (const { line, curves } of all) {
    for (let k = pens.length - 1; k >= 0; k--) {
      const { g } = pens[k];
      const { letter, compared } = courses[k];
      g.setLineDash([...DASHES[letter]]);
      g.globalAlpha = compared || letter === 'A' ? 1 : 0.75;
      drawCurve(pens[k], curves[k], scale, line.hue, letter === 'A' ? pens[k].lineWidth : pens[k].lineWidth * 0.9);
      g.setLineDash([]);
      g.globalAlpha = 1;
    }
    for (let k = pens.length - 1; k >= 0; k--)
      if (courses[k].compared) drawRing(pens[k], curveAt(pens[k], curves[k]), scale, line.hue);
  }
  drawEnds(pens, courses, all, scale, box);
  if (lines.length < 2 || box.height < 60) return;
  // two quantities in one row: each gets its name on A's curve
  all.forEach(({ line, curves }, own) => {
    const others = all.flatMap((one, i) => (i === own ? [] : one.curves.map((curve) => ({ curve, scale }))));
    nameCurve(
      first,
      texts.plots[line.name === 'twist' ? 'twist' : 'somersault'],
      line.hue,
      curves[0],
      scale,
      others,
      box,
    );
  });
}

/** The letters where the curves of a row end, apart enough to be read. */
function drawEnds(
  pens: readonly Pen[],
  courses: readonly Course[],
  all: readonly { line: ComparedLine; curves: readonly ((row: number) => number)[] }[],
  scale: Scale,
  box: Box,
): void {
  const least = pens[0].palette.tickPx + 1;
  const ends = all
    .flatMap(({ line, curves }) =>
      pens.map((pen, k) => {
        const n = pen.result.frames.n;
        let i = n - 1;
        while (i > 0 && Number.isNaN(curves[k](i))) i--;
        return {
          letter: courses[k].letter,
          hue: line.hue,
          x: Math.min(xOf(pen.axis, pen.result.frames.t[i]) + 8, pen.axis.width - 12),
          y: scale(curves[k](i)),
          pen,
        };
      }),
    )
    .filter((e) => !Number.isNaN(e.y))
    // a letter is drawn over the lines of those that fly on
    .map((e, _, list) => (list.some((o) => o.x > e.x + 4) ? { ...e, y: e.y - 0.75 * least } : e));
  const room = { top: box.y - 4, bottom: box.y + box.height + 4, right: pens[0].axis.width - 12 };
  const places = placeLetters(ends, least, room);
  for (const [i, e] of ends.entries()) drawName(e.pen, e.letter, places[i].x, places[i].y, e.hue, 'left');
}

export const ROW_TITLES = { rate: c.rate, tilt: c.tilt, lateral: c.lateral, long: c.long } as const;
export type CurveName = keyof typeof ROW_TITLES;

/** What a row holds: a flight without a twist has its difference in the somersault. */
export function linesOf(row: CurveName, twisting: boolean): ComparedLine[] {
  switch (row) {
    case 'rate':
      return [
        { name: 'somersault', hue: 'som', tint: 'som-tint', tinted: !twisting },
        ...(twisting ? [{ name: 'twist', hue: 'twist', tint: 'twist-tint', tinted: true } as const] : []),
      ];
    case 'tilt':
      return [{ name: 'tilt', hue: 'tilt', tint: 'tilt-tint', tinted: true }];
    case 'lateral':
      return [{ name: 'lateral', hue: 'som', tint: 'som-tint', tinted: true }];
    case 'long':
      return [{ name: 'long', hue: 'twist', tint: 'twist-tint', tinted: true }];
  }
}
