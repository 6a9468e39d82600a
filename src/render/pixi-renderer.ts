/**
 * The stage on Pixi, by WebGL or WebGPU. The only room that imports pixi.js; loaded by renderer.ts as a chunk of its own.
 * Only what a scene can hold is registered: none of the library's own pointer or accessibility handling, which are the
 * page's task. The build drops what the library registers by itself (vite.config.ts).
 */
import 'pixi.js/unsafe-eval';
import {
  CanvasSource,
  CanvasTextPipe,
  CanvasTextSystem,
  Container,
  extensions,
  GraphicsContextSystem,
  GraphicsPipe,
  ImageSource,
  isWebGLSupported,
  isWebGPUSupported,
  type Renderer,
  StencilMask,
} from 'pixi.js';
import type { Scene } from '../scene/scene.ts';
import { LayerNode } from './layer-node.ts';
import { Palette } from './palette.ts';
import type { RendererOptions, StageRenderer, TokenValues } from './stage-renderer.ts';

extensions.add(
  ImageSource,
  CanvasSource,
  StencilMask,
  GraphicsPipe,
  GraphicsContextSystem,
  CanvasTextPipe,
  CanvasTextSystem,
);

type PixiKind = 'webgl' | 'webgpu';

async function makeRenderer(kind: PixiKind) {
  if (kind === 'webgl') {
    if (!isWebGLSupported()) throw new Error('the browser gives no WebGL');
    return new (await import('./pixi-webgl.ts')).WebGLRenderer();
  }
  if (!(await isWebGPUSupported())) throw new Error('the browser gives no WebGPU');
  return new (await import('./pixi-webgpu.ts')).WebGPURenderer();
}

export async function createPixiRenderer(
  canvas: HTMLCanvasElement,
  kind: PixiKind,
  options: RendererOptions,
): Promise<StageRenderer> {
  const renderer = await makeRenderer(kind);
  await renderer.init({
    canvas,
    width: options.width ?? (canvas.clientWidth || canvas.width),
    height: options.height ?? (canvas.clientHeight || canvas.height),
    resolution: options.resolution,
    antialias: true,
    autoDensity: false,
    backgroundColor: options.tokens.colours.air,
    skipExtensionImports: true,
  });
  return new PixiStage(renderer, kind, canvas, options.tokens);
}

class PixiStage implements StageRenderer {
  readonly kind: PixiKind;
  readonly #renderer: Renderer;
  readonly #canvas: HTMLCanvasElement;
  readonly #root = new Container();
  #palette: Palette;
  #layers: LayerNode[] = [];
  #scene: Scene | undefined;

  constructor(renderer: Renderer, kind: PixiKind, canvas: HTMLCanvasElement, tokens: TokenValues) {
    this.#renderer = renderer;
    this.#canvas = canvas;
    this.#palette = new Palette(tokens);
    this.kind = kind;
    canvas.addEventListener('webglcontextrestored', this.#rebuild);
  }

  draw(scene: Scene): void {
    this.#scene = scene;
    while (this.#layers.length > scene.layers.length) this.#layers.pop()?.destroy();
    const whole = { x: 0, y: 0, width: scene.width, height: scene.height };
    scene.layers.forEach((layer, i) => {
      let node = this.#layers[i];
      if (!node) {
        node = new LayerNode(this.#root);
        this.#layers.push(node);
      }
      node.show(layer, whole, this.#palette, this.#renderer.resolution);
    });
    this.#renderer.background.color = this.#palette.colour(scene.background, false);
    this.#renderer.render(this.#root);
  }

  resize(width: number, height: number, resolution?: number): void {
    const sharper = resolution !== undefined && resolution !== this.#renderer.resolution;
    this.#renderer.resize(width, height, resolution ?? this.#renderer.resolution);
    if (sharper) this.#rebuild();
    else if (this.#scene) this.#renderer.render(this.#root);
  }

  setTokens(tokens: TokenValues): void {
    this.#palette = new Palette(tokens);
    this.#rebuild();
  }

  async snapshot(): Promise<string> {
    // read in the same task as it is drawn: the buffer is not kept afterwards
    this.#renderer.render(this.#root);
    return this.#canvas.toDataURL('image/png');
  }

  destroy(): void {
    this.#canvas.removeEventListener('webglcontextrestored', this.#rebuild);
    this.#clear();
    this.#root.destroy({ children: true });
    this.#renderer.destroy({ removeView: false });
  }

  readonly #rebuild = (): void => {
    this.#clear();
    if (this.#scene) this.draw(this.#scene);
  };

  #clear(): void {
    for (const layer of this.#layers) layer.destroy();
    this.#layers = [];
  }
}
