/** The choice of units. */
import { For } from 'solid-js';
import { type Measure, setUnits, type Turning, units } from './units.ts';
import { unitTexts } from './words.ts';

const measures: readonly Measure[] = ['metric', 'imperial'];
const turnings: readonly Turning[] = ['revolutions', 'degrees'];

export function UnitChoice() {
  return (
    <>
      <fieldset class="choice">
        <legend>{unitTexts.lengths}</legend>
        <For each={measures}>
          {(name) => (
            <button type="button" aria-pressed={units().measure === name} onClick={() => setUnits({ measure: name })}>
              {unitTexts.measures[name]}
            </button>
          )}
        </For>
      </fieldset>
      <fieldset class="choice">
        <legend>{unitTexts.turns}</legend>
        <For each={turnings}>
          {(name) => (
            <button type="button" aria-pressed={units().turning === name} onClick={() => setUnits({ turning: name })}>
              {unitTexts.turnings[name]}
            </button>
          )}
        </For>
      </fieldset>
    </>
  );
}
