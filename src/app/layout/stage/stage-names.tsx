/** The names of the pictures, written over the canvas. */
import { For, Show } from 'solid-js';
import type { ViewPlace } from '../../../pictures/stage-input.ts';
import { SideSign } from '../../../ui/icon.tsx';
import { texts } from '../../words.ts';

const names = {
  unrolled: texts.stage.unrolled,
  side: texts.stage.side,
  front: texts.stage.front,
  top: texts.stage.top,
  upright: texts.stage.upright,
  large: '',
} as const;

export function StageNames(props: { views: readonly ViewPlace[]; compressed?: boolean }) {
  return (
    <For each={props.views.map((v) => v.kind)}>
      {(kind, i) => (
        <p
          class={`stage-name ${kind}`}
          style={{ left: `${props.views[i()].x}px`, 'max-width': `${props.views[i()].width}px` }}
        >
          {names[kind]}
          <Show when={kind === 'unrolled'}>
            <span class="sides">
              <SideSign side="left" /> {texts.stage.left} <SideSign side="right" /> {texts.stage.right}
            </span>
            <Show when={props.compressed}>
              <span class="note">{texts.stage.compressed}</span>
            </Show>
          </Show>
        </p>
      )}
    </For>
  );
}
