/**
 * The circle taken at constant speed, as is common practice (no source): quick on paper, and too low. A real swing is
 * fastest at the bottom, where this takes the mean; both are shown side by side so that the difference is seen.
 */
import { REV } from '../math/angles.ts';

interface EvenCircle {
  /** m/s, m/s^2 */
  readonly speed: number;
  readonly acceleration: number;
  /** g: centripetal, and felt at the bottom (one more) */
  readonly centripetal: number;
  readonly felt: number;
}

/** `radius` of the mass centre from the bar, m; `period` of one turn, s. */
export function calcEvenCircle(radius: number, period: number, gravity: number): EvenCircle {
  const speed = (REV * radius) / period;
  const acceleration = (speed * speed) / radius;
  return { speed, acceleration, centripetal: acceleration / gravity, felt: acceleration / gravity + 1 };
}
