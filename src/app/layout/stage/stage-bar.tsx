/** The bar of the large stage: which view, which camera, what is shown, what is measured. */
import { For, type JSX, Show } from 'solid-js';
import type { LargeView } from '../../../scene/camera.ts';
import type { LargeShow } from '../../../scene/large-look.ts';
import type { MeasureKind } from '../../../scene/measure.ts';
import { Icon } from '../../../ui/icon.tsx';
import type { LargeStage } from '../../large.ts';
import { stageTexts } from './words.ts';

const t = stageTexts;
const VIEWS: readonly LargeView[] = ['side', 'front', 'top'];
const SHOWN: readonly (keyof LargeShow)[] = ['path', 'before', 'everyStep', 'paths', 'arrows', 'sizes'];
const MEASURES: readonly MeasureKind[] = ['length', 'angle'];

const Group = (props: { label: string; children: JSX.Element }) => (
  <fieldset class="stage-group">
    <legend class="spoken">{props.label}</legend>
    {props.children}
  </fieldset>
);

const Toggle = (props: { on: boolean; name: string; run: (byKey: boolean) => void }) => (
  <button type="button" aria-pressed={props.on} onClick={(e) => props.run(e.detail === 0)}>
    {props.name}
  </button>
);

export function StageBar(props: { large: LargeStage }) {
  const look = () => props.large.look();
  return (
    <div class="stage-bar" role="toolbar" aria-label={t.label} onPointerDown={(e) => e.stopPropagation()}>
      <Group label={t.view}>
        <For each={VIEWS}>
          {(v) => <Toggle on={look()?.view === v} name={t.views[v]} run={() => props.large.setView(v)} />}
        </For>
      </Group>
      <Group label={t.camera}>
        <Toggle on={look()?.follow === true} name={t.follow} run={() => props.large.toggleFollow()} />
        <button type="button" class="square" aria-label={t.zoomOut} onClick={() => props.large.zoom(0.8)}>
          <Icon name="minus" size={16} />
        </button>
        <button type="button" class="square" aria-label={t.zoomIn} onClick={() => props.large.zoom(1.25)}>
          <Icon name="plus" size={16} />
        </button>
        <button type="button" onClick={() => props.large.fit()}>
          {t.fit}
        </button>
      </Group>
      <Group label={t.show}>
        <For each={SHOWN}>
          {(what) => (
            <Toggle on={look()?.show[what] === true} name={t.shown[what]} run={() => props.large.toggleShow(what)} />
          )}
        </For>
        <Show when={look()?.show.everyStep && look()}>
          {(l) => (
            <span class="step-count">
              <button
                type="button"
                class="square"
                aria-label={t.fewer}
                onClick={() => props.large.setSteps(l().steps - 1)}
              >
                <Icon name="minus" size={16} />
              </button>
              <output aria-label={t.steps}>{l().steps}</output>
              <button
                type="button"
                class="square"
                aria-label={t.more}
                onClick={() => props.large.setSteps(l().steps + 1)}
              >
                <Icon name="plus" size={16} />
              </button>
            </span>
          )}
        </Show>
      </Group>
      <Group label={t.measure}>
        <For each={MEASURES}>
          {(kind) => (
            <Toggle
              on={props.large.measuring() === kind}
              name={t[kind]}
              run={(byKey) => props.large.measure(props.large.measuring() === kind ? undefined : kind, byKey)}
            />
          )}
        </For>
      </Group>
      <span class="gap" />
      <button type="button" class="stage-shrink" title={t.shrink} onClick={() => props.large.toggle()}>
        <Icon name="close" size={16} /> <span>{t.small}</span>
      </button>
    </div>
  );
}
