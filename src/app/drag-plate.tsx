/** What a drag does to the flight, written above the finger, never under it. */
import { createMemo, Index, Show } from 'solid-js';
import type { Outline } from '../engine/result.ts';
import { formatNumber } from '../ui/numbers.ts';
import { sayNumber } from '../ui/units.ts';
import { useFlight } from './page.ts';
import { wordLanding } from './say/sentence-words.ts';
import { texts } from './words.ts';

export interface PlateWords {
  readonly x: number;
  readonly lines: readonly string[];
}

export const wordShift = (s: number): string =>
  Math.abs(s) < 0.0005
    ? texts.shapes.same
    : (s > 0 ? texts.shapes.later : texts.shapes.earlier)(formatNumber(Math.abs(s), 2));

interface Gain {
  readonly hue: 'twist' | 'som' | 'ink';
  readonly name: string;
  readonly from: string;
  readonly to: string;
}

/** What changed most: twist first, then somersault, then the landing. */
export function calcGains(before: Outline, now: Outline): Gain[] {
  const gains: Gain[] = [];
  const turn = (hue: 'twist' | 'som', name: string, a: number | null, b: number | null): void => {
    const [from, to] = [a, b].map((v) => (v === null ? '–' : sayNumber('turns', v, 2)));
    if (from !== to) gains.push({ hue, name, from, to });
  };
  turn('twist', texts.plots.twist, before.twists, now.twists);
  turn('som', texts.plots.somersault, before.somersaults, now.somersaults);
  const [a, b] = [wordLanding(before), wordLanding(now)];
  if (a !== b) gains.push({ hue: 'ink', name: texts.sentence.landing, from: a, to: b });
  return gains.slice(0, 2);
}

export function DragPlate(props: { words: PlateWords; width: number }) {
  const flight = useFlight();
  const gains = createMemo(() => {
    const before = flight.before();
    return before ? calcGains(before, flight.result().outline) : [];
  });
  const x = (): number => Math.min(Math.max(props.words.x, 110), props.width - 110);
  return (
    <div class="plate" style={{ left: `${x()}px` }} aria-hidden="true">
      <Index each={gains()}>
        {(g) => (
          <p class="gain">
            <span class={g().hue}>
              {g().name} <b>{g().from}</b> → <b>{g().to}</b>
            </span>
          </p>
        )}
      </Index>
      <Index each={props.words.lines}>{(line) => <p>{line()}</p>}</Index>
      <Show when={flight.outcome().fault}>{(f) => <p class="stop">{f().message}</p>}</Show>
    </div>
  );
}
