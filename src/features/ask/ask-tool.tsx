/** Ask: what it needs (wanted, may change, answers) and how much it forgives (margin, tries, map). */
import { createEffect, createSignal, onCleanup, Show } from 'solid-js';
import { keptState, type Page } from '../../app/page.ts';
import type { ToolProps } from '../../app/tool.ts';
import { makeAskState } from './ask-state.ts';
import { makeMapState } from './map-state.ts';
import { makeStudyState } from './study-state.ts';
import { TouchAsk, type TouchTab } from './touch-ask.tsx';
import { WideAsk } from './wide-ask.tsx';

const useStates = keptState((page: Page) => {
  const ask = makeAskState(page);
  const study = makeStudyState(page, ask);
  return { ask, study, map: makeMapState(page, ask, study) };
});

export function AskTool(props: ToolProps) {
  const states = useStates();
  const [tab, setTab] = createSignal<TouchTab>('wanted');
  const wide = (): boolean => props.device === 'bench';
  createEffect(() => {
    states.study.setShown(wide() || tab() === 'margin');
    states.map.setShown(wide() || tab() === 'map');
  });
  onCleanup(() => {
    states.study.setShown(false);
    states.map.setShown(false);
  });
  return (
    <div class="ask" classList={{ touch: !wide() }}>
      <Show when={wide()} fallback={<TouchAsk {...props} {...states} tab={tab()} setTab={setTab} />}>
        <WideAsk {...props} {...states} />
      </Show>
    </div>
  );
}
