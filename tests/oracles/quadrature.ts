/** Quadratures of the oracles: the trapezium rule round a whole period, and Gauss-Legendre panels. */

/** Integral of a smooth periodic f over one period [0, 2 pi]: the trapezium rule converges exponentially. */
export function overPeriod(f: (x: number) => number, n = 400): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += f((2 * Math.PI * i) / n);
  return (2 * Math.PI * sum) / n;
}

/** Gauss-Legendre nodes and weights on [-1, 1], by Newton on P_n (Abramowitz & Stegun 1964, 25.4.29). */
export function gauss(n: number): { x: number[]; w: number[] } {
  const x: number[] = [];
  const w: number[] = [];
  for (let i = 0; i < n; i++) {
    let z = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let k = 0; k < 50; k++) {
      let p = 1;
      let q = 0;
      for (let j = 1; j <= n; j++) [p, q] = [((2 * j - 1) * z * p - (j - 1) * q) / j, p];
      slope = (n * (z * p - q)) / (z * z - 1);
      const dz = p / slope;
      z -= dz;
      if (Math.abs(dz) < 1e-16) break;
    }
    x.push(z);
    w.push(2 / ((1 - z * z) * slope * slope));
  }
  return { x, w };
}

const TWENTY = gauss(20);

/** Integral of f from a to b in `panels` panels of 20 Gauss points. */
export function integral(f: (x: number) => number, a: number, b: number, panels = 8): number {
  const h = (b - a) / panels;
  let sum = 0;
  for (let p = 0; p < panels; p++)
    for (let i = 0; i < 20; i++) sum += TWENTY.w[i] * f(a + h * (p + (TWENTY.x[i] + 1) / 2));
  return (sum * h) / 2;
}

/** A root of f between a and b (f(a) f(b) < 0) by bisection to the last digits. */
export function root(f: (x: number) => number, a: number, b: number): number {
  let [lo, hi] = [a, b];
  const sign = Math.sign(f(lo));
  if (sign * f(hi) > 0) throw new RangeError('root: no change of sign');
  for (let i = 0; i < 200 && hi - lo > 1e-15 * (1 + Math.abs(lo)); i++) {
    const m = (lo + hi) / 2;
    if (sign * f(m) > 0) lo = m;
    else hi = m;
  }
  return (lo + hi) / 2;
}
