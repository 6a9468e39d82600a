/**
 * A rail that was let go: its own mass on its spring and damper, m x'' + c x' + k x = 0 across and upright, in closed form. With b = c / 2m and d^2 = k/m - b^2:
 * x = e^(-bt) (x0 C + (x0' + b x0) S), C and S the cosine and the sine over d of d t, hyperbolic where d^2 < 0.
 */
export interface RailSway {
  /** from its rest place as it was let go, and its velocity: x, y, x', y' */
  readonly state: readonly [number, number, number, number];
  readonly mass: number;
  readonly stiffness: readonly [number, number];
  readonly damping: readonly [number, number];
}

/** x, y, x', y' at t. */
export function swayInto({ state, mass, stiffness, damping }: RailSway, t: number, out: number[]): void {
  for (const k of [0, 1] as const) {
    const b = damping[k] / (2 * mass);
    const square = stiffness[k] / mass - b * b;
    const d = Math.sqrt(Math.abs(square));
    const C = square >= 0 ? Math.cos(d * t) : Math.cosh(d * t);
    const S = d === 0 ? t : (square > 0 ? Math.sin(d * t) : Math.sinh(d * t)) / d;
    const fade = Math.exp(-b * t);
    const [x, v] = [state[k], state[2 + k]];
    out[k] = fade * (x * C + (v + b * x) * S);
    out[2 + k] = fade * (v * C - (b * v + (stiffness[k] / mass) * x) * S);
  }
}
