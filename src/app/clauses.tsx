/** A result as clauses with their weights and hues. With `press` each is a way to the place it speaks of. */
import { For, Show } from 'solid-js';
import { type Clause, type ClausePlace, startsSentence, upper } from '../../sim/words/verdict-words.ts';
import { texts } from './words.ts';

export function Clauses(props: { clauses: readonly Clause[]; press?: (place: ClausePlace) => void; stale?: boolean }) {
  const isStale = (one: Clause): boolean => props.stale === true && one === props.clauses[props.clauses.length - 1];
  return (
    <For each={props.clauses}>
      {(one, i) => {
        const join = (): string => props.clauses[i() + 1]?.join ?? '';
        return (
          <>
            {/* a line does not begin with what ends a clause */}
            <span class="joined">
              <Show when={props.press} fallback={<span class="clause">{pieces(one)}</span>}>
                {(press) => (
                  <button
                    type="button"
                    class="clause"
                    classList={{ stale: isStale(one) }}
                    title={texts.sentence.places[one.place]}
                    onClick={() => press()(one.place)}
                  >
                    {pieces(one)}
                  </button>
                )}
              </Show>
              {join().slice(0, 1)}
            </span>
            {join().slice(1)}
          </>
        );
      }}
    </For>
  );
}

const pieces = (clause: Clause) =>
  clause.runs.map((run, k) => (
    <span
      class={run.weight}
      classList={{
        som: run.hue === 'somersault',
        twist: run.hue === 'twist',
        stop: run.hue === 'stop',
        open: run.isOpen === true,
      }}
    >
      {k === 0 && startsSentence(clause.join) ? upper(run.text) : run.text}
    </span>
  ));
