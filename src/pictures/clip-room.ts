/** What Film loads for clips: what reads them, what computes, and what draws. */
import { clipReading } from '../clip/clip-reading.ts';
import type { ClipReading } from '../clip/clip-source.ts';
import { type Clipping, makeClipping } from '../engine/clip.ts';
import { type ClipPictures, clipPictures } from './clip-picture.ts';

export interface ClipRoom {
  readonly reader: ClipReading;
  readonly engine: Clipping;
  readonly pictures: ClipPictures;
}

export const clipRoom: ClipRoom = { reader: clipReading, engine: makeClipping(), pictures: clipPictures };
