/** A tool: a panel with a question of its own, loaded when it is first opened, in the place of a part of the bench. */
import type { Component, JSX } from 'solid-js';
import type { ToolName } from '../commands/actions.ts';
import type { TimeAxis } from '../ui/plot/axis.ts';
import type { Loaders } from './services.ts';

/**
 * Where a tool is on a laptop: in the place of the cut (aside, 416 px wide), or of everything under the floor but
 * the shapes (ground). On tablet and phone both are a sheet under the floor, above the thumb bar. A room has the whole page under
 * the bar, and the bench is not in the page while it is open; it is given no room of the bench and no ruler.
 */
export type ToolPlace = 'aside' | 'ground' | 'room';

export interface ToolProps {
  /** the page's own ruler; its zero is at the left edge of the time column */
  readonly axis: TimeAxis;
  /** room for the tool, px; on a laptop's ground the time column begins `timeLeft` px from its left edge */
  readonly width: number;
  readonly height: number;
  readonly timeLeft: number;
  readonly device: 'bench' | 'tablet' | 'phone';
  /** it has the height of the pictures too, which are away */
  readonly isTall?: boolean;
  /** px over the floor for pictures of its own; 0: they are away */
  readonly pictures?: number;
  /** the shapes of the skill on the ruler, for a tool that has them as a row of its own */
  readonly shapes?: (row: { readonly axis: TimeAxis; readonly tile: number }) => JSX.Element;
}

export interface Tool {
  readonly name: ToolName;
  readonly place: ToolPlace;
  /** on a short page it begins with the height of the pictures too */
  readonly wantsHeight?: true;
  /** on a laptop it fills the places of headline, take-off values and cut, and has the shapes in a row of its own */
  readonly fillsBench?: true;
  /** it fills the place of the pictures, and has a strip under the floor in place of the shapes: the whole skill is on the ruler */
  readonly hasPictures?: true;
  /** it fills the headline and the air from edge to edge, and has a place of its own beside the ruler for the four numbers of the flight */
  readonly fillsAir?: true;
  readonly load: () => Promise<Component<ToolProps>>;
  /** what computes for it; a tool opens when both are there */
  readonly loadEngine?: (load: Loaders) => Promise<unknown>;
}
