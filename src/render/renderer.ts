/**
 * Draws a scene on a canvas. The drawing library comes in a chunk of its own, loaded by the first call; the page can
 * show everything else before. Rejects with RendererError when no way of drawing works here.
 */
import type { RendererOptions, StageRenderer } from './stage-renderer.ts';

export async function createRenderer(canvas: HTMLCanvasElement, options: RendererOptions): Promise<StageRenderer> {
  const { createPixiRenderer } = await import('./pixi-renderer.ts');
  return createPixiRenderer(canvas, options);
}
