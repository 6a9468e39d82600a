/**
 * Draws a scene on a canvas: by WebGL, else WebGPU, else as a 2D canvas. Each way comes in a chunk of its own, loaded when
 * it is tried; the page can show everything else before. Rejects with RendererError when no way of drawing works here.
 */
import { RendererError, type RendererKind, type RendererOptions, type StageRenderer } from './stage-renderer.ts';

const ORDER: readonly RendererKind[] = ['webgl', 'webgpu', 'canvas'];

export async function createRenderer(canvas: HTMLCanvasElement, options: RendererOptions): Promise<StageRenderer> {
  const tried: { kind: RendererKind; reason: string }[] = [];
  const order = options.prefer ? [options.prefer, ...ORDER.filter((kind) => kind !== options.prefer)] : ORDER;
  for (const kind of order) {
    try {
      if (kind === 'canvas') return (await import('./canvas-renderer.ts')).createCanvasRenderer(canvas, options);
      return await (await import('./pixi-renderer.ts')).createPixiRenderer(canvas, kind, options);
    } catch (error) {
      tried.push({ kind, reason: error instanceof Error ? error.message : String(error) });
    }
  }
  throw new RendererError(tried);
}
