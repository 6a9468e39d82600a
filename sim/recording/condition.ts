/**
 * A posed recording in the air, made fit to be set beside a flight: gaps filled, shoulders away from their poles, every angle smoothed, the root's
 * attitude by the four parts of its quaternion together, made one long again. Rows beside the span, where there are some, lead the splines in
 * and out: they are least sure at their ends. Other joints with poles (a hip abducted by 90 deg) are taken as they are.
 */
import { FieldError } from '../math/field-error.ts';
import type { FactorMemo } from '../schedule/smooth-spline.ts';
import type { AirSpan, ConditionedMotion, Gap, Smoothing } from './conditioned.ts';
import { fillGaps, rowsOfGap } from './gaps.ts';
import { massCentreOf } from './mass-centre.ts';
import { fitParabola } from './parabola.ts';
import type { PosedMotion } from './posed.ts';
import { clearPoles } from './shoulder-gauge.ts';
import { FEWEST_ROWS, smoothSeries, smoothTogether } from './smooth-series.ts';

/** s of rows beside the span that are looked at (our judgement): more would bring the jolt of a landing in. */
const BESIDE = 0.05;

interface ConditionOptions {
  readonly smoothing: Smoothing;
  /** by angle name, where it differs */
  readonly smoothingOf?: Readonly<Record<string, Smoothing>>;
  /** longest gap that is filled, s */
  readonly longestGap: number;
}

/** Throws a FieldError where the span has too few rows for a spline, or the rate does not allow a cut-off. */
export function conditionMotion(
  posed: PosedMotion,
  span: AirSpan,
  { smoothing, smoothingOf = {}, longestGap }: ConditionOptions,
): ConditionedMotion {
  const { body, rateHz } = posed;
  const na = body.angles.length;
  const n = span.last - span.first + 1;
  if (n < FEWEST_ROWS) throw new FieldError('span', `${n} rows`, `at least ${FEWEST_ROWS} rows`);
  const beside = Math.round(BESIDE * rateHz);
  const before = Math.min(span.first, beside);
  const from = span.first - before;
  const rows = before + n + Math.min(posed.n - 1 - span.last, beside);
  const most = rowsOfGap(longestGap, rateHz);

  const gaps: Gap[][] = [];
  const all = posed.angles.slice();
  for (let k = 0; k < na; k++) {
    const found = fillGaps(all, na, [k], most);
    gaps.push(found.flatMap((gap) => withinSpan(gap, span)));
    leadThrough(all, na, [k]);
  }
  const series = all.slice(na * from, na * (from + rows));
  clearPoles(body, series);
  const root = readRoot(posed, from, rows, most);

  const out = {
    rawAngles: series.slice(na * before, na * (before + n)),
    angles: new Float64Array(na * n),
    rates: new Float64Array(na * n),
    accelerations: new Float64Array(na * n),
  };
  const memo: FactorMemo = new Map();
  const reports = body.angles.map(({ name }, k) => {
    const y = Float64Array.from({ length: rows }, (_, i) => series[na * i + k]);
    const s = smoothSeries(y, rateHz, smoothingOf[name] ?? smoothing, memo);
    for (let i = 0; i < n; i++) {
      out.angles[na * i + k] = s.value[before + i];
      out.rates[na * i + k] = s.rate[before + i];
      out.accelerations[na * i + k] = s.acceleration[before + i];
    }
    for (const gap of gaps[k]) blank(gap.isFilled ? [out.rawAngles] : Object.values(out), na, k, gap);
    return s.report;
  });

  const attitude = smoothTogether(root.parts, rateHz, smoothing, 2);
  const quat_WB = new Float64Array(4 * n);
  const w_WB_B = new Float64Array(3 * n);
  for (let i = 0; i < n; i++) {
    turningInto(attitude.parts, before + i, quat_WB, w_WB_B, i);
  }
  const centre = massCentreOf({ ...posed, n: rows, ...root }, series).slice(3 * before, 3 * (before + n));
  for (let k = 0; k < na; k++)
    for (const gap of gaps[k]) if (!gap.isFilled) centre.fill(Number.NaN, 3 * gap.from, 3 * (gap.from + gap.rows));
  const t = Float64Array.from({ length: n }, (_, i) => posed.t[span.first + i] - span.start);
  const path = fitParabola(t, centre, 0, n - 1);
  const v_WScm_W = new Float64Array(3 * n).fill(Number.NaN);
  if (path)
    for (let i = 0; i < n; i++) v_WScm_W.set([path.v[0], path.v[1] - path.g * (t[i] - path.t0), path.v[2]], 3 * i);
  return {
    posed,
    span,
    n,
    t,
    series,
    before,
    ...out,
    quat_WB,
    w_WB_B,
    p_WScm_W: centre,
    v_WScm_W,
    reports,
    attitudeReport: attitude.report,
    gaps,
  };
}

/** The part of a gap inside the span, in rows of the span. */
function withinSpan({ from, rows, isFilled }: Gap, { first, last }: AirSpan): Gap[] {
  const a = Math.max(from, first);
  const b = Math.min(from + rows - 1, last);
  return b < a ? [] : [{ from: a - first, rows: b - a + 1, isFilled }];
}

function blank(tables: readonly Float64Array[], width: number, k: number, { from, rows }: Gap): void {
  for (const table of tables) for (let i = from; i < from + rows; i++) table[width * i + k] = Number.NaN;
}

/** Something for a spline to run through where nothing is known: across long gaps, and held at the ends. What comes of it there is not given out. */
function leadThrough(values: Float64Array, width: number, columns: readonly number[]): void {
  const n = values.length / width;
  for (const { from, rows } of fillGaps(values, width, columns, Number.POSITIVE_INFINITY)) {
    for (const k of columns) {
      const known = from > 0 ? values[width * (from - 1) + k] : values[width * (from + rows) + k];
      for (let i = from; i < from + rows && Number.isNaN(values[width * i + k]); i++)
        values[width * i + k] = rows < n ? known : 0;
    }
  }
}

/** Place and attitude of the root in these rows, gaps filled; `parts` are those of the quaternion. */
function readRoot(posed: PosedMotion, from: number, rows: number, most: number) {
  const p = posed.p_WBo_W.slice();
  const q = posed.quat_WB.slice();
  fillGaps(p, 3, [0, 1, 2], most);
  fillGaps(q, 4, [0, 1, 2, 3], most);
  leadThrough(q, 4, [0, 1, 2, 3]);
  const quat_WB = q.slice(4 * from, 4 * (from + rows));
  return {
    p_WBo_W: p.slice(3 * from, 3 * (from + rows)),
    quat_WB,
    parts: [0, 1, 2, 3].map((k) => Float64Array.from({ length: rows }, (_, i) => quat_WB[4 * i + k])),
  };
}

/** Unit quaternion and w = 2 conj(q) q' / |q|^2 at row i of the splines, written as row o. */
function turningInto(
  parts: readonly { readonly value: Float64Array; readonly rate: Float64Array }[],
  i: number,
  quat: Float64Array,
  w: Float64Array,
  o: number,
): void {
  const [a, x, y, z] = parts.map((s) => s.value[i]);
  const [ad, xd, yd, zd] = parts.map((s) => s.rate[i]);
  const size = Math.hypot(a, x, y, z);
  quat.set([a / size, x / size, y / size, z / size], 4 * o);
  const k = 2 / size ** 2;
  w.set(
    [
      k * (a * xd - x * ad - y * zd + z * yd),
      k * (a * yd - y * ad - z * xd + x * zd),
      k * (a * zd - z * ad - x * yd + y * xd),
    ],
    3 * o,
  );
}
