/**
 * The stage on a 2D canvas: the scene's list goes straight to the context, with nothing kept of it but ghosts that have not
 * changed, as one bitmap for each layer.
 */
import type { Layer, Rect, Scene } from '../scene/scene.ts';
import { CanvasPen } from './canvas-pen.ts';
import { Palette } from './palette.ts';
import type { PutText, RendererOptions, StageRenderer, TokenValues } from './stage-renderer.ts';

/** A layer as it was drawn last, and where on the canvas it lies, device px. */
interface Kept {
  readonly key: string;
  readonly bitmap: HTMLCanvasElement;
  readonly x: number;
  readonly y: number;
}

export function createCanvasRenderer(canvas: HTMLCanvasElement, options: RendererOptions): StageRenderer {
  const g = canvas.getContext('2d', { alpha: false });
  if (!g) throw new Error('the browser gives no 2D context');
  return new CanvasStage(canvas, g, options);
}

class CanvasStage implements StageRenderer {
  readonly kind = 'canvas';
  readonly #canvas: HTMLCanvasElement;
  readonly #g: CanvasRenderingContext2D;
  readonly #putText: PutText;
  #palette: Palette;
  #resolution: number;
  #scene: Scene | undefined;
  /** by the layer's place in the scene */
  readonly #kept = new Map<number, Kept>();

  constructor(canvas: HTMLCanvasElement, g: CanvasRenderingContext2D, options: RendererOptions) {
    this.#canvas = canvas;
    this.#g = g;
    this.#putText = options.putText;
    this.#palette = new Palette(options.tokens);
    this.#resolution = options.resolution;
    const { width = canvas.clientWidth || canvas.width, height = canvas.clientHeight || canvas.height } = options;
    this.#size(width, height);
    document.fonts.addEventListener('loadingdone', this.#again);
  }

  draw(scene: Scene): void {
    this.#scene = scene;
    const g = this.#g;
    const whole = { x: 0, y: 0, width: scene.width, height: scene.height };
    this.#place(g, 0, 0);
    g.fillStyle = this.#palette.css(scene.background, false);
    g.fillRect(0, 0, this.#canvas.width, this.#canvas.height);
    scene.layers.forEach((layer, i) => {
      if (layer.items.length === 0) this.#kept.delete(i);
      else if (layer.name === 'ghosts' && layer.key !== undefined) this.#stamp(layer, i, whole);
      else {
        this.#kept.delete(i);
        this.#paint(g, layer, whole, 0, 0);
      }
    });
    for (const i of this.#kept.keys()) if (i >= scene.layers.length) this.#kept.delete(i);
  }

  resize(width: number, height: number, resolution?: number): void {
    this.#resolution = resolution ?? this.#resolution;
    this.#size(width, height);
    this.#again();
  }

  setTokens(tokens: TokenValues): void {
    this.#palette = new Palette(tokens);
    this.#again();
  }

  async snapshot(): Promise<string> {
    return this.#canvas.toDataURL('image/png');
  }

  destroy(): void {
    document.fonts.removeEventListener('loadingdone', this.#again);
    this.#kept.clear();
    this.#scene = undefined;
  }

  /** Also when the letters' own typeface has come. */
  readonly #again = (): void => {
    this.#kept.clear();
    if (this.#scene) this.draw(this.#scene);
  };

  #size(width: number, height: number): void {
    this.#canvas.width = Math.max(1, Math.round(width * this.#resolution));
    this.#canvas.height = Math.max(1, Math.round(height * this.#resolution));
  }

  /** Scene px from here on, with an origin in device px. */
  #place(g: CanvasRenderingContext2D, x: number, y: number): void {
    g.setTransform(this.#resolution, 0, 0, this.#resolution, x, y);
  }

  /** What has not changed since it was last drawn is copied. */
  #stamp(layer: Layer, i: number, whole: Rect): void {
    const r = this.#resolution;
    const clip = layer.clip ?? whole;
    const key = `${layer.key} ${layer.x ?? 0} ${layer.y ?? 0} ${clip.x} ${clip.y} ${clip.width} ${clip.height} ${r}`;
    let kept = this.#kept.get(i);
    if (kept?.key !== key) {
      const x = Math.floor(clip.x * r);
      const y = Math.floor(clip.y * r);
      const bitmap = kept?.bitmap ?? document.createElement('canvas');
      bitmap.width = Math.max(1, Math.ceil((clip.x + clip.width) * r) - x);
      bitmap.height = Math.max(1, Math.ceil((clip.y + clip.height) * r) - y);
      const g = bitmap.getContext('2d');
      if (!g) {
        this.#paint(this.#g, layer, whole, 0, 0);
        return;
      }
      kept = { key, bitmap, x, y };
      this.#paint(g, layer, whole, -x, -y);
      this.#kept.set(i, kept);
    }
    this.#g.setTransform(1, 0, 0, 1, 0, 0);
    this.#g.drawImage(kept.bitmap, kept.x, kept.y);
  }

  #paint(g: CanvasRenderingContext2D, layer: Layer, whole: Rect, x: number, y: number): void {
    const clip = layer.clip;
    const isCut = clip !== undefined && !holds(clip, whole);
    this.#place(g, x, y);
    g.save();
    if (isCut) {
      g.beginPath();
      g.rect(clip.x, clip.y, clip.width, clip.height);
      g.clip();
    }
    g.translate(layer.x ?? 0, layer.y ?? 0);
    new CanvasPen(g, this.#palette, this.#resolution, this.#putText).draw(layer.items, false);
    g.restore();
  }
}

const holds = (outer: Rect, inner: Rect): boolean =>
  outer.x <= inner.x &&
  outer.y <= inner.y &&
  outer.x + outer.width >= inner.x + inner.width &&
  outer.y + outer.height >= inner.y + inner.height;
