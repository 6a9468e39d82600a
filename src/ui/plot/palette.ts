/** The colours and sizes of tokens.css as canvases need them. Read once for each change of theme. */
const NAMES = [
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
  'legs',
  'on-legs',
  'on-trunk',
  'e-along',
  'e-turning',
  'e-rising',
  'e-height',
  'e-limbs',
  'on-e-rising',
  'twist',
  'twist-tint',
  'som',
  'som-tint',
  'tilt',
  'tilt-tint',
  'caution',
  'caution-ink',
  'caution-mark',
  'stop',
] as const;

export type ColourName = (typeof NAMES)[number];

export interface PlotPalette {
  readonly colour: Readonly<Record<ColourName, string>>;
  readonly tickPx: number;
  readonly font: (px: number, weight: number) => string;
}

export function readPalette(): PlotPalette {
  const style = getComputedStyle(document.documentElement);
  const colour = {} as Record<ColourName, string>;
  for (const name of NAMES) colour[name] = style.getPropertyValue(`--${name}`).trim();
  const family = style.getPropertyValue('--font').trim();
  return {
    colour,
    tickPx: Number.parseFloat(style.getPropertyValue('--fs-tick')) || 12,
    font: (px, weight) => `${weight} ${px}px ${family}`,
  };
}
