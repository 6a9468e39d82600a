/** How the large stage is looked at: the page keeps it, the scene reads it. */
import type { LargeView } from './camera.ts';
import type { Measure } from './measure.ts';

export interface LargeShow {
  readonly path: boolean;
  readonly before: boolean;
  readonly everyStep: boolean;
  readonly paths: boolean;
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
  /** poses of every step, take-off and landing included */
  readonly steps: number;
  readonly measure?: Measure;
}
