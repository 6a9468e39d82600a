/**
 * The athlete of a worksheet: while answers are open, poses side by side at equal times with a bar of one metre, and nothing that would
 * tell how long, how high or how far; once all are locked, over time at their true heights. Nothing in its text names an instant.
 */
import { figureItems } from '../scene/figure.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import { pathHeights, pathItems } from '../scene/flight-path.ts';
import { runPieces } from '../scene/pieces.ts';
import type { DrawItem } from '../scene/scene.ts';
import { sideView } from '../scene/view.ts';
import type { PaperFlight } from './paper-flight.ts';
import { drawn } from './paper-ink.ts';
import { figureSpread, placePoses } from './picture-places.ts';
import { equalTimes } from './picture-times.ts';
import { paperTexts } from './words.ts';

interface SheetFiguresInput {
  readonly count: number;
  readonly width: number;
  /** at most */
  readonly height: number;
  /** every answer is locked */
  readonly isOpen: boolean;
  /** colours as custom properties of the page, or plain ones for paper */
  readonly ink: 'page' | 'paper';
  /** size of letters */
  readonly size: number;
}

export interface SheetFigures {
  readonly markup: string;
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
}

/** of the bar and its word, under the figures */
const BAR = 26;

export function makeSheetFigures(
  flight: PaperFlight,
  { count, width, height, isOpen, ink, size }: SheetFiguresInput,
): SheetFigures {
  const times = equalTimes(flight, count, 'time') ?? [];
  const versions = [{ letter: 'A', flight }] as const;
  const spread = [runPieces(figureSpread(flight, times))];
  const placed = isOpen
    ? placeOpen(flight, times, spread[0], { width, height, size })
    : { ...placePoses({ versions, layout: 'row', times, width, spread }), point: undefined };
  const { pxPerM, point, floorY } = placed;
  const { staged, pose } = flight;
  const view = sideView(staged.v_WScm_W0[0]);
  const items: DrawItem[] = [];
  if (point) {
    items.push(...pathItems(staged, point));
    items.push(line([0, floorY, placed.width, floorY], 'floor', 3));
  }
  for (const { t, x, y } of placed.poses) {
    const now = pose(t);
    const frame = { view, scale: pxPerM, anchor: now.p_WScm_W, x, y, gap: 'air' } as const;
    items.push(...figureItems(staged.body, now.frames, frame));
  }
  // under the row there are no times
  const under = point ? placed.height : floorY;
  if (point)
    for (const { x, y, text } of placed.labels)
      items.push({ kind: 'text', x, y, text, size, weight: 560, fill: 'ink-2', anchor: 'middle' });
  items.push(...metreBar(pxPerM, under + BAR / 2, size));
  const markup = ink === 'paper' ? drawn(items) : svgMarkup(items);
  return { markup, width: placed.width, height: under + BAR, pxPerM };
}

/** Over time, across the whole width; as large as the height allows. */
function placeOpen(
  { staged, duration, pose }: PaperFlight,
  times: readonly number[],
  spread: { readonly left: number; readonly right: number; readonly up: number },
  { width, height, size }: Pick<SheetFiguresInput, 'width' | 'height' | 'size'>,
) {
  const top = pathHeights(staged).top + spread.up;
  const label = size + 12;
  const pxPerM = Math.min((height - label - BAR) / top, width / 4);
  const [from, to] = [spread.left * pxPerM + 4, width - spread.right * pxPerM - 4];
  const floorY = top * pxPerM;
  const point = (s: number, _x: number, y: number): readonly [number, number] => [
    from + (s / duration) * (to - from),
    floorY - y * pxPerM,
  ];
  const poses = times.map((t) => {
    const [x, y] = point(t, 0, pose(t).p_WScm_W[1]);
    return { t, x, y };
  });
  const labels = poses.map(({ t, x }) => ({ x, y: floorY + size + 5, text: paperTexts.picture.seconds(t.toFixed(2)) }));
  return { pxPerM, width, height: floorY + label, floorY, poses, labels, point };
}

const line = (points: readonly number[], stroke: 'floor' | 'ink', width: number): DrawItem => ({
  kind: 'line',
  points: Float32Array.from(points),
  stroke,
  width,
});

function metreBar(pxPerM: number, y: number, size: number): DrawItem[] {
  const [x0, x1] = [2, 2 + pxPerM];
  return [
    {
      kind: 'segments',
      points: Float32Array.from([x0, y, x1, y, x0, y - 6, x0, y + 6, x1, y - 6, x1, y + 6]),
      stroke: 'ink',
      width: 2,
    },
    {
      kind: 'text',
      x: x1 + 8,
      y: y + size / 3,
      text: paperTexts.picture.metre(1),
      size,
      weight: 640,
      fill: 'ink',
      anchor: 'start',
    },
  ];
}
