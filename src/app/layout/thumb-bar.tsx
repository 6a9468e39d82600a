/** One hand on a gym floor: the four numbers at the cursor (or what the open tool has in their place), speed, steps of a hundredth and play, at the lower edge. */
import { Show } from 'solid-js';
import { LiveNumbers } from '../../features/instant/live-numbers.tsx';
import { PlayButton, SpeedButton } from '../../features/ruler/floor.tsx';
import { floorTexts } from '../../features/ruler/words.ts';
import { Icon } from '../../ui/icon.tsx';
import type { CutValues } from '../cut-values.ts';
import { useFloorTime } from '../floor-hand.ts';
import { FilledPlace } from './tools/filled-place.tsx';

export function ThumbBar(props: { cut: CutValues; filled?: boolean | undefined }) {
  const time = useFloorTime();
  return (
    <nav class="thumb" aria-label={floorTexts.controls} on:keydown={(e) => time.onKeyDown(e)}>
      <Show when={props.filled} fallback={<LiveNumbers cut={props.cut} />}>
        <FilledPlace name="floor" />
      </Show>
      <div class="thumb-keys">
        <SpeedButton />
        <StepButton by={-0.01} />
        <StepButton by={0.01} />
        <PlayButton size={28} />
      </div>
    </nav>
  );
}

function StepButton(props: { by: number }) {
  const time = useFloorTime();
  return (
    <button
      type="button"
      class="on-floor step"
      aria-label={props.by < 0 ? floorTexts.back : floorTexts.on}
      onClick={() => time.moveBy(props.by)}
    >
      <Icon name={props.by < 0 ? 'back' : 'on'} size={24} />
    </button>
  );
}
