/** The diagonalisation behind the MJCF and the checks of typed tensors. */
import { expect, test } from 'vitest';
import { calcEigen3 } from '../../sim/math/eigen3.ts';
import { about, times } from './moments.ts';

/** relative to the largest eigenvalue; measured 1.2e-15 at worst */
const AGREE = 4e-15;

test('axes and values rebuild random tensors; the axes are a rotation', () => {
  for (let n = 0; n < 300; n++) {
    const f = (k: number): number => Math.sin(12.9898 * (7 * n + k));
    const values = [1 + f(1), 1 + f(2), 10 ** (3 * f(3))];
    if (n % 5 === 0) values[1] = values[0]; // twofold
    const norm = Math.hypot(f(4), f(5), f(6));
    const Q = about([f(4) / norm, f(5) / norm, f(6) / norm], 3 * f(7));
    const S = [0, 1, 2].map((i) => [0, 1, 2].map((j) => values.reduce((sum, v, k) => sum + v * Q[i][k] * Q[j][k], 0)));
    const { values: found, R } = calcEigen3([S[0][0], S[1][1], S[2][2], S[0][1], S[0][2], S[1][2]]);
    const size = Math.max(...values);
    [...found]
      .sort((a, b) => a - b)
      .forEach((v, i) => {
        expect(Math.abs(v - [...values].sort((a, b) => a - b)[i])).toBeLessThan(AGREE * size);
      });
    const M = [R.slice(0, 3), R.slice(3, 6), R.slice(6, 9)].map((row) => [...row]);
    const back = times(
      M.map((row) => row.map((x, k) => x * found[k])),
      M[0].map((_, j) => M.map((row) => row[j])),
    );
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++) expect(Math.abs(back[i][j] - S[i][j])).toBeLessThan(AGREE * size);
    const det =
      M[0][0] * (M[1][1] * M[2][2] - M[1][2] * M[2][1]) -
      M[0][1] * (M[1][0] * M[2][2] - M[1][2] * M[2][0]) +
      M[0][2] * (M[1][0] * M[2][1] - M[1][1] * M[2][0]);
    expect(Math.abs(det - 1)).toBeLessThan(AGREE);
  }
});

test('a diagonal tensor keeps its axes, zero stays zero', () => {
  expect([...calcEigen3([3, 1, 2, 0, 0, 0]).values]).toEqual([3, 1, 2]);
  expect([...calcEigen3([3, 1, 2, 0, 0, 0]).R]).toEqual([1, 0, 0, 0, 1, 0, 0, 0, 1]);
  expect([...calcEigen3([0, 0, 0, 0, 0, 0]).values]).toEqual([0, 0, 0]);
});
