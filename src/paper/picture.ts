/**
 * A picture of a flight for a page, a slide or a wall: poses side by side, along the true path, or over time at their true heights; one version or
 * several, plots under them. Every figure of a picture has the same units a metre; a bar says how long a metre is, and the scale is in words.
 */
import { flightApparatus } from '../scene/apparatus-flight.ts';
import { apparatusItems } from '../scene/apparatus-items.ts';
import { figureItems } from '../scene/figure.ts';
import { pathItems } from '../scene/flight-path.ts';
import { type Pieces, runPieces } from '../scene/pieces.ts';
import { drawPlot, type PrintPlot } from '../scene/print-scene.ts';
import type { DrawItem } from '../scene/scene.ts';
import { versionOutline } from '../scene/version-ghost.ts';
import { sideView } from '../scene/view.ts';
import { type PaperPage, PER_MM, pageSvg, type Typeface } from './page-svg.ts';
import { drawn } from './paper-ink.ts';
import {
  type FigureReach,
  figureSpread,
  type PictureLayout,
  type PictureVersion,
  type PlacedPose,
  placePoses,
} from './picture-places.ts';
import { BOLD, fitText, linesMarkup, round, type TextLine, textMarkup } from './set-text.ts';
import { paperTexts } from './words.ts';

interface PictureInput {
  /** the first is drawn full, the others as contours */
  readonly versions: readonly [PictureVersion, ...PictureVersion[]];
  readonly layout: PictureLayout;
  readonly times: readonly number[];
  readonly widthMm: number;
  /** name and result over the picture */
  readonly head?: { readonly name: string; readonly result: TextLine };
  readonly plots?: { readonly times: Float64Array; readonly list: readonly PrintPlot[] };
  readonly standing: string;
  readonly foot: string;
  readonly origin?: string;
  readonly typeface?: Typeface;
}

const t = paperTexts.picture;
const MARGIN = 36;
const SMALL = 15;
/** Plots are drawn in their own, smaller units. */
const PLOT_ZOOM = 1.36;
const PLOT_GAP = 19;
const HALO = 'air';

export const makePicture = (input: PictureInput): PaperPage => runPieces(drawPicture(input));

export function* drawPicture(input: PictureInput): Pieces<PaperPage> {
  const width = input.widthMm * PER_MM;
  const inner = width - 2 * MARGIN;
  const head = headMarkup(input, inner);
  const spread: FigureReach[] = [];
  for (const { flight } of input.versions) spread.push(yield* figureSpread(flight, input.times));
  const placed = placePoses({ ...input, width: inner, spread });
  yield;
  const parts: string[] = [head.markup];
  let y = head.height;
  const drawing = yield* figures(input, placed);
  parts.push(`<g transform="translate(${MARGIN} ${round(y)})" data-px-per-m="${placed.pxPerM}">${drawing}</g>`);
  y += placed.height;
  if (input.plots && input.plots.list.length > 0) {
    const plots = plotMarkup(input, inner, placed.timeX);
    parts.push(`<g transform="translate(${MARGIN} ${round(y + 14)}) scale(${PLOT_ZOOM})">${plots.markup}</g>`);
    y += plots.height + 14;
    yield;
  }
  const foot = footMarkup(input, inner, placed.pxPerM, y + 30);
  parts.push(foot.markup);
  const title = input.head ? `${input.head.name}: ${input.head.result.map(({ text }) => text).join('')}` : t.title;
  return pageSvg({
    widthMm: input.widthMm,
    heightMm: (y + 30 + foot.height) / PER_MM,
    title,
    markup: parts.join('\n'),
    ...(input.origin ? { origin: input.origin } : {}),
    ...(input.typeface ? { typeface: input.typeface } : {}),
  });
}

function headMarkup({ head }: PictureInput, width: number): { markup: string; height: number } {
  if (!head) return { markup: '', height: 20 };
  const name = fitText([{ text: head.name, weight: BOLD }], [{ width, lines: 2, size: 22, leading: 27 }]);
  const rooms = [
    { width, lines: 1, size: 30, leading: 37 },
    { width, lines: 2, size: 26, leading: 32 },
    { width, lines: 9, size: 20, leading: 25 },
  ];
  const result = fitText(head.result, rooms, true);
  const top = 36;
  const under = top + name.lines.length * name.leading + 8;
  return {
    markup: linesMarkup(name, { x: MARGIN, y: top }) + linesMarkup(result, { x: MARGIN, y: under }),
    height: under + (result.lines.length - 1) * result.leading + 26,
  };
}

/** Apparatus and paths, then the figures of the other versions, then those of the first. */
function* figures(input: PictureInput, placed: ReturnType<typeof placePoses>): Pieces<string> {
  const { pxPerM, place } = placed;
  const view = sideView(input.versions[0].flight.staged.v_WScm_W0[0]);
  const out: string[] = [];
  if (place) {
    const { staged } = input.versions[0].flight;
    const size = { width: placed.width, height: placed.floorY, pxPerM, left: 0, right: placed.width };
    // over time what is left is at the first pose, and what is met at the last
    const { behind, front } = placed.timeX
      ? flightApparatus(staged, { ...size, x: placed.timeX, y: (h) => place.plane(0, h)[1] })
      : apparatusItems(staged.apparatus.pieces, { ...size, view, at: place.plane });
    const paths = input.versions.flatMap(({ flight, letter }) =>
      pathItems(flight.staged, place.point, letter === 'A' ? undefined : [5, 3]),
    );
    out.push(drawn([...behind, ...paths]));
    out.push(drawn([floorLine(placed.width, placed.floorY)]));
    out.push(drawn(front));
    yield;
  }
  for (const pose of [...placed.poses].sort((a, b) => order(b) - order(a) || a.t - b.t))
    out.push(yield* figureMarkup(input, pose, pxPerM));
  out.push(
    ...placed.labels.map((label) => textMarkup([{ text: label.text, weight: BOLD }], { ...label, size: SMALL + 2 })),
  );
  return out.join('\n');
}

const order = ({ letter }: PlacedPose): number => (letter === 'A' ? 0 : letter.charCodeAt(0));

const floorLine = (width: number, y: number): DrawItem => ({
  kind: 'line',
  points: Float32Array.from([0, y, width, y]),
  stroke: 'floor',
  width: 3,
});

function* figureMarkup(
  { versions }: PictureInput,
  { letter, t: at, x, y }: PlacedPose,
  pxPerM: number,
): Pieces<string> {
  const found = versions.find((one) => one.letter === letter);
  if (!found) return '';
  const { staged, pose } = found.flight;
  const now = pose(at);
  const place = { view: sideView(staged.v_WScm_W0[0]), scale: pxPerM, anchor: now.p_WScm_W, x, y, gap: HALO } as const;
  const items =
    letter === 'A'
      ? figureItems(staged.body, now.frames, place)
      : versionOutline(letter, staged.body, now.frames, place);
  yield;
  return `<g data-figure="${letter} ${at.toFixed(6)}" data-at="${round(x)} ${round(y)}">${drawn(items)}</g>`;
}

function plotMarkup(
  { plots, versions }: PictureInput,
  width: number,
  timeX: ((s: number) => number) | undefined,
): { markup: string; height: number } {
  if (!plots) return { markup: '', height: 0 };
  const T = versions[0].flight.duration;
  const left = 46;
  const own = (s: number): number => left + (s / T) * (width / PLOT_ZOOM - left - 8);
  const x = timeX ? (s: number): number => timeX(s) / PLOT_ZOOM : own;
  const items: DrawItem[] = [];
  let y = 8;
  for (const plot of plots.list) {
    items.push(...drawPlot(plot, plots.times, x, y, T));
    y += plot.height + PLOT_GAP;
  }
  items.push(...timeAxis(x, y - 8, T));
  return { markup: drawn(items), height: (y + 16) * PLOT_ZOOM };
}

function timeAxis(x: (s: number) => number, y: number, T: number): DrawItem[] {
  const step = [0.1, 0.2, 0.5, 1].find((s) => x(s) - x(0) >= 34) ?? 2;
  const items: DrawItem[] = [{ kind: 'line', points: Float32Array.from([x(0), y, x(T), y]), stroke: 'ink', width: 1 }];
  const label = (s: number, text: string): void => {
    items.push({ kind: 'line', points: Float32Array.from([x(s), y, x(s), y + 5]), stroke: 'ink', width: 1 });
    items.push({ kind: 'text', x: x(s), y: y + 17, text, size: 11.5, weight: 560, fill: 'ink', anchor: 'middle' });
  };
  for (let k = 0; k * step < T - 0.4 * step; k++) label(k * step, (k * step).toFixed(1));
  label(T, t.seconds(T.toFixed(2)));
  return items;
}

/** The metre, the scale in words, the foot, the caution. */
function footMarkup(
  { foot, standing }: PictureInput,
  width: number,
  pxPerM: number,
  y: number,
): { markup: string; height: number } {
  const metre = pxPerM > 0.6 * width ? 0.5 : 1;
  const [x0, x1] = [MARGIN, MARGIN + metre * pxPerM];
  const bar: DrawItem = {
    kind: 'segments',
    points: Float32Array.from([x0, y, x1, y, x0, y - 6, x0, y + 6, x1, y - 6, x1, y + 6]),
    stroke: 'ink',
    width: 2,
  };
  const label = textMarkup([{ text: t.metre(metre), weight: BOLD }], { x: x1 + 12, y: y + 5, size: SMALL + 1 });
  const said = `${t.scale(Math.round((1000 * PER_MM) / pxPerM))} ${foot}`;
  const lines = [said, standing].map((text) => fitText([{ text }], [{ width, lines: 99, size: SMALL, leading: 19 }]));
  const out = [`<g data-metre="${round(metre * pxPerM)} ${metre}">${drawn([bar])}</g>`, label];
  let at = y + 34;
  for (const set of lines) {
    out.push(linesMarkup(set, { x: MARGIN, y: at }));
    at += set.lines.length * set.leading;
  }
  return { markup: out.join(''), height: at - y + 3 };
}
