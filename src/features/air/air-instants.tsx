/** On touch: named instants of the whole skill, as keys under its phases. */
import { For } from 'solid-js';
import { useDocument } from '../../app/page.ts';
import type { WholeState } from '../../app/whole-state.ts';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { airTexts as t } from './air-texts.ts';
import { type InstantName, instantsOf } from './instants.ts';

const NAMES: readonly InstantName[] = ['bottom', 'release', 'nearest', 'touch'];
/** s from an instant that the cursor is at it */
const AT = 0.006;

export function AirInstants(props: { state: WholeState; whole: WholeResult }) {
  const doc = useDocument();
  const found = () => instantsOf(props.whole, doc.leg());
  return (
    <nav class="air-instants" aria-label={t.instantsLabel}>
      <For each={NAMES.filter((name) => found()[name] !== undefined)}>
        {(name) => (
          <button
            type="button"
            aria-pressed={Math.abs((found()[name] ?? 0) - props.state.cursor()) < AT}
            onClick={() => props.state.setCursor(found()[name] ?? 0)}
          >
            {t.instants[name]}
          </button>
        )}
      </For>
    </nav>
  );
}
