/**
 * Polynomial spans in normalised time s in [0, 1].
 *
 * Between two keys with slopes and zero second derivatives at both ends (D the rise, a and b the slopes times length):
 *     p' = a (1 - 3 s^2 + 2 s^3) + b (3 s^2 - 2 s^3) + c s^2 (1 - s)^2,   c = 30 (D - (a + b) / 2).
 * p' is linear in a and b; at the corners of 0 <= a, b <= 2 D it is 30 D s^2 (1-s)^2, 2 D (1 - 3 s^2 + 2 s^3), its mirror,
 * and D (2 - 30 s^2 (1-s)^2) >= D / 8: never negative, so a span inside that square does not overshoot. With a = b = 0 it
 * is the minimum-jerk span 10 s^3 - 15 s^4 + 6 s^5 (Flash & Hogan 1985, J Neurosci 5:1688).
 */
export interface Span {
  readonly from: number;
  readonly to: number;
  /** coefficients of s^0 .. s^6, or only [value] for a span at rest */
  readonly c: readonly number[];
}

export function restSpan(from: number, to: number, value: number): Span {
  return { from, to, c: [value] };
}

/** A quintic from v0 to v1 with slopes m0, m1 (per second) and zero second derivatives at both ends. */
export function keySpan(from: number, to: number, v0: number, v1: number, m0 = 0, m1 = 0): Span {
  const h = to - from;
  const D = v1 - v0;
  if (D === 0 && m0 === 0 && m1 === 0) return restSpan(from, to, v0);
  const a = m0 * h;
  const b = m1 * h;
  const c = 30 * (D - (a + b) / 2);
  return { from, to, c: [v0, a, 0, -a + b + c / 3, (a - b - c) / 2, c / 5, 0] };
}

/** Adds `height` times 64 s^3 (1 - s)^3: zero with two derivatives at the ends, `height` in the middle. */
export function withBump(span: Span, height: number): Span {
  if (height === 0) return span;
  const c = [...span.c, 0, 0, 0, 0, 0, 0, 0].slice(0, 7);
  const k = 64 * height;
  return { ...span, c: [c[0], c[1], c[2], c[3] + k, c[4] - 3 * k, c[5] + 3 * k, c[6] - k] };
}

/** A general quintic from (v, v', v'') at both ends, rates per second. */
export function hermiteSpan(from: number, to: number, at0: readonly [number, number, number], at1: readonly [number, number, number]): Span {
  const h = to - from;
  const [p0, v0, a0] = [at0[0], at0[1] * h, at0[2] * h * h];
  const [p1, v1, a1] = [at1[0], at1[1] * h, at1[2] * h * h];
  const d = p1 - p0;
  return {
    from,
    to,
    c: [
      p0,
      v0,
      a0 / 2,
      10 * d - 6 * v0 - 4 * v1 - 1.5 * a0 + 0.5 * a1,
      -15 * d + 8 * v0 + 7 * v1 + 1.5 * a0 - a1,
      6 * d - 3 * (v0 + v1) - 0.5 * (a0 - a1),
      0,
    ],
  };
}

/** Value, rate and second derivative at t (t may lie outside: the polynomial is not clamped). */
export function spanAt(span: Span, t: number): [number, number, number] {
  const { c } = span;
  if (c.length === 1) return [c[0], 0, 0];
  const h = span.to - span.from;
  const s = (t - span.from) / h;
  let p = 0;
  let d = 0;
  let dd = 0;
  for (let k = c.length - 1; k >= 0; k--) {
    dd = dd * s + 2 * d;
    d = d * s + p;
    p = p * s + c[k];
  }
  return [p, d / h, dd / (h * h)];
}
