/**
 * Bodies that move in one plane at zero angular momentum: the frame their places are given in turns by
 *     - integral of (sum m (r x r') + J a') / (sum m r^2 + J) ,
 * r from the common mass centre, a the angle of each part in that frame. Places carry their derivatives (jets).
 */
import { type Jet, minus, plus, scaled } from './jet.ts';
import { integral } from './quadrature.ts';

export interface Part {
  readonly m: number;
  readonly J: number;
  readonly x: Jet;
  readonly y: Jet;
  readonly angle: Jet;
}

/** Turn of the frame while the parameter goes from a to b, rad, counter-clockwise from x to y. */
export function turnAtRest(parts: (s: number) => readonly Part[], a: number, b: number, panels = 8): number {
  return integral(
    (s) => {
      const all = parts(s);
      const M = all.reduce((sum, p) => sum + p.m, 0);
      const cx = plus(...all.map((p) => scaled(p.x, p.m / M)));
      const cy = plus(...all.map((p) => scaled(p.y, p.m / M)));
      let momentum = 0;
      let moment = 0;
      for (const p of all) {
        const x = minus(p.x, cx);
        const y = minus(p.y, cy);
        momentum += p.m * (x[0] * y[1] - y[0] * x[1]) + p.J * p.angle[1];
        moment += p.m * (x[0] ** 2 + y[0] ** 2) + p.J;
      }
      return -momentum / moment;
    },
    a,
    b,
    panels,
  );
}
