/** What a turned limb changes: the whole held shape or this moment, one side or both. Shown while there is a limb to change. */
import { For, Show } from 'solid-js';
import { useHand } from './hand.ts';
import type { Work } from './limb-work.ts';
import { poseTexts, wordLimb } from './words.ts';

export function FigureOptions(props: { work: Work; name: string }) {
  const hand = useHand();
  return (
    <fieldset class="figure-options">
      <legend class="spoken">{poseTexts.switches}</legend>
      <Show when={hand.heldSpan()} fallback={<p>{poseTexts.inMove}</p>}>
        <For each={['shape', 'key'] as const}>
          {(name) => (
            <label title={poseTexts.scopeHint}>
              <input
                type="radio"
                name={props.name}
                checked={hand.scope() === name}
                onChange={() => hand.again(() => hand.setScope(name))}
              />
              {poseTexts.scope[name]}
            </label>
          )}
        </For>
      </Show>
      <Show when={props.work.limb !== 'head'}>
        <label title={poseTexts.sidesHint}>
          <input
            type="checkbox"
            checked={hand.sides(props.work.limb) === 'both'}
            onChange={(e) => {
              const sides = e.currentTarget.checked ? 'both' : 'one';
              hand.again(() => hand.setSides(sides));
            }}
          />
          {wordLimb(props.work.limb, true)}
        </label>
      </Show>
    </fieldset>
  );
}
