/**
 * The track of one angle: its keys in time, and the spans between them. A key may jump (shoulder plane and turn at a
 * pole of elevation): the span before it ends at `value`, the span after it starts at `next`.
 */
import { keySpan, restSpan, type Span, spanAt, withBump } from './span.ts';

export interface TrackKey {
  readonly t: number;
  readonly value: number;
  readonly kind: 'stop' | 'pass';
  readonly next?: number;
  /** added at the middle of the span that starts here (the path of an arm) */
  readonly bump?: number;
  readonly said: string;
}

export type Track = readonly TrackKey[];

/** Two keys closer than this are one, s. */
export const SAME_TIME = 1e-9;

/** Spans of a track, ascending and adjoining; before the first and after the last key the angle rests. */
export function spansOf(track: Track): Span[] {
  if (track.length === 0) return [];
  const start = (k: TrackKey): number => k.next ?? k.value;
  const secant = (i: number): number => (track[i + 1].value - start(track[i])) / (track[i + 1].t - track[i].t);
  const slope = (i: number): number => {
    const k = track[i];
    if (k.kind === 'stop' || k.next !== undefined || i === 0 || i === track.length - 1) return 0;
    const before = secant(i - 1);
    const after = secant(i);
    // the harmonic mean is below twice the smaller secant: no overshoot (span.ts); zero at a local extreme
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
  };
  const spans: Span[] = [];
  for (let i = 0; i + 1 < track.length; i++) {
    const a = track[i];
    const b = track[i + 1];
    spans.push(withBump(keySpan(a.t, b.t, start(a), b.value, slope(i), slope(i + 1)), a.bump ?? 0));
  }
  return spans;
}

/** Value of a track at t; at a key the value before a jump. */
export function valueAt(track: Track, t: number, otherwise: number): number {
  if (track.length === 0) return otherwise;
  if (t <= track[0].t) return track[0].value;
  const last = track[track.length - 1];
  if (t > last.t) return last.next ?? last.value;
  for (const span of spansOf(track)) if (t <= span.to) return spanAt(span, Math.min(t, span.to))[0];
  return last.value;
}

/** The track with one key replaced or put in, by time. */
export function withKey(track: Track, key: TrackKey): Track {
  const kept = track.filter((k) => Math.abs(k.t - key.t) > SAME_TIME);
  return [...kept, key].sort((a, b) => a.t - b.t);
}

/** Spans with the rests before and after added, to cover all time. */
export function coverAll(spans: readonly Span[], track: Track, otherwise: number): Span[] {
  const inf = Number.POSITIVE_INFINITY;
  if (track.length === 0) return [restSpan(-inf, inf, otherwise)];
  const first = track[0];
  const last = track[track.length - 1];
  return [restSpan(-inf, first.t, first.value), ...spans, restSpan(last.t, inf, last.next ?? last.value)];
}
