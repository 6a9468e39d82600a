/**
 * A schedule that is a function of time, tabulated: K and u (shape-source.ts) as Chebyshev series on each span between
 * breaks, subdivided until the series has converged; spans at rest are one value. Built where it is first read.
 * Chebyshev-Lobatto interpolation on nested points: Trefethen, Approximation Theory and Practice (SIAM 2013), ch. 2-3.
 */
import type { Body } from '../body/body.ts';
import type { Schedule } from '../schedule/schedule.ts';
import { type CellSource, DirectSource } from './shape-source.ts';

interface Piece {
  readonly from: number;
  readonly to: number;
  /** (degree + 1) x 9, row by row; degree 0 is a constant */
  readonly series: Float64Array;
  readonly degree: number;
}

/** The last coefficients must fall below this share of the largest value before a series counts as converged. */
const CONVERGED = 1e-10;
/** One degree: low enough that evaluating is cheap; pieces are cut to suit. */
const DEGREE = 12;
/** First cut of a moving span, s. */
const PIECE = 0.025;
const WIDTH = 9;

let made: { x: Float64Array; transform: Float64Array } | undefined;

/** Points cos(pi j / n) and the matrix that takes values there to Chebyshev coefficients. */
function grid(n: number): { x: Float64Array; transform: Float64Array } {
  if (made) return made;
  const x = Float64Array.from({ length: n + 1 }, (_, j) => Math.cos((Math.PI * j) / n));
  const transform = new Float64Array((n + 1) * (n + 1));
  for (let k = 0; k <= n; k++)
    for (let j = 0; j <= n; j++) {
      const ends = (j === 0 || j === n ? 0.5 : 1) * (k === 0 || k === n ? 0.5 : 1);
      transform[k * (n + 1) + j] = ((2 * ends) / n) * Math.cos((Math.PI * k * j) / n);
    }
  made = { x, transform };
  return made;
}

export class ShapeTable implements CellSource {
  private readonly direct: DirectSource;
  private readonly moving: readonly (readonly [number, number])[];
  private readonly edges: number[];
  private readonly pieces: Piece[][];
  private span = 0;
  private last: Piece | undefined;
  private readonly b1 = new Float64Array(WIDTH);
  private readonly b2 = new Float64Array(WIDTH);

  constructor(body: Body, schedule: Schedule) {
    this.direct = new DirectSource(body, schedule);
    this.moving = schedule.moving;
    this.edges = [Number.NEGATIVE_INFINITY, ...schedule.breaks, Number.POSITIVE_INFINITY];
    this.pieces = this.edges.slice(1).map(() => []);
  }

  coefInto(t: number, _quat: Float64Array, out: Float64Array): void {
    const piece = this.last && this.last.from <= t && t <= this.last.to ? this.last : this.find(t);
    const { series, degree } = piece;
    if (degree === 0) {
      out.set(series);
      return;
    }
    // Clenshaw, all nine at once
    const x = (2 * (t - piece.from)) / (piece.to - piece.from) - 1;
    const { b1, b2 } = this;
    b1.fill(0);
    b2.fill(0);
    for (let k = degree; k > 0; k--) {
      const o = k * WIDTH;
      for (let c = 0; c < WIDTH; c++) {
        const next = series[o + c] + 2 * x * b1[c] - b2[c];
        b2[c] = b1[c];
        b1[c] = next;
      }
    }
    for (let c = 0; c < WIDTH; c++) out[c] = series[c] + x * b1[c] - b2[c];
  }

  /** Keyed by span, then by level and index; a cell is asked for again whenever only the take-off has changed. */
  private readonly cells = new Map<number, Map<number, Float64Array>>();

  cell(from: number, to: number, level: number, index: number, nodes: readonly number[]): Float64Array {
    const start = from + ((to - from) * index) / 2 ** level;
    const length = (to - from) / 2 ** level;
    const middle = this.find(start + length / 2);
    if (middle.degree === 0) return middle.series;
    // from < to are finite times of one span: their midpoint tells spans apart
    let ofSpan = this.cells.get(from + to);
    if (!ofSpan) {
      ofSpan = new Map();
      this.cells.set(from + to, ofSpan);
    }
    const key = 2 ** level + index;
    const known = ofSpan.get(key);
    if (known) return known;
    const made = new Float64Array(nodes.length * WIDTH);
    const one = this.value;
    for (let i = 0; i < nodes.length; i++) {
      this.coefInto(start + nodes[i] * length, this.none, one);
      made.set(one, WIDTH * i);
    }
    ofSpan.set(key, made);
    return made;
  }

  private readonly value = new Float64Array(WIDTH);

  private find(t: number): Piece {
    const { edges } = this;
    if (!(edges[this.span] <= t && t <= edges[this.span + 1])) {
      let lo = 0;
      let hi = edges.length - 2;
      while (lo < hi) {
        const mid = (lo + hi + 1) >> 1;
        if (edges[mid] <= t) lo = mid;
        else hi = mid - 1;
      }
      this.span = lo;
    }
    const list = this.pieces[this.span];
    if (list.length === 0) this.build(edges[this.span], edges[this.span + 1], list);
    let lo = 0;
    let hi = list.length - 1;
    while (lo < hi) {
      const mid = (lo + hi) >> 1;
      if (t <= list[mid].to) hi = mid;
      else lo = mid + 1;
    }
    this.last = list[lo];
    return this.last;
  }

  private build(from: number, to: number, list: Piece[]): void {
    const middle = (from + to) / 2;
    const moves = this.moving.some(([a, b]) => a <= middle && middle <= b);
    if (!moves || !Number.isFinite(from) || !Number.isFinite(to)) {
      const t = Number.isFinite(middle) ? middle : Number.isFinite(to) ? to : Number.isFinite(from) ? from : 0;
      list.push({ from, to, series: this.sample(t), degree: 0 });
      return;
    }
    const pieces = Math.max(1, Math.ceil((to - from) / PIECE));
    for (let i = 0; i < pieces; i++) this.fit(from + ((to - from) * i) / pieces, i + 1 === pieces ? to : from + ((to - from) * (i + 1)) / pieces, list);
  }

  private fit(from: number, to: number, list: Piece[]): void {
    const { x, transform } = grid(DEGREE);
    const values = Array.from(x, (xj) => this.sample(from + ((xj + 1) / 2) * (to - from)));
    const series = coefficients(values, transform, DEGREE);
    if (converged(series, values, DEGREE)) {
      list.push({ from, to, series, degree: DEGREE });
      return;
    }
    if (to - from < 1e-6) throw new RangeError(`schedule: joint motion between ${from} s and ${to} s is too fast to follow`);
    this.fit(from, (from + to) / 2, list);
    this.fit((from + to) / 2, to, list);
  }

  private readonly none = new Float64Array(4);
  private sample(t: number): Float64Array {
    const out = new Float64Array(WIDTH);
    this.direct.coefInto(t, this.none, out);
    return out;
  }
}

function coefficients(values: Float64Array[], transform: Float64Array, n: number): Float64Array {
  const series = new Float64Array((n + 1) * WIDTH);
  for (let k = 0; k <= n; k++)
    for (let j = 0; j <= n; j++) {
      const w = transform[k * (n + 1) + j];
      const v = values[j];
      for (let c = 0; c < WIDTH; c++) series[k * WIDTH + c] += w * v[c];
    }
  return series;
}

/** Tail against the largest value of its own kind: K and u have different units. */
function converged(series: Float64Array, values: Float64Array[], n: number): boolean {
  let sizeK = 0;
  let sizeU = 1;
  for (const v of values)
    for (let c = 0; c < WIDTH; c++) {
      if (c < 6) sizeK = Math.max(sizeK, Math.abs(v[c]));
      else sizeU = Math.max(sizeU, Math.abs(v[c]));
    }
  for (let k = n - 1; k <= n; k++)
    for (let c = 0; c < WIDTH; c++) if (Math.abs(series[k * WIDTH + c]) > CONVERGED * (c < 6 ? sizeK : sizeU)) return false;
  return true;
}
