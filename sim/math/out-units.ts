/** Numbers on their way out, to people and files: degrees and revolutions, never radians. */
import { DEG } from './angles.ts';

export interface OutUnit {
  /** at the end of a column's name */
  readonly suffix: string;
  /** after a number for people */
  readonly word: string;
  /** value outside = scale x value inside */
  readonly scale: number;
}

export const OUT_UNITS = {
  kgM2PerS: { suffix: 'kgM2PerS', word: 'kg·m²/s', scale: 1 },
  rad: { suffix: 'deg', word: 'deg', scale: DEG },
  radPerS: { suffix: 'revPerS', word: 'rev/s', scale: 1 / (2 * Math.PI) },
  swingRadPerS: { suffix: 'degPerS', word: 'deg/s', scale: DEG },
  bodyWeights: { suffix: 'bodyWeights', word: 'body weights', scale: 1 },
  m: { suffix: 'm', word: 'm', scale: 1 },
  s: { suffix: 's', word: 's', scale: 1 },
  mPerS: { suffix: 'mPerS', word: 'm/s', scale: 1 },
  kg: { suffix: 'kg', word: 'kg', scale: 1 },
  count: { suffix: 'count', word: '', scale: 1 },
  share: { suffix: 'share', word: '', scale: 1 },
  rev: { suffix: 'rev', word: 'rev', scale: 1 },
} as const satisfies Readonly<Record<string, OutUnit>>;

/** "-20 to 30 (deg)": the numbers are SI, what is said has the unit that is typed. */
export function wordSpan(from: number, to: number, { scale, word }: OutUnit): string {
  return `${outside(from, scale)} to ${outside(to, scale)}${word ? ` (${word})` : ''}`;
}

/** Without the last bits of a change of unit. */
export const outside = (x: number, scale: number): number => Number((x * scale).toPrecision(12));
