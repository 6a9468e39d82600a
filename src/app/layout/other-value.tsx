/** A value of the way that is beside, with its letter, under that of the skill. */
import { type Accessor, createMemo, type JSX, Show } from 'solid-js';
import type { Place } from '../../../sim/math/sorted.ts';
import type { VersionLetter } from '../../document/versions.ts';
import type { FlightResult } from '../../engine/result.ts';
import { VersionTag } from '../../features/compare/version-tag.tsx';
import { type CutNumbers, calcCutNumbers } from '../cut-values.ts';
import { useFlight, useShell } from '../page.ts';
import { calcPlace } from '../plot/readout.ts';

interface OtherCut extends CutNumbers {
  readonly letter: VersionLetter;
  readonly result: FlightResult;
  readonly place: Place;
}

/** What the plumb line meets of the way that is beside; undefined: there is none. */
export function useOtherCut(t: Accessor<number>): Accessor<OtherCut | undefined> {
  const shell = useShell();
  const flight = useFlight();
  const cut = createMemo<OtherCut | undefined>(() => {
    const beside = shell.beside.shown();
    if (!beside) return undefined;
    const { letter, result } = beside;
    const place = calcPlace(result.frames, t());
    return { ...calcCutNumbers(result.frames, place, flight.result().frames), letter, result, place };
  });
  return cut;
}

export const OtherValue = (props: {
  of: OtherCut | undefined;
  hue?: string;
  say: (of: OtherCut) => string;
}): JSX.Element => (
  <Show when={props.of}>
    {(of) => (
      <span class={`other-value ${props.hue ?? ''}`}>
        <VersionTag letter={of().letter} small /> <b>{props.say(of())}</b>
      </span>
    )}
  </Show>
);
