/** Joins the rooms that make the print sheet: poses of the engine, the picture of the scene, the table of frames. */
import { formatFramesFile } from '../engine/frames-file.ts';
import { makePoser } from '../engine/poses.ts';
import { provenanceElement } from '../engine/provenance.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import { PRINT_TOKENS, printPicture } from '../scene/print-scene.ts';
import type { PrintPictures } from './print-input.ts';
import { makeStageFlight } from './staged-flight.ts';

const POSES = 10;

export const printing: PrintPictures = {
  tokens: PRINT_TOKENS,
  formatFrames: formatFramesFile,
  sheetOrigin: (result) => provenanceElement(result, 'page: print sheet'),
  draw: (result, request) => {
    const { flight, frames } = result;
    const pose = makePoser(flight, frames);
    const staged = makeStageFlight(`print ${result.key}`, result, []);
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
