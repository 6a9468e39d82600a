/** Where the poses of a picture are: side by side, along the path, or over time; all to one scale, as large as the width allows. */
import { figureItems } from '../scene/figure.ts';
import { pathHeights } from '../scene/flight-path.ts';
import type { Pieces } from '../scene/pieces.ts';
import type { Points } from '../scene/scene.ts';
import type { OtherVersion } from '../scene/version-ghost.ts';
import { sideView } from '../scene/view.ts';
import { textWidth } from './letter-widths.ts';
import type { PaperFlight } from './paper-flight.ts';
import { paperTexts } from './words.ts';

const t = paperTexts.picture;

export type PictureLayout = 'row' | 'path' | 'time';

export interface PictureVersion {
  readonly letter: 'A' | OtherVersion['letter'];
  readonly flight: PaperFlight;
}

/** How far figures reach about their mass centres, m. */
export interface FigureReach {
  readonly left: number;
  readonly right: number;
  readonly up: number;
  readonly down: number;
}

export interface PlacedPose {
  readonly letter: PictureVersion['letter'];
  readonly t: number;
  /** of the mass centre */
  readonly x: number;
  readonly y: number;
}

interface Label {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly anchor: 'start' | 'middle';
}

interface PlacedPicture {
  readonly pxPerM: number;
  readonly width: number;
  readonly height: number;
  readonly floorY: number;
  readonly poses: readonly PlacedPose[];
  readonly labels: readonly Label[];
  /** of pictures over one floor */
  readonly place?: {
    /** time and W to the picture */
    readonly point: (s: number, x: number, y: number) => readonly [number, number];
    readonly plane: (across: number, up: number) => readonly [number, number];
  };
  /** where time is the axis */
  readonly timeX?: (s: number) => number;
}

interface PlaceInput {
  readonly versions: readonly [PictureVersion, ...PictureVersion[]];
  readonly layout: PictureLayout;
  readonly times: readonly number[];
  readonly width: number;
  readonly spread: readonly FigureReach[];
}

/** Units per m at most: a grown athlete is some 5 cm tall. */
const MOST = 185;
/** The height of a picture against its width, at most. */
const TALLEST = 0.95;
const LABEL = 17;
const UNDER = 34;
const ROW = 21;
const SPARE = 8;
/** Over time figures may come as near as this share of what they would need side by side. */
const NEAR = 0.62;

export function* figureSpread({ staged, pose, duration }: PaperFlight, times: readonly number[]): Pieces<FigureReach> {
  const spread = { left: 0.1, right: 0.1, up: 0.1, down: 0.1 };
  const view = sideView(staged.v_WScm_W0[0]);
  for (const at of times.filter((s) => s <= duration + 1e-9)) {
    const now = pose(at);
    const place = { view, scale: 100, anchor: now.p_WScm_W, x: 0, y: 0, rough: true };
    const items = figureItems(staged.body, now.frames, place);
    for (const contour of items.flatMap((item): readonly Points[] => (item.kind === 'fill' ? item.contours : [])))
      for (let i = 0; i < contour.length; i += 2) {
        spread.left = Math.max(spread.left, -contour[i] / 100);
        spread.right = Math.max(spread.right, contour[i] / 100);
        spread.up = Math.max(spread.up, -contour[i + 1] / 100);
        spread.down = Math.max(spread.down, contour[i + 1] / 100);
      }
    yield;
  }
  return spread;
}

export function placePoses(input: PlaceInput): PlacedPicture {
  return input.layout === 'row' ? placeRow(input) : input.layout === 'path' ? placePath(input) : placeTime(input);
}

const joinSpread = (list: readonly FigureReach[]): FigureReach => ({
  left: Math.max(...list.map((one) => one.left)),
  right: Math.max(...list.map((one) => one.right)),
  up: Math.max(...list.map((one) => one.up)),
  down: Math.max(...list.map((one) => one.down)),
});

const inFlight = ({ flight }: PictureVersion, times: readonly number[]): number[] =>
  times.filter((s) => s <= flight.duration + 1e-9);

/** A row for each version, the mass centres of a row on one line. */
function placeRow({ versions, times, width, spread }: PlaceInput): PlacedPicture {
  const all = joinSpread(spread);
  const letters = versions.length > 1 ? 30 : 0;
  const slot = (width - letters) / times.length;
  const pxPerM = Math.min(MOST, (slot - SPARE) / (all.left + all.right));
  const row = (all.up + all.down) * pxPerM + 2 * SPARE;
  const poses: PlacedPose[] = [];
  const labels: Label[] = [];
  const xOf = (i: number): number => letters + slot * (i + 0.5) + ((all.left - all.right) / 2) * pxPerM;
  versions.forEach((version, k) => {
    const y = row * k + SPARE + all.up * pxPerM;
    for (const s of inFlight(version, times)) poses.push({ letter: version.letter, t: s, x: xOf(times.indexOf(s)), y });
    if (letters) labels.push({ x: 0, y: y + 6, text: version.letter, anchor: 'start' });
  });
  const floorY = row * versions.length;
  times.forEach((s, i) => {
    labels.push({
      x: letters + slot * (i + 0.5),
      y: floorY + LABEL + 4,
      text: t.seconds(s.toFixed(2)),
      anchor: 'middle',
    });
  });
  return { pxPerM, width, height: floorY + UNDER, floorY, poses, labels };
}

/** Where they are in truth. */
function placePath({ versions, times, width, spread }: PlaceInput): PlacedPicture {
  const all = joinSpread(spread);
  const { staged } = versions[0].flight;
  const way = sideView(staged.v_WScm_W0[0]).right[0];
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (const { flight } of versions)
    for (let i = 1; i < flight.staged.path.length; i += 4) {
      least = Math.min(least, way * flight.staged.path[i]);
      most = Math.max(most, way * flight.staged.path[i]);
    }
  const { top, low } = heightsOf(versions, all);
  const across = most - least + all.left + all.right;
  const pxPerM = Math.min(MOST, (width - 2 * SPARE) / across, (TALLEST * width) / (top - low));
  const x0 = (width - (most + least) * pxPerM) / 2;
  const floorY = top * pxPerM + SPARE;
  const bottom = floorY - Math.min(0, low) * pxPerM;
  const point = (_s: number, x: number, y: number) => [x0 + way * x * pxPerM, floorY - y * pxPerM] as const;
  const poses = versions.flatMap((version) =>
    inFlight(version, times).map((s) => {
      const [x, y] = version.flight.pose(s).p_WScm_W;
      const [px, py] = point(s, x, y);
      return { letter: version.letter, t: s, x: px, y: py };
    }),
  );
  const under = timeLabels(poses.filter(isFirst), bottom);
  return {
    pxPerM,
    width,
    height: bottom + UNDER + under.height,
    floorY,
    poses,
    labels: under.labels,
    place: { point, plane: (u, v) => [x0 + u * pxPerM, floorY - v * pxPerM] },
  };
}

/** Over time, at their true heights. */
function placeTime({ versions, times, width, spread }: PlaceInput): PlacedPicture {
  const all = joinSpread(spread);
  const { top, low } = heightsOf(versions, all);
  const T = Math.max(...versions.map(({ flight }) => flight.duration));
  const sorted = [...times].sort((a, b) => a - b);
  const nearest = Math.min(...sorted.slice(1).map((s, i) => s - sorted[i]), T);
  const across = all.left + all.right;
  // the two ends take their room, what is between the times the rest
  let pxPerM = Math.min(MOST, (TALLEST * width) / (top - low));
  const roomAt = (scale: number): number => ((width - across * scale - 2 * SPARE) * nearest) / T;
  while (pxPerM > 30 && roomAt(pxPerM) < NEAR * across * pxPerM) pxPerM *= 0.97;
  const [from, to] = [SPARE + all.left * pxPerM, width - SPARE - all.right * pxPerM];
  const timeX = (s: number): number => from + (s / T) * (to - from);
  const floorY = top * pxPerM + SPARE;
  const bottom = floorY - Math.min(0, low) * pxPerM;
  const poses = versions.flatMap((version) =>
    inFlight(version, times).map((s) => ({
      letter: version.letter,
      t: s,
      x: timeX(s),
      y: floorY - version.flight.pose(s).p_WScm_W[1] * pxPerM,
    })),
  );
  const under = timeLabels(poses.filter(isFirst), bottom);
  return {
    pxPerM,
    width,
    height: bottom + UNDER + under.height,
    floorY,
    poses,
    labels: under.labels,
    place: {
      point: (s, _x, y) => [timeX(s), floorY - y * pxPerM],
      plane: (u, v) => [u, floorY - v * pxPerM],
    },
    timeX,
  };
}

const isFirst = ({ letter }: PlacedPose): boolean => letter === 'A';

/** Highest and lowest that any figure of the picture reaches, m. */
function heightsOf(versions: readonly PictureVersion[], { up, down }: FigureReach): { top: number; low: number } {
  const top = Math.max(...versions.map(({ flight }) => pathHeights(flight.staged).top)) + up;
  const ends = versions.flatMap(({ flight: { staged } }) => [staged.path[2], staged.path[staged.path.length - 2]]);
  return { top, low: Math.min(0, Math.min(...ends) - down) };
}

/** Each pose has its time under it: one that would touch another is in the next row. */
function timeLabels(poses: readonly PlacedPose[], floorY: number): { labels: Label[]; height: number } {
  const labels: Label[] = [];
  const rows: number[] = [];
  for (const { t: s, x } of [...poses].sort((a, b) => a.x - b.x || a.t - b.t)) {
    const text = t.seconds(s.toFixed(2));
    const half = textWidth(text, LABEL, 650) / 2 + 9;
    const free = rows.findIndex((until) => x - half >= until);
    const row = free < 0 ? rows.length : free;
    rows[row] = x + half;
    labels.push({ x, y: floorY + LABEL + 6 + row * ROW, text, anchor: 'middle' });
  }
  return { labels, height: Math.max(0, rows.length - 1) * ROW };
}
