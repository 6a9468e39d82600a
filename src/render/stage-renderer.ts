/** What the page holds of a renderer, whichever way it draws, and how it says that none works. */
import type { Scene, TextItem, Token } from '../scene/scene.ts';

/** Values of the tokens as CSS colours ('#12282C'), and the strength of ghosts (0..1). */
export interface TokenValues {
  readonly colours: Readonly<Record<Token, string>>;
  readonly ghost: number;
  readonly font: string;
}

export type RendererKind = 'webgl' | 'webgpu' | 'canvas';

/** Writes a scene's words on a 2D canvas: colours as CSS, `ratio` device px of a px. */
export type PutText = (
  g: CanvasRenderingContext2D,
  item: TextItem,
  look: { readonly font: string; readonly colour: string; readonly halo?: string; readonly ratio: number },
) => void;

export interface RendererOptions {
  readonly tokens: TokenValues;
  /** device pixels per CSS px */
  readonly resolution: number;
  /** size in CSS px; default the canvas' own */
  readonly width?: number;
  readonly height?: number;
  /** try only this kind first, then the usual order webgl, webgpu, canvas */
  readonly prefer?: RendererKind;
  /** for the 2D canvas; Pixi writes by itself */
  readonly putText: PutText;
}

export interface StageRenderer {
  readonly kind: RendererKind;
  draw(scene: Scene): void;
  /** CSS px */
  resize(width: number, height: number, resolution?: number): void;
  /** a change of theme; the last scene is drawn again */
  setTokens(tokens: TokenValues): void;
  /** the picture as a PNG data URL */
  snapshot(): Promise<string>;
  destroy(): void;
}

export class RendererError extends Error {
  override readonly name = 'RendererError';
  /** kinds tried, with the reason each failed */
  readonly tried: readonly { readonly kind: RendererKind; readonly reason: string }[];

  constructor(tried: readonly { readonly kind: RendererKind; readonly reason: string }[]) {
    super(`No way of drawing works here: ${tried.map((one) => `${one.kind}: ${one.reason}`).join('; ')}`);
    this.tried = tried;
  }
}
