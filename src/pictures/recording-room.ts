/** What Film loads for recordings: what computes, and what draws. */
import { makeRecordings, type Recordings } from '../engine/recording.ts';
import type { RecordingPictures } from './recording-input.ts';
import { recordingPictures } from './recording-picture.ts';

export interface RecordingRoom {
  readonly engine: Recordings;
  readonly pictures: RecordingPictures;
}

export const recordingRoom: RecordingRoom = { engine: makeRecordings(), pictures: recordingPictures };
