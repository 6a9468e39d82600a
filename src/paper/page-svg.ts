/** One page of paper as SVG: its size in millimetres, the typeface inside of it, white under everything. */
import { escapeText, round } from './set-text.ts';

/** Units of a drawing in an inch: 300 dpi are two pixels a unit. */
const UNITS_PER_INCH = 150;
export const PER_MM = UNITS_PER_INCH / 25.4;

const PAPER_FONT = 'Shapeflight Paper';

export interface PaperPage {
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Files of the typeface, base64 of WOFF2: one for every set of letters that is needed. */
export interface Typeface {
  readonly latin: string;
  /** of letters beyond Latin 1; needed where a title or a name has one */
  readonly latinExt?: string;
}

interface PageContent {
  readonly widthMm: number;
  readonly heightMm: number;
  /** what a reader is read */
  readonly title: string;
  readonly markup: string;
  /** where it is from, as an element of an SVG */
  readonly origin?: string;
  readonly typeface?: Typeface;
}

/** Letters that the latin file has not. */
export const isBeyondLatin = (text: string): boolean => /[\u0100-\u02ff\u1e00-\u1eff]/.test(text);

const face = (base64: string, range: string): string =>
  `@font-face{font-family:'${PAPER_FONT}';font-weight:300 700;src:url(data:font/woff2;base64,${base64}) format('woff2');unicode-range:${range}}`;

export function pageSvg({ widthMm, heightMm, title, markup, origin, typeface }: PageContent): PaperPage {
  const [width, height] = [widthMm * PER_MM, heightMm * PER_MM];
  const faces = typeface
    ? [
        face(typeface.latin, 'U+0000-00FF,U+2000-206F,U+2190-2193,U+2212,U+2248'),
        ...(typeface.latinExt ? [face(typeface.latinExt, 'U+0100-02FF,U+1E00-1EFF')] : []),
      ]
    : [];
  const svg = [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${round(width)} ${round(height)}" width="${round(widthMm)}mm" height="${round(heightMm)}mm" role="img" font-family="'${PAPER_FONT}', 'Radio Canada', 'Noto Sans', 'DejaVu Sans', sans-serif" style="font-variant-numeric:tabular-nums">`,
    `<title>${escapeText(title)}</title>`,
    ...(origin ? [origin] : []),
    ...(faces.length > 0 ? [`<style>${faces.join('')}</style>`] : []),
    `<rect width="${round(width)}" height="${round(height)}" fill="#ffffff"/>`,
    markup,
    '</svg>\n',
  ].join('\n');
  return { svg, widthMm, heightMm };
}
