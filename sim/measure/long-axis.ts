/**
 * Twist rate by the formula of a twisting top, from the tilt of two axes: the body's own (Y of F) and the principal axis of least moment
 * (the long axis of what turns). With A, B, C lateral, front-back and long moment and H = |h|,
 *     twist rate = H sin(tilt) (1/C - (1/A + 1/B)/2),
 * the somersault's share averaged over the twist (of a top with A = B: exact; Frohlich 1979, Am J Phys 47:583, from memory). A shape
 * whose sides differ leans its principal axis some degrees off the body, and the body goes round that axis: the formula holds for the
 * principal axis, and is off by the lean with the body's tilt (tests/measure/long-axis.test.ts; docs/twist-and-shape.md).
 * Tilt here is from the plane normal to h, + head to world right for h along Z; twist about h. SI, radians.
 */
import type { Eigen3 } from '../math/eigen3.ts';
import { dot, type Triple } from '../math/vec3.ts';

export interface LongAxis {
  /** between the body's own long axis and the principal one */
  readonly lean: number;
  readonly bodyTilt: number;
  readonly axisTilt: number;
  /** twist rate as it is, joints moving on; + to the left */
  readonly rate: number;
  /** by the formula: principal moments and the tilt of the principal axis; moments about F and the body's own tilt */
  readonly rateByAxis: number;
  readonly rateByBody: number;
}

/** What the long axis is found from, all in F. */
interface LongAxisInput {
  readonly eigen: Eigen3;
  /** [A lateral, B front-back, C long] about F */
  readonly moments: Triple;
  /** h / |h|, reversed with h: along Z_W it is Z_W */
  readonly n: Triple;
  /** |h|, reversed with it */
  readonly h: number;
  readonly w_WF_F: ArrayLike<number>;
}

export function calcLongAxis({ eigen, moments, n, h, w_WF_F: w }: LongAxisInput): LongAxis {
  const { values, R } = eigen;
  const order = [0, 1, 2].sort((a, b) => values[a] - values[b]);
  const column = order[0];
  const sign = R[3 + column] < 0 ? -1 : 1;
  const axis: Triple = [sign * R[column], sign * R[3 + column], sign * R[6 + column]];
  const rate = (sine: number, [A, B, C]: Triple): number => h * sine * (1 / C - (1 / A + 1 / B) / 2);
  const along = dot(n, axis);
  const spin = w[0] * n[0] + w[1] * n[1] + w[2] * n[2];
  return {
    lean: Math.acos(Math.min(1, axis[1])),
    bodyTilt: Math.asin(clamp(n[1])),
    axisTilt: Math.asin(clamp(along)),
    rate: (w[1] - n[1] * spin) / (1 - n[1] * n[1]),
    rateByAxis: rate(along, [values[order[1]], values[order[2]], values[order[0]]]),
    rateByBody: rate(n[1], moments),
  };
}

const clamp = (x: number): number => Math.max(-1, Math.min(1, x));
