/** What is held equal, where the flights are laid together, how they are shown. */
import { For, Show } from 'solid-js';
import type { Alignment, HeldEqual } from '../../engine/compare.ts';
import type { CompareLayout, CompareState } from './compare-state.ts';
import { compareTexts as c } from './words.ts';

const HELD = Object.keys(c.heldWays) as HeldEqual[];
const LAYOUTS = Object.keys(c.layouts) as CompareLayout[];
const ALIGNS = Object.keys(c.aligns) as Alignment[];

export function StaysChoice(props: { state: CompareState }) {
  return (
    <label class="stays" title={c.staysMeans}>
      <input
        type="checkbox"
        checked={props.state.stays()}
        onChange={(e) => props.state.setStays(e.currentTarget.checked)}
      />
      <span>{c.stays}</span>
    </label>
  );
}

export function CompareControls(props: { state: CompareState; layout: boolean }) {
  return (
    <div class="compare-controls">
      <label>
        <span>{c.held}</span>
        <select
          value={props.state.held()}
          onChange={(e) => props.state.setHeld(e.currentTarget.value as HeldEqual)}
          title={c.heldMeans[props.state.held()]}
        >
          <For each={HELD}>{(how) => <option value={how}>{c.heldWays[how]}</option>}</For>
        </select>
      </label>
      <label>
        <span>{c.align}</span>
        <select value={props.state.align()} onChange={(e) => props.state.setAlign(e.currentTarget.value as Alignment)}>
          <For each={ALIGNS}>{(at) => <option value={at}>{c.aligns[at]}</option>}</For>
        </select>
      </label>
      <Show when={props.layout}>
        <fieldset class="two-way">
          <legend class="spoken">{c.layout}</legend>
          <For each={LAYOUTS}>
            {(name) => (
              <button
                type="button"
                aria-pressed={props.state.layout() === name}
                onClick={() => props.state.setLayout(name)}
              >
                {c.layouts[name]}
              </button>
            )}
          </For>
        </fieldset>
      </Show>
      <For each={props.state.flown().filter((f) => f.noEvent)}>{(f) => <p class="quiet">{c.noEvent(f.letter)}</p>}</For>
    </div>
  );
}
