/** How the large stage is looked at: the page keeps it, the scene reads it. */
import type { LargeView } from './camera.ts';
import type { Measure } from './measure.ts';

export interface LargeShow {
  readonly path: boolean;
  readonly ghosts: boolean;
  readonly strobe: boolean;
  readonly trails: boolean;
  readonly arrows: boolean;
  readonly sizes: boolean;
}

export interface LargeLook {
  readonly view: LargeView;
  readonly follow: boolean;
  readonly pxPerM: number;
  /** middle of the picture plane, m */
  readonly across: number;
  readonly up: number;
  readonly show: LargeShow;
  /** poses of the strobe picture, take-off and landing included */
  readonly strobes: number;
  readonly measure?: Measure;
}
