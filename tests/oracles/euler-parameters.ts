/**
 * The second witness of rotation, apart from the engine: Euler parameters e0..e3 with e' = G^T w / 2 and classical
 * Runge-Kutta 4 (Kutta 1901), the angular velocity from constant angular momentum, w = I^-1 (R^T h - hrel).
 * Goldstein, Classical Mechanics, sec. 4.5 (parameters). R takes body to world.
 */
export type Parameters = readonly [number, number, number, number];
type Three = readonly [number, number, number];

/** Columns of R are the body axes in the world. */
export function rotationOf([a, b, c, d]: Parameters): number[][] {
  return [
    [a * a + b * b - c * c - d * d, 2 * (b * c - a * d), 2 * (b * d + a * c)],
    [2 * (b * c + a * d), a * a - b * b + c * c - d * d, 2 * (c * d - a * b)],
    [2 * (b * d - a * c), 2 * (c * d + a * b), a * a - b * b - c * c + d * d],
  ];
}

const product = (p: Parameters, q: Parameters): Parameters => [
  p[0] * q[0] - p[1] * q[1] - p[2] * q[2] - p[3] * q[3],
  p[0] * q[1] + p[1] * q[0] + p[2] * q[3] - p[3] * q[2],
  p[0] * q[2] - p[1] * q[3] + p[2] * q[0] + p[3] * q[1],
  p[0] * q[3] + p[1] * q[2] - p[2] * q[1] + p[3] * q[0],
];

/** Rz(som) Rx(tilt) Ry(tw) */
export const parametersOf = (som: number, tilt: number, tw: number): Parameters =>
  product(product([Math.cos(som / 2), 0, 0, Math.sin(som / 2)], [Math.cos(tilt / 2), Math.sin(tilt / 2), 0, 0]), [
    Math.cos(tw / 2),
    0,
    Math.sin(tw / 2),
    0,
  ]);

/** Shape at t: diagonal tensor about the mass centre [x, y, z] and momentum of the limbs, both in the body. */
export interface Shape {
  readonly I: readonly [number, number, number];
  /** product of inertia in the frontal plane, I_yz (positive: I[1][2] of the tensor) */
  readonly Iyz: number;
  readonly hrel: Three;
}

function spin(shape: Shape, e: Parameters, h: Three): Three {
  const R = rotationOf(e);
  const b = [0, 1, 2].map((j) => R[0][j] * h[0] + R[1][j] * h[1] + R[2][j] * h[2] - shape.hrel[j]);
  const [x, y, z] = shape.I;
  const det = y * z - shape.Iyz ** 2;
  return [b[0] / x, (z * b[1] - shape.Iyz * b[2]) / det, (y * b[2] - shape.Iyz * b[1]) / det];
}

/** Carries e from t = 0 to T in n steps; `see` gets the angles after each step, counted continuously. */
export function carry(
  shapeAt: (t: number) => Shape,
  start: Three,
  h: Three,
  T: number,
  n: number,
  see?: (t: number, angles: Three) => void,
): Three {
  const rate = (t: number, e: Parameters): Parameters => {
    const w = spin(shapeAt(t), e, h);
    const d = product(e, [0, w[0], w[1], w[2]]);
    return [d[0] / 2, d[1] / 2, d[2] / 2, d[3] / 2];
  };
  const step = (e: Parameters, d: Parameters, k: number): Parameters => [
    e[0] + k * d[0],
    e[1] + k * d[1],
    e[2] + k * d[2],
    e[3] + k * d[3],
  ];
  let e = parametersOf(...start);
  let angles: Three = start;
  const dt = T / n;
  for (let i = 0; i < n; i++) {
    const t = i * dt;
    const k1 = rate(t, e);
    const k2 = rate(t + dt / 2, step(e, k1, dt / 2));
    const k3 = rate(t + dt / 2, step(e, k2, dt / 2));
    const k4 = rate(t + dt, step(e, k3, dt));
    const sum = step(step(step(k1, k2, 2), k3, 2), k4, 1);
    e = step(e, sum, dt / 6);
    const R = rotationOf(e);
    const near = (x: number, old: number): number => x + 2 * Math.PI * Math.round((old - x) / (2 * Math.PI));
    angles = [
      near(Math.atan2(-R[0][1], R[1][1]), angles[0]),
      Math.asin(R[2][1]),
      near(Math.atan2(-R[2][0], R[2][2]), angles[2]),
    ];
    see?.((i + 1) * dt, angles);
  }
  return angles;
}
