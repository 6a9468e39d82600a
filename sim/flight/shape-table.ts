/**
 * A schedule that is a function of time, tabulated: K and u (shape-source.ts) as Chebyshev series on each span between
 * breaks, of the degree that the motion needs; spans at rest are one value. Built where it is first read.
 */
import type { Body } from '../body/body.ts';
import { LARGEST_DEGREE, POINTS, seriesInto } from '../math/chebyshev.ts';
import { lastUpTo } from '../math/sorted.ts';
import type { Schedule } from '../schedule/schedule.ts';
import { type CellSource, DirectSource, SpanSource, WIDTH } from './shape-source.ts';
import { TooFastError } from './too-fast.ts';

interface Piece {
  readonly from: number;
  readonly to: number;
  /** (degree + 1) x 9, row by row; degree 0 is a constant */
  readonly series: Float64Array;
  readonly degree: number;
}

/** A series ends where all later coefficients are below this share of the largest value, unless less is asked for. */
export const CONVERGED = 1e-12;
/** First degree tried; doubled, on the points already sampled, where that will do. */
const FIRST_DEGREE = 12;
/** Longest stretch of one series, s. */
const LONGEST = 0.4;
/** Cells kept in one array. */
const BLOCK = 32;

const samples = new Float64Array((LARGEST_DEGREE + 1) * WIDTH);
const trial = new Float64Array((LARGEST_DEGREE + 1) * WIDTH);
const tails = new Float64Array(LARGEST_DEGREE + 1);

export class ShapeTable implements CellSource {
  private readonly direct: DirectSource;
  private readonly schedule: Schedule;
  private readonly edges: number[];
  private readonly pieces: Piece[][];
  private span = 0;
  private last: Piece | undefined;
  /** Keyed by span, then by level and index; a cell is asked for again whenever only the take-off has changed. */
  private readonly cells = new Map<number, Map<number, number>>();
  private kept = 0;
  private readonly blocks: Float64Array[] = [];
  values: Float64Array = new Float64Array(WIDTH);
  at = 0;
  stride = 0;
  private readonly one = new Float64Array(WIDTH);
  private readonly none = new Float64Array(4);

  private readonly converged: number;

  constructor(body: Body, schedule: Schedule, converged = CONVERGED) {
    this.converged = converged;
    this.direct = new DirectSource(body, schedule);
    this.schedule = schedule;
    this.edges = [Number.NEGATIVE_INFINITY, ...schedule.breaks, Number.POSITIVE_INFINITY];
    this.pieces = this.edges.slice(1).map(() => []);
  }

  coefInto(t: number, _quat: Float64Array, out: Float64Array): void {
    // strictly inside: at an edge the piece may not depend on where the last look was
    sumInto(this.last && this.last.from < t && t < this.last.to ? this.last : this.find(t), t, out, 0);
  }

  seek(from: number, to: number, level: number, index: number, nodes: readonly number[]): void {
    const cells = 2 ** level;
    const length = (to - from) / cells;
    const start = from + ((to - from) * index) / cells;
    const middle = this.find(start + length / 2);
    if (middle.degree === 0) {
      this.values = middle.series;
      this.at = 0;
      this.stride = 0;
      return;
    }
    // from < to are finite times of one span: their midpoint tells spans apart
    let ofSpan = this.cells.get(from + to);
    if (!ofSpan) {
      ofSpan = new Map();
      this.cells.set(from + to, ofSpan);
    }
    const width = nodes.length * WIDTH;
    const key = cells + index;
    const known = ofSpan.get(key);
    const place = known ?? this.kept++;
    const block = Math.floor(place / BLOCK);
    if (block === this.blocks.length) this.blocks.push(new Float64Array(BLOCK * width));
    this.values = this.blocks[block];
    this.at = (place % BLOCK) * width;
    this.stride = WIDTH;
    if (known !== undefined) return;
    ofSpan.set(key, place);
    // the first stage of a step is the last of the step before, so node 0 is never read
    for (let i = 1; i < nodes.length; i++) {
      const o = this.at + WIDTH * i;
      if (nodes[i] === nodes[i - 1]) {
        this.values.copyWithin(o, o - WIDTH, o);
        continue;
      }
      const t = start + nodes[i] * length;
      sumInto(middle.from <= t && t <= middle.to ? middle : this.find(t), t, this.values, o);
    }
  }

  private find(t: number): Piece {
    const { edges } = this;
    if (!(edges[this.span] <= t && t < edges[this.span + 1])) {
      this.span = lastUpTo(edges, t, edges.length - 1);
    }
    const list = this.pieces[this.span];
    if (list.length === 0) this.build(edges[this.span], edges[this.span + 1], list);
    this.last = list.find((piece) => t <= piece.to) ?? list[list.length - 1];
    return this.last;
  }

  private build(from: number, to: number, list: Piece[]): void {
    const middle = (from + to) / 2;
    // samples break nowhere between their ends: such a span may rest in its middle and move beside it
    if (!Number.isFinite(from) || !Number.isFinite(to) || !this.schedule.movesIn(from, to)) {
      const t = Number.isFinite(middle) ? middle : Number.isFinite(to) ? to : Number.isFinite(from) ? from : 0;
      this.direct.coefInto(t, this.none, this.one);
      list.push({ from, to, series: this.one.slice(), degree: 0 });
      return;
    }
    const pieces = Math.max(1, Math.ceil((to - from) / LONGEST));
    const cut = (i: number): number => (i === pieces ? to : from + ((to - from) * i) / pieces);
    const source = new SpanSource(this.direct, from, to);
    for (let i = 0; i < pieces; i++) this.fit(source, cut(i), cut(i + 1), list);
  }

  private fit(source: SpanSource, from: number, to: number, list: Piece[]): void {
    for (let n = FIRST_DEGREE; n <= LARGEST_DEGREE; n *= 2) {
      sample(source, from, to, n);
      seriesInto(samples, n, WIDTH, trial);
      measureTails(n);
      // two in a row, since the odd or the even ones may vanish
      let degree = n;
      while (degree > 1 && tails[degree] < this.converged) degree--;
      if (degree <= n - 2) {
        list.push({ from, to, series: trial.slice(0, (degree + 1) * WIDTH), degree });
        return;
      }
      if (n === FIRST_DEGREE) continue;
      // fell from the half to the end of the series by a ratio r: twice the degree would bring it down by r^2 more
      const end = Math.max(tails[n], tails[n - 1]);
      const r = end / Math.max(tails[n / 2], tails[n / 2 - 1]);
      if (!(end * r * r < this.converged)) break;
    }
    if (to - from < 1e-6) throw new TooFastError('the joints move', `between ${from} s and ${to} s`);
    this.fit(source, from, (from + to) / 2, list);
    this.fit(source, (from + to) / 2, to, list);
  }
}

/** Values at the points of degree n; those of n / 2 are there already, but for the first degree. */
function sample(source: SpanSource, from: number, to: number, n: number): void {
  const stride = LARGEST_DEGREE / n;
  const first = n === FIRST_DEGREE;
  for (let j = first ? 0 : stride; j <= LARGEST_DEGREE; j += first ? stride : 2 * stride)
    source.coefInto(from + ((POINTS[j] + 1) / 2) * (to - from), samples, j * WIDTH);
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

/** The series at t, all nine at once in variables: arrays would cost twice the time. T_k by its recurrence. */
function sumInto({ from, to, series: s, degree }: Piece, t: number, out: Float64Array, o: number): void {
  const x = degree === 0 ? 0 : (2 * (t - from)) / (to - from) - 1;
  let before = 1;
  let T = x;
  let a = s[0];
  let b = s[1];
  let c = s[2];
  let d = s[3];
  let e = s[4];
  let f = s[5];
  let g = s[6];
  let h = s[7];
  let i = s[8];
  for (let k = WIDTH; k < s.length; k += WIDTH) {
    a += T * s[k];
    b += T * s[k + 1];
    c += T * s[k + 2];
    d += T * s[k + 3];
    e += T * s[k + 4];
    f += T * s[k + 5];
    g += T * s[k + 6];
    h += T * s[k + 7];
    i += T * s[k + 8];
    const next = 2 * x * T - before;
    before = T;
    T = next;
  }
  out[o] = a;
  out[o + 1] = b;
  out[o + 2] = c;
  out[o + 3] = d;
  out[o + 4] = e;
  out[o + 5] = f;
  out[o + 6] = g;
  out[o + 7] = h;
  out[o + 8] = i;
}
