/** A shape as a small picture: fitted to its tile, also as SVG text so that the page needs no drawing library for it. */

import type { Body } from '../../sim/index.ts';
import { figureItems } from './figure.ts';
import { svgPicture } from './figure-svg.ts';
import type { PoseFrames } from './pose-frames.ts';
import type { DrawItem, PictureSize, Token } from './scene.ts';
import { frontView, type View } from './view.ts';

interface TileSize extends PictureSize {
  readonly margin?: number;
  /** px per m at most, so that tiles of one row keep one scale */
  readonly most?: number;
  readonly view?: View;
  /** colour of the tile behind the figure */
  readonly gap?: Token;
}

export function shapeTile(body: Body, frames: PoseFrames, size: TileSize): DrawItem[] {
  const view = size.view ?? frontView;
  const margin = size.margin ?? 3;
  const rough = figureItems(body, frames, { view, scale: 40, anchor: [0, 0, 0], x: 0, y: 0 });
  const [x0, y0, x1, y1] = boundsOf(rough);
  const fit = Math.min(
    (size.width - 2 * margin) / Math.max(1, x1 - x0),
    (size.height - 2 * margin) / Math.max(1, y1 - y0),
  );
  const scale = Math.min(40 * fit, size.most ?? Number.POSITIVE_INFINITY);
  return figureItems(body, frames, {
    view,
    scale,
    anchor: [0, 0, 0],
    x: size.width / 2 - ((x0 + x1) / 2) * (scale / 40),
    y: size.height / 2 - ((y0 + y1) / 2) * (scale / 40),
    gap: size.gap ?? 'raise',
  });
}

export function shapeTileSvg(body: Body, frames: PoseFrames, size: TileSize, label?: string): string {
  return svgPicture(shapeTile(body, frames, size), size.width, size.height, label);
}

/** x0, y0, x1, y1 of everything filled; zeros when there is nothing. */
export function boundsOf(items: readonly DrawItem[]): [number, number, number, number] {
  let x0 = Number.POSITIVE_INFINITY;
  let y0 = x0;
  let x1 = -x0;
  let y1 = -x0;
  const visit = (list: readonly DrawItem[], dx: number, dy: number): void => {
    for (const item of list) {
      if (item.kind === 'group') visit(item.items, dx + (item.x ?? 0), dy + (item.y ?? 0));
      if (item.kind !== 'fill') continue;
      for (const contour of item.contours) {
        for (let i = 0; i < contour.length; i += 2) {
          x0 = Math.min(x0, contour[i] + dx);
          x1 = Math.max(x1, contour[i] + dx);
          y0 = Math.min(y0, contour[i + 1] + dy);
          y1 = Math.max(y1, contour[i + 1] + dy);
        }
      }
    }
  };
  visit(items, 0, 0);
  return x1 >= x0 ? [x0, y0, x1, y1] : [0, 0, 0, 0];
}
