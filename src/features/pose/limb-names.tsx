/** The names of limbs that a press can mean: one as a word beside it; of two the nearer is filled, and each can be pressed. */
import { createMemo, For, Show } from 'solid-js';
import type { HeldLimb, LimbName } from '../../pictures/stage-input.ts';
import { placePlate } from './plate-place.ts';
import { poseTexts, wordLimb } from './words.ts';

/** px: one name, and one that is chosen by finger */
const NAME = { wide: 82, tall: 24, gap: 4, apart: 14 } as const;
const CHOICE = { wide: 130, tall: 48, gap: 8, apart: 44 } as const;

export function LimbNames(props: {
  names: readonly LimbName[];
  /** a finger touched both: the next touch chooses */
  isChoice: boolean;
  x: number;
  y: number;
  room: { readonly width: number; readonly height: number; readonly clear: HeldLimb['outline'] };
  choose: (id: LimbName) => void;
}) {
  const size = () => (props.isChoice ? CHOICE : NAME);
  const place = createMemo(() => {
    const { wide, tall, gap, apart } = size();
    const n = props.names.length;
    return placePlate({ ...props.room, hand: [props.x, props.y], apart }, wide, n * tall + (n - 1) * gap);
  });
  return (
    <div
      class="limb-names"
      classList={{ choice: props.isChoice }}
      style={{ transform: `translate(${place()[0]}px, ${place()[1]}px)`, width: `${size().wide}px` }}
    >
      <Show
        when={props.names.length > 1}
        fallback={
          <span class="limb-name" aria-hidden="true">
            {wordLimb(props.names[0])}
          </span>
        }
      >
        {/* biome-ignore lint/a11y/useSemanticElements: two buttons are no set of fields */}
        <div role="group" aria-label={poseTexts.choose}>
          <For each={props.names}>
            {(id) => (
              <button type="button" onClick={() => props.choose(id)}>
                {wordLimb(id)}
              </button>
            )}
          </For>
        </div>
      </Show>
    </div>
  );
}
