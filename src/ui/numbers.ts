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

/** Nought of other scripts whose keyboards give digits of their own: Arabic, Persian, Devanagari, Bengali, Thai, full width. */
const NOUGHTS = [0x660, 0x6f0, 0x966, 0x9e6, 0xe50, 0xff10];

/** Digits and the decimal sign of any of these scripts as 0 to 9 and a point, without marks of direction. */
export const withPlainDigits = (typed: string): string =>
  typed
    .replace(/\p{Nd}/gu, (digit) => {
      const code = digit.codePointAt(0) ?? 0;
      const nought = NOUGHTS.find((first) => code >= first && code < first + 10);
      return nought === undefined ? digit : String(code - nought);
    })
    .replace(/[\u066b\uff0e]/g, '.')
    .replace(/[\u061c\u066c\u200e\u200f\u2066-\u2069]/g, '');

/** Reads what a person typed: comma or point, any minus, spaces in thousands, digits of other scripts. NaN when it is no number. */
export function parseNumber(typed: string): number {
  const plain = withPlainDigits(typed)
    .trim()
    .replace(/[\u2212\u2013]/g, '-')
    .replace(',', '.')
    .replace(/[\s\u202f\u00a0]/g, '');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : Number.NaN;
}

/** A name inside a sentence: its first letter small, unless it names a form ("T"). */
export const soften = (name: string): string =>
  /^\p{Lu}\p{Ll}/u.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
