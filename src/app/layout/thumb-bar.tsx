/** One hand on a gym floor: the four numbers at the cursor, speed, steps of a hundredth and play, at the lower edge. */

import { Show } from 'solid-js';
import { LiveNumbers } from '../../features/instant/live-numbers.tsx';
import { PlayButton, SpeedButton } from '../../features/ruler/floor.tsx';
import { floorTexts } from '../../features/ruler/words.ts';
import { Icon } from '../../ui/icon.tsx';
import type { CutValues } from '../cut-values.ts';
import { useCursor, useShell } from '../page.ts';

export function ThumbBar(props: { cut: CutValues }) {
  const shell = useShell();
  return (
    <Show
      when={shell.tool() !== 'contact'}
      // a whole skill has steps and a play of its own under the numbers
      fallback={
        <div class="thumb-numbers">
          <LiveNumbers cut={props.cut} />
        </div>
      }
    >
      <nav class="thumb" aria-label={floorTexts.controls}>
        <LiveNumbers cut={props.cut} />
        <div class="thumb-keys">
          <SpeedButton />
          <StepButton by={-0.01} />
          <StepButton by={0.01} />
          <PlayButton size={28} />
        </div>
      </nav>
    </Show>
  );
}

function StepButton(props: { by: number }) {
  const cursor = useCursor();
  return (
    <button
      type="button"
      class="on-floor step"
      aria-label={props.by < 0 ? floorTexts.back : floorTexts.on}
      onClick={() => cursor.moveBy(props.by)}
    >
      <Icon name={props.by < 0 ? 'back' : 'on'} size={24} />
    </button>
  );
}
