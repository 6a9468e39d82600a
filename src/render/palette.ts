/** Tokens as numbers or as CSS colours; ghosts mix every colour with the air once, not in every frame. */
import type { Token } from '../scene/scene.ts';
import type { TokenValues } from './stage-renderer.ts';

export class Palette {
  readonly font: string;
  readonly #tokens: TokenValues;
  readonly #solid = new Map<Token, number>();
  readonly #ghost = new Map<Token, number>();
  readonly #cssSolid = new Map<Token, string>();
  readonly #cssGhost = new Map<Token, string>();

  constructor(tokens: TokenValues) {
    this.#tokens = tokens;
    this.font = tokens.font;
  }

  colour(token: Token, ghost: boolean): number {
    const known = ghost ? this.#ghost : this.#solid;
    let value = known.get(token);
    if (value === undefined) {
      value = parseColour(this.#tokens.colours[token]);
      if (ghost) value = mix(parseColour(this.#tokens.colours.air), value, this.#tokens.ghost);
      known.set(token, value);
    }
    return value;
  }

  css(token: Token, ghost: boolean): string {
    const known = ghost ? this.#cssGhost : this.#cssSolid;
    let text = known.get(token);
    if (text === undefined) {
      text = `#${this.colour(token, ghost).toString(16).padStart(6, '0')}`;
      known.set(token, text);
    }
    return text;
  }
}

/** '#123', '#123456', 'rgb(1, 2, 3)' -> 0x112233 */
function parseColour(text: string): number {
  const hex = text.trim().match(/^#([0-9a-f]{3}|[0-9a-f]{6})$/i)?.[1];
  if (hex) return Number.parseInt(hex.length === 3 ? hex.replace(/./g, '$&$&') : hex, 16);
  const parts = text
    .match(/^rgba?\(([^)]*)\)/i)?.[1]
    .split(/[\s,/]+/)
    .map(Number);
  if (parts && parts.length >= 3 && parts.slice(0, 3).every(Number.isFinite)) {
    return (Math.round(parts[0]) << 16) | (Math.round(parts[1]) << 8) | Math.round(parts[2]);
  }
  throw new ColourError(text);
}

class ColourError extends Error {
  override readonly name = 'ColourError';

  constructor(text: string) {
    super(`A colour token reads "${text}"; allowed: #rgb, #rrggbb or rgb(r, g, b).`);
  }
}

function mix(under: number, over: number, share: number): number {
  const one = (shift: number): number => {
    const a = (under >> shift) & 255;
    const b = (over >> shift) & 255;
    return Math.round(a + (b - a) * share) << shift;
  };
  return one(16) | one(8) | one(0);
}
