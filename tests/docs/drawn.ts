/** What a picture of docs/pictures/ shows: its labels with their places, and the extent of what is drawn in each colour, px. */
export interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

export interface Extent {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function labelsOf(svg: string): Label[] {
  return [...svg.matchAll(/<text x="([^"]+)" y="([^"]+)"[^>]*>([^<]*)<\/text>/g)].map(([, x, y, text]) => ({
    text,
    x: Number(x),
    y: Number(y),
  }));
}

/** The corners of every path with this fill or stroke, in order; arcs are left out. */
function pathsOf(svg: string): { readonly colour: string; readonly points: readonly (readonly [number, number])[] }[] {
  return [...svg.matchAll(/<path d="([^"]+)"([^>]*)>/g)].flatMap(([, d, rest]) => {
    const colour = /var\(--([\w-]+)\)/.exec(rest)?.[1];
    if (!colour || d.includes('A')) return [];
    const numbers = [...d.matchAll(/-?\d+(?:\.\d+)?/g)].map(Number);
    return [
      {
        colour,
        points: Array.from({ length: numbers.length / 2 }, (_, i) => [numbers[2 * i], numbers[2 * i + 1]] as const),
      },
    ];
  });
}

/** By colour; `from` and `to` keep only what lies wholly between two places across the picture. */
export function extentsOf(
  svg: string,
  from = Number.NEGATIVE_INFINITY,
  to = Number.POSITIVE_INFINITY,
): Map<string, Extent> {
  const found = new Map<string, Extent>();
  for (const { colour, points } of pathsOf(svg)) {
    if (points.some(([x]) => x < from || x > to)) continue;
    for (const [x, y] of points) {
      const e = found.get(colour) ?? { left: x, right: x, top: y, bottom: y };
      found.set(colour, {
        left: Math.min(e.left, x),
        right: Math.max(e.right, x),
        top: Math.min(e.top, y),
        bottom: Math.max(e.bottom, y),
      });
    }
  }
  return found;
}
