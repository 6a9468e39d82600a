/** Fills, lines, circles and letters of a scene, put into a Graphics or made as a Text. */
import { type Graphics, Text } from 'pixi.js';
import type { DrawItem, GroupItem, LineItem, Points, TextItem } from '../scene/scene.ts';
import { dashed } from './dash.ts';
import type { Palette } from './palette.ts';

type Primitive = Exclude<DrawItem, GroupItem | TextItem>;

export function drawPrimitive(pen: Graphics, item: Primitive, palette: Palette, ghost: boolean): void {
  switch (item.kind) {
    case 'fill': {
      const solid = item.contours.filter(hasArea);
      if (solid.length === 0) return;
      for (const contour of solid) pen.poly(Array.from(contour), true);
      pen.fill({ color: palette.colour(item.fill, ghost), alpha: item.opacity ?? 1 });
      return;
    }
    case 'line': {
      if (!hasLength(item.points)) return;
      traceLine(pen, item);
      pen.stroke({
        color: palette.colour(item.stroke, ghost),
        width: item.width,
        cap: item.cap ?? 'butt',
        join: 'round',
      });
      return;
    }
    case 'segments': {
      const p = item.points;
      if (!hasLength(p)) return;
      for (let i = 0; i < p.length; i += 4) pen.moveTo(p[i], p[i + 1]).lineTo(p[i + 2], p[i + 3]);
      pen.stroke({ color: palette.colour(item.stroke, ghost), width: item.width, cap: 'butt' });
      return;
    }
    case 'circle': {
      pen.circle(item.x, item.y, item.r);
      if (item.fill) pen.fill(palette.colour(item.fill, ghost));
      if (item.stroke) {
        if (item.fill) pen.circle(item.x, item.y, item.r);
        pen.stroke({ color: palette.colour(item.stroke, ghost), width: item.width ?? 1 });
      }
      return;
    }
  }
}

/**
 * A shape without area gives no triangles, and a batch without triangles makes the library's WebGL batcher (8.22) draw its
 * whole index buffer from there on: such shapes never reach it.
 */
function hasArea(contour: Points): boolean {
  let area = 0;
  const n = contour.length;
  for (let i = 0; i < n; i += 2) {
    const j = i + 2 === n ? 0 : i + 2;
    area += contour[i] * contour[j + 1] - contour[j] * contour[i + 1];
  }
  return Math.abs(area) > 0.02;
}

function hasLength(points: Points): boolean {
  for (let i = 2; i < points.length; i += 2) {
    if (Math.abs(points[i] - points[i - 2]) + Math.abs(points[i + 1] - points[i - 1]) > 0.01) return true;
  }
  return false;
}

function traceLine(pen: Graphics, item: LineItem): void {
  const p = item.points;
  if (item.dash) {
    for (const piece of dashed(p, item.dash, item.closed === true)) {
      pen.moveTo(piece[0], piece[1]);
      for (let i = 2; i < piece.length; i += 2) pen.lineTo(piece[i], piece[i + 1]);
    }
    return;
  }
  if (item.closed) {
    pen.poly(Array.from(p), true);
    return;
  }
  pen.moveTo(p[0], p[1]);
  for (let i = 2; i < p.length; i += 2) pen.lineTo(p[i], p[i + 1]);
}

export function makeText(item: TextItem, palette: Palette, resolution: number, ghost: boolean): Text {
  const text = new Text({
    text: item.text,
    resolution,
    style: {
      fontFamily: families(palette.font),
      fontSize: item.size,
      fontWeight: String(Math.round((item.weight ?? 560) / 100) * 100) as '500',
      fill: palette.colour(item.fill, ghost),
      ...(item.halo ? { stroke: { color: palette.colour(item.halo, false), width: 3, join: 'round' as const } } : {}),
    },
  });
  text.anchor.set(item.anchor === 'start' ? 0 : item.anchor === 'middle' ? 0.5 : 1, 0);
  placeText(text, item);
  return text;
}

/** y names the baseline; of the letters' box about 0.95 of the size lies above it in our font. */
export function placeText(text: Text, item: TextItem): void {
  text.position.set(item.x, item.y - 0.95 * item.size - (item.halo ? 1.5 : 0));
}

/** A style sheet's list of families as the drawing library wants it. */
const families = (font: string): string[] => font.split(',').map((name) => name.trim().replace(/^["']|["']$/g, ''));
