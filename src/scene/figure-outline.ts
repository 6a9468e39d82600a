/**
 * Version B's figure: one dashed contour round the whole body with a 45 degree hatch, no inner detail except the tape.
 * The contour is the boundary of the union of all pieces: what of each piece's outline no other piece covers.
 */
import type { Body } from '../../sim/index.ts';
import { hullOf, inflate } from './blobs.ts';
import { bandEnds } from './figure-limb.ts';
import type { PoseFrames } from './pose-frames.ts';
import { type FigurePlace, gapWidth, poseLook } from './posed-look.ts';
import type { Dash, DrawItem, Points } from './scene.ts';

export interface OutlineStyle {
  /** direction of the hatch, deg from the horizontal; further versions take other angles */
  readonly hatchDeg: number;
  readonly dash: Dash;
}

const VERSION_B: OutlineStyle = { hatchDeg: 45, dash: [4.5, 3] };
const SPACING = 5;

export function outlineItems(
  body: Body,
  frames: PoseFrames,
  place: FigurePlace,
  style: OutlineStyle = VERSION_B,
): DrawItem[] {
  const posed = poseLook(body, frames, place);
  const pieces = posed.look.parts.flatMap((part) => part.hulls.map((indices) => hullOf(posed.projected, indices)));
  const gap = place.gap ?? 'air';
  const halo = pieces.map((piece) => inflate(piece, gapWidth(place.scale) + 0.6));
  const items: DrawItem[] = [
    { kind: 'fill', contours: halo, fill: gap },
    {
      kind: 'fill',
      contours: pieces,
      fill: gap,
      data: { part: 'outline', tone: 'outline' },
      ...(place.hit ? { hit: place.hit } : {}),
    },
  ];
  const hatch = hatchLines(pieces, style.hatchDeg);
  if (hatch.length > 0) items.push({ kind: 'segments', points: hatch, stroke: 'ink-3', width: 0.9 });
  for (const points of boundary(pieces)) {
    items.push({ kind: 'line', points, stroke: 'ink', width: 1.4, dash: style.dash });
  }
  const bands = posed.look.bands.flatMap((band) => bandEnds(posed, band));
  if (bands.length > 0) items.push({ kind: 'segments', points: Float32Array.from(bands), stroke: 'ink', width: 1 });
  return items;
}

/** The contour alone, over another figure: each line has the ground's colour beside it, so that it is seen on a dark limb too. */
export function contourItems(body: Body, frames: PoseFrames, place: FigurePlace, dash: Dash): DrawItem[] {
  const posed = poseLook(body, frames, place);
  const pieces = posed.look.parts.flatMap((part) => part.hulls.map((indices) => hullOf(posed.projected, indices)));
  return boundary(pieces).flatMap((points): DrawItem[] => [
    { kind: 'line', points, stroke: place.gap ?? 'air', width: 3.4, dash },
    { kind: 'line', points, stroke: 'ink', width: 1.5, dash },
  ]);
}

/** Lines at an angle, `SPACING` px apart, cut to the union of convex pieces. */
function hatchLines(pieces: readonly Points[], deg: number): Points {
  const a = (deg * Math.PI) / 180;
  const dx = Math.cos(a);
  const dy = -Math.sin(a);
  const spans = new Map<number, [number, number][]>();
  for (const piece of pieces) {
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    const n = piece.length / 2;
    for (let i = 0; i < n; i++) {
      const across = piece[2 * i] * -dy + piece[2 * i + 1] * dx;
      least = Math.min(least, across);
      most = Math.max(most, across);
    }
    for (let line = Math.ceil(least / SPACING); line <= most / SPACING; line++) {
      const span = cut(piece, dx, dy, line * SPACING);
      if (!span) continue;
      const list = spans.get(line);
      if (list) list.push(span);
      else spans.set(line, [span]);
    }
  }
  const out: number[] = [];
  for (const [line, list] of spans) {
    list.sort((p, q) => p[0] - q[0]);
    let [from, to] = list[0];
    const put = (): void => {
      const x = -dy * line * SPACING;
      const y = dx * line * SPACING;
      out.push(x + dx * from, y + dy * from, x + dx * to, y + dy * to);
    };
    for (const span of list) {
      if (span[0] > to) {
        put();
        [from, to] = span;
      } else to = Math.max(to, span[1]);
    }
    put();
  }
  return Float32Array.from(out);
}

/** Where the line across = const passes through a convex polygon, along (dx, dy). */
function cut(piece: Points, dx: number, dy: number, across: number): [number, number] | undefined {
  const n = piece.length / 2;
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    const p = piece[2 * i] * -dy + piece[2 * i + 1] * dx - across;
    const q = piece[2 * j] * -dy + piece[2 * j + 1] * dx - across;
    if (p > 0 === q > 0) continue;
    const s = p / (p - q);
    const x = piece[2 * i] + s * (piece[2 * j] - piece[2 * i]);
    const y = piece[2 * i + 1] + s * (piece[2 * j + 1] - piece[2 * i + 1]);
    const along = x * dx + y * dy;
    from = Math.min(from, along);
    to = Math.max(to, along);
  }
  return to > from ? [from, to] : undefined;
}

/** Two pieces often share a round end exactly: the later one owns it. */
const SHARED = 0.05;

/** Runs of outline points that lie in no other piece, joined where one ends as the next begins. */
function boundary(pieces: readonly Points[]): Points[] {
  const boxes = pieces.map(boxOf);
  const runs: number[][] = [];
  pieces.forEach((piece, k) => {
    const near: { readonly other: Points; readonly margin: number }[] = [];
    pieces.forEach((other, j) => {
      if (j !== k && meet(boxes[j], boxes[k])) near.push({ other, margin: j > k ? -SHARED : SHARED });
    });
    const fine = subdivide(piece, 3);
    const n = fine.length / 2;
    const free = Array.from({ length: n }, (_, i) =>
      near.every(({ other, margin }) => !isInside(other, fine[2 * i], fine[2 * i + 1], margin)),
    );
    const start = Math.max(0, free.indexOf(false));
    let run: number[] = [];
    const flush = (): void => {
      if (run.length >= 4) runs.push(run);
      run = [];
    };
    for (let s = 0; s <= n; s++) {
      const i = (start + s) % n;
      if (free[i]) run.push(fine[2 * i], fine[2 * i + 1]);
      else flush();
    }
    flush();
  });
  return joinRuns(runs).map((run) => Float32Array.from(run));
}

/** Chains runs end to start over gaps of a few px, so that the dashes go on. */
function joinRuns(runs: readonly number[][]): number[][] {
  const left = [...runs];
  const out: number[][] = [];
  for (let run = left.shift(); run; run = left.shift()) {
    for (let next = 0; next >= 0; ) {
      const x = run[run.length - 2];
      const y = run[run.length - 1];
      next = left.findIndex((other) => Math.hypot(other[0] - x, other[1] - y) < 4.5);
      if (next >= 0) run = run.concat(left.splice(next, 1)[0]);
    }
    const before = out.findIndex((other) => {
      const n = (run as number[]).length;
      return Math.hypot(other[0] - (run as number[])[n - 2], other[1] - (run as number[])[n - 1]) < 4.5;
    });
    if (before >= 0) out[before] = run.concat(out[before]);
    else out.push(run);
  }
  return out;
}

/** Long edges get points between, so that they can be cut where another piece begins. */
function subdivide(piece: Points, step: number): number[] {
  const out: number[] = [];
  const n = piece.length / 2;
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n;
    const dx = piece[2 * j] - piece[2 * i];
    const dy = piece[2 * j + 1] - piece[2 * i + 1];
    const parts = Math.max(1, Math.ceil(Math.hypot(dx, dy) / step));
    for (let k = 0; k < parts; k++) out.push(piece[2 * i] + (dx * k) / parts, piece[2 * i + 1] + (dy * k) / parts);
  }
  return out;
}

function boxOf(piece: Points): readonly [number, number, number, number] {
  let x0 = Number.POSITIVE_INFINITY;
  let y0 = x0;
  let x1 = -x0;
  let y1 = -x0;
  for (let i = 0; i < piece.length; i += 2) {
    x0 = Math.min(x0, piece[i]);
    x1 = Math.max(x1, piece[i]);
    y0 = Math.min(y0, piece[i + 1]);
    y1 = Math.max(y1, piece[i + 1]);
  }
  return [x0, y0, x1, y1];
}

const meet = (a: readonly number[], b: readonly number[]): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3];

/** Inside a convex polygon (clockwise on the screen) by more than `margin` px. */
function isInside(piece: Points, x: number, y: number, margin = 0): boolean {
  const n = piece.length / 2;
  for (let i = 0; i < n; i++) {
    const j = i + 1 === n ? 0 : i + 1;
    const ex = piece[2 * j] - piece[2 * i];
    const ey = piece[2 * j + 1] - piece[2 * i + 1];
    const side = ex * (y - piece[2 * i + 1]) - ey * (x - piece[2 * i]);
    if (side > 0 && margin <= 0) continue;
    const length = Math.sqrt(ex * ex + ey * ey);
    if (length < 0.02) continue;
    if (side <= margin * length) return false;
  }
  return true;
}
