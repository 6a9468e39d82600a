/**
 * The stage on Pixi: webgl, else webgpu, else canvas. The only room that imports pixi.js; loaded by renderer.ts as a
 * chunk of its own. Only what a scene can hold is registered: none of the library's own pointer or accessibility
 * handling, which are the page's task.
 */
import 'pixi.js/unsafe-eval';
import 'pixi.js/graphics';
import 'pixi.js/text';
import {
  autoDetectRenderer,
  CanvasSource,
  Container,
  extensions,
  ImageSource,
  type Renderer,
  RendererType,
  StencilMask,
} from 'pixi.js';
import type { Scene } from '../scene/scene.ts';
import { LayerNode } from './layer-node.ts';
import { Palette } from './palette.ts';
import {
  RendererError,
  type RendererKind,
  type RendererOptions,
  type StageRenderer,
  type TokenValues,
} from './stage-renderer.ts';

extensions.add(ImageSource, CanvasSource, StencilMask);

const ORDER: readonly RendererKind[] = ['webgl', 'webgpu', 'canvas'];
const KINDS: Readonly<Record<number, RendererKind>> = {
  [RendererType.WEBGL]: 'webgl',
  [RendererType.WEBGPU]: 'webgpu',
  [RendererType.CANVAS]: 'canvas',
};

export async function createPixiRenderer(canvas: HTMLCanvasElement, options: RendererOptions): Promise<StageRenderer> {
  const tried: { kind: RendererKind; reason: string }[] = [];
  const order = options.prefer ? [options.prefer, ...ORDER.filter((kind) => kind !== options.prefer)] : ORDER;
  for (const kind of order) {
    try {
      const renderer = await autoDetectRenderer({
        canvas,
        preference: [kind],
        width: options.width ?? (canvas.clientWidth || canvas.width),
        height: options.height ?? (canvas.clientHeight || canvas.height),
        resolution: options.resolution,
        antialias: true,
        autoDensity: false,
        backgroundColor: options.tokens.colours.air,
        skipExtensionImports: true,
      });
      return new PixiStage(renderer, canvas, options.tokens);
    } catch (error) {
      tried.push({ kind, reason: error instanceof Error ? error.message : String(error) });
    }
  }
  throw new RendererError(tried);
}

class PixiStage implements StageRenderer {
  readonly kind: RendererKind;
  readonly #renderer: Renderer;
  readonly #canvas: HTMLCanvasElement;
  readonly #root = new Container();
  #palette: Palette;
  #layers: LayerNode[] = [];
  #scene: Scene | undefined;

  constructor(renderer: Renderer, canvas: HTMLCanvasElement, tokens: TokenValues) {
    this.#renderer = renderer;
    this.#canvas = canvas;
    this.#palette = new Palette(tokens);
    this.kind = KINDS[renderer.type] ?? 'canvas';
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
