/**
 * The figure: a body in one pose, as a plain list of fills. Flat volumes, sorted by depth; each part first draws a gap in
 * the colour behind it, so that nearer limbs cut cleanly across farther ones. Left limbs are filled and taped, right
 * limbs pale with an edge. A straight limb is one shape, a folded one shows one inner contour.
 */
import type { Body } from '../../sim/index.ts';
import { inflate } from './blobs.ts';
import { type FrontRule, orderParts } from './depth-order.ts';
import { drawHead } from './figure-head.ts';
import { drawLimb, type Shape } from './figure-limb.ts';
import type { Look, LookPart } from './look.ts';
import type { PoseFrames } from './pose-frames.ts';
import { bend, centres, contoursOf, type FigurePlace, facing, fill, type PosedLook, poseLook } from './posed-look.ts';
import type { DrawItem, Points } from './scene.ts';
import type { View } from './view.ts';

/** Items farthest first. Valid until the next call only as far as it is copied: contours are fresh arrays. */
export function figureItems(body: Body, frames: PoseFrames, place: FigurePlace): DrawItem[] {
  const posed = poseLook(body, frames, place);
  const { look, projected } = posed;
  const { order, overlap } = orderParts(look.parts, projected, frontRule(look, frames, place.view));
  const items: DrawItem[] = [];
  const shapes = mergeShapes(look.parts, order, overlap);
  const lifted = place.lift?.chains ?? [];
  for (const shape of shapes) if (!lifted.includes(shape.chain)) drawShape(posed, shape, items);
  for (const chain of lifted) {
    const own = shapes.filter((shape) => shape.chain === chain);
    drawLift(
      posed,
      own.flatMap((shape) => shape.parts),
      items,
    );
    for (const shape of own) drawShape(posed, shape, items);
  }
  return items;
}

function drawShape(posed: PosedLook, shape: Shape, items: DrawItem[]): void {
  const first = posed.look.parts[shape.parts[0]];
  if (first.tone === 'head') drawHead(posed, first, items);
  else if (first.tone === 'trunk') drawTrunk(posed, first, items);
  else drawLimb(posed, shape, items);
}

/** px beyond the gap of a limb: the line round it, and the air outside of that. */
const LIFT = { mouse: [1.5, 4.2], touch: [1.9, 4.9] } as const;

function drawLift(posed: PosedLook, parts: readonly number[], items: DrawItem[]): void {
  const { place } = posed;
  const [line, air] = LIFT[place.lift?.touch ? 'touch' : 'mouse'];
  const halo = parts.flatMap((i) => contoursOf(posed, posed.look.parts[i]).halo);
  const grown = (by: number): Points[] => halo.map((contour) => inflate(contour, by));
  items.push(fill(grown(air), place.gap ?? 'air'), fill(grown(line), 'ink'), fill(halo, place.gap ?? 'air'));
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
