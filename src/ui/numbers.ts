/** Numbers as people read them: true minus, narrow space in thousands, no more decimals than the model deserves. */
const MINUS = '\u2212';
const THIN = '\u202f';

export function formatNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return '–';
  const text = Math.abs(value).toFixed(decimals);
  const [whole, fraction] = text.split('.');
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN) : whole;
  const zero = Number(text) === 0;
  return (value < 0 && !zero ? MINUS : '') + (fraction ? `${grouped}.${fraction}` : grouped);
}

/** A tick with as many decimals as it has, at most two. */
export function formatTick(v: number): string {
  const decimals = [0, 1, 2].find((n) => Math.abs(v - Number(v.toFixed(n))) < 1e-9) ?? 2;
  return formatNumber(v, decimals);
}

/** One decimal says it exactly. */
export const isTidy = (v: number): boolean => Math.abs(v - Number(v.toFixed(1))) < 1e-9;

/** Reads what a person typed: comma or point, any minus, spaces in thousands. NaN when it is no number. */
export function parseNumber(typed: string): number {
  const plain = typed
    .trim()
    .replace(/[\u2212\u2013]/g, '-')
    .replace(',', '.')
    .replace(/[\s\u202f\u00a0]/g, '');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
}

/** A name inside a sentence: its first letter small, unless it names a form ("T"). */
export const soften = (name: string): string =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
