/** Pixi's WebGPU half, a chunk of its own. */
export { WebGPURenderer } from 'pixi.js';
