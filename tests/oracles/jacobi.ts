/**
 * Jacobi elliptic functions and the complete integral by the arithmetic-geometric mean.
 * Abramowitz & Stegun 1964, 16.4 (sn, cn, dn by descending AGM) and 17.6 (K).
 */
export interface Jacobi {
  readonly sn: number;
  readonly cn: number;
  readonly dn: number;
}

/** sn, cn, dn of u for the parameter m = k^2, 0 <= m < 1 (A&S 16.4). */
export function jacobi(u: number, m: number): Jacobi {
  const a = [1];
  const c = [Math.sqrt(m)];
  let b = Math.sqrt(1 - m);
  while (c[c.length - 1] > 1e-16 && a.length < 20) {
    const n = a.length - 1;
    a.push((a[n] + b) / 2);
    c.push((a[n] - b) / 2);
    b = Math.sqrt(a[n] * b);
  }
  const N = a.length - 1;
  let phi = 2 ** N * a[N] * u;
  let after = phi;
  for (let n = N; n > 0; n--) {
    after = phi;
    phi = (Math.asin((c[n] / a[n]) * Math.sin(phi)) + phi) / 2;
  }
  const sn = Math.sin(phi);
  const cn = Math.cos(phi);
  // 16.4.4 gives dn as a quotient that is 0/0 at the quarter period; 16.9.1 is the same number
  const quotient = Math.cos(after - phi);
  const dn = Math.abs(quotient) > 0.1 ? cn / quotient : Math.sqrt(1 - m * sn * sn);
  return { sn, cn, dn };
}

/** K(m), the quarter period (A&S 17.6.3). */
export function ellipticK(m: number): number {
  let a = 1;
  let b = Math.sqrt(1 - m);
  for (let i = 0; i < 20 && Math.abs(a - b) > 1e-16; i++) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
  return Math.PI / (a + b);
}
