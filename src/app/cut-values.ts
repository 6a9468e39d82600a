/** What the plumb line meets: the values at the cursor, and in words what just changed. */
import { type Accessor, createEffect, createMemo, createSignal, onCleanup } from 'solid-js';
import type { Frames } from '../../sim/index.ts';
import { DEG, REV } from '../../sim/math/angles.ts';
import type { Place } from '../../sim/math/sorted.ts';
import { nameShape, wordShape } from './flight.ts';
import { useCursor, useFlight, useServices } from './page.ts';
import { alongTurn, calcPlace, readAt } from './plot/readout.ts';
import { explainWords } from './say/explain-units.ts';
import { texts } from './words.ts';

const c = texts.cut;

export interface CutNumbers {
  readonly twistRate: number;
  readonly somersaultRate: number;
  readonly tilt: number;
  readonly twistSoFar: number;
  readonly somersaultSoFar: number;
  readonly long: number;
  readonly lateral: number;
  readonly front: number;
  readonly momentum: number;
  readonly energy: number;
  readonly work: number;
}

export interface CutValues extends CutNumbers {
  readonly t: number;
  readonly shape: string;
  /** the same in one word */
  readonly word: string;
  readonly attitude: string;
  readonly place: Place;
}

/** Rates are unsigned, in the direction that the flight as a whole turns; against it is negative. `own`: the flight whose direction that is. */
export function calcCutNumbers(f: Frames, place: Place, own: Frames = f): CutNumbers {
  const at = (column: Float64Array, width = 1, k = 0): number => readAt(column, place, width, k);
  const turned = (column: Float64Array): number => (column[own.n - 1] - column[0]) / REV;
  return {
    twistRate: alongTurn(at(f.twistRate) / REV, turned(own.twist)),
    somersaultRate: alongTurn(at(f.somersaultRate) / REV, turned(own.somersault)),
    tilt: at(f.tilt) * DEG,
    twistSoFar: Math.abs(at(f.twist) - f.twist[0]) / REV,
    somersaultSoFar: Math.abs(at(f.somersault) - f.somersault[0]) / REV,
    lateral: at(f.moments, 3, 0),
    front: at(f.moments, 3, 1),
    long: at(f.moments, 3, 2),
    momentum: Math.hypot(at(f.h_Scm_W, 3, 0), at(f.h_Scm_W, 3, 1), at(f.h_Scm_W, 3, 2)),
    energy: at(f.eTotal),
    work: at(f.jointWork),
  };
}

export function useCut(): Accessor<CutValues> {
  const flight = useFlight();
  const cursor = useCursor();
  const cut = createMemo<CutValues>(() => {
    const { frames: f } = flight.result();
    const t = cursor.at();
    const place = calcPlace(f, t);
    const [q0, q1, q2, q3] = [0, 1, 2, 3].map((k) => f.quat_WF[4 * (place.i + Math.round(place.share)) + k]);
    const up = q0 * q0 - q1 * q1 + q2 * q2 - q3 * q3;
    return {
      t,
      shape: nameShape(flight.spans(), t),
      word: wordShape(flight.spans(), t),
      attitude: up > 0.5 ? c.headUp : up < -0.5 ? c.headDown : c.lying,
      ...calcCutNumbers(f, place),
      place,
    };
  });
  return cut;
}

/** The cursor rests when it has stood still this long, ms. */
const REST = 120;

/** What just changed and why: made when cursor and document rest, as the first look at a move costs some 2 ms. */
export function useExplanation(): Accessor<string> {
  const flight = useFlight();
  const cursor = useCursor();
  const services = useServices();
  const [said, setSaid] = createSignal({ id: flight.id(), words: '' });
  createEffect(() => {
    const [result, id, t] = [flight.result(), flight.id(), cursor.at()];
    if (flight.before()) return;
    const words = explainWords();
    const timer = setTimeout(() => setSaid({ id, words: services.flying.explain(result, t, words) }), REST);
    onCleanup(() => clearTimeout(timer));
  });
  // while the flight plays it rests nowhere: what is said is never of another document
  return () => (said().id === flight.id() ? said().words : '');
}
