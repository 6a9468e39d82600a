/**
 * A bed as one linear spring under the whole mass m, with gravity: m y'' = -m g - k y while y < 0. Who comes down at v is let go again at v after
 *     T = (pi + 2 atan(g / (v w))) / w,   w^2 = k / m,
 * from sink to sink; deepest at D = g/w^2 + sqrt((g/w^2)^2 + (v/w)^2). So speed and time of a contact give stiffness, depth, peak and the energy it holds. Where the athlete
 * leaves faster or slower than he came, v is the mean of both: the spring then gives the contact's impulse, m (v_in + v_out) + m g T, and no more energy than it took; what
 * height is won or lost is the legs'. A real bed hardens and loses some of it, which counts as the legs' too.
 */
export interface BedSpring {
  /** N/m */
  readonly stiffness: number;
  /** m, deepest */
  readonly depth: number;
  /** body weights, at the deepest */
  readonly peak: number;
  /** J/kg held at the deepest */
  readonly held: number;
}

/** Steps of halving: w to 1e-12 of its span. */
const STEPS = 60;

/** `speed` down as the feet touch and up as they leave, m/s; undefined where no spring takes that time. */
export function calcBedSpring(mass: number, gravity: number, speed: number, time: number): BedSpring | undefined {
  if (!(speed > 0 && time > 0 && gravity > 0)) return undefined;
  const timeOf = (w: number): number => (Math.PI + 2 * Math.atan(gravity / (speed * w))) / w;
  let [low, high] = [Math.PI / time, (2 * Math.PI) / time];
  for (let i = 0; i < STEPS; i++) {
    const w = (low + high) / 2;
    if (timeOf(w) > time) low = w;
    else high = w;
  }
  const w = (low + high) / 2;
  const rest = gravity / (w * w);
  const depth = rest + Math.hypot(rest, speed / w);
  return { stiffness: mass * w * w, depth, peak: depth / rest, held: (w * depth) ** 2 / 2 };
}
