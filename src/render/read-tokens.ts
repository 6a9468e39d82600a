/** The values the page's style sheet gives the tokens now: read again after a change of theme or contrast. */
import type { Token } from '../scene/scene.ts';
import type { TokenValues } from './stage-renderer.ts';

const TOKENS: readonly Token[] = [
  'air',
  'ground',
  'moving',
  'raise',
  'floor',
  'floor-ink',
  'floor-ink-2',
  'floor-tick',
  'ink',
  'ink-2',
  'ink-3',
  'rule',
  'rule-2',
  'trunk',
  'limb-l',
  'limb-r',
  'limb-line',
  'skin',
  'hair',
  'tape',
  'twist',
  'twist-tint',
  'som',
  'som-tint',
  'tilt',
  'tilt-tint',
  'caution',
  'caution-mark',
  'stop',
  'stop-tint',
];

export function readTokens(element: Element = document.documentElement): TokenValues {
  const style = getComputedStyle(element);
  const value = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  const colours = Object.fromEntries(TOKENS.map((token) => [token, value(token)])) as Record<Token, string>;
  return { colours, ghost: Number(value('ghost')) || 0.42, font: value('font') || 'sans-serif' };
}
