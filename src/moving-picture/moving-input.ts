/** What the page asks of a moving picture, and what it is given. */
import type { SkillFile } from '../../sim/index.ts';
import type { FlightResult } from '../engine/result.ts';
import type { LengthMarks } from '../scene/heights.ts';
import type { MovingView } from '../scene/moving-place.ts';
import type { LiveNumber, MovingWords } from '../scene/moving-words.ts';
import type { Pieces } from '../scene/pieces.ts';
import type { PictureSize } from '../scene/scene.ts';

export type MovingFormat = 'mp4' | 'webm';

export interface MovingRequest {
  readonly result: FlightResult;
  readonly view: MovingView;
  /** even numbers of px */
  readonly size: PictureSize;
  /** s of the flight */
  readonly from: number;
  readonly to: number;
  /** 1: as fast as it is; 4: a quarter of that */
  readonly slower: number;
  readonly words: MovingWords;
  readonly marks: LengthMarks;
  /** of an instant; undefined: not shown */
  readonly numbers?: (t: number) => readonly LiveNumber[];
}

/** What the file says of itself; where it is from is added to the comment. */
interface MovingTags {
  readonly title: string;
  readonly description: string;
  readonly comment: string;
}

export interface MovingOrder {
  readonly format: MovingFormat;
  readonly tags: MovingTags;
  /** what was done, and the skill as it is handed on: its digest gives away nothing else */
  readonly origin: { readonly call: string; readonly file: SkillFile };
  /** after each picture */
  readonly made: (pictures: number, of: number) => void;
  /** aborted, nothing is left of it, and the promise rejects with the signal's reason */
  readonly signal: AbortSignal;
}

export interface PicturePen {
  /** t in s of the flight */
  draw(t: number): void;
  destroy(): void;
}

export interface MovingPictures {
  /** formats that this browser writes at a size, the better first; none: it writes no moving pictures */
  formats(size: PictureSize): Promise<readonly MovingFormat[]>;
  /** pictures, and s of the moving picture */
  count(request: Pick<MovingRequest, 'from' | 'to' | 'slower'>): { readonly pictures: number; readonly lastsS: number };
  /** its pictures one by one, on a canvas that gets their size; laid out in pieces */
  pen(canvas: HTMLCanvasElement, request: MovingRequest): Pieces<PicturePen>;
  make(request: MovingRequest, order: MovingOrder): Promise<Blob>;
}
