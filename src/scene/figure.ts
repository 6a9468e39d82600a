/**
 * The figure: a body in one pose, as a plain list of fills. Flat volumes, sorted by depth; each part first draws a gap in
 * the colour behind it, so that nearer limbs cut cleanly across farther ones. Left limbs are filled and taped, right
 * limbs pale with an edge. A straight limb is one shape, a folded one shows one inner contour.
 */
import type { Body } from '../../sim/index.ts';
import { getLook } from './athlete-look.ts';
import { hullOf, inflate, type Projected, type Projection, projectBlobs, STRIDE } from './blobs.ts';
import { type FrontRule, orderParts } from './depth-order.ts';
import { faceContour } from './head-look.ts';
import type { Band, Look, LookPart } from './look.ts';
import type { PoseFrames } from './pose-frames.ts';
import type { DrawItem, FillItem, Points, Token } from './scene.ts';
import type { View } from './view.ts';

export interface FigurePlace extends Projection {
  /** colour of the gaps: what lies behind the figure; default air */
  readonly gap?: Token;
  /** hit id of every part; none: the figure cannot be hit */
  readonly hit?: string;
  /** fewer points and no gaps between limbs */
  readonly rough?: boolean;
}

/** Everything about a pose on the screen that the styles of drawing share. */
interface PosedLook {
  readonly look: Look;
  readonly frames: PoseFrames;
  readonly place: FigurePlace;
  readonly projected: Projected;
}

let pool: Float64Array = new Float64Array(0);

export function poseLook(body: Body, frames: PoseFrames, place: FigurePlace): PosedLook {
  const look = getLook(body);
  const size = STRIDE * look.blobs.length;
  if (pool.length < size) pool = new Float64Array(size);
  projectBlobs(look.blobs, frames, place, pool);
  return { look, frames, place, projected: pool };
}

/** A limb, or a piece of it, drawn in one go. */
interface Shape {
  readonly chain: string;
  readonly parts: number[];
}

/** Items farthest first. Valid until the next call only as far as it is copied: contours are fresh arrays. */
export function figureItems(body: Body, frames: PoseFrames, place: FigurePlace): DrawItem[] {
  const posed = poseLook(body, frames, place);
  const { look, projected } = posed;
  const { order, overlap } = orderParts(look.parts, projected, frontRule(look, frames, place.view));
  const items: DrawItem[] = [];
  for (const shape of mergeShapes(look.parts, order, overlap)) {
    const first = look.parts[shape.parts[0]];
    if (first.tone === 'head') drawHead(posed, first, items);
    else if (first.tone === 'trunk') drawTrunk(posed, first, items);
    else drawLimb(posed, shape, items);
  }
  return items;
}

/** Parts of one limb join where nothing that overlaps lies between them. */
function mergeShapes(parts: readonly LookPart[], order: readonly number[], overlap: Uint8Array): Shape[] {
  const n = parts.length;
  const shapes: Shape[] = [];
  const meets = (shape: Shape, part: number): boolean => shape.parts.some((other) => overlap[other * n + part] === 1);
  for (const i of order) {
    const chain = parts[i].chain;
    let k = -1;
    for (let s = shapes.length - 1; s >= 0 && k < 0; s--) if (shapes[s].chain === chain) k = s;
    if (k >= 0) {
      const between = shapes.slice(k + 1);
      if (!between.some((shape) => meets(shape, i))) {
        shapes[k].parts.push(i);
        continue;
      }
      if (!between.some((shape) => shapes[k].parts.some((other) => meets(shape, other)))) {
        const [shape] = shapes.splice(k, 1);
        shape.parts.push(i);
        shapes.push(shape);
        continue;
      }
    }
    shapes.push({ chain, parts: [i] });
  }
  return shapes;
}

/** Share of the view direction along a segment's own axis (0 X, 1 Y, 2 Z). */
function facing(frames: PoseFrames, segment: number, axis: number, view: View): number {
  const m = 9 * segment + axis;
  return frames.R_WS[m] * view.toward[0] + frames.R_WS[m + 3] * view.toward[1] + frames.R_WS[m + 6] * view.toward[2];
}

/** Cosine of the angle between the long axes of two segments. */
function bend(frames: PoseFrames, a: number, b: number): number {
  const R = frames.R_WS;
  const i = 9 * a + 1;
  const j = 9 * b + 1;
  return R[i] * R[j] + R[i + 3] * R[j + 3] + R[i + 6] * R[j + 6];
}

/** Seen from front or back with open hips, the leotard covers the tops of the thighs. */
function frontRule(look: Look, frames: PoseFrames, view: View): FrontRule {
  if (!look.human) return () => 0;
  const pelvis = look.index.get('pelvis') ?? 0;
  const flat = Math.abs(facing(frames, pelvis, 2, view)) < 0.62 && Math.abs(facing(frames, pelvis, 1, view)) < 0.8;
  const covered = (part: LookPart): boolean =>
    flat && part.chain.startsWith('leg') && bend(frames, pelvis, part.segment) > 0.77;
  return (a, b) => {
    if (a.chain === 'trunk' && covered(b)) return 1;
    if (b.chain === 'trunk' && covered(a)) return -1;
    return 0;
  };
}

function drawTrunk(posed: PosedLook, part: LookPart, items: DrawItem[]): void {
  const { look, place, projected, frames } = posed;
  const { base, halo } = contoursOf(posed, part);
  if (halo.length > 0) items.push(fill(halo, place.gap ?? 'air'));
  items.push(fill(base, 'trunk', place, part));
  if (look.chest < 0) return;
  const front = facing(frames, look.chest, 0, place.view);
  if (front < -0.12) {
    const width = Math.max(0.9, 0.018 * place.scale);
    items.push({ kind: 'line', points: centres(projected, look.spine), stroke: 'hair', width, cap: 'round' });
  } else if (front > 0.12) items.push(fill([centres(projected, look.neckline)], 'skin'));
}

function drawHead(posed: PosedLook, part: LookPart, items: DrawItem[]): void {
  const { look, place, projected, frames } = posed;
  const head = look.head;
  if (!head) return;
  const hull = (indices: readonly number[]): Points => hullOf(projected, indices, place.rough);
  const neck = hull(head.neck);
  const chin = hull(head.chin);
  const jaw = hull(head.jaw);
  const knot = hull(head.knot);
  const front = facing(frames, head.segment, 0, place.view);
  const gap = gapWidth(place.scale);
  items.push(
    fill(
      [neck, chin, jaw, knot].map((contour) => inflate(contour, gap)),
      place.gap ?? 'air',
    ),
  );
  if (front >= 0) items.push(fill([knot], 'hair', place, part));
  const pale = front > -0.35 ? [neck, chin, jaw] : front > -0.5 ? [neck, jaw] : [neck];
  items.push(fill(pale, 'skin', place, part));
  items.push(fill([hull([head.skull])], 'hair', place, part));
  const face = faceContour(head, projected, frames, place.view, place.scale, place.scale < 110 ? 10 : 20);
  if (face) items.push(fill(front > -0.2 ? [face, jaw] : [face], 'skin'));
  if (front < 0) items.push(fill([knot], 'hair', place, part));
}

function drawLimb(posed: PosedLook, shape: Shape, items: DrawItem[]): void {
  const { look, place, frames } = posed;
  const pieces = shape.parts.map((i) => contoursOf(posed, look.parts[i]));
  // a limb goes by the name of its upper half, whichever half is drawn first
  const first = look.parts[Math.min(...shape.parts)];
  const all = pieces.flatMap((piece) => piece.base);
  if (!place.rough) {
    items.push(
      fill(
        pieces.flatMap((piece) => piece.halo),
        place.gap ?? 'air',
      ),
    );
  }
  if (first.tone === 'right') {
    items.push(
      fill(
        all.map((contour) => inflate(contour, EDGE)),
        'limb-line',
      ),
    );
  }
  items.push(fill(all, first.tone === 'right' ? 'limb-r' : 'limb-l', place, first));
  if (shape.parts.length > 1) {
    const under = look.parts[shape.parts[0]];
    const over = look.parts[shape.parts[shape.parts.length - 1]];
    if (under.segment !== over.segment && bend(frames, under.segment, over.segment) < 0.2) {
      drawFold(posed, under, over, pieces[pieces.length - 1].base, items);
    }
  }
  for (const i of shape.parts) drawBands(posed, look.parts[i], items);
}

/** The inner contour: where the nearer half's outline runs across the farther half, away from the joint. */
function drawFold(posed: PosedLook, under: LookPart, over: LookPart, top: readonly Points[], items: DrawItem[]): void {
  const { projected, place } = posed;
  const stroke: Token = over.tone === 'right' ? 'limb-line' : (place.gap ?? 'air');
  const inner = over.tone === 'right' ? 'limb-r' : 'limb-l';
  // the limb's joint is where the lower half begins
  const lower = over.name.startsWith('forearm') || over.name.startsWith('shank') ? over : under;
  const joint = STRIDE * lower.probes[0];
  const jx = projected[joint];
  const jy = projected[joint + 1];
  const clear = 0.9 * Math.sqrt(projected[joint + 3]);
  const within = (x: number, y: number): boolean =>
    Math.hypot(x - jx, y - jy) > clear &&
    under.probes.some((i) => {
      const k = STRIDE * i;
      return Math.hypot(x - projected[k], y - projected[k + 1]) < 1.1 * Math.sqrt(projected[k + 3]);
    });
  const lines: DrawItem[] = [];
  for (const contour of top) {
    const n = contour.length / 2;
    let run: number[] = [];
    const flush = (): void => {
      if (run.length >= 4) {
        lines.push({ kind: 'line', points: Float32Array.from(run), stroke, width: 2 * EDGE, cap: 'round' });
      }
      run = [];
    };
    for (let i = 0; i <= n; i++) {
      const x = contour[2 * (i % n)];
      const y = contour[2 * (i % n) + 1];
      if (within(x, y)) run.push(x, y);
      else flush();
    }
    flush();
  }
  if (lines.length === 0) return;
  // the nearer half is filled again over the inner side of its line
  items.push(...lines, fill(top, inner));
}

function drawBands(posed: PosedLook, part: LookPart, items: DrawItem[]): void {
  const points = posed.look.bands.filter((band) => band.part === part.name).flatMap((band) => bandEnds(posed, band));
  if (points.length === 0) return;
  const width = Math.max(0.9, 0.021 * posed.place.scale);
  items.push({ kind: 'segments', points: Float32Array.from(points), stroke: 'tape', width });
}

/** Ends of a band across the limb; none where the limb points to the eye. */
export function bandEnds({ look, projected, place }: PosedLook, band: Band): number[] {
  const a = STRIDE * band.from;
  const b = STRIDE * band.to;
  const dx = projected[b] - projected[a];
  const dy = projected[b + 1] - projected[a + 1];
  const seen = Math.hypot(dx, dy);
  const p = look.blobs[band.from].p;
  const q = look.blobs[band.to].p;
  const full = Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2]) * place.scale;
  if (seen < 0.35 * full) return [];
  const x = projected[a] + dx * band.share;
  const y = projected[a + 1] + dy * band.share;
  const half = (band.half * place.scale + 0.2) / seen;
  return [x + dy * half, y - dx * half, x - dy * half, y + dx * half];
}

/** Width of the edge round open parts, px. */
const EDGE = 1;

/** Width of the gap round a part, px. */
export const gapWidth = (scale: number): number => (scale < 50 ? 0.8 : scale < 110 ? 1.2 : 1.5);

function contoursOf(posed: PosedLook, part: LookPart): { base: Points[]; halo: Points[] } {
  const base = part.hulls.map((indices) => hullOf(posed.projected, indices, posed.place.rough));
  if (posed.place.rough) return { base, halo: [] };
  const by = gapWidth(posed.place.scale) + (part.tone === 'right' ? EDGE : 0);
  return { base, halo: base.map((contour) => inflate(contour, by)) };
}

function centres(projected: Projected, indices: readonly number[]): Points {
  const points = new Float32Array(2 * indices.length);
  indices.forEach((i, k) => {
    points[2 * k] = projected[STRIDE * i];
    points[2 * k + 1] = projected[STRIDE * i + 1];
  });
  return points;
}

function fill(contours: readonly Points[], token: Token, place?: FigurePlace, part?: LookPart): FillItem {
  if (!part) return { kind: 'fill', contours, fill: token };
  const data = { part: part.name, chain: part.chain, tone: part.tone };
  return { kind: 'fill', contours, fill: token, data, ...(place?.hit ? { hit: place.hit } : {}) };
}
