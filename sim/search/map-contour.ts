/**
 * Contour lines of a grid by marching squares (Lorensen & Cline 1987, SIGGRAPH 21:163, in two dimensions): linear along
 * the edges of a cell, saddles by the mean of the four corners. Cells with a corner that is not a number have none.
 */
export interface Contour {
  readonly level: number;
  /** each a list of x, y in grid units: columns and rows from 0; closed lines end where they start */
  readonly lines: readonly (readonly number[])[];
}

/** `values`: row by row, (rows x columns). */
export function findContour(values: ArrayLike<number>, columns: number, rows: number, level: number): Contour {
  // points stand on edges of the grid: 2 n on the one to the right of place n, 2 n + 1 on the one upwards
  const next = new Map<number, number[]>();
  const join = (a: number, b: number): void => {
    next.set(a, [...(next.get(a) ?? []), b]);
    next.set(b, [...(next.get(b) ?? []), a]);
  };
  for (let j = 0; j + 1 < rows; j++)
    for (let i = 0; i + 1 < columns; i++) {
      const n = j * columns + i;
      const [a, b, c, d] = [values[n], values[n + 1], values[n + columns + 1], values[n + columns]];
      if (Number.isNaN(a + b + c + d)) continue;
      const [bottom, right, top, left] = [2 * n, 2 * (n + 1) + 1, 2 * (n + columns), 2 * n + 1];
      const above = (x: number): boolean => x >= level;
      const crossed = [
        ...(above(a) !== above(b) ? [bottom] : []),
        ...(above(b) !== above(c) ? [right] : []),
        ...(above(c) !== above(d) ? [top] : []),
        ...(above(d) !== above(a) ? [left] : []),
      ];
      if (crossed.length === 2) join(crossed[0], crossed[1]);
      if (crossed.length < 4) continue;
      // a saddle: the middle goes with a and c, or with b and d
      if (above((a + b + c + d) / 4) === above(a)) {
        join(bottom, right);
        join(top, left);
      } else {
        join(left, bottom);
        join(right, top);
      }
    }
  const placeOf = (edge: number): readonly [number, number] => {
    const n = edge >> 1;
    const [i, j] = [n % columns, Math.floor(n / columns)];
    const a = values[n];
    const b = values[edge % 2 ? n + columns : n + 1];
    const s = (level - a) / (b - a);
    return edge % 2 ? [i, j + s] : [i + s, j];
  };
  const lines: number[][] = [];
  const walk = (start: number): void => {
    const line: number[] = [];
    let before = -1;
    let at: number | undefined = start;
    while (at !== undefined) {
      line.push(...placeOf(at));
      const open: number[] = next.get(at) ?? [];
      next.delete(at);
      const from: number = at;
      at = open.find((e) => e !== before && next.has(e));
      before = from;
    }
    lines.push(line);
  };
  // open lines from their ends, then what is left is closed
  for (const [edge, list] of [...next]) if (list.length === 1 && next.has(edge)) walk(edge);
  for (const edge of [...next.keys()])
    if (next.has(edge)) {
      walk(edge);
      const line = lines[lines.length - 1];
      line.push(line[0], line[1]);
    }
  return { level, lines };
}

/** Values nearer to each other than this share of 1 (rad, rev, m, s ...) differ by rounding alone. */
const ROUNDING = 1e-9;

/** Some five to ten round levels between the least and the greatest value; none where nothing varies. */
export function roundLevels(values: ArrayLike<number>, most = 10): number[] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < values.length; i++)
    if (Number.isFinite(values[i])) {
      low = Math.min(low, values[i]);
      high = Math.max(high, values[i]);
    }
  if (!(high - low > ROUNDING * Math.max(1, Math.abs(low), Math.abs(high)))) return [];
  const rough = (high - low) / most;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((k) => k * ten).find((s) => s >= rough) ?? 10 * ten;
  const out: number[] = [];
  for (let k = Math.ceil(low / step); k * step <= high; k++) out.push(k * step);
  return out;
}
