/** On touch: steps, named instants, speed and play at the lower edge. */
import { For, Show } from 'solid-js';
import { useDocument } from '../../app/page.ts';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { Icon } from '../../ui/icon.tsx';
import { airTexts as t } from './air-texts.ts';
import { type InstantName, instantsOf } from './instants.ts';
import { WholePlay, WholeSpeed } from './whole-floor.tsx';

const NAMES: readonly InstantName[] = ['bottom', 'release', 'nearest', 'touch'];
/** s from an instant that the cursor is at it */
const AT = 0.006;

export function AirThumb(props: { state: WholeState; whole: WholeResult; wide: boolean }) {
  const doc = useDocument();
  const step = (by: number): void => props.state.setCursor(Math.round((props.state.cursor() + by) * 100) / 100);
  const found = () => instantsOf(props.whole, doc.leg());
  const shown = (): readonly InstantName[] => {
    const there = NAMES.filter((name) => found()[name] !== undefined);
    return props.wide ? there : there.slice(0, 3);
  };
  return (
    <nav class="thumb air-thumb" aria-label={t.instantsLabel}>
      <button type="button" class="on-floor square" aria-label={t.back} onClick={() => step(-0.01)}>
        <Icon name="back" />
      </button>
      <button type="button" class="on-floor square" aria-label={t.on} onClick={() => step(0.01)}>
        <Icon name="on" />
      </button>
      <For each={shown()}>
        {(name) => (
          <button
            type="button"
            class="on-floor word"
            aria-pressed={Math.abs((found()[name] ?? 0) - props.state.cursor()) < AT}
            onClick={() => props.state.setCursor(found()[name] ?? 0)}
          >
            {t.instants[name]}
          </button>
        )}
      </For>
      <Show when={props.wide}>
        <WholeSpeed state={props.state} />
      </Show>
      <span class="gap" />
      <WholePlay state={props.state} size={24} />
    </nav>
  );
}
