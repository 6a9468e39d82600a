/** Joins the rooms that make the print sheet: poses of the engine, the picture of the scene, the table of frames. */
import { formatFramesFile } from '../engine/frames-file.ts';
import { makePoser } from '../engine/poses.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import type { StageFlight } from '../scene/pose-frames.ts';
import { PRINT_TOKENS, printPicture } from '../scene/print-scene.ts';
import type { PrintPictures } from './print-input.ts';

const POSES = 10;

export const printing: PrintPictures = {
  tokens: PRINT_TOKENS,
  formatFrames: formatFramesFile,
  draw: (result, request) => {
    const { flight, frames } = result;
    const pose = makePoser(flight, frames);
    const path = new Float64Array(4 * frames.n);
    for (let i = 0; i < frames.n; i++) {
      path[4 * i] = frames.t[i];
      for (let k = 0; k < 3; k++) path[4 * i + 1 + k] = frames.p_WScm_W[3 * i + k];
    }
    const staged: StageFlight = {
      key: `print ${result.key}`,
      body: flight.body,
      duration: flight.duration,
      v_WScm_W0: [flight.v_WScm_W0[0], flight.v_WScm_W0[1], flight.v_WScm_W0[2]],
      h_Scm_W: [flight.h_Scm_W[0], flight.h_Scm_W[1], flight.h_Scm_W[2]],
      surfaceY: flight.surfaceY,
      surface: result.skill.end.surface?.kind,
      path,
      ghosts: [],
    };
    const poses = Array.from({ length: POSES }, (_, i) => pose((flight.duration * i) / (POSES - 1)));
    const { items, width, height, isCompressed } = printPicture({
      flight: staged,
      poses,
      times: frames.t,
      ...request,
    });
    return { markup: svgMarkup(items), width, height, isCompressed };
  },
};
