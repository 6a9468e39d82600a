/** What Film loads for clips: what reads them, what computes, and what draws. */

import type { ShapeData } from '../../sim/index.ts';
import { clipReading } from '../clip/clip-reading.ts';
import type { ClipReading } from '../clip/clip-source.ts';
import { type Clipping, makeClipping } from '../engine/clip.ts';
import { type ClipPosings, makeClipPosings } from '../engine/clip-posed.ts';
import { type ClipPictures, clipPictures } from './clip-picture.ts';
import { type ClipPosedPictures, makePosedPictures } from './clip-posed-picture.ts';

export interface ClipRoom {
  readonly reader: ClipReading;
  readonly engine: Clipping;
  readonly pictures: ClipPictures;
  readonly posings: ClipPosings;
  readonly posedPictures: ClipPosedPictures;
}

export function makeClipRoom(shapes: Readonly<Record<string, ShapeData>>): ClipRoom {
  const posings = makeClipPosings(shapes);
  return {
    reader: clipReading,
    engine: makeClipping(),
    pictures: clipPictures,
    posings,
    posedPictures: makePosedPictures(posings),
  };
}
