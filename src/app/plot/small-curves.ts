/** Curves of folded rows: on the same ruler, on a scale of their own, without words. The numbers are beside them. */
import type { Frames } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import type { Lane } from '../../document/lanes.ts';
import type { ColourName } from '../../ui/plot/palette.ts';
import type { RowName } from '../rows.ts';
import { type Box, type Curve, drawCurve, inDashes, makeScale, type Pen } from './pen.ts';
import { getMomentumParts } from './stacks.ts';

const WIDTH = 1.4;
/** px left free over and under a curve */
const PAD = 5;

interface Small {
  readonly curve: Curve;
  readonly colour: ColourName;
  /** of another flight: dashed */
  readonly of?: Pen;
}

export function drawSmall(row: RowName, lanes: readonly Lane[]): (pen: Pen, box: Box) => void {
  return (pen, box) => {
    const { frames: f, flight } = pen.result;
    const joints = flight.body.angles.length;
    switch (row) {
      case 'joints':
        return drawAll(
          pen,
          box,
          lanes.slice(0, 2).map(({ column }, k) => ({
            curve: (i) => f.angles[i * joints + column] * DEG,
            colour: k === 0 ? 'ink' : 'ink-3',
          })),
          60,
        );
      case 'tilt':
        return drawTwo(
          pen,
          box,
          ({ tilt }) =>
            (i) =>
              tilt[i] * DEG,
          'tilt',
          20,
        );
      case 'moments':
        return drawAll(
          pen,
          box,
          (['som', 'tilt', 'twist'] as const).map((colour, k) => ({ curve: (i) => f.moments[3 * i + k], colour })),
          1,
        );
      case 'momentum':
        return drawAll(
          pen,
          box,
          getMomentumParts(f).map(({ curve }) => ({ curve, colour: 'ink-2' })),
          1,
        );
      default:
        return drawTwo(
          pen,
          box,
          ({ eTotal }) =>
            (i) =>
              eTotal[i],
          'ink',
          0.2 * (f.eTotal[0] || 1),
        );
    }
  };
}

/** Of the skill, and dashed of the other way beside it. */
function drawTwo(pen: Pen, box: Box, of: (frames: Frames) => Curve, colour: ColourName, least: number): void {
  const other = pen.beside?.pen;
  const dashed = other ? [{ curve: of(other.result.frames), colour, of: other }] : [];
  drawAll(pen, box, [...dashed, { curve: of(pen.result.frames), colour }], least);
}

/** `least`: the smallest span that fills the row, so that what hardly changes is drawn level. */
function drawAll(pen: Pen, box: Box, curves: readonly Small[], least: number): void {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { curve, of = pen } of curves)
    for (let i = 0; i < of.result.frames.n; i++) {
      const v = curve(i);
      if (v < low) low = v;
      if (v > high) high = v;
    }
  if (!(high >= low)) return;
  const spare = Math.max(0, least - (high - low)) / 2;
  const scale = makeScale({ y: box.y + PAD, height: box.height - 2 * PAD }, low - spare, high + spare);
  for (const { curve, colour, of } of curves)
    if (of) inDashes(of, () => drawCurve(of, curve, scale, colour, WIDTH));
    else drawCurve(pen, curve, scale, colour, WIDTH);
}
