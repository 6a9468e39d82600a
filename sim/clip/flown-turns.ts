/**
 * The somersault of a flight as quarters are counted in a clip: from the one of upright, level, head down, level that is nearest to the attitude at
 * take-off, in the direction of turning.
 */

import { placeIn } from '../math/sorted.ts';
import type { Frames } from '../measure/frames.ts';

const QUARTER = Math.PI / 2;

export interface FlownTurns {
  /** rad at s from take-off; NaN outside the flight and where somersault is not defined */
  at(t: number): number;
  /** s at which so many quarters are done for the first time; NaN: never */
  timeOf(quarters: number): number;
}

export function readFlownTurns({ t, n, somersault }: Frames): FlownTurns {
  let last = n - 1;
  while (last > 0 && Number.isNaN(somersault[last])) last--;
  const way = somersault[last] < somersault[0] ? -1 : 1;
  const base = Math.round(somersault[0] / QUARTER) * QUARTER;
  const turned = (i: number): number => way * (somersault[i] - base);
  return {
    at: (time) => {
      if (!(time >= t[0] && time <= t[last])) return Number.NaN;
      const { i, share } = placeIn(t, time, last + 1);
      return turned(i) + share * (turned(i + 1) - turned(i));
    },
    timeOf: (quarters) => {
      const wanted = quarters * QUARTER;
      for (let i = 0; i < last; i++) {
        const [a, b] = [turned(i), turned(i + 1)];
        if (a < wanted && b >= wanted) return t[i] + ((wanted - a) / (b - a)) * (t[i + 1] - t[i]);
      }
      return Number.NaN;
    },
  };
}
