/** Pixi's WebGL half, a chunk of its own. */
export { WebGLRenderer } from 'pixi.js';
