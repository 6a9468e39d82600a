/** What an SVG of paper holds, read back from its text: figures as contours, texts with their sizes and places. */
import { lineWidth } from '../../src/paper/set-text.ts';

interface ReadFigure {
  readonly letter: string;
  readonly t: number;
  readonly at: readonly [number, number];
  /** closed contours in their order, x and y */
  readonly contours: readonly (readonly number[])[];
}

export function figuresIn(svg: string): ReadFigure[] {
  return [...svg.matchAll(/<g data-figure="(\S+) ([\d.]+)" data-at="([-\d.]+) ([-\d.]+)">(.*?)<\/g>/gs)].map(
    ([, letter, t, x, y, inner]) => ({
      letter,
      t: Number(t),
      at: [Number(x), Number(y)] as const,
      contours: [...inner.matchAll(/<path d="([^"]+)"/g)].flatMap(([, d]) =>
        d
          .split('Z')
          .filter((part, i, all) => part !== '' && i < all.length - 1)
          .map((part) => [...part.matchAll(/-?\d+(?:\.\d+)?/g)].map(Number)),
      ),
    }),
  );
}

interface ReadText {
  readonly text: string;
  readonly size: number;
  /** of its widest estimate */
  readonly left: number;
  readonly right: number;
  readonly y: number;
}

const plainOf = (text: string): string =>
  text.replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&quot;', '"').replaceAll('&amp;', '&');

/** Those that set-text.ts writes. */
export function textsIn(svg: string): ReadText[] {
  const found = svg.matchAll(
    /<text x="([-\d.]+)" y="([-\d.]+)" font-size="([\d.]+)" text-anchor="(\w+)"[^>]*>(.*?)<\/text>/gs,
  );
  return [...found].map(([, x, y, size, anchor, inner]) => {
    const runs = [...inner.matchAll(/<tspan font-weight="(\d+)">(.*?)<\/tspan>/gs)].map(([, weight, text]) => ({
      text: plainOf(text),
      weight: Number(weight),
    }));
    const width = lineWidth(runs, Number(size));
    const left = Number(x) - (anchor === 'middle' ? width / 2 : anchor === 'end' ? width : 0);
    return { text: runs.map(({ text }) => text).join(''), size: Number(size), left, right: left + width, y: Number(y) };
  });
}
