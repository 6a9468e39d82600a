/** Joins the rooms for whole skills: what the worker computed, as pictures. */

import type { FlightResult } from '../engine/result.ts';
import type { WholeResult } from '../jobs/kinds/whole-data.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import type { StagePose } from '../scene/pose-frames.ts';
import { poseNear, reachOf, sideItems, unrolledNow, unrolledStill, type WholeStage } from '../scene/whole-scene.ts';
import type { WholePictureInput, WholePictures } from './whole-input.ts';

const staged = new WeakMap<WholeResult, WholeStage>();

function getStage(whole: WholeResult, { flight }: FlightResult): WholeStage {
  const known = staged.get(whole);
  if (known) return known;
  const { poses: p, columns: c } = whole;
  const segments = flight.body.segments.length;
  const poses: StagePose[] = Array.from(p.t, (t, i) => ({
    t,
    frames: {
      R_WS: p.R_WS.subarray(9 * segments * i, 9 * segments * (i + 1)),
      p_WSo_W: p.p_WSo_W.subarray(3 * segments * i, 3 * segments * (i + 1)),
    },
    p_WScm_W: [p.p_WScm_W[3 * i], p.p_WScm_W[3 * i + 1], p.p_WScm_W[3 * i + 2]],
    R_WF: p.R_WF.subarray(9 * i, 9 * (i + 1)),
    somersault: Number.NaN,
    tilt: Number.NaN,
    twist: Number.NaN,
  }));
  const { swing } = whole;
  const rows = Array.from(c.t.keys());
  const inSwing = rows.filter((i) => c.phase[i] === 0);
  const inLanding = rows.filter((i) => c.phase[i] === 3);
  const made: WholeStage = {
    body: flight.body,
    poses,
    touchdown: whole.touchdown,
    surfaceY: flight.surfaceY,
    vx: flight.v_WScm_W0[0],
    ...(swing
      ? {
          railRest: [whole.barX, swing.rail.height] as const,
          rail: Float64Array.from(
            inSwing.flatMap((i) => [c.t[i], whole.barX + c.bendX[i], swing.rail.height + c.bendY[i]]),
          ),
        }
      : {}),
    ...(inLanding.length > 1 ? { sink: Float64Array.from(inLanding.flatMap((i) => [c.t[i], c.sink[i]])) } : {}),
  };
  staged.set(whole, made);
  return made;
}

const timeWindow = (input: WholePictureInput) => ({ ...input, marks: input.units.lengthMarks });

export const wholePictures: WholePictures = {
  reaches: (whole, result) => {
    const stage = getStage(whole, result);
    return stage.poses.map((pose) => ({ t: pose.t, ...reachOf(stage, pose) }));
  },
  still: (whole, result, input) => svgMarkup(unrolledStill(getStage(whole, result), timeWindow(input), input.from)),
  now: (whole, result, input, t) => svgMarkup(unrolledNow(getStage(whole, result), timeWindow(input), t)),
  side: (whole, result, width, height, t, row) => {
    const stage = getStage(whole, result);
    const { columns: c } = whole;
    const [fx, fy] = [c.fx[row] / whole.bodyWeight, c.fy[row] / whole.bodyWeight];
    const pose = poseNear(stage.poses, t);
    const at: readonly [number, number] =
      c.phase[row] === 0 && stage.railRest
        ? [stage.railRest[0] + c.bendX[row], stage.railRest[1] + c.bendY[row]]
        : [pose.p_WScm_W[0], stage.surfaceY];
    const label = c.weights[row].toFixed(1);
    return svgMarkup(sideItems(stage, { width, height }, t, { x: fx, y: fy, at, label }));
  },
};
