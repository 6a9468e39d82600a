/** Joins the rooms for recordings: what the worker computed, as pictures. */
import type { RecordedPoses, RecordingResult } from '../jobs/kinds/recording-data.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import type { StagePose } from '../scene/pose-frames.ts';
import { type RecordedStage, type RecordedWindow, recordedNow, recordedStill } from '../scene/recorded-time.ts';
import { sideView } from '../scene/view.ts';
import type { RecordingPictureInput, RecordingPictures } from './recording-input.ts';

/** m beyond the joints that are looked at: head, hands, feet; and over the highest */
const BEYOND = 0.2;
const ABOVE = 0.08;
/** A recording's own zero is the floor while feet are within this of it, m. */
const NEAR_FLOOR = 0.6;
const MOST_PX_PER_M = 130;

interface Staged extends RecordedStage {
  readonly top: number;
}

const staged = new WeakMap<RecordingResult, Staged>();

function posesOf(poses: RecordedPoses | undefined, segments: number): StagePose[] {
  if (!poses) return [];
  return Array.from(poses.t, (t, i): StagePose => {
    const R_WS = poses.R_WS.subarray(9 * segments * i, 9 * segments * (i + 1));
    return {
      t,
      frames: { R_WS, p_WSo_W: poses.p_WSo_W.subarray(3 * segments * i, 3 * segments * (i + 1)) },
      p_WScm_W: [poses.p_WScm_W[3 * i], poses.p_WScm_W[3 * i + 1], poses.p_WScm_W[3 * i + 2]],
      R_WF: R_WS.subarray(0, 9),
      somersault: Number.NaN,
      tilt: Number.NaN,
      twist: Number.NaN,
    };
    // where an angle is not known there is no pose
  }).filter(({ frames }) => frames.p_WSo_W.every(Number.isFinite));
}

function getStage(result: RecordingResult): Staged | undefined {
  const known = staged.get(result);
  if (known) return known;
  const { body, parabola, t } = result.study;
  if (!body) return undefined;
  const n = body.segments.length;
  const measured = posesOf(result.measured, n);
  let [low, top] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { frames } of measured)
    for (let k = 1; k < frames.p_WSo_W.length; k += 3) {
      low = Math.min(low, frames.p_WSo_W[k] - BEYOND);
      top = Math.max(top, frames.p_WSo_W[k] + BEYOND);
    }
  const along = parabola.length > 3 ? parabola[parabola.length - 3] - parabola[0] : 0;
  const made: Staged = {
    body,
    measured,
    computed: posesOf(result.computed, n),
    path: { t, y: Float64Array.from(t, (_, i) => parabola[3 * i + 1]) },
    view: sideView(along),
    base: Math.abs(low) < NEAR_FLOOR ? Math.min(0, low + BEYOND / 2) : low,
    top,
  };
  staged.set(result, made);
  return made;
}

const windowOf = (stage: Staged, input: RecordingPictureInput): RecordedWindow => ({
  ...input,
  pxPerM: Math.min(input.height / Math.max(stage.top - stage.base + ABOVE, 0.5), MOST_PX_PER_M),
  marks: input.units.lengthMarks,
});

export const recordingPictures: RecordingPictures = {
  still: (result, input) => {
    const stage = getStage(result);
    return stage ? svgMarkup(recordedStill(stage, windowOf(stage, input))) : '';
  },
  now: (result, input, t) => {
    const stage = getStage(result);
    return stage ? svgMarkup(recordedNow(stage, windowOf(stage, input), t)) : '';
  },
};
