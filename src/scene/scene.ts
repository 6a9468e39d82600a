/**
 * The plain list of things to draw. A scene is pure data: it is tested without a GPU, drawn by render/, and written as
 * SVG by figure-svg.ts. Coordinates are CSS px, x to the right, y DOWN, relative to the layer's origin. Colours are
 * names of tokens (tokens.css), never literal values. Drawn in order: later over earlier.
 */

import type { FigurePlacement } from './view.ts';

/** The colour tokens of tokens.css that a scene may name. */
export type Token =
  | 'air'
  | 'ground'
  | 'moving'
  | 'raise'
  | 'floor'
  | 'floor-ink'
  | 'floor-ink-2'
  | 'floor-tick'
  | 'ink'
  | 'ink-2'
  | 'ink-3'
  | 'rule'
  | 'rule-2'
  | 'trunk'
  | 'limb-l'
  | 'limb-r'
  | 'limb-line'
  | 'skin'
  | 'hair'
  | 'tape'
  | 'twist'
  | 'twist-tint'
  | 'som'
  | 'som-tint'
  | 'tilt'
  | 'tilt-tint'
  | 'caution'
  | 'caution-mark'
  | 'stop'
  | 'stop-tint';

/** x0, y0, x1, y1, ... in px */
export type Points = Float32Array;

interface Common {
  /** what a person points at here, e.g. 'handle:handL', 'figure', 'floor', 'path' */
  readonly hit?: string;
  /** for tests and for the pointer; never drawn */
  readonly data?: Readonly<Record<string, string | number>>;
}

/** Closed polygons, filled as their union (each may overlap the others). */
export interface FillItem extends Common {
  readonly kind: 'fill';
  readonly contours: readonly Points[];
  readonly fill: Token;
  /** 0..1, of this fill alone; default 1 */
  readonly opacity?: number;
}

/** on, off, on, off, ... in px, over and over; an even number of them */
export type Dash = readonly number[];

export interface LineItem extends Common {
  readonly kind: 'line';
  readonly points: Points;
  readonly closed?: boolean;
  readonly stroke: Token;
  readonly width: number;
  readonly dash?: Dash;
  readonly cap?: 'butt' | 'round';
}

/** Unconnected straight pieces: x0, y0, x1, y1 each; ticks, hatching, tape bands. */
interface SegmentsItem extends Common {
  readonly kind: 'segments';
  readonly points: Points;
  readonly stroke: Token;
  readonly width: number;
}

interface CircleItem extends Common {
  readonly kind: 'circle';
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly fill?: Token;
  readonly stroke?: Token;
  readonly width?: number;
}

export interface TextItem extends Common {
  readonly kind: 'text';
  readonly x: number;
  /** of the baseline */
  readonly y: number;
  readonly text: string;
  readonly size: number;
  /** font weight; default 560 */
  readonly weight?: number;
  readonly fill: Token;
  readonly anchor: 'start' | 'middle' | 'end';
  /** a gap of this colour is drawn round the letters */
  readonly halo?: Token;
}

export interface GroupItem extends Common {
  readonly kind: 'group';
  readonly items: readonly DrawItem[];
  /** moves the items */
  readonly x?: number;
  readonly y?: number;
  /** every colour of the group is mixed with 'air' at the strength of the token --ghost: opaque, so nearer ghosts cut
   * cleanly across farther ones */
  readonly ghost?: boolean;
  /** equal keys mean equal items: the renderer keeps what it built */
  readonly key?: string;
}

export type DrawItem = FillItem | LineItem | SegmentsItem | CircleItem | TextItem | GroupItem;

type LayerName = 'ground' | 'heights' | 'ghosts' | 'path' | 'figure' | 'marks' | 'text';

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Layer {
  readonly name: LayerName;
  readonly items: readonly DrawItem[];
  /** place of the layer's origin on the canvas; default 0, 0 */
  readonly x?: number;
  readonly y?: number;
  /** in canvas px: nothing of the layer is drawn or hit outside */
  readonly clip?: Rect;
  /** equal keys mean equal items: the renderer may keep the layer, ghosts as one texture */
  readonly key?: string;
  /** the figure at the cursor is in this layer, seen so: for what takes hold of it */
  readonly sight?: FigurePlacement;
}

/** px */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

export interface Scene extends PictureSize {
  readonly background: Token;
  /** back to front */
  readonly layers: readonly Layer[];
  /** sentences that must stand beside the picture, e.g. that heights are compressed */
  readonly notes: readonly string[];
}

/** Several views on one canvas: each scene keeps its layers, moved to its place and clipped to its own size. */
export function joinScenes(
  width: number,
  height: number,
  parts: readonly { readonly scene: Scene; readonly x: number; readonly y: number }[],
): Scene {
  const layers: Layer[] = [];
  const notes: string[] = [];
  for (const { scene, x, y } of parts) {
    for (const layer of scene.layers) {
      const own = layer.clip ?? { x: 0, y: 0, width: scene.width, height: scene.height };
      layers.push({
        ...layer,
        x: (layer.x ?? 0) + x,
        y: (layer.y ?? 0) + y,
        clip: { ...own, x: own.x + x, y: own.y + y },
      });
    }
    for (const note of scene.notes) if (!notes.includes(note)) notes.push(note);
  }
  return { width, height, background: parts[0]?.scene.background ?? 'air', layers, notes };
}
