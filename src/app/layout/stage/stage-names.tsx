/** The names of the pictures, written over the canvas. */
import { For, Show } from 'solid-js';
import { floorTexts } from '../../../features/ruler/words.ts';
import type { ViewPlace } from '../../../pictures/stage-input.ts';
import { SideSign } from '../../../ui/icon.tsx';
import { useFlight } from '../../page.ts';
import { texts } from '../../words.ts';

/** px from the right edge: the legend, and a button beside it */
const LEGEND = 152;

const names = {
  unrolled: texts.stage.unrolled,
  side: texts.stage.side,
  front: texts.stage.front,
  top: texts.stage.top,
  upright: texts.stage.upright,
  large: '',
} as const;

/** `bare`: the flight along the ruler needs no name where the ruler is under it */
export function StageNames(props: { views: readonly ViewPlace[]; compressed?: boolean; bare?: boolean }) {
  const flight = useFlight();
  const surface = (): string => {
    const { end } = flight.result().skill;
    return end.surface ? floorTexts.surfaces[end.surface.kind] : '';
  };
  return (
    <For each={props.views.map((v) => v.kind)}>
      {(kind, i) => (
        <p
          class={`stage-name ${kind}`}
          classList={{ bare: kind === 'unrolled' && props.bare }}
          style={{
            left: `${kind === 'unrolled' && props.bare ? props.views[i()].x + props.views[i()].width - LEGEND : props.views[i()].x}px`,
            'max-width': `${props.views[i()].width}px`,
          }}
        >
          <span classList={{ spoken: kind === 'unrolled' && props.bare }}>{names[kind]}</span>
          <Show when={kind === 'side' && surface()}>, {surface()}</Show>
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
