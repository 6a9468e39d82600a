/** Numbers of a sheet for people: in their unit, with as many figures as they are known to. */
import type { Quantity } from './sheet-result.ts';

/** Half the middle 95 % of the draws, in the unit of the quantity; undefined for what is exact. */
export function plusMinus(q: Quantity): number | undefined {
  if (q.drawLow === undefined || q.drawHigh === undefined) return undefined;
  return (q.drawHigh - q.drawLow) / 2 / q.unit.factor;
}

/** "off by a factor of 1.3": how far the ends lie from the middle, where both have one sign. */
export function spreadFactor(q: Quantity): number | undefined {
  const { drawLow: a, drawHigh: b } = q;
  if (a === undefined || b === undefined || !(a * b > 0)) return undefined;
  const factor = Math.sqrt(Math.max(a / b, b / a));
  return Number.isFinite(factor) ? factor : undefined;
}

interface Figures {
  readonly value: string;
  readonly plusMinus?: string;
  readonly unit: string;
}

/** The ± to two figures, the value to the same place; exact values to four figures. */
export function figuresOf(q: Quantity): Figures {
  const value = q.value / q.unit.factor;
  const unit = showUnit(q.unit.name);
  const pm = plusMinus(q);
  // what cancels leaves rounding
  if (pm === undefined || !Number.isFinite(pm) || !(pm > 1e-12 * Math.abs(value)))
    return { value: formatFigures(value), unit };
  const decimals = Math.min(Math.max(1 - Math.floor(Math.log10(pm)), 0), 9);
  if (Math.abs(value) >= 1e7 || pm < 1e-8)
    return { value: formatFigures(value), plusMinus: formatFigures(pm, 2), unit };
  return { value: group(value.toFixed(decimals)), plusMinus: group(pm.toFixed(decimals)), unit };
}

/** A readout in the unit of the line it is set beside. */
export const figuresIn = (si: number, q: Quantity): string => formatFigures(si / q.unit.factor);

export function formatFigures(x: number, figures = 4): string {
  if (!Number.isFinite(x)) return 'no bound';
  const size = Math.abs(x);
  if (x !== 0 && (size >= 1e7 || size < 1e-4))
    return minus(
      x
        .toExponential(figures - 1)
        .replace(/\.?0+e/, 'e')
        .replace('e+', 'e'),
    );
  const decimals = x === 0 ? 0 : Math.max(figures - 1 - Math.floor(Math.log10(size)), 0);
  const fixed = x.toFixed(decimals);
  return group(decimals > 0 ? fixed.replace(/\.?0+$/, '') : fixed);
}

const minus = (text: string): string => text.replace(/^-/, '−');
/** 1254 is 1,254 */
function group(fixed: string): string {
  const [whole, rest] = fixed.split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return minus(rest === undefined ? grouped : `${grouped}.${rest}`);
}

/** kg m^2/s^2 as kg·m²/s² */
export const showUnit = (name: string): string =>
  name
    .replace(/\^2\b/g, '²')
    .replace(/\^3\b/g, '³')
    .replace(/(?<=[A-Za-z²³)]) (?=[A-Za-z(])/g, '·')
    .replace(/\bdeg\b/g, '°')
    .replace(/\binch\b/g, 'in');

/** A value inside a formula: four figures, with its unit where this is not the SI one. */
export function figuresWithUnit({ value, shown }: { value: number; shown: { name: string; factor: number } }): string {
  const figures = formatFigures(value / shown.factor).replace(/,/g, '');
  if (shown.factor === 1) return figures;
  return shown.name === 'deg' ? `${figures}°` : `${figures} ${showUnit(shown.name)}`;
}

/** A readout inside a formula, in SI. */
export const figuresOfLink = ({ value }: { value: number }): string => formatFigures(value).replace(/,/g, '');
