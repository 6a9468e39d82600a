/** A clip for the page: times of its marks, its camera, and how far the flown skill is from it. Loaded with the tool; all of it is quick. */
import {
  type ClipApart,
  type ClipFrames,
  type ClipMark,
  type ClipRecording,
  type ClipScale,
  type ClipSight,
  type ClipStand,
  type ClipTimes,
  type ClipWriting,
  calcClipApart,
  calcClipPlace,
  calcClipSight,
  calcClipTimes,
  calcFlownTimes,
  type FlownTimes,
  instantOf,
  isClipRecording,
  type Measured,
  offPlane,
  type ReadClipRecording,
  readClipRecording,
  type ShownInstant,
  takenRate,
  trueTimes,
  writeClipRecording,
} from '../../sim/index.ts';
import type { FlightResult } from './result.ts';

export interface Clipping {
  /** throws an Error with field, value and range, as all of these */
  trueTimes(stamps: Float64Array, fileHz: number, trueHz: number): Float64Array;
  /** of a rate that is typed; the file's own where it is near that */
  takenRate(fileHz: number, typedHz: number): number;
  times(frames: ClipFrames, marks: readonly ClipMark[], result: FlightResult): ClipTimes;
  /** m by which the mass centre of A is lower at touchdown than at take-off: that of the clip is taken to be */
  drop(result: FlightResult): Measured;
  /** what A has of the same */
  flown(times: ClipTimes, result: FlightResult): FlownTimes;
  /** `view`: rad across, typed */
  sight(
    picture: { readonly width: number; readonly height: number },
    scale: ClipScale,
    stand: ClipStand,
    result: FlightResult,
    view?: number,
  ): ClipSight;
  /** share by which what is nearer by so many m than the plane of the flight is drawn too large */
  offPlane: typeof offPlane;
  /** what of the flight a frame shows; undefined before the take-off is marked */
  instant(frames: ClipFrames, times: ClipTimes, frame: number, result: FlightResult): ShownInstant | undefined;
  /** what was measured as an entry of the skill's recordings */
  write(writing: Omit<ClipWriting, 'angles'>, result: FlightResult): ClipRecording;
  /** an entry that this program wrote of a clip */
  isOfClip: typeof isClipRecording;
  /** throws an Error with the path of what is wrong */
  read(entry: ClipRecording, result: FlightResult): ReadClipRecording;
  /** at s from take-off */
  apart(times: ClipTimes, t: number, result: FlightResult): ClipApart;
}

export function makeClipping(): Clipping {
  return {
    trueTimes,
    takenRate,
    times: (frames, marks, result) =>
      calcClipTimes(frames, marks, { gravity: result.flight.gravity, drop: calcClipPlace(result).drop }),
    drop: (result) => calcClipPlace(result).drop,
    flown: (times, { flight, frames }) => calcFlownTimes(flight, frames, times),
    sight: (picture, scale, stand, result, view) =>
      calcClipSight({ picture, scale, stand, view, ...calcClipPlace(result) }),
    offPlane,
    instant: (frames, times, frame, { flight }) => instantOf(frames, times, frame, flight.duration),
    write: (writing, { flight }) => writeClipRecording({ ...writing, angles: anglesOf(flight.body) }),
    isOfClip: isClipRecording,
    read: (entry, { flight }) => readClipRecording(entry, anglesOf(flight.body)),
    apart: (times, t, { flight, frames }) => calcClipApart(times, flight, frames, t),
  };
}

const anglesOf = ({ angles }: FlightResult['flight']['body']): string[] => angles.map(({ name }) => name);
