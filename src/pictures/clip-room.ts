/** What Film loads for clips: what reads them, what computes, and what draws. */
import { clipReading } from '../clip/clip-reading.ts';
import type { ClipReading } from '../clip/clip-source.ts';

export interface ClipRoom {
  readonly reader: ClipReading;
}

export const clipRoom: ClipRoom = { reader: clipReading };
