/** What the parts of Clip know of each other: types. All of it is kept while the page is, on this machine alone; what changes what is measured can be undone. */
import type { Accessor } from 'solid-js';
import type { ClipFrames, ClipMeasured, ClipSight, ClipTimes, MarkKind } from '../../../sim/index.ts';
import type { OpenClip } from '../../clip/clip-source.ts';

/** What the pointer does on the plate. */
export type ClipHand = 'look' | 'length' | 'plane' | 'post' | 'feet' | 'pose';

export interface ClipState {
  readonly clip: Accessor<OpenClip | undefined>;
  readonly frames: Accessor<ClipFrames | undefined>;
  readonly measuring: Accessor<ClipMeasured>;
  /** one step, with undo while Clip has the focus */
  measure(part: Partial<ClipMeasured>, title: string): void;
  readonly times: Accessor<ClipTimes | undefined>;
  readonly sight: Accessor<ClipSight | undefined>;
  /** frame that is shown */
  readonly frame: Accessor<number>;
  setFrame(k: number): void;
  /** s from take-off (or from the first frame before that is marked) of a frame */
  timeOf(frame: number): number;
  mark(kind: MarkKind, quarters?: number): void;
  readonly hand: Accessor<ClipHand>;
  setHand(hand: ClipHand): void;
  /** 0 none, 1 full */
  readonly figure: Accessor<number>;
  setFigure(share: number): void;
}
