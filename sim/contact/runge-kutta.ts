/** Classical Runge-Kutta of order 4 in place (Hairer, Norsett & Wanner 1993, Solving ODEs I, II.1), its arrays kept. */
type Derive = (t: number, y: Float64Array, dy: Float64Array) => void;

export class RungeKutta {
  /** derivative at the beginning of the next step, filled by the caller */
  readonly k1: Float64Array;
  private readonly k2: Float64Array;
  private readonly k3: Float64Array;
  private readonly k4: Float64Array;
  private readonly z: Float64Array;

  constructor(n: number) {
    const f = (): Float64Array => new Float64Array(n);
    [this.k1, this.k2, this.k3, this.k4, this.z] = [f(), f(), f(), f(), f()];
  }

  step(derive: Derive, t: number, h: number, y: Float64Array): void {
    const { k1, k2, k3, k4, z } = this;
    const n = y.length;
    for (let i = 0; i < n; i++) z[i] = y[i] + (h / 2) * k1[i];
    derive(t + h / 2, z, k2);
    for (let i = 0; i < n; i++) z[i] = y[i] + (h / 2) * k2[i];
    derive(t + h / 2, z, k3);
    for (let i = 0; i < n; i++) z[i] = y[i] + h * k3[i];
    derive(t + h, z, k4);
    for (let i = 0; i < n; i++) y[i] += (h / 6) * (k1[i] + 2 * k2[i] + 2 * k3[i] + k4[i]);
  }
}
