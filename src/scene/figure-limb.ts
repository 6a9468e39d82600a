/** A limb as it is drawn: the left one dark with bands, the right one pale with an edge inside its contour, both equally broad. */
import { inflate, STRIDE } from './blobs.ts';
import type { Band, LookPart } from './look.ts';
import { bend, boldness, contoursOf, edgeWidth, fill, type PosedLook } from './posed-look.ts';
import type { DrawItem, Points, Token } from './scene.ts';

/** A limb, or a piece of it, drawn in one go. */
export interface Shape {
  readonly chain: string;
  readonly parts: number[];
}

/** Under these px per metre two bands would run into one. */
const ONE_BAND = 45;

export function drawLimb(posed: PosedLook, shape: Shape, items: DrawItem[]): void {
  const { look, place, frames } = posed;
  const pieces = shape.parts.map((i) => contoursOf(posed, look.parts[i]));
  // a limb goes by the name of its upper half, whichever half is drawn first
  const first = look.parts[Math.min(...shape.parts)];
  const all = pieces.flatMap((piece) => piece.base);
  const edge = edgeWidth(place.scale);
  if (!place.rough) {
    items.push(
      fill(
        pieces.flatMap((piece) => piece.halo),
        place.gap ?? 'air',
      ),
    );
  }
  if (first.tone === 'right') {
    items.push(fill(all, 'limb-line'));
    const inner = all.map((contour) => inflate(contour, -edge));
    items.push(fill(inner, 'limb-r', place, first));
  } else items.push(fill(all, 'limb-l', place, first));
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
  const edge = edgeWidth(place.scale);
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
        lines.push({ kind: 'line', points: Float32Array.from(run), stroke, width: 2 * edge, cap: 'round' });
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
  items.push(...lines, fill(over.tone === 'right' ? top.map((contour) => inflate(contour, -edge)) : top, inner));
}

function drawBands(posed: PosedLook, part: LookPart, items: DrawItem[]): void {
  const { scale } = posed.place;
  const own = posed.look.bands.filter((band) => band.part === part.name);
  const points = (scale < ONE_BAND ? own.slice(0, 1) : own).flatMap((band) => bandEnds(posed, band));
  if (points.length === 0) return;
  const width = scale < ONE_BAND ? 1.4 : Math.max(0.9, 0.021 * scale);
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
  const half = (band.half * place.scale + 0.2 + boldness(place.scale)) / seen;
  return [x + dy * half, y - dx * half, x - dy * half, y + dx * half];
}
