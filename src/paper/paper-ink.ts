/** Colours of paper as plain values, since few programs that take an SVG know custom properties: black, white and greys alone. */
import type { Paint } from '../scene/figure-svg.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import { PRINT_TOKENS } from '../scene/print-scene.ts';
import type { DrawItem } from '../scene/scene.ts';

/** A neck as white as the paper would part the head from the body. */
const SKIN = '#dedede';
/** How much of its colour a ghost keeps. */
const GHOST = 0.42;

const channels = (hex: string): number[] => [1, 3, 5].map((i) => Number.parseInt(hex.slice(i, i + 2), 16));

const paperPaint: Paint = (token, ghost) => {
  const own = token === 'skin' ? SKIN : (PRINT_TOKENS[token] ?? '#000000');
  if (!ghost) return own;
  const mixed = channels(own).map((v) => Math.round(v * GHOST + 255 * (1 - GHOST)));
  return `#${mixed.map((v) => v.toString(16).padStart(2, '0')).join('')}`;
};

export const drawn = (items: readonly DrawItem[]): string => svgMarkup(items, false, paperPaint);
