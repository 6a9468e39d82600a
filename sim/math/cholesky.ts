/**
 * Lower triangle L with L L^T = M (Cholesky). Rows that follow from earlier ones, to `tolerance` of their own size, get 0;
 * a matrix that is not of this kind gives NaN.
 */
export function factor(M: readonly (readonly number[])[], tolerance = 1e-12): number[][] {
  const L = M.map((row) => row.map(() => 0));
  for (let i = 0; i < M.length; i++)
    for (let j = 0; j <= i; j++) {
      let sum = M[i][j];
      for (let k = 0; k < j; k++) sum -= L[i][k] * L[j][k];
      if (i > j) L[i][j] = L[j][j] > 0 ? sum / L[j][j] : Math.abs(sum) <= 1e-6 ? 0 : Number.NaN;
      else if (sum > tolerance * M[i][i]) L[i][i] = Math.sqrt(sum);
      else L[i][i] = sum >= -tolerance * M[i][i] ? 0 : Number.NaN;
    }
  return L;
}

/** L L^T x = right; the unknown of a row that got 0 is 0. */
export function solveFactored(L: readonly (readonly number[])[], right: readonly number[]): number[] {
  const y: number[] = [];
  for (let i = 0; i < right.length; i++) {
    let sum = right[i];
    for (let k = 0; k < i; k++) sum -= L[i][k] * y[k];
    y[i] = L[i][i] > 0 ? sum / L[i][i] : 0;
  }
  for (let i = right.length - 1; i >= 0; i--) {
    let sum = y[i];
    for (let k = i + 1; k < right.length; k++) sum -= L[k][i] * y[k];
    y[i] = L[i][i] > 0 ? sum / L[i][i] : 0;
  }
  return y;
}
