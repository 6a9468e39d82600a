/** What the tries of a release say: where they are held, what ends that on each side, and where the rail is far enough. Computed from the tries; no side is assumed to be anything. ms, m */
import type { TryResult, WindowResult } from '../../jobs/kinds/leg-data.ts';

/** What fails just outside of an end. */
export type EndCause =
  | { readonly kind: 'short' | 'past'; readonly deg: number }
  | { readonly kind: 'twist'; readonly turns: number }
  | { readonly kind: 'rail' }
  | { readonly kind: 'part'; readonly part: string }
  /** nothing comes down on the surface */
  | { readonly kind: 'lost' }
  /** nothing fails as far as was looked */
  | { readonly kind: 'open' };

interface WindowEnd {
  readonly ms: number;
  readonly cause: EndCause;
}
export interface Span {
  readonly from: number;
  readonly to: number;
}
export interface WindowStudy {
  /** undefined: no try is held */
  readonly held?: Span;
  readonly ends?: readonly [early: WindowEnd, late: WindowEnd];
  /** nearer than asked, in order */
  readonly near: readonly Span[];
  /** it touches */
  readonly touches: readonly Span[];
  /** held and far enough: the longest such span; undefined: none */
  readonly both?: Span;
}

/** From these on a twist is missed, turns: 30 degrees, as a verdict has it. */
const TWIST = 30 / 360;

export function studyWindow(window: WindowResult, askedM: number): WindowStudy {
  const { tries, fromMs, toMs, isOpen, lostMs } = window;
  const near = spansWhere(tries, (one) => (one.nearM ?? Number.POSITIVE_INFINITY) - askedM);
  const touches = spansWhere(tries, (one) => one.nearM ?? Number.POSITIVE_INFINITY);
  if (!(toMs > fromMs)) return { near, touches };
  const held = { from: fromMs, to: toMs };
  const outside = (side: -1 | 1): EndCause => {
    if (isOpen[side < 0 ? 0 : 1]) return { kind: 'open' };
    const edge = side < 0 ? fromMs : toMs;
    const isBeyond = (ms: number): boolean => side * (ms - edge) > 1e-6;
    const first = (list: readonly number[]): number =>
      list.filter(isBeyond).reduce((a, b) => (side * (b - a) < 0 ? b : a), side * Number.POSITIVE_INFINITY);
    const at = first(tries.map((one) => one.lateMs));
    const lost = first(lostMs);
    if (side * (lost - at) < 0) return { kind: 'lost' };
    const one = tries.find(({ lateMs }) => lateMs === at);
    return one ? causeOf(one) : { kind: 'open' };
  };
  const both = longest(without(held, near));
  return {
    held,
    ends: [
      { ms: fromMs, cause: outside(-1) },
      { ms: toMs, cause: outside(1) },
    ],
    near,
    touches,
    ...(both ? { both } : {}),
  };
}

/** Of a try that is not held: what is worst first. */
function causeOf({ nearM, twistOff, part, overDeg }: TryResult): EndCause {
  if (nearM !== undefined && nearM <= 0) return { kind: 'rail' };
  if (Math.abs(twistOff) >= TWIST) return { kind: 'twist', turns: twistOff };
  if (part) return { kind: 'part', part };
  return { kind: overDeg < 0 ? 'short' : 'past', deg: Math.abs(overDeg) };
}

/** Where a value is under 0, by a straight line between tries. */
function spansWhere(tries: readonly TryResult[], value: (one: TryResult) => number): Span[] {
  const spans: Span[] = [];
  const put = (from: number, to: number): void => {
    const last = spans[spans.length - 1];
    if (last && from - last.to < 1e-9) spans[spans.length - 1] = { from: last.from, to };
    else spans.push({ from, to });
  };
  for (let i = 1; i < tries.length; i++) {
    const [a, b] = [tries[i - 1], tries[i]];
    const [u, v] = [value(a), value(b)];
    if (u >= 0 && v >= 0) continue;
    if (!Number.isFinite(u) || !Number.isFinite(v)) continue;
    const cross = a.lateMs + ((b.lateMs - a.lateMs) * u) / (u - v);
    if (u < 0 && v < 0) put(a.lateMs, b.lateMs);
    else if (u < 0) put(a.lateMs, cross);
    else put(cross, b.lateMs);
  }
  return spans;
}

function without(span: Span, holes: readonly Span[]): Span[] {
  let rest: Span[] = [span];
  for (const hole of holes)
    rest = rest.flatMap(({ from, to }) => [
      ...(hole.from > from ? [{ from, to: Math.min(to, hole.from) }] : []),
      ...(hole.to < to ? [{ from: Math.max(from, hole.to), to }] : []),
    ]);
  return rest.filter(({ from, to }) => to - from > 1e-9);
}

const longest = (spans: readonly Span[]): Span | undefined =>
  spans.reduce<Span | undefined>(
    (best, one) => (!best || one.to - one.from > best.to - best.from ? one : best),
    undefined,
  );

/** The try nearest to a time. */
export const tryNear = (tries: readonly TryResult[], ms: number): TryResult =>
  tries.reduce((best, one) => (Math.abs(one.lateMs - ms) < Math.abs(best.lateMs - ms) ? one : best), tries[0]);
