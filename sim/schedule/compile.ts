/**
 * Compiles a ScheduleSpec to hinge coordinates as piecewise polynomials of time. All the spans of all angles are cut
 * into common intervals; in each interval only what moves is evaluated.
 */
import type { Body } from '../body/body.ts';
import { layArmPath } from './arm-path.ts';
import { collectTracks } from './collect.ts';
import { ScheduleValueError } from './errors.ts';
import { smoothSamples } from './samples.ts';
import type { AnchorTimes, Schedule, ScheduleSpec } from './schedule.ts';
import type { Span } from './span.ts';
import { coverAll, SAME_TIME, spansOf } from './track.ts';

/** What one angle does: spans over all time, and the times where it is only C2. */
interface Curve {
  readonly spans: readonly Span[];
  readonly breaks: readonly number[];
}

export function compileSchedule(body: Body, spec: ScheduleSpec, anchors: AnchorTimes): Schedule {
  const collected = collectTracks(body, spec, anchors);
  for (const shoulder of body.shoulders) layArmPath(collected, shoulder, spec);
  const sampled = new Map(spec.sampled.map((s) => [s.angle, s]));
  const curves = body.angles.map((angle, k): Curve => {
    const track = collected.tracks[k];
    const samples = sampled.get(k);
    if (samples) {
      if (spec.keys.some((key) => key.angle === k))
        throw new ScheduleValueError(`samples of ${angle.name}`, 'keys of the same angle', 'either samples or keys for one angle');
      return smoothSamples(samples, spec.smoothing, angle.name);
    }
    const spans = spansOf(track);
    const breaks = spans.flatMap((s) => (s.c.length > 1 ? [s.from, s.to] : []));
    return { spans: coverAll(spans, track, spec.base[k] ?? 0), breaks };
  });
  return new CompiledSchedule(body, curves);
}

/** A moving curve inside one interval: polynomial of one angle into one hinge. */
interface Item {
  readonly hinge: number;
  readonly coef: number;
  readonly c: readonly number[];
  readonly from: number;
  readonly length: number;
}

interface Interval {
  readonly base: Float64Array; // (hinges) what rests
  readonly items: readonly Item[];
  readonly angleBase: Float64Array;
  readonly angleItems: readonly Item[];
}

class CompiledSchedule implements Schedule {
  readonly hinges: number;
  readonly breaks: readonly number[];
  readonly moving: readonly (readonly [number, number])[];
  private readonly edges: number[];
  private readonly intervals: Interval[];
  private last = 0;

  constructor(body: Body, curves: readonly Curve[]) {
    const hinges = body.segments.flatMap((s) => s.hinges);
    this.hinges = hinges.length;
    this.breaks = unique(curves.flatMap((c) => c.breaks));
    this.edges = [Number.NEGATIVE_INFINITY, ...unique(curves.flatMap((c) => c.spans.flatMap((s) => [s.from, s.to])).filter(Number.isFinite))];
    const users = body.angles.map((_, k) => hinges.flatMap((h, i) => h.terms.filter((t) => t.angle === k).map((t) => ({ hinge: i, coef: t.coef }))));
    const place = curves.map(() => 0);
    this.intervals = this.edges.map((from, i) => {
      const to = this.edges[i + 1] ?? Number.POSITIVE_INFINITY;
      const base = new Float64Array(hinges.length);
      const angleBase = new Float64Array(curves.length);
      const items: Item[] = [];
      const angleItems: Item[] = [];
      curves.forEach(({ spans }, k) => {
        while (place[k] < spans.length - 1 && spans[place[k]].to <= from + SAME_TIME && spans[place[k] + 1].from < to - SAME_TIME / 2) place[k]++;
        const span = spans[place[k]];
        const part = { c: span.c, from: span.from, length: span.to - span.from };
        if (span.c.length === 1) {
          angleBase[k] = span.c[0];
          for (const u of users[k]) base[u.hinge] += u.coef * span.c[0];
        } else {
          angleItems.push({ hinge: k, coef: 1, ...part });
          for (const u of users[k]) items.push({ hinge: u.hinge, coef: u.coef, ...part });
        }
      });
      return { base, items, angleBase, angleItems };
    });
    const moving: [number, number][] = [];
    this.intervals.forEach((interval, i) => {
      if (interval.angleItems.length === 0) return;
      const before = moving[moving.length - 1];
      const from = this.edges[i];
      const to = this.edges[i + 1] ?? Number.POSITIVE_INFINITY;
      if (before && before[1] === from) before[1] = to;
      else moving.push([from, to]);
    });
    this.moving = moving;
  }

  evalInto(t: number, q: Float64Array, qd: Float64Array, qdd: Float64Array): void {
    const { base, items } = this.intervals[this.find(t)];
    q.set(base);
    qd.fill(0);
    qdd.fill(0);
    for (const { hinge, coef, c, from, length } of items) {
      const s = (t - from) / length;
      let p = 0;
      let d = 0;
      let dd = 0;
      for (let k = c.length - 1; k >= 0; k--) {
        dd = dd * s + 2 * d;
        d = d * s + p;
        p = p * s + c[k];
      }
      q[hinge] += coef * p;
      qd[hinge] += (coef * d) / length;
      qdd[hinge] += (coef * dd) / (length * length);
    }
  }

  anglesInto(t: number, angles: Float64Array, rates: Float64Array): void {
    const { angleBase, angleItems } = this.intervals[this.find(t)];
    angles.set(angleBase);
    rates.fill(0);
    for (const { hinge, c, from, length } of angleItems) {
      const s = (t - from) / length;
      let p = 0;
      let d = 0;
      for (let k = c.length - 1; k >= 0; k--) {
        d = d * s + p;
        p = p * s + c[k];
      }
      angles[hinge] = p;
      rates[hinge] = d / length;
    }
  }

  /** The interval that starts at or before t. */
  private find(t: number): number {
    const { edges } = this;
    const i = this.last;
    if (edges[i] <= t && (i + 1 === edges.length || t < edges[i + 1])) return i;
    let lo = 0;
    let hi = edges.length - 1;
    while (lo < hi) {
      const mid = (lo + hi + 1) >> 1;
      if (edges[mid] <= t) lo = mid;
      else hi = mid - 1;
    }
    this.last = lo;
    return lo;
  }
}

function unique(times: number[]): number[] {
  const sorted = times.filter(Number.isFinite).sort((a, b) => a - b);
  return sorted.filter((t, i) => i === 0 || t - sorted[i - 1] > SAME_TIME);
}

