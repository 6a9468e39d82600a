/**
 * A z = right by Gauss elimination with row exchange; A (n x n, by rows) is used up and the solution replaces the right
 * side. False where a pivot is not above zero: nothing is solved then.
 */
export function solveInPlace(A: Float64Array, right: Float64Array, n: number): boolean {
  for (let c = 0; c < n; c++) {
    let p = c;
    for (let r = c + 1; r < n; r++) if (Math.abs(A[r * n + c]) > Math.abs(A[p * n + c])) p = r;
    if (!(Math.abs(A[p * n + c]) > 0)) return false;
    if (p !== c) {
      for (let k = c; k < n; k++) {
        const t = A[c * n + k];
        A[c * n + k] = A[p * n + k];
        A[p * n + k] = t;
      }
      const t = right[c];
      right[c] = right[p];
      right[p] = t;
    }
    for (let r = c + 1; r < n; r++) {
      const f = A[r * n + c] / A[c * n + c];
      if (f === 0) continue;
      for (let k = c + 1; k < n; k++) A[r * n + k] -= f * A[c * n + k];
      right[r] -= f * right[c];
    }
  }
  for (let c = n - 1; c >= 0; c--) {
    let sum = right[c];
    for (let k = c + 1; k < n; k++) sum -= A[c * n + k] * right[k];
    right[c] = sum / A[c * n + c];
  }
  return true;
}
