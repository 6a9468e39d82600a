/** The other way of the same skill, flown beside it: what rows, pictures and words of the page take of it. A is the skill, B the other. */
import { type Accessor, createSignal, onCleanup } from 'solid-js';
import type { SkillVerdict } from '../../sim/index.ts';
import type { FromTo } from '../../sim/math/from-to.ts';
import type { VersionLetter } from '../document/versions.ts';
import type { FlightResult } from '../engine/result.ts';
import type { BesideTurn } from './beside-numbers.ts';

export interface Beside {
  readonly letter: VersionLetter;
  readonly result: FlightResult;
  /** what turns faster or slower */
  readonly turn: BesideTurn;
  /** how each is called: "arms in", "arms wide" */
  readonly own: string;
  readonly other: string;
  /** s, while both are held */
  readonly held: FromTo;
  /** of the mean rates while both are held, the faster over the slower; undefined where none is said */
  readonly ratio: number | undefined;
  /** on the other; its landing is known later */
  readonly verdict: Accessor<SkillVerdict | undefined>;
}

export interface BesideState {
  readonly shown: Accessor<Beside | undefined>;
  /** until the owner that provides it is cleaned up */
  provide(what: Beside): void;
}

export function createBeside(): BesideState {
  const [shown, setShown] = createSignal<Beside>();
  return {
    shown,
    provide: (what) => {
      setShown(what);
      onCleanup(() => setShown((now) => (now === what ? undefined : now)));
    },
  };
}
