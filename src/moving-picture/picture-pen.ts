/** Draws the pictures of one request on a canvas by the renderer of the stage. */
import { makePoser } from '../engine/poses.ts';
import { makeStageFlight } from '../pictures/staged-flight.ts';
import { createCanvasRenderer } from '../render/canvas-renderer.ts';
import { readTokens } from '../render/read-tokens.ts';
import type { PutText } from '../render/stage-renderer.ts';
import { layMoving, movingScene } from '../scene/moving-scene.ts';
import type { Pieces } from '../scene/pieces.ts';
import type { MovingRequest, PicturePen } from './moving-input.ts';

/** Poses that the picture is fitted to. */
const FITTED = 40;
const HALO = 4;
const ALIGN = { start: 'left', middle: 'center', end: 'right' } as const;

/** Straight onto the canvas: every picture has its own time, and would take the stage's kept words from it. */
const putText: PutText = (g, { text, x, y, anchor }, { font, colour, halo }) => {
  g.save();
  g.font = font;
  g.textAlign = ALIGN[anchor];
  g.lineJoin = 'round';
  if (halo !== undefined) {
    g.lineWidth = HALO;
    g.strokeStyle = halo;
    g.strokeText(text, x, y);
  }
  g.fillStyle = colour;
  g.fillText(text, x, y);
  g.restore();
};

function makeRuler(font: string): (text: string, size: number, weight: number) => number {
  const g = document.createElement('canvas').getContext('2d');
  return (text, size, weight) => {
    if (!g) return text.length * size * 0.55;
    g.font = `${weight} ${size}px ${font}`;
    return g.measureText(text).width;
  };
}

export function* makePicturePen(canvas: HTMLCanvasElement, request: MovingRequest): Pieces<PicturePen> {
  const { result, numbers } = request;
  const { flight, frames } = result;
  const pose = makePoser(flight, frames);
  const staged = makeStageFlight(`moving ${result.key}`, result, []);
  const tokens = readTokens();
  const setting = { ...request, span: [request.from, request.to] as const };
  yield;
  const poses = Array.from({ length: FITTED }, (_, i) => pose((flight.duration * i) / (FITTED - 1)));
  yield;
  const layout = layMoving(setting, staged, poses, numbers, makeRuler(tokens.font));
  yield;
  // read for every picture: kept where the processor reads it at once
  canvas.getContext('2d', { alpha: false, willReadFrequently: true });
  const renderer = createCanvasRenderer(canvas, {
    tokens,
    resolution: layout.ratio,
    width: layout.width,
    height: layout.height,
    putText,
  });
  return {
    draw: (t) => renderer.draw(movingScene(setting, layout, staged, pose(t), numbers?.(t) ?? [])),
    destroy: () => renderer.destroy(),
  };
}
