/** From the named angles of a Body (Body.angles, rad) to the angles of its hinges, in their order. */
import type { Body } from '../body/body.ts';

/** Writes the hinge coordinates of named angles, rad, in the order of the segments. */
export function hingesInto(body: Body, angles: ArrayLike<number>, q: Float64Array): void {
  let h = 0;
  for (const segment of body.segments)
    for (const hinge of segment.hinges) {
      let sum = 0;
      for (const term of hinge.terms) sum += term.coef * angles[term.angle];
      q[h] = sum;
      h++;
    }
}
