/**
 * A schedule that is a function of time, tabulated: K and u (shape-source.ts) as Chebyshev series on each span between
 * breaks, of the degree that the motion needs; spans at rest are one value. Built where it is first read.
 */
import type { Body } from '../body/body.ts';
import { LARGEST_DEGREE, POINTS, seriesInto } from '../math/chebyshev.ts';
import type { Schedule } from '../schedule/schedule.ts';
import { type CellSource, DirectSource } from './shape-source.ts';
import { TooFastError } from './too-fast.ts';

interface Piece {
  readonly from: number;
  readonly to: number;
  /** (degree + 1) x 9, row by row; degree 0 is a constant */
  readonly series: Float64Array;
  readonly degree: number;
}

/** A series ends where all later coefficients are below this share of the largest value. */
const CONVERGED = 1e-12;
/** First degree tried; doubled, on the points already sampled, where that will do. */
const FIRST_DEGREE = 16;
/** Longest stretch of one series, s. */
const LONGEST = 0.4;
const WIDTH = 9;

const samples = new Float64Array((LARGEST_DEGREE + 1) * WIDTH);
const trial = new Float64Array((LARGEST_DEGREE + 1) * WIDTH);
const tails = new Float64Array(LARGEST_DEGREE + 1);

export class ShapeTable implements CellSource {
  private readonly direct: DirectSource;
  private readonly moving: readonly (readonly [number, number])[];
  private readonly edges: number[];
  private readonly pieces: Piece[][];
  private span = 0;
  private last: Piece | undefined;
  /** Keyed by span, then by level and index; a cell is asked for again whenever only the take-off has changed. */
  private readonly cells = new Map<number, Map<number, Float64Array>>();
  private readonly one = new Float64Array(WIDTH);
  private readonly none = new Float64Array(4);

  constructor(body: Body, schedule: Schedule) {
    this.direct = new DirectSource(body, schedule);
    this.moving = schedule.moving;
    this.edges = [Number.NEGATIVE_INFINITY, ...schedule.breaks, Number.POSITIVE_INFINITY];
    this.pieces = this.edges.slice(1).map(() => []);
  }

  coefInto(t: number, _quat: Float64Array, out: Float64Array): void {
    sumInto(this.last && this.last.from <= t && t <= this.last.to ? this.last : this.find(t), t, out, 0);
  }

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
    let known = ofSpan.get(key);
    if (!known) {
      known = new Float64Array(nodes.length * WIDTH);
      for (let i = 0; i < nodes.length; i++) {
        const t = start + nodes[i] * length;
        const piece = middle.from <= t && t <= middle.to ? middle : this.find(t);
        sumInto(piece, t, known, WIDTH * i);
      }
      ofSpan.set(key, known);
    }
    return known;
  }

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
      this.direct.coefInto(t, this.none, this.one);
      list.push({ from, to, series: this.one.slice(), degree: 0 });
      return;
    }
    const pieces = Math.max(1, Math.ceil((to - from) / LONGEST));
    const cut = (i: number): number => (i === pieces ? to : from + ((to - from) * i) / pieces);
    for (let i = 0; i < pieces; i++) this.fit(cut(i), cut(i + 1), list);
  }

  private fit(from: number, to: number, list: Piece[]): void {
    for (let n = FIRST_DEGREE; n <= LARGEST_DEGREE; n *= 2) {
      this.sample(from, to, n);
      seriesInto(samples, n, WIDTH, trial);
      measureTails(n);
      // two in a row, since the odd or the even ones may vanish
      let degree = n;
      while (degree > 1 && tails[degree] < CONVERGED) degree--;
      if (degree <= n - 2) {
        list.push({ from, to, series: trial.slice(0, (degree + 1) * WIDTH), degree });
        return;
      }
      // fell from the half to the end of the series by a ratio r: twice the degree would bring it down by r^2 more
      const end = Math.max(tails[n], tails[n - 1]);
      const r = end / Math.max(tails[n / 2], tails[n / 2 - 1]);
      if (!(end * r * r < CONVERGED)) break;
    }
    if (to - from < 1e-6) throw new TooFastError('the joints move', `between ${from} s and ${to} s`);
    this.fit(from, (from + to) / 2, list);
    this.fit((from + to) / 2, to, list);
  }

  /** Values at the points of degree n; those of n / 2 are there already, but for the first degree. */
  private sample(from: number, to: number, n: number): void {
    const stride = LARGEST_DEGREE / n;
    const every = n === FIRST_DEGREE ? stride : 2 * stride;
    for (let j = n === FIRST_DEGREE ? 0 : stride; j <= LARGEST_DEGREE; j += every) {
      this.direct.coefInto(from + ((POINTS[j] + 1) / 2) * (to - from), this.none, this.one);
      samples.set(this.one, j * WIDTH);
    }
  }
}

/** Largest coefficient of each degree, against the largest value of its own kind: K and u have different units. */
function measureTails(n: number): void {
  let sizeK = 0;
  let sizeU = 1;
  for (let j = 0; j <= LARGEST_DEGREE; j += LARGEST_DEGREE / n)
    for (let c = 0; c < WIDTH; c++) {
      const size = Math.abs(samples[j * WIDTH + c]);
      if (c < 6) sizeK = Math.max(sizeK, size);
      else sizeU = Math.max(sizeU, size);
    }
  for (let k = 0; k <= n; k++) {
    let most = 0;
    for (let c = 0; c < WIDTH; c++) most = Math.max(most, Math.abs(trial[k * WIDTH + c]) / (c < 6 ? sizeK : sizeU));
    tails[k] = most;
  }
}

/** Clenshaw's recurrence, all nine at once in variables: arrays would cost twice the time. */
function sumInto({ from, to, series: s, degree }: Piece, t: number, out: Float64Array, o: number): void {
  if (degree === 0) {
    for (let c = 0; c < WIDTH; c++) out[o + c] = s[c];
    return;
  }
  const x = (2 * (t - from)) / (to - from) - 1;
  const y = 2 * x;
  let [a0, a1, a2, a3, a4, a5, a6, a7, a8] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  let [b0, b1, b2, b3, b4, b5, b6, b7, b8] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (let k = degree * WIDTH; k > 0; k -= WIDTH) {
    const n0 = s[k] + y * a0 - b0;
    const n1 = s[k + 1] + y * a1 - b1;
    const n2 = s[k + 2] + y * a2 - b2;
    const n3 = s[k + 3] + y * a3 - b3;
    const n4 = s[k + 4] + y * a4 - b4;
    const n5 = s[k + 5] + y * a5 - b5;
    const n6 = s[k + 6] + y * a6 - b6;
    const n7 = s[k + 7] + y * a7 - b7;
    const n8 = s[k + 8] + y * a8 - b8;
    b0 = a0;
    b1 = a1;
    b2 = a2;
    b3 = a3;
    b4 = a4;
    b5 = a5;
    b6 = a6;
    b7 = a7;
    b8 = a8;
    a0 = n0;
    a1 = n1;
    a2 = n2;
    a3 = n3;
    a4 = n4;
    a5 = n5;
    a6 = n6;
    a7 = n7;
    a8 = n8;
  }
  out[o] = s[0] + x * a0 - b0;
  out[o + 1] = s[1] + x * a1 - b1;
  out[o + 2] = s[2] + x * a2 - b2;
  out[o + 3] = s[3] + x * a3 - b3;
  out[o + 4] = s[4] + x * a4 - b4;
  out[o + 5] = s[5] + x * a5 - b5;
  out[o + 6] = s[6] + x * a6 - b6;
  out[o + 7] = s[7] + x * a7 - b7;
  out[o + 8] = s[8] + x * a8 - b8;
}
