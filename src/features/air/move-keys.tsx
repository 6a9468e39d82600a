/** The keys of shoulder and hip in a swing: where on the circle (or when), and at what angle. */
import { For, Show } from 'solid-js';
import type { FileSwing, FileSwingKey } from '../../../sim/index.ts';
import { changeMove } from '../../document/contact-edits.ts';
import { Knob } from './knob.tsx';
import { contactTexts } from './words.ts';

const k = contactTexts.knobs;

export function MoveKeys(props: { swing: FileSwing }) {
  const keys = (): readonly FileSwingKey[] => props.swing.moves.last ?? props.swing.moves.keys;
  return (
    <For each={keys().map((_, i) => i)}>
      {(i) => (
        <Show when={keys()[i]}>
          {(key) => (
            <fieldset class="move">
              <legend>
                {k.joints[key().joint]} {key().atDeg === undefined ? `${key().atS} s` : `${key().atDeg}°`}
              </legend>
              <Knob
                label={`${k.joints[key().joint]}`}
                unit="°"
                value={key().deg}
                min={-60}
                max={220}
                step={1}
                decimals={0}
                set={(file, v) => changeMove(file, i, { deg: v })}
              />
              <Knob
                label={k.release}
                unit={key().atDeg === undefined ? 's' : '°'}
                value={key().atDeg ?? key().atS ?? 0}
                min={key().atDeg === undefined ? 0 : -180}
                max={key().atDeg === undefined ? 20 : 180}
                step={key().atDeg === undefined ? 0.01 : 1}
                decimals={key().atDeg === undefined ? 2 : 0}
                set={(file, v) => changeMove(file, i, key().atDeg === undefined ? { atS: v } : { atDeg: v })}
              />
            </fieldset>
          )}
        </Show>
      )}
    </For>
  );
}
