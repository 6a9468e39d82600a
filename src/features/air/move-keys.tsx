/** The keys of shoulder and hip in a swing: where on the circle (or when), and at what angle. */
import { For, Show } from 'solid-js';
import type { FileSwing, FileSwingKey } from '../../../sim/index.ts';
import { changeMove } from '../../document/contact-edits.ts';
import { Knob } from './knob.tsx';
import { SCALES } from './scales.ts';
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
                scale={SCALES.moveDeg}
                value={key().deg}
                set={(file, v) => changeMove(file, i, { deg: v })}
              />
              <Knob
                label={k.release}
                scale={key().atDeg === undefined ? SCALES.moveAtS : SCALES.moveAtDeg}
                value={key().atDeg ?? key().atS ?? 0}
                set={(file, v) => changeMove(file, i, key().atDeg === undefined ? { atS: v } : { atDeg: v })}
              />
            </fieldset>
          )}
        </Show>
      )}
    </For>
  );
}
